import type { Step } from "../../../core/care/care.ts";
import type { Act } from "../../../core/items/campaign.ts";
import { isOf, standingOf } from "../../../core/log/standing.ts";
import { sayAct, sayDirt } from "../../../core/say/conditions.ts";
import { benchCardView } from "../../../edge/papers/bench-card-view.ts";
import type { BenchStep } from "../../../edge/papers/views.ts";
import type { ItemNow } from "../log/item-now.ts";
import type { Now } from "../log/now.ts";
import type { RoomName } from "../walls/where.ts";
import { type StationOpen, stationsFor, wipeMinutes } from "./stations-open.ts";

/** How an item stands to a room's work. */
export type Standing =
  | { readonly kind: "here" }
  /** Its next act is done elsewhere. */
  | { readonly kind: "elsewhere"; readonly act: Act; readonly room: RoomName }
  | { readonly kind: "set aside"; readonly why: readonly string[] }
  | { readonly kind: "at the Door" }
  | { readonly kind: "done" };

/** One item as the room works on it: the step that comes now, and all its card says. */
export interface WorkCard {
  readonly id: string;
  readonly title: string;
  readonly standing: Standing;
  /** The step that comes now; null: none here. */
  readonly step: WorkStep | null;
  readonly format: string;
  readonly where: string;
  readonly conditions: readonly string[];
  readonly parts: readonly string[];
  readonly signs: readonly string[];
  readonly never: readonly string[];
  readonly notYet: readonly { readonly action: string; readonly until: string }[];
  readonly stops: readonly string[];
  readonly askWho: readonly string[];
  readonly lookBefore: readonly string[];
  readonly lookAfter: readonly string[];
  readonly custodianRule: string;
  /** Acts after this one. */
  readonly then: readonly string[];
  readonly pictures: readonly { readonly picture: string; readonly shot: string; readonly part: string }[];
}

export interface WorkStep {
  readonly act: Act;
  readonly exposed: boolean;
  /** What it leaves; empty: nothing worth saying. */
  readonly dirt: string;
  readonly usualMinutes: number;
  readonly wipeMinutes: number;
  /** The body first, then each part that is done another way. */
  readonly rows: readonly BenchStep[];
  readonly stations: readonly StationOpen[];
}

/** An item at its next step; null: nobody has listed it.   @param acts of the room */
export function workCard(
  now: Now,
  id: string,
  room: "bench" | "camera",
  acts: readonly Act[],
): WorkCard | null {
  const found = now.item(id);
  if (found === null) return null;
  const [next] = found.route.steps;
  const step = found.route.destiny === "route" && next && acts.includes(next.act) ? next : null;
  const card = cardOf(now, found, step);
  return {
    ...{ id, title: card.title, format: card.format, where: card.where, conditions: card.conditions },
    ...{ parts: card.parts, signs: card.signs, never: card.never, notYet: card.notYet, stops: card.stops },
    ...{ askWho: card.askWho, lookBefore: card.lookBefore, lookAfter: card.lookAfter },
    custodianRule: card.custodianRule,
    standing: placeOf(found, step),
    step:
      step === null
        ? null
        : {
            ...{ act: step.act, exposed: step.exposed, rows: card.steps },
            dirt: step.dirt > 0 ? sayDirt(step.dirt) : "",
            usualMinutes: Math.max(1, Math.round(step.minutes.typical)),
            wipeMinutes: wipeMinutes(now, room),
            stations: stationsFor(now, id, step),
          },
    then: found.route.steps.slice(1).map(({ act }) => sayAct(act)),
    pictures: picturesOf(found),
  };
}

/** The card, its steps the one that comes now. */
function cardOf({ house, tables: { book, norms } }: Now, { care, route }: ItemNow, step: Step | null) {
  const narrowed = { ...route, steps: step === null ? [] : [step] };
  return benchCardView(care, narrowed, {
    campaign: house.name,
    endings: book.endings,
    families: book.families,
    storeWords: (use) =>
      norms.unit(use) === "pc" ? norms.what(use) : `${norms.unit(use)} ${norms.what(use)}`,
  });
}

const ROOM_OF: Readonly<Record<Step["room"], RoomName>> = {
  Door: "door",
  Ward: "ward",
  Bench: "bench",
  Camera: "camera",
  Shelf: "shelf",
};

function placeOf({ route }: ItemNow, step: Step | null): Standing {
  if (step !== null) return { kind: "here" };
  if (route.destiny === "set aside")
    return { kind: "set aside", why: route.stoppedBy.map(({ text }) => text) };
  if (route.destiny === "at the Door") return { kind: "at the Door" };
  const [next] = route.steps;
  return route.destiny === "done" || next === undefined
    ? { kind: "done" }
    : { kind: "elsewhere", act: next.act, room: ROOM_OF[next.room] };
}

/** Pictures kept with it that count, in the order of the log. */
const picturesOf = ({ events }: ItemNow): WorkCard["pictures"] =>
  standingOf(events).counted.flatMap((event) => (isOf(event, "pictureTaken") ? [event.payload] : []));
