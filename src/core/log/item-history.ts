import type { WardNote } from "../items/campaign.ts";
import type { Facts } from "../items/facts.ts";
import { type Day, dayNumber } from "../units/day.ts";
import { placeIn, sessionsIn, wardNotesIn } from "./item-now.ts";
import type { Filed, Payload } from "./kinds.ts";
import { isOf, type Matter, type Standing } from "./standing.ts";

/** What the log alone can tell of an item: how long, how often. */
export interface ItemHistory {
  /** As the rules name them under `state`: hours_wet, in_freezer, power_cut_hours, sealed_no_desiccant_hours. Only what is known. */
  readonly state: Facts;
  /** Days since it came into the Ward; null: not in it, as far as was written. */
  readonly wardDays: number | null;
  /** How often it was taken in hand: acts, weighings, moves. */
  readonly timesHeld: number;
}

export function historyOf(
  now: Standing,
  item: string,
  cuts: readonly Payload<"powerCut">[],
  today: Day,
): ItemHistory {
  const notes = wardNotesIn(now, item).map(({ value }) => value);
  return {
    state: historyFacts(now, notes, cuts, today),
    wardDays: wardDays(now, notes, today),
    timesHeld:
      sessionsIn(now).length + now.counted.filter((each) => isOf(each, "itemMoved", "bagWeighed")).length,
  };
}

/** What the rules ask under `state`. Hours are counted to the end of today, and from the start of a day whose time nobody wrote: nothing is
 *  taken for fresher than it is.   @param notes what was written about the item in its bag */
export function historyFacts(
  now: Standing,
  notes: readonly WardNote[],
  cuts: readonly Payload<"powerCut">[],
  today: Day,
): Facts {
  const inFreezer = placeIn(now)?.freezer;
  const state = {
    hours_wet: hoursWet(now, today),
    sealed_no_desiccant_hours: hoursSealed(notes, today),
    in_freezer: inFreezer === undefined ? undefined : inFreezer ? "yes" : "no",
    power_cut_hours: inFreezer ? longestCut(cuts, frozenSince(now), today) : undefined,
  };
  return Object.fromEntries(
    Object.entries(state).flatMap(([name, fact]) => (fact === undefined ? [] : [[name, fact]])),
  );
}

interface At {
  readonly day: Day;
  readonly minute?: number;
}
const hourOf = ({ day, minute = 0 }: At): number => dayNumber(day) * 24 + minute / 60;
const hoursUntilTonight = (from: At, today: Day): number =>
  Math.max(0, Math.ceil((dayNumber(today) + 1) * 24 - hourOf(from)));

function hoursWet({ matters }: Standing, today: Day): number | undefined {
  const hours = [...matters.values()].flatMap(wetSince).map((since) => hoursUntilTonight(since, today));
  return hours.length === 0 ? undefined : Math.max(...hours);
}

/** The first of the unbroken answers that say, or leave open, that it is wet. */
function wetSince({ standing, replaced }: Matter): At[] {
  if (!standing.some((each) => isWetTest(each) && each.payload.answer !== "no")) return [];
  const dated = [...replaced, ...standing].filter(isWetTest).flatMap(({ kind, payload }) => {
    const minute = kind === "findingRecorded" ? (payload.minute ?? 0) : 0;
    return payload.day === undefined ? [] : [{ answer: payload.answer, day: payload.day, minute }];
  });
  dated.sort((a, b) => hourOf(a) - hourOf(b));
  return dated.slice(dated.findLastIndex(({ answer }) => answer === "no") + 1).slice(0, 1);
}

type WetAnswer = Extract<Filed, { kind: "findingRecorded" | "disagreementSettled" }>;
const isWetTest = (event: Filed): event is WetAnswer =>
  isOf(event, "findingRecorded", "disagreementSettled") && event.payload.test === "wet";

/** Since the bag was shut or the last gel taken out, where none has been put in since. */
function hoursSealed(notes: readonly WardNote[], today: Day): number | undefined {
  let since: WardNote | null = null;
  let hasGel = false;
  for (const note of [...notes].sort((a, b) => hourOf(a) - hourOf(b))) {
    if (note.what === "opened") since = null;
    if (note.what === "gel in") hasGel = true;
    if (note.what === "gel out") hasGel = false;
    if (note.what === "closed" || (note.what === "gel out" && since !== null)) since = note;
  }
  return since === null || hasGel ? undefined : hoursUntilTonight(since, today);
}

/** The day it last went into the freezer and has not left since. */
function frozenSince({ counted }: Standing): Day | null {
  const moves = counted.filter((each) => isOf(each, "itemMoved"));
  const out = moves.findLastIndex(({ payload }) => payload.freezer !== true);
  return moves[out + 1]?.payload.day ?? null;
}

/** The most hours without power on one day since then; cuts of one day are added. */
function longestCut(cuts: readonly Payload<"powerCut">[], since: Day | null, today: Day): number | undefined {
  const byDay = new Map<Day, number>();
  for (const { day, hours } of cuts)
    if (since !== null && since <= day && day <= today) byDay.set(day, (byDay.get(day) ?? 0) + hours);
  return byDay.size === 0 ? undefined : Math.max(...byDay.values());
}

function wardDays(now: Standing, notes: readonly WardNote[], today: Day): number | null {
  if (now.counted.some((each) => isOf(each, "itemReleased"))) return null;
  const place = placeIn(now);
  const first = notes.map(({ day }) => day).sort()[0];
  const since = place?.room === "Ward" ? place.day : place === null ? first : undefined;
  return since === undefined ? null : Math.max(0, dayNumber(today) - dayNumber(since));
}
