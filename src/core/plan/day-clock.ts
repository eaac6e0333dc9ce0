import type { Limit } from "../items/campaign.ts";
import { type DayPiece, wipesBetween } from "./day-order.ts";

/** A day's times and what changing and washing take; all in minutes, clock times after midnight. */
export interface DayFrame {
  readonly opens: number;
  /** Briefing, first thing; 0: none. */
  readonly briefing: number;
  /** Lunch starts between `from` and `by`; null: none. A day that is over by then has none either. */
  readonly lunch: { readonly from: number; readonly by: number; readonly minutes: number } | null;
  /** Putting protection on and laying out the station: `s-don`, `s-setup`. */
  readonly changeIn: number;
  /** Station, tools and waste, still in the mask: `s-decon`, `s-tools`, `s-waste`. */
  readonly endOfSession: number;
  /** Taking off and washing: `s-doff`. The mask counts as worn until it begins. */
  readonly changeOut: number;
  /** Wiping a station down before cleaner work or going home, where no session ends: `s-decon`, `s-camera-decon`. */
  readonly wipeDown: number;
  /** Wear without a break, and the break outside after it. */
  readonly maskMinutes: Limit;
  readonly maskBreakMinutes: Limit;
  /** Exposed work at a stretch, whatever is worn: `p-block`. */
  readonly stretchMinutes: Limit;
}

/** A row of the day: what, from when to when. */
export interface ClockRow {
  /** Minutes after midnight, whole. */
  readonly from: number;
  readonly to: number;
  readonly kind:
    | "briefing"
    | "work"
    | "change-over"
    | "wipe-down"
    | "wait"
    | "change in"
    | "mask break"
    | "lunch"
    | "end of session"
    | "change out";
  /** Place of the piece worked on, wiped down after or waited for, among the pieces given; null: none. */
  readonly piece: number | null;
  /** It is cut by a break and goes on in a later row. */
  readonly goesOn: boolean;
  /** The limit that asks for the break; null for every other row. */
  readonly limit: Limit | null;
}

/** A stretch of the clock in which a piece cannot be worked on: its place is taken, or what it follows is not done yet. */
export interface Held {
  readonly from: number;
  readonly to: number;
}

/**
 * Lays pieces, in the order given, into a day with breaks, lunch, changing and wipe-downs: lunch in time, then home as early as can be,
 * then with as few pieces cut by a break as can be. Exact over every choice of pauses between pieces; a piece is cut only where a limit
 * or lunch cuts it. Nothing is dropped when the day is too long: compare the last row with the hour of closing.
 * Pieces are rounded so that their sum is kept: a row may be a minute off, the day is not. A break is the mask break alone: taking
 * off and putting on again are not added to it. Minutes worn go on counting through a pause shorter than the break.
 * @param held for each piece, in order of time, when it cannot be worked on: it is waited for, not begun when it could not be finished before.
 */
export function layDay(
  pieces: readonly DayPiece[],
  frame: DayFrame,
  held: readonly (readonly Held[])[] = [],
): readonly ClockRow[] {
  const spans = spansOf(pieces, frame, held);
  const start: Moment = {
    span: 0,
    spent: 0,
    clock: frame.opens,
    worn: 0,
    off: 0,
    lunched: frame.lunch === null,
  };
  const rest = new Map<string, Way>();
  const rows: ClockRow[] = [];
  for (let way = bestFrom(spans, frame, start, rest); way.step; way = way.step.then) rows.push(way.step.row);
  return rows;
}

/** A stretch of the day before breaks are put in. */
interface Span {
  readonly kind: ClockRow["kind"];
  readonly minutes: number;
  readonly piece: number | null;
  readonly masked: boolean;
  readonly held: readonly Held[];
  /** Minutes from its begin until the place is free again: work, change-over and wipe-down together. */
  readonly whole: number;
}

