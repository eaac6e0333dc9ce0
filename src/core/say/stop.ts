import type { NotSafe, StopItem, StopLine, StopPerson, StopPlan, StopStore } from "../plan/stop/stop-plan.ts";
import type { Day } from "../units/day.ts";
import { sayDo } from "./actions.ts";
import { sayAct } from "./conditions.ts";
import { sayDay } from "./dates.ts";

/* The answer to "we stop on that day", in sentences. */

const LOCALE = "en-GB";
const day = (of: Day): string => sayDay(of, LOCALE, "short");
const count = (n: number): string => n.toLocaleString(LOCALE);
const items = (n: number): string => `${count(n)} ${n === 1 ? "item" : "items"}`;
const NAMED = 6;
const names = (list: readonly Pick<StopItem, "item">[]): string =>
  `${list
    .slice(0, NAMED)
    .map(({ item }) => item)
    .join(", ")}${list.length > NAMED ? ` and ${count(list.length - NAMED)} more` : ""}`;
const hours = (minutes: number): string =>
  minutes < 90 ? `${Math.round(minutes)} min` : `${Number((minutes / 60).toFixed(1))} h`;
const sum = (list: readonly StopItem[], of: (item: StopItem) => number): number =>
  list.reduce((all, each) => all + of(each), 0);

const WHY: Readonly<Record<NotSafe, string>> = {
  "outside help": "this team may not go near; clear and shut the room and call the fire service now",
  "no person": "nobody left may do this work; ask for someone trained before the stop",
  "no store":
    "what it is brought to rest with is not there and no order comes in time; find a substitute by the list of stores",
  "no hours": "the hours left do not reach; put off the stop, or get help for these first",
  "still drying": "it is wet, and drying can outlast the stop",
};

/** What is done with wet items that cannot dry in time. */
const dryingRemedy = (list: readonly StopItem[]): string =>
  list.every(({ mayFreeze }) => mayFreeze)
    ? "lay them out on the first day, and freeze what is not dry by the stop"
    : "lay them out on the first day, and name somebody who goes on reading and changing them after the stop; what may not be frozen: ask a conservator today";

const sayWhy = (why: NotSafe, list: readonly StopItem[]): string =>
  why === "still drying" ? `${WHY[why]}: ${dryingRemedy(list)}` : WHY[why];

/** Groups in the order of their first item. */
function grouped<K>(list: readonly StopItem[], key: (item: StopItem) => K): [K, StopItem[]][] {
  const groups = new Map<K, StopItem[]>();
  for (const each of list) groups.set(key(each), [...(groups.get(key(each)) ?? []), each]);
  return [...groups];
}

/** What cannot be made safe stands first, then by when the rest is. */
export function sayStopVerdict(plan: StopPlan): string {
  const troubled = plan.items.filter(({ why }) => why !== null);
  const rest = plan.safeBy
    ? `Everything ${troubled.length > 0 ? "else " : ""}can lie safely by ${day(plan.safeBy)}.`
    : troubled.length > 0
      ? "Everything else lies safely already."
      : "Everything lies safely already.";
  if (troubled.length === 0) return rest;
  const words = grouped(troubled, ({ why }) => why as NotSafe).map(
    ([why, list]) => `${names(list)} (${sayWhy(why, list)})`,
  );
  return `${items(troubled.length)} cannot be made safe in time: ${words.join("; ")}. ${rest}`;
}

/** What the answer reckons with. */
export const sayStopUnderstood = (plan: StopPlan): string =>
  `${plan.campaign}: it is the morning of ${day(plan.from)}, the last day of work is ${day(plan.stop)}; ${count(plan.workingDays)} working ${plan.workingDays === 1 ? "day" : "days"} left.`;

