import { stopsFound } from "../../../core/care/stops-found.ts";
import { isOf, standingOf } from "../../../core/log/standing.ts";
import { mayBeNearMould } from "../../../core/plan/checker/presence.ts";
import { sayDo } from "../../../core/say/actions.ts";
import { sayAct } from "../../../core/say/conditions.ts";
import { explain } from "../../../core/say/explain.ts";
import type { ItemNow } from "../log/item-now.ts";
import type { Now } from "../log/now.ts";
import { type AnswerView, answersOf, type DisagreementView, disagreementsOf } from "./answers-view.ts";
import { type AskView, askView } from "./ask-view.ts";
import { type Danger, dangersOf } from "./dangers-view.ts";

/** An item as the Door shows it. */
export interface DoorItem {
  readonly id: string;
  readonly title: string;
  readonly format: string;
  readonly isMust: boolean;
  readonly leaves: number | null;
  /** Height, width, thickness in mm; null: not measured. */
  readonly sizes: readonly [number, number, number] | null;
  readonly foundIn: string;
  readonly custodianRule: string;
  readonly stops: readonly { readonly part: string; readonly short: string; readonly unsure: boolean }[];
  readonly ask: AskView;
  /** Must-ask tests without an answer. */
  readonly missing: number;
  readonly follows: Follows;
  readonly answers: readonly AnswerView[];
  readonly disagreements: readonly DisagreementView[];
  readonly pictures: readonly {
    readonly picture: string;
    readonly shot: string;
    readonly part: string;
    readonly day: string;
  }[];
  readonly surveyed: { readonly by: string; readonly day: string; readonly minutes: number } | null;
  readonly isExposed: boolean;
  /** The name of whoever works here, where the item is near mould and they have clean work today. */
  readonly cleanWork: string | null;
  readonly people: readonly { readonly code: string; readonly name: string }[];
}

/** What follows from what was found. */
export interface Follows {
  readonly dangers: readonly Danger[];
  readonly peopleRules: readonly string[];
  readonly conditions: readonly { readonly says: string; readonly because: string }[];
  readonly outcome: string;
  /** Where it stays meanwhile. */
  readonly rest: string;
  readonly restId: string;
  readonly whom: readonly string[];
  readonly steps: readonly { readonly room: string; readonly act: string; readonly minutes: number }[];
}

/** `item` is null where nobody has listed it.   @param skipped questions put off, as `part test`   @param person who works here */
export function doorItem(
  now: Now,
  id: string,
  skipped: readonly string[],
  person: string | null,
): { readonly item: DoorItem | null } {
  const found = now.item(id);
  return { item: found && itemAtDoor(now, found, new Set(skipped), person) };
}

function itemAtDoor(now: Now, found: ItemNow, skipped: ReadonlySet<string>, person: string | null): DoorItem {
  const { book } = now.tables;
  const { item, care } = found;
  const all = [{ name: "", leaves: null, care: care.whole }, ...care.parts];
  const isExposed = nearMould(found);
  const { heightMm, widthMm, thicknessMm } = item;
  return {
    ...{ id: item.id, title: item.title, isExposed },
    format: String(item.facts.format ?? ""),
    isMust: item.priority === "must",
    leaves: typeof item.facts.leaves === "number" ? item.facts.leaves : null,
    sizes: heightMm === undefined || widthMm === undefined ? null : [heightMm, widthMm, thicknessMm ?? 0],
    foundIn: item.foundIn ?? "",
    custodianRule: item.custodianRule ?? "",
    stops: stopsFound(book, care).map(({ part, test, unsure }) => ({ part, short: test.short, unsure })),
    ask: askView(book, all, skipped),
    missing: new Set(all.flatMap((part) => part.care.missingTests)).size,
    follows: followsOf(now, found),
    answers: answersOf(book, found, now.me.device),
    disagreements: disagreementsOf(book, found),
    pictures: picturesOf(found),
    surveyed: surveyOf(found),
    cleanWork: isExposed ? onCleanWork(now, person) : null,
    people: now.house.people.map(({ code, name }) => ({ code, name })),
  };
}

function followsOf({ tables: { book } }: Now, { care, route }: ItemNow): Follows {
  const said = explain(book, care, route);
  const rules = said.parts.flatMap(({ tiers }) =>
    tiers.filter(({ tier }) => tier === 1).flatMap((each) => each.rules),
  );
  const conditions = new Map(
    said.parts.flatMap(({ follows }) => follows).map((each) => [each.condition, each]),
  );
  return {
    dangers: dangersOf(care),
    peopleRules: [...new Set(rules.map(({ text }) => text))],
    conditions: [...conditions.values()].map(({ condition, because }) => ({ says: condition, because })),
    outcome: said.outcome,
    rest: said.rest,
    restId: care.whole.rest?.id ?? "",
    whom: route.askWho.map(sayDo),
    steps: route.steps.map(({ room, act, minutes }) => ({
      ...{ room, act: sayAct(act) },
      minutes: Math.round(minutes.typical),
    })),
  };
}

const NEAR_MOULD = /^(?:mould_|guano|rodent|pesticide|flood_dirt)/;

/** Whether minutes beside the item count as exposed; an unsure counts as yes. */
const nearMould = ({ care }: ItemNow): boolean =>
  [care.whole, ...care.parts.map((part) => part.care)].some((each) =>
    [...each.conditions, ...each.unsureConditions].some((condition) => NEAR_MOULD.test(condition)),
  );

function onCleanWork({ house, today }: Now, code: string | null): string | null {
  const person = house.people.find((each) => each.code === code);
  if (person === undefined) return null;
  const campaign = { ...house, items: [], findings: [], sessions: [], ward: [] };
  return mayBeNearMould(campaign, person, today) ? null : person.name;
}

const picturesOf = ({ events }: ItemNow): DoorItem["pictures"] =>
  standingOf(events).counted.flatMap((event) => (isOf(event, "pictureTaken") ? [event.payload] : []));

function surveyOf({ sessions }: ItemNow): DoorItem["surveyed"] {
  const done = sessions.filter(({ act }) => act === "survey");
  const last = done.at(-1);
  if (last === undefined) return null;
  return {
    by: last.person,
    day: last.day,
    minutes: done.reduce((sum, { minutes }) => sum + minutes, 0),
  };
}