function spansOf(pieces: readonly DayPiece[], frame: DayFrame, held: readonly (readonly Held[])[]): Span[] {
  const spans: Span[] = [];
  const add = (
    kind: Span["kind"],
    minutes: number,
    piece: number | null,
    masked: boolean,
    holds: readonly Held[] = [],
    whole = Math.round(minutes),
  ): void => {
    if (minutes > 0) spans.push({ kind, minutes: Math.round(minutes), piece, masked, held: holds, whole });
  };
  add("briefing", frame.briefing, null, false);
  let exact = 0;
  let whole = 0;
  pieces.forEach((piece, at) => {
    exact += piece.minutes;
    const minutes = Math.round(exact) - whole;
    whole += minutes;
    const wiping = Math.min(minutes, Math.round(piece.changeOver));
    const holds = held[at] ?? [];
    const next = pieces[at + 1] ?? null;
    const endsSession = piece.exposed && !next?.exposed;
    const wipe = !endsSession && wipesBetween(piece, next) ? frame.wipeDown : 0;
    // Nobody changes in to stand waiting.
    if (piece.exposed && !pieces[at - 1]?.exposed)
      add("change in", frame.changeIn, null, false, earlier(holds, frame.changeIn));
    add("work", minutes - wiping, at, piece.exposed, holds, minutes + Math.round(wipe));
    add("change-over", wiping, at, piece.exposed, holds);
    add("wipe-down", wipe, at, piece.exposed, holds);
    if (endsSession) {
      add("end of session", frame.endOfSession, null, true);
      add("change out", frame.changeOut, null, false);
    }
  });
  return spans;
}

const earlier = (holds: readonly Held[], minutes: number): Held[] =>
  holds.map(({ from, to }) => ({ from: from - minutes, to: to - minutes }));

/** Where the day stands: a span, the minutes spent on it, the clock, minutes worn, minutes since the mask came off. */
interface Moment {
  readonly span: number;
  readonly spent: number;
  readonly clock: number;
  readonly worn: number;
  readonly off: number;
  readonly lunched: boolean;
}

/** The best way on from a moment: how late lunch is, when it ends, how many spans it cuts; and its next row. */
interface Way {
  readonly late: number;
  readonly ends: number;
  readonly cuts: number;
  readonly step: { readonly row: ClockRow; readonly then: Way } | null;
}

function bestFrom(spans: readonly Span[], frame: DayFrame, now: Moment, known: Map<string, Way>): Way {
  const key = Object.values(now).join(" ");
  const old = known.get(key);
  if (old) return old;
  const span = spans[now.span];
  let best: Way | null = span ? null : { late: 0, ends: now.clock, cuts: 0, step: null };
  for (const { row, moment } of span ? choicesAt(span, frame, now) : []) {
    const then = bestFrom(spans, frame, moment, known);
    const late = then.late + (row.kind === "lunch" ? Math.max(0, row.from - (frame.lunch?.by ?? 0)) : 0);
    const way = { late, ends: then.ends, cuts: then.cuts + Number(row.goesOn), step: { row, then } };
    if (!best || isBetter(way, best)) best = way;
  }
  if (!best)
    throw new Error(`The day cannot go on at minute ${now.clock}: no break is long enough for the mask.`);
  known.set(key, best);
  return best;
}

const isBetter = (a: Way, b: Way): boolean => (a.late - b.late || a.ends - b.ends || a.cuts - b.cuts) < 0;

interface Choice {
  readonly row: ClockRow;
  readonly moment: Moment;
}