/** What to do, in order: bring to rest, look, finish, begin, leave, close down. */
export function sayStopTodo(plan: StopPlan): string[] {
  const toRest = plan.items.filter(({ safeBy }) => safeBy !== null);
  const atOnce = plan.items.filter(({ why }) => why === "outside help" || why === "still drying");
  const finish = plan.items.filter(({ verdict }) => verdict === "finish");
  const start = plan.items.filter(({ verdict }) => verdict === "start");
  return [
    ...grouped([...atOnce, ...toRest], ({ rest }) => rest.says).map(([says, list]) =>
      restLine(plan, says, list),
    ),
    ...lookLines(plan),
    ...(finish.length > 0
      ? [
          `Finish ${items(finish.length)} begun, to the box: ${names(finish)}; ${hours(sum(finish, (each) => each.boxMinutes))}.`,
        ]
      : []),
    start.length > 0
      ? `Begin only ${items(start.length)}, each boxed by the stop (${count(start.filter(({ must }) => must).length)} must-do): ${names(start)}; ${hours(sum(start, (each) => each.boxMinutes))}. Begin nothing after ${day(plan.lastStart ?? plan.stop)}, and nothing else before.`
      : plan.items.some(({ why }) => why === "no hours")
        ? "Begin and finish nothing while hours are missing to make items safe."
        : "Begin nothing: no item would reach its box by the stop.",
    ...leaveLines(plan),
    closeLine(plan),
  ];
}

function restLine({ lines }: StopPlan, says: string, list: readonly StopItem[]): string {
  const ids = new Set(list.map(({ item }) => item));
  const last = lines.filter(({ item, what }) => ids.has(item) && /safe|put/.test(what)).at(-1)?.day;
  const wear = wornWords([...new Set(list.flatMap(({ protection }) => protection))]);
  const near = list.some(({ exposedMinutes }) => exposedMinutes > 0) ? ", on the mould account" : "";
  const people = [...new Set(list.flatMap(({ people: codes }) => codes))].join(", ");
  const where = `${last ? `By ${day(last)}` : "Now"}, ${items(list.length)}${list.length > 1 ? ", each" : ""} ${says}: ${names(list)}.`;
  if (people === "") return where;
  return `${where} ${hours(sum(list, (each) => each.safeMinutes))}${near}; ${people}.${wear === "" ? "" : ` Wear: ${wear}.`}`;
}

/** What a stricter piece covers need not be named with it. */
const COVERS: Readonly<Record<string, readonly string[]>> = {
  ppe_mould_heavy: ["ppe_mould_base", "ppe_mask", "gloves"],
  ppe_mould_base: ["ppe_mask", "gloves"],
  gloves_nitrile: ["gloves"],
  gloves_double: ["gloves"],
};
const wornWords = (wear: readonly string[]): string =>
  wear
    .filter((each) => !wear.some((other) => COVERS[other]?.includes(each)))
    .map((each) => sayDo(each))
    .join("; ");

function lookLines({ looked, notLooked }: StopPlan): string[] {
  const list = (ids: readonly string[]): string => names(ids.map((item) => ({ item })));
  return [
    ...(looked.length > 0
      ? [
          `Answer the must-ask tests of ${items(looked.length)} at the Door, as what nobody has tested may be damp: ${list(looked)}.`,
        ]
      : []),
    ...(notLooked.length > 0
      ? [
          `For the tests of ${items(notLooked.length)} at the Door no hours are left; say so in the handover: ${list(notLooked)}.`,
        ]
      : []),
  ];
}

function leaveLines({ items: all }: StopPlan): string[] {
  const left = all.filter(({ verdict }) => verdict === "leave");
  const later = all.filter(({ verdict }) => verdict === "comes later");
  return [
    ...(left.length > 0 ? [`Leave ${items(left.length)} shut where they lie.`] : []),
    ...(later.length > 0 ? [`Do not fetch the ${items(later.length)} that come after the stop.`] : []),
  ];
}

const closeLine = ({ lines, stop }: StopPlan): string => {
  const minutes = lines
    .filter(({ what }) => what === "close down")
    .reduce((all, each) => all + each.minutes, 0);
  return minutes > 0
    ? `Last: wash the tools a day before, so that they are bone dry; on ${day(stop)} or the last working day wipe every station, carry the waste out, write the handover, give back the keys; ${hours(minutes)} are kept free for it.`
    : "Nobody is there any more to close down: write the handover now.";
};

