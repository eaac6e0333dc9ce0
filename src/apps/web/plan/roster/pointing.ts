/** What somebody points at in the days: a cursor, and what is held: a stretch of a row's days, or a mark on its way to another day. */
export interface Pointing {
  readonly row: number;
  readonly day: number;
  readonly held: Held | null;
  readonly isDragging: boolean;
}
export type Held =
  | { readonly kind: "days"; readonly row: number; readonly anchor: number; readonly head: number }
  | {
      readonly kind: "mark";
      readonly row: number;
      readonly mark: number;
      readonly from: number;
      readonly to: number;
    };

/** What the rows hold where something points. */
export interface Ground {
  readonly rows: number;
  readonly days: number;
  /** Whether a row's days can be taken, or only the marks in it. */
  isOfDays(row: number): boolean;
  /** Place of the mark there among the row's marks; null: none. */
  markAt(row: number, day: number): number | null;
}

export const atFirst = (day: number): Pointing => ({ row: 0, day, held: null, isDragging: false });

/** A press takes a day or a mark; on a touch screen a second tap in the same row ends the stretch, or puts the mark there. */
export function pressed(now: Pointing, ground: Ground, row: number, day: number, byTouch: boolean): Pointing {
  const at = { row, day, isDragging: !byTouch };
  const { held } = now;
  const mark = ground.markAt(row, day);
  if (held?.row === row && held.kind === "mark" && mark === null)
    return { ...at, isDragging: false, held: { ...held, to: day } };
  if (held?.row === row && held.kind === "days" && byTouch) return { ...at, held: { ...held, head: day } };
  return { ...at, held: taken(ground, row, day) };
}

function taken(ground: Ground, row: number, day: number): Held | null {
  if (ground.isOfDays(row)) return { kind: "days", row, anchor: day, head: day };
  const mark = ground.markAt(row, day);
  return mark === null ? null : { kind: "mark", row, mark, from: day, to: day };
}

/** The pointer went on while it was pressed. */
export const dragged = (now: Pointing, day: number): Pointing =>
  now.isDragging && now.held !== null ? { ...now, day, held: movedTo(now.held, day) } : now;

export const released = (now: Pointing): Pointing => (now.isDragging ? { ...now, isDragging: false } : now);

export const letGo = (now: Pointing): Pointing => ({ ...now, held: null, isDragging: false });

const movedTo = (held: Held, day: number): Held =>
  held.kind === "days" ? { ...held, head: day } : { ...held, to: day };

export type PointingKey =
  | "ArrowLeft"
  | "ArrowRight"
  | "ArrowUp"
  | "ArrowDown"
  | "Home"
  | "End"
  | "Enter"
  | "Escape";
const STEP: Readonly<Partial<Record<PointingKey, readonly [rows: number, days: number]>>> = {
  ...{ ArrowLeft: [0, -1], ArrowRight: [0, 1], ArrowUp: [-1, 0], ArrowDown: [1, 0] },
  ...{ Home: [0, -7], End: [0, 7] },
};

/** Keys: arrows move by a day or a row, Home and End by a week; with Shift a stretch grows; a held mark goes along. Null: not a key of ours. */
export function keyed(now: Pointing, ground: Ground, key: string, isShift: boolean): Pointing | null {
  if (key === "Escape") return now.held === null ? null : letGo(now);
  if (key === "Enter" || key === " ")
    return now.held === null ? { ...now, held: taken(ground, now.row, now.day) } : now;
  const step = STEP[key as PointingKey]; // an unknown key has none
  if (step === undefined) return null;
  const row = within(now.row + step[0], ground.rows);
  const day = within(now.day + step[1], ground.days);
  const { held } = now;
  if (held?.kind === "mark" && step[0] === 0) return { ...now, day, held: { ...held, to: day } };
  if (isShift && step[0] === 0 && ground.isOfDays(row)) {
    const before =
      held?.kind === "days" ? held : { kind: "days" as const, row, anchor: now.day, head: now.day };
    return { ...now, day, held: { ...before, head: day } };
  }
  return { row, day, held: null, isDragging: false };
}

const within = (n: number, count: number): number => Math.min(count - 1, Math.max(0, n));

/** First and last day of what is held. */
export function heldSpan(held: Held): { readonly from: number; readonly to: number } {
  const [a, b] = held.kind === "days" ? [held.anchor, held.head] : [held.to, held.to];
  return { from: Math.min(a, b), to: Math.max(a, b) };
}