/** Work on as long as the limits let, wait, eat, or rest. */
function choicesAt(span: Span, frame: DayFrame, now: Moment): Choice[] {
  const { lunch } = frame;
  const choices: Choice[] = [];
  const left = span.minutes - now.spent;
  const hold = nextHold(span, now);
  if (hold && (hold.from <= now.clock || (now.spent === 0 && now.clock + span.whole > hold.from)))
    choices.push(wait(span, frame, now, Math.min(hold.to, toLunch(frame, now)) - now.clock));
  else {
    const free = hold ? hold.from - now.clock : left;
    const minutes = Math.min(left, free, mayGoOn(span, frame, now));
    if (minutes > 0) choices.push(work(span, frame, now, minutes));
  }
  if (lunch && !now.lunched && now.clock >= lunch.from)
    choices.push(pause("lunch", lunch.minutes, null, frame, { ...now, lunched: true }));
  const { worn } = rested(span, frame, now);
  if (span.masked && worn > 0) {
    const limit =
      frame.maskMinutes.value <= frame.stretchMinutes.value ? frame.maskMinutes : frame.stretchMinutes;
    choices.push(pause("mask break", frame.maskBreakMinutes.value, limit, frame, now));
  }
  return choices;
}

/** Lunch is not waited past. */
const toLunch = ({ lunch }: DayFrame, now: Moment): number =>
  lunch && !now.lunched && now.clock < lunch.from ? lunch.from : Number.POSITIVE_INFINITY;

const nextHold = ({ held }: Span, { clock }: Moment): Held | undefined => held.find(({ to }) => to > clock);

/** A wait is spent in the mask while that may still be worn; a longer one is spent outside. */
function wait(span: Span, frame: DayFrame, now: Moment, minutes: number): Choice {
  const off = Math.min(frame.maskBreakMinutes.value, now.off + minutes);
  const clock = now.clock + minutes;
  const { worn } = rested(span, frame, now);
  const inMask = span.masked && minutes <= mayWear(span, frame, now);
  return {
    row: { from: now.clock, to: clock, kind: "wait", piece: span.piece, goesOn: false, limit: null },
    moment: { ...now, clock, ...(inMask ? { worn: worn + minutes, off: 0 } : { off }) },
  };
}

/** Minutes until the mask must come off or lunch is due, whichever is first. */
function mayGoOn(span: Span, frame: DayFrame, now: Moment): number {
  const hunger = frame.lunch && !now.lunched ? frame.lunch.by - now.clock : Number.POSITIVE_INFINITY;
  return Math.floor(Math.min(mayWear(span, frame, now), hunger));
}

/** Minutes the mask may still be worn; no limit where none is. */
const mayWear = (span: Span, frame: DayFrame, now: Moment): number =>
  span.masked
    ? Math.min(frame.maskMinutes.value, frame.stretchMinutes.value) - rested(span, frame, now).worn
    : Number.POSITIVE_INFINITY;

/** Minutes worn count anew once the mask has been off for a whole break. */
const rested = (span: Span, frame: DayFrame, now: Moment): { worn: number } => ({
  worn: span.masked && now.off >= frame.maskBreakMinutes.value ? 0 : now.worn,
});

function work(span: Span, frame: DayFrame, now: Moment, minutes: number): Choice {
  const spent = now.spent + minutes;
  const over = spent >= span.minutes;
  const clock = now.clock + minutes;
  return {
    row: { from: now.clock, to: clock, kind: span.kind, piece: span.piece, goesOn: !over, limit: null },
    moment: {
      ...now,
      span: over ? now.span + 1 : now.span,
      spent: over ? 0 : spent,
      clock,
      worn: span.masked ? rested(span, frame, now).worn + minutes : now.worn,
      off: span.masked ? 0 : Math.min(frame.maskBreakMinutes.value, now.off + minutes),
    },
  };
}

function pause(
  kind: "lunch" | "mask break",
  minutes: number,
  limit: Limit | null,
  frame: DayFrame,
  now: Moment,
): Choice {
  const clock = now.clock + minutes;
  return {
    row: { from: now.clock, to: clock, kind, piece: null, goesOn: false, limit },
    moment: { ...now, clock, off: Math.min(frame.maskBreakMinutes.value, now.off + minutes) },
  };
}
