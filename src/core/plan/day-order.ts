import { ACTS, type Act } from "../items/campaign.ts";
import { leastSetups, MOST_JOBS } from "./least-setups.ts";

/** From this dirt on, what was worked at is wiped down before cleaner work (rule S01): red rot, dormant mould, poison. */
export const WIPE_FROM = 2;

/** One piece of work of one person, or at one station, on one day. */
export interface DayPiece {
  readonly item: string;
  readonly act: Act;
  /** Where; empty when it needs no station. */
  readonly station: string;
  /** What it leaves behind: 0 clean, 1 dusty, 2 red rot, 3 dormant mould, 4 poison. */
  readonly dirt: 0 | 1 | 2 | 3 | 4;
  /** Done in protection, on the mould account. */
  readonly exposed: boolean;
  /** All its minutes, the change-over after it among them. */
  readonly minutes: number;
  /** Of those, minutes of the wipe-down right after it (sheet off, wipe, fresh gloves); 0 for clean work. */
  readonly changeOver: number;
  /** Day it is wanted by, counted from any day; null: no day. */
  readonly due: number | null;
}

/** What must come before what. The acts of one item follow the rooms without being told. */
export interface DayLinks {
  /** Sets of items of which every cover is pictured before anything else is done to any of them. */
  readonly coversFirst?: readonly (readonly string[])[];
  /** `[first, then]`, as places in the list of pieces: somewhere before, not at once before. */
  readonly mustFollow?: readonly (readonly [number, number])[];
}

/** The order of a day and what it costs; the lower, the better, the first figure first. */
export interface DayOrder {
  /** Places in the list of pieces as it was given. */
  readonly order: readonly number[];
  /** Wipe-downs before cleaner work or going home, and ends of work in protection. */
  readonly wipeDowns: number;
  /** Times the next piece is cleaner than the one before. */
  readonly stepsBack: number;
  /** Times the station changes. */
  readonly moves: number;
}

/**
 * The day from clean to dirty (rule S09): fewest wipe-downs, then fewest steps back, then fewest changes of station, then in order of due.
 * Up to 13 pieces all four are least, the fourth being the pairs that stand against their due days. Above, the first three are least
 * and each run of like pieces is as early, as full and as much in order of due as what must follow allows.
 * Ties go by item and act, so that the same pieces give the same day.   Throws when what must follow closes a circle.
 */
export function dayOrder(pieces: readonly DayPiece[], links: DayLinks = {}): DayOrder {
  const sorted = pieces
    .map((_, at) => at)
    .sort((a, b) => byDue(pieces[a] as DayPiece, pieces[b] as DayPiece) || a - b);
  const placeOf = new Map(sorted.map((at, place) => [at, place]));
  const list = sorted.map((at) => pieces[at] as DayPiece);
  const pairs = pairsOf(pieces, links).map(
    ([first, then]) => [placeOf.get(first) ?? -1, placeOf.get(then) ?? -1] as const,
  );
  const places = list.length <= MOST_JOBS ? exactOrder(list, pairs) : orderByRuns(list, pairs);
  if (!places) throw new Error(circleOf(list, pairs));
  return {
    order: places.map((place) => sorted[place] as number),
    ...costOfOrder(places.map((place) => list[place] as DayPiece)),
  };
}

/** Whether a wipe-down, or the end of work in protection, stands between two pieces; `null` is the end of the day. */
export const wipesBetween = (left: DayPiece, next: DayPiece | null): boolean =>
  (left.exposed && !next?.exposed) || (left.dirt >= WIPE_FROM && left.dirt > (next?.dirt ?? 0));

/** What an order costs, counted along it. */
export function costOfOrder(pieces: readonly DayPiece[]): Omit<DayOrder, "order"> {
  const count = (counts: (left: DayPiece, next: DayPiece | null) => boolean): number =>
    pieces.filter((piece, at) => counts(piece, pieces[at + 1] ?? null)).length;
  return { wipeDowns: count(wipesBetween), stepsBack: count(stepsBack), moves: count(moves) };
}

const stepsBack = (left: DayPiece, next: DayPiece | null): boolean => next !== null && next.dirt < left.dirt;
const moves = (left: DayPiece, next: DayPiece | null): boolean =>
  next !== null && next.station !== left.station;

/** More of one count than a day can hold: counts are packed into one whole number, the first weighing most. */
const BASE = 1024;
const stepCost = (left: DayPiece, next: DayPiece | null): number =>
  (Number(wipesBetween(left, next)) * BASE + Number(stepsBack(left, next))) * BASE +
  Number(moves(left, next));

const dueOf = (piece: DayPiece): number => piece.due ?? Number.POSITIVE_INFINITY;
const compare = <T extends number | string>(a: T, b: T): number => (a < b ? -1 : a > b ? 1 : 0);
const byDue = (a: DayPiece, b: DayPiece): number =>
  a.dirt - b.dirt ||
  Number(a.exposed) - Number(b.exposed) ||
  compare(dueOf(a), dueOf(b)) ||
  compare(a.item, b.item) ||
  ACTS.indexOf(a.act) - ACTS.indexOf(b.act);

type Pairs = readonly (readonly [number, number])[];

