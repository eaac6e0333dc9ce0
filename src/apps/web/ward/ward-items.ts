import type { Forbid } from "../../../core/care/care.ts";
import type { WardNote } from "../../../core/items/campaign.ts";
import { isOf, standingOf } from "../../../core/log/standing.ts";
import { eventsAbout, namesOn } from "../../../core/log/state.ts";
import { type WardStay, wardStayOf } from "../../../core/log/ward-stay.ts";
import { type Day, dayNumber, dayOfNumber, daysBetween } from "../../../core/units/day.ts";
import { type BagState, bagStateFromLog } from "../../../core/ward/bag-state.ts";
import { type BagTask, bagDue } from "../../../core/ward/bag-task.ts";
import { bagLogOf } from "../../../core/ward/item-in-ward.ts";
import { asksReadings, type DaysWait, type LeaveWard, leaveWard } from "../../../core/ward/leave-ward.ts";
import type { ItemNow } from "../log/item-now.ts";
import type { Now } from "../log/now.ts";

/** What is next for an item or a bag in the Ward. */
export type WardTask =
  | BagTask
  | "take-out-of-freezer"
  | "freeze"
  | "warm-up"
  | "watch"
  | "ask"
  | "answer-tests";

export interface When {
  readonly day: Day;
  /** Minutes after midnight. */
  readonly minute: number;
}

export interface WardDue {
  readonly task: WardTask;
  readonly from: When;
  readonly isDue: boolean;
}

/** One item in the Ward with all that its screens ask. */
export interface WardItem {
  readonly found: ItemNow;
  readonly stay: WardStay;
  readonly notes: readonly WardNote[];
  /** Null: in no bag, as far as was written. */
  readonly state: BagState | null;
  readonly waits: readonly DaysWait[];
  readonly leave: LeaveWard;
  readonly due: WardDue;
}

/** Hours since 1970 on the place's clock. */
export const hoursNow = ({ today, minute }: Pick<Now, "today" | "minute">): number =>
  dayNumber(today) * 24 + minute / 60;
export const hoursAt = ({ day, minute }: When): number => dayNumber(day) * 24 + minute / 60;
export function whenOf(hours: number): When {
  const minutes = Math.round(hours * 60);
  return { day: dayOfNumber(Math.floor(minutes / 1440)), minute: ((minutes % 1440) + 1440) % 1440 };
}

/** Everything that lies in the Ward now. */
export function wardItems(now: Now): readonly WardItem[] {
  const cuts = cutsIn(now);
  const ids = new Set(now.rows.flatMap(({ id, room }) => (room === "ward" ? [id] : [])));
  for (const bag of namesOn(now.state, "bag")) for (const id of lastItems(now, bag)) ids.add(id);
  return [...ids].sort().flatMap((id) => wardItem(now, id, cuts) ?? []);
}

export const cutsIn = ({ state }: Now) =>
  standingOf(eventsAbout(state, "campaign:")).counted.flatMap((event) =>
    isOf(event, "powerCut") ? [event.payload] : [],
  );

/** What the last entry about a bag says lies in it. */
function lastItems({ state }: Now, bag: string): readonly string[] {
  const events = standingOf(eventsAbout(state, `bag:${bag}`)).counted;
  const last = events.findLast((each) => isOf(each, "bagClosed", "bagOpened", "bagRead", "gelChanged"));
  return last && "items" in last.payload ? last.payload.items : [];
}

/** Null: it is not in the Ward. */
export function wardItem(now: Now, id: string, cuts = cutsIn(now)): WardItem | null {
  const stay = wardStayOf(standingOf(eventsAbout(now.state, `item:${id}`)), cuts);
  const found = stay && now.item(id);
  if (!found) return null;
  const notes = found.ward.filter(({ day }) => day >= stay.since);
  const at = hoursNow(now);
  const state = stay.bag === "" ? null : bagStateFromLog(bagLogOf(found.item, notes), at);
  const bans = bansOnLeaving(found);
  const waits = waitsOf(now, found, stay);
  const leave = leaveWard({
    bans,
    bag: state,
    waits,
    isInFreezer: stay.freezer !== null && stay.freezer.out === null,
    hoursSinceFreezer: stay.freezer?.out ? at - hoursAt(stay.freezer.out) : null,
    hasTestsOpen: found.care.whole.missingTests.length > 0,
  });
  return {
    found,
    stay,
    notes,
    state,
    waits,
    leave,
    due: dueOf(now, { stay, notes, state, waits, leave, bans, found }),
  };
}

