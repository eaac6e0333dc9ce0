import type { Act, Campaign } from "../items/campaign.ts";
import type { Pace } from "../plan/pace.ts";
import type { Replan, ReplanChange } from "../plan/replan/changes.ts";
import type { WhyChanged } from "../plan/replan/why-changed.ts";
import type { Day } from "../units/day.ts";
import { sayDay } from "./dates.ts";

/* What became of the accepted plan, in sentences. Why a person may not do mould work is never among them. */

/** Where the names of people and stores are looked up. */
export type CampaignWords = Pick<Campaign, "people" | "stores">;

const LOCALE = "en-GB";
const day = (of: Day): string => sayDay(of, LOCALE, "short");
const NAMED = 5;
const list = (names: readonly string[]): string =>
  `${names.slice(0, NAMED).join(", ")}${names.length > NAMED ? ` and ${names.length - NAMED} more` : ""}`;
const count = (n: number, word: string): string => `${n} ${word}${n === 1 ? "" : "s"}`;
const DONE: Readonly<Record<Act, string>> = {
  survey: "survey",
  admit: "admission to the Ward",
  release: "release from the Ward",
  covers: "pictures of the covers",
  wrap: "wrapping",
  clean: "cleaning",
  image: "photographs",
  box: "boxing",
};

export function sayWhyChanged(why: WhyChanged, { people, stores }: CampaignWords): string {
  const name = (code: string): string => people.find((each) => each.code === code)?.name ?? code;
  switch (why.why) {
    case "left the team":
      return "whoever was to do it is no longer in the team";
    case "away":
      return `${name(why.person)} is not there on ${day(why.day)}`;
    case "clean work":
      return `${name(why.person)} is on clean work on ${day(why.day)}`;
    case "enough mould days":
      return `${name(why.person)} has had the mould days a week allows`;
    case "behind":
      return "an act before it is not finished yet";
    case "ward":
      return "the bag is not expected to read dry in time";
    case "arrives later":
      return `it comes in only by ${day(why.day)}`;
    case "closed":
      return `no ${why.station} is open on ${day(why.day)}`;
    case "store":
      return `${stores.find(({ id }) => id === why.store)?.name ?? why.store}: not enough there by ${day(why.day)}`;
    case "set aside":
      return "a rule sets the item aside until somebody outside the team answers";
    case "at the Door":
      return "a must-ask test has no answer";
    case "not needed":
      return "the item does not need it any more";
    case "day is full":
      return "the day holds less than was told: work takes longer, or what fell behind comes first";
    case "there was room":
      return "there is room with somebody else or sooner";
    case "gains more":
      return "the change saves more waiting days than it costs";
  }
}

export const sayReplanHead = (campaign: string, { planFrom, acceptedFrom }: Replan): string =>
  `${campaign}: planned anew for the morning of ${sayDay(planFrom, LOCALE, "full")}, from the plan of ${sayDay(acceptedFrom, LOCALE, "long")}.`;

/** How much of what was told stands. */
export function sayKept({ kept, moved, until, heldDays, planFrom }: Replan): string {
  const all = kept + moved;
  if (all === 0) return `The accepted plan told nothing for the days from ${day(planFrom)} to ${day(until)}.`;
  const share = Math.round((100 * kept) / all);
  const held =
    heldDays === 0
      ? " A fresh plan gained more than keeping to it."
      : heldDays < 10
        ? ` Held for ${count(heldDays, "day")} only: after them a change gained more than it costs.`
        : "";
  return `${kept} of ${count(all, "act")} told for the days till ${day(until)} stand as they were (${share} %): same person, same day.${held}`;
}

/** Each reason with the items it moves, most first. */
export function sayMoved({ changes }: Replan, words: CampaignWords): string[] {
  const groups = new Map<string, string[]>();
  for (const each of changes) {
    if (!("item" in each)) continue;
    const why = sayWhyChanged(each.why, words);
    groups.set(why, [...(groups.get(why) ?? []), each.item]);
  }
  return [...groups]
    .sort((a, b) => b[1].length - a[1].length)
    .map(([why, items]) => `${count(items.length, "act")}, as ${why}: ${list([...new Set(items)])}.`);
}

/** People whose days near mould are others than told. */
export function sayNearDays({ changes }: Replan, words: CampaignWords): string[] {
  const own = changes.filter((each): each is Extract<ReplanChange, { person: string }> => "person" in each);
  const name = (code: string): string => words.people.find((each) => each.code === code)?.name ?? code;
  return own.map((each) => {
    const known = each.why.why === "away" || each.why.why === "clean work";
    const why = known ? "" : `; ${sayWhyChanged(each.why, words)}`;
    return `${name(each.person)}, ${day(each.day)}: ${each.to}, not ${each.from} as told${why}.`;
  });
}