/** Everything that must follow: the acts of an item in the order of the rooms, covers of a set first, and what was given. */
function pairsOf(pieces: readonly DayPiece[], links: DayLinks): Pairs {
  const pairs: (readonly [number, number])[] = [...(links.mustFollow ?? [])];
  const sets = (links.coversFirst ?? []).map((items) => new Set(items));
  pieces.forEach((first, a) => {
    pieces.forEach((then, b) => {
      const ownAct = first.item === then.item && ACTS.indexOf(first.act) < ACTS.indexOf(then.act);
      const cover =
        first.act === "covers" &&
        ACTS.indexOf(then.act) > ACTS.indexOf("covers") &&
        sets.some((items) => items.has(first.item) && items.has(then.item));
      if (ownAct || cover) pairs.push([a, b]);
    });
  });
  return pairs;
}

function exactOrder(list: readonly DayPiece[], mustFollow: Pairs): readonly number[] | null {
  const piece = (at: number): DayPiece => list[at] as DayPiece;
  const laterDue = list.map((each) =>
    list.reduce((set, other, at) => (dueOf(other) > dueOf(each) ? set | (1 << at) : set), 0),
  );
  const best = leastSetups({
    count: list.length,
    setup: (from, to) => (from === null ? 0 : stepCost(piece(from), to === null ? null : piece(to)) * BASE),
    placing: (done, at) => bitsIn(done & (laterDue[at] ?? 0)),
    mustFollow,
  });
  return best?.order ?? null;
}

function bitsIn(set: number): number {
  let bits = 0;
  for (let left = set; left !== 0; left &= left - 1) bits++;
  return bits;
}

/** A day after some runs of like pieces: who is done, in what order, at what cost. */
interface Runs {
  readonly done: bigint;
  readonly order: readonly number[];
  readonly cost: number;
}

/**
 * Cheapest sequence of runs, by cheapest first: a run is everything of one class (dirt, protection, station) that can be done by then.
 * Taking all of it is never worse: what follows stays possible, and a piece left out of an order adds no wipe-down, step or move.
 */
function orderByRuns(list: readonly DayPiece[], mustFollow: Pairs): readonly number[] | null {
  const before = list.map((_, at) =>
    mustFollow.reduce((set, [first, then]) => (then === at ? set | bit(first) : set), 0n),
  );
  const classes = classesOf(list);
  const all = bit(list.length) - 1n;
  const settled = new Set<string>();
  let open: readonly Runs[] = [{ done: 0n, order: [], cost: 0 }];
  while (open.length > 0) {
    const now = open.reduce((best, each) => (each.cost < best.cost ? each : best));
    if (now.done === all) return now.order;
    const last = now.order.at(-1);
    const key = `${now.done} ${classes.findIndex((members) => members.includes(last ?? -1))}`;
    const next = settled.has(key) ? [] : classes.flatMap((members) => longestRun(list, members, before, now));
    settled.add(key);
    open = [...open.filter((each) => each !== now), ...next];
  }
  return null;
}

/** All of one class that can be done now, in order of due; nothing when none of it can. */
function longestRun(
  list: readonly DayPiece[],
  members: readonly number[],
  before: readonly bigint[],
  now: Runs,
): Runs[] {
  const order = [...now.order];
  let { done } = now;
  const mayNow = (at: number): boolean => {
    const needs = before[at] ?? 0n;
    return (done & bit(at)) === 0n && (needs & done) === needs;
  };
  for (let next = members.find(mayNow); next !== undefined; next = members.find(mayNow)) {
    order.push(next);
    done |= bit(next);
  }
  const added = order.length - now.order.length;
  if (added === 0) return [];
  const cost = costBetween(list, now.order.at(-1), order[now.order.length]);
  const home = order.length === list.length ? costBetween(list, order.at(-1), undefined) : 0;
  return [{ done, order, cost: now.cost + cost + home }];
}

const bit = (at: number): bigint => 1n << BigInt(at);

function costBetween(list: readonly DayPiece[], from: number | undefined, to: number | undefined): number {
  const left = from === undefined ? undefined : list[from];
  return left ? stepCost(left, (to === undefined ? undefined : list[to]) ?? null) : 0;
}

/** Places of the list by class, each in the list's order. */
function classesOf(list: readonly DayPiece[]): readonly (readonly number[])[] {
  const classes = new Map<string, number[]>();
  list.forEach(({ dirt, exposed, station }, at) => {
    const key = `${dirt} ${exposed} ${station}`;
    classes.set(key, [...(classes.get(key) ?? []), at]);
  });
  return [...classes.values()];
}

/** Names the pieces none of which can come first. */
function circleOf(list: readonly DayPiece[], mustFollow: Pairs): string {
  let left = new Set(list.keys());
  for (let size = -1; size !== left.size; ) {
    size = left.size;
    left = new Set(
      [...left].filter((at) => mustFollow.some(([first, then]) => then === at && left.has(first))),
    );
  }
  const names = [...left].map((at) => `${list[at]?.act} of ${list[at]?.item}`);
  return `No order of the day is possible: each of these must follow another of them: ${names.join(", ")}. Take one of the must-follow pairs away.`;
}