/** After the stop somebody still has to look. */
export function sayAfterwards(plan: StopPlan): string[] {
  const read = plan.items.filter(({ needsReader }) => needsReader);
  return [
    ...(read.length > 0
      ? [
          `${items(read.length)} not shown dry by the stop: they rest only while somebody reads the bags every third day and changes the gel (${names(read)}). Put a name in the handover.`,
        ]
      : []),
    ...(plan.lookBacks > 0
      ? [`${items(plan.lookBacks)} boxed after growth or insects: look at them again 14 and 30 days later.`]
      : []),
    ...(plan.bagLitres > plan.wardLitres
      ? [
          `The bags left fill about ${count(Math.round(plan.bagLitres))} L; the Ward holds ${count(plan.wardLitres)} L. The rest lies bagged and apart, off the floor and away from the wall.`,
        ]
      : []),
  ];
}

export const STOP_LABELS = { people: "People", stores: "Stores", boxed: "Boxed by then" } as const;

export const sayStopPerson = ({ name, usedMinutes, presentMinutes, exposedDays }: StopPerson): string =>
  `${name}: ${hours(usedMinutes)} of ${hours(presentMinutes)} there${exposedDays > 0 ? `, ${exposedDays} ${exposedDays === 1 ? "day" : "days"} near mould` : ""}`;

const amount = (n: number): string => Number(n < 10 ? n.toFixed(1) : n.toFixed(0)).toLocaleString(LOCALE);
export const sayStopStore = ({ store, use, needed, there }: StopStore): string =>
  store
    ? `${store.name}: ${amount(needed)} ${store.unit} needed, ${amount(there)} there${needed > there + 1e-6 ? `: ${amount(needed - there)} short, order or find a substitute today` : ""}`
    : `${use}: ${amount(needed)} needed, none on the list of stores`;

export const sayStopBoxed = ({ items: all }: StopPlan): string => {
  const of = (verdict: StopItem["verdict"]): number => all.filter((each) => each.verdict === verdict).length;
  const boxed = of("done") + of("finish") + of("start");
  return `${count(boxed)} of ${count(all.length)} items: ${count(of("done"))} before, ${count(of("finish"))} finished, ${count(of("start"))} begun and finished`;
};

/** A line of the day-by-day list. */
export const sayStopLine = ({ person, item, what, minutes, exposed }: StopLine): string =>
  `${person}  ${item === "" ? "" : `${item}  `}${whatWords(what)}, ${Math.round(minutes)} min${exposed ? ", near mould" : ""}`;
const OWN: Readonly<Record<string, string>> = {
  "make safe": "bring to rest",
  look: "answer the must-ask tests",
  "put back": "shut, put back, write its row of the handover",
  "close down": "close down",
};
const whatWords = (what: StopLine["what"]): string =>
  OWN[what] ?? sayAct(what as Exclude<StopLine["what"], "make safe" | "look" | "put back" | "close down">);

export const STOP_CAUTIONS = {
  "lies-so":
    "What already lies as it should needs nothing more: the survey does not say how an item lies, so it is counted in.",
  "longest-wait":
    "Waits in the Ward are taken at their longest; a release is still earned by readings, never by a date.",
  "drop-from-below":
    "If a day is lost, drop from the bottom: begin less, then finish less, never make less safe.",
  "stop-and-ask":
    "Poison signs, droppings, decaying film, lifting images: stop, shut, mark, ask. Nobody works near mould alone.",
  "local-rules": "Follow local rules and licensed practice.",
} as const;

export const STOP_HELP = `leafward stop <folder> <day>: we stop on that day; what to make safe, finish, begin and leave

  <day>                  last day of work, such as 2026-06-19
  --today yyyy-mm-dd     the morning to reckon from (default: planFrom of campaign.json, or its start)
  --days                 every line, by day and person
  --json                 the same answer as JSON, item by item

Exit codes: 0 everything can lie safely in time; 1 something cannot; 2 it could not be done.`;

export const STOP_REFUSALS = {
  arguments: "Give a campaign folder and the last day of work: npx leafward stop demo/saltmere 2026-06-19",
  day: (what: string, got: string): string => `${what} ${got}: expected a day such as 2026-06-19.`,
  past: (stop: string, from: string): string =>
    `The stop, ${stop}, lies before the morning reckoned from, ${from}. Give a later day, or an earlier --today.`,
  beyond: (stop: string, end: string): string =>
    `The stop, ${stop}, lies after the end of the campaign, ${end}. For that day ask: npx leafward plan.`,
} as const;