function bansOnLeaving({ care }: ItemNow): Forbid[] {
  const all = [care.whole, ...care.parts.map((part) => part.care)];
  return all.flatMap((each) => each.banned.get("release_from_quarantine") ?? []);
}

/** Waits that days end, by what the item has or may have; lengths from the norms. */
function waitsOf({ tables: { norms }, today }: Now, { route }: ItemNow, stay: WardStay): DaysWait[] {
  const has = (condition: string): boolean => route.conditions.includes(condition);
  const wait = (kind: DaysWait["kind"], norm: string, since: Day, until: Day = today): DaysWait => {
    const band = norms.band(norm);
    return { kind, gone: Math.max(0, daysBetween(since, until)), least: band.typical, most: band.high };
  };
  const watch = (kind: DaysWait["kind"]): DaysWait => wait(kind, "d-frass", stay.since);
  const { freezer } = stay;
  return [
    ...(freezer ? [wait("freezing", "d-freeze20", freezer.countedFrom, freezer.out?.day)] : []),
    ...(!freezer && (has("insect_active") || has("insect_uncertain")) ? [watch("watch for insects")] : []),
    ...(has("mould_suspected") ? [watch("second look at mould")] : []),
  ];
}

interface Known extends Pick<WardItem, "found" | "stay" | "notes" | "state" | "waits" | "leave"> {
  readonly bans: readonly Forbid[];
}

/** Of several things that keep it, what people can do something about comes first. */
function dueOf(now: Now, { stay, notes, state, waits, leave, bans, found }: Known): WardDue {
  const at = hoursNow(now);
  const due = (task: WardTask, hours: number): WardDue => ({ task, from: whenOf(hours), isDue: hours <= at });
  if (leave.isEarned) return due("release", at);
  if (stay.freezer && !stay.freezer.out) {
    const end = (dayNumber(stay.freezer.countedFrom) + (waits[0]?.least ?? 0)) * 24;
    return due(end <= at ? "take-out-of-freezer" : "freeze", end);
  }
  const warms = leave.holds.find((hold) => hold.kind === "warming up");
  if (warms) return due("warm-up", at + warms.hoursLeft);
  if (asksReadings(bans) && !state?.release.earned) {
    if (state === null) return due("close", at);
    const log = bagLogOf(found.item, notes);
    const quiet = log.events.map(({ hours }) => hours).filter((hours) => hours <= at);
    const { task, fromHours } = bagDue(state, log.readings, quiet.length > 0 ? Math.max(...quiet) : null, at);
    return due(task, fromHours);
  }
  const open = waits.filter(({ gone, least }) => gone < least);
  if (open.length > 0)
    return due(
      "watch",
      (dayNumber(now.today) + Math.max(...open.map(({ gone, least }) => least - gone))) * 24,
    );
  return due(leave.holds.some(({ kind }) => kind === "tests") ? "answer-tests" : "ask", at);
}

/** What cannot wait first. */
const RANK: readonly WardTask[] = [
  ...([
    "take-gel-out-now",
    "too-damp-without-gel",
    "keep-dry-on",
    "close",
    "release",
    "take-out-of-freezer",
  ] as const),
  ...(["read", "read-and-change-gel", "answer-tests", "ask", "warm-up", "watch", "freeze"] as const),
];

/** Due before not due; then by how little it can wait, then by the hour. */
export const byUrgency = (a: WardDue, b: WardDue): number =>
  Number(b.isDue) - Number(a.isDue) ||
  (a.isDue ? RANK.indexOf(a.task) - RANK.indexOf(b.task) : 0) ||
  hoursAt(a.from) - hoursAt(b.from);