export function sayDueDays({ dueKept, dueBroken }: Replan): string {
  if (dueKept + dueBroken.length === 0) return "No due day was told.";
  if (dueBroken.length === 0) return `Every due day that was told stands (${dueKept}).`;
  const lines = dueBroken
    .slice(0, NAMED)
    .map(
      ({ item, due, boxed }) =>
        `${item} was told for ${day(due)}, now ${boxed ? day(boxed) : "not by the end"}`,
    );
  return `${count(dueBroken.length, "due day")} can no longer be met; tell the owners today: ${lines.join("; ")}${dueBroken.length > NAMED ? " …" : "."}`;
}

/** So far from the norm a pace is worth a word. */
const WORTH_A_WORD = 0.05;
const PACES_NAMED = 3;

/** The team's own rates that differ most from the norms. */
export function sayPaces({ paces }: Replan): string {
  const far = paces
    .filter(({ factor }) => Math.abs(Math.log(factor)) >= WORTH_A_WORD)
    .sort(
      (a, b) => weightOf(b) - weightOf(a) || a.act.localeCompare(b.act) || a.format.localeCompare(b.format),
    );
  if (paces.length === 0) return "Nothing measured yet: the norms hold.";
  if (far.length === 0) return `As the norms have it: ${count(paces.length, "rate")} measured, none 5 % off.`;
  return `${far.slice(0, PACES_NAMED).map(sayPace).join("; ")}${far.length > PACES_NAMED ? `; ${far.length - PACES_NAMED} more` : ""}.`;
}

const weightOf = ({ count: n, factor }: Pace): number => n * Math.abs(Math.log(factor));

function sayPace({ act, format, exposed, count: n, measured, factor }: Pace): string {
  const share = Math.round(Math.abs(factor - 1) * 100);
  const times = measured.toFixed(2);
  return `${DONE[act]} of ${format.replaceAll("_", " ")}${exposed ? " near mould" : ""} ${share} % ${factor > 1 ? "longer" : "shorter"} than the norm (${n} measured, × ${times})`;
}

/** What a plan without regard to the accepted one would have been; what is worse here is said. */
export function sayAfresh({ now, afresh }: Replan): string {
  const worse = [
    ...(now.mustLeft > afresh.mustLeft
      ? [`${count(now.mustLeft - afresh.mustLeft, "must-do item")} more is left over`]
      : []),
    ...(now.lastBox && afresh.lastBox && now.lastBox > afresh.lastBox
      ? [`the last box is shut on ${day(now.lastBox)}, not ${day(afresh.lastBox)}`]
      : []),
  ];
  const dearer = afresh.cost > 0 ? (100 * (now.cost - afresh.cost)) / afresh.cost : 0;
  const waits = `${Math.abs(dearer).toFixed(1)} % ${dearer < 0 ? "longer" : "shorter"} waits`;
  return `A fresh plan would change ${count(afresh.moved, "act")} and gives ${waits}${worse.length > 0 ? `; to keep what was told, ${worse.join(" and ")}` : "; finish and must-do items are no worse here"}.`;
}

export const REPLAN_LABELS = {
  kept: "Kept",
  moved: "Moved",
  near: "Near mould",
  due: "Due days",
  arrived: "New",
  paces: "Pace",
  afresh: "Afresh",
} as const;

export const sayArrived = ({ arrived }: Replan): string =>
  arrived.length === 0 ? "" : `${count(arrived.length, "item")} since: ${list(arrived)}.`;

export const REPLAN_HELP = `leafward replan <folder>: a plan for a new morning, as near to the accepted one as it pays

  --from plan.json       the accepted plan (default: the last one written before this morning in out/)
  --today yyyy-mm-dd     the morning to plan for (default: planFrom of campaign.json, or its start)
  --out <folder>         where plan, papers and changes.csv go (default: out/<campaign>/replan-<day>)
  --sheet A4|Letter      paper size
  --cards soon|all       bench cards for the coming days, or for every item
  --json                 what was kept and moved as JSON, every change with its reason; writes no papers

Reads what was done: sessions, bags, stocks, who is there. What was told for the next ten days is kept,
person and day, unless it cannot be, or unless a change saves more waiting days than it costs.

Exit codes: 0 well; 1 something must be mended, the rest was done; 2 it could not be done.`;

export const REPLAN_REFUSALS = {
  noPlan:
    "No accepted plan was found. Make one with npx leafward plan, or name one: npx leafward replan <folder> --from plan.json",
  unread: (path: string): string =>
    `${path} is no plan of Leafward's: expected a plan.json as npx leafward plan writes it.`,
  other: (path: string, got: string, expected: string): string =>
    `${path} is the plan of "${got}", the folder is "${expected}". Name the plan of this campaign with --from.`,
  later: (path: string, from: Day, today: Day): string =>
    `${path} was made for ${from}, after the morning to plan for, ${today}. Give a later --today, or an earlier plan.`,
} as const;
