import { HOUSING_NAMES, sayMaking } from "../../../core/say/housing.ts";
import { shownProblem } from "../../../core/say/rooms/problem.ts";
import { drawingOf } from "../../../core/stores/housing/drawing.ts";
import { type HousingKind, housingFor } from "../../../core/stores/housing/housing.ts";
import { drawingSvg } from "../../../edge/handover/drawing-svg.ts";
import { type DayLine, dayLines } from "../at-work/day-lines.ts";
import { type ReadyItems, readyItems } from "../at-work/ready-items.ts";
import { type WorkCard, workCard } from "../at-work/work-card.ts";
import type { Now } from "../log/now.ts";

/** Somebody's day, and what is ready at the Bench. */
export interface BenchView {
  readonly hasPlan: boolean;
  /** Null: nothing is planned for them today. */
  readonly lines: readonly DayLine[] | null;
  readonly ready: ReadyItems;
}

const ACTS = ["wrap", "clean"] as const;

const benchView = (now: Now, person: string | null): BenchView => ({
  hasPlan: now.work !== null,
  lines: person === null ? null : dayLines(now, (row) => row.person === person),
  ready: readyItems(now, ACTS),
});

/** Whether an item of that number is listed. */
const isListed = (now: Now, id: string): boolean => now.item(id) !== null;

const benchItem = (now: Now, id: string): WorkCard | null => workCard(now, id, "bench", ACTS);

/** A wrapper drawn to an item's measures. */
export interface WrapperDrawing {
  /** Null: it cannot be drawn, and `says` tells why. */
  readonly svg: string | null;
  readonly says: readonly string[];
}

/** Null: its measures are not all written down. */
const wrapperDrawing = (now: Now, id: string, kind: HousingKind): WrapperDrawing | null => {
  const { heightMm: height, widthMm: width, thicknessMm: thickness } = now.item(id)?.item ?? {};
  if (height === undefined || width === undefined || thickness === undefined) return null;
  const made = housingFor(kind, { height, width, thickness });
  if (!made.ok) return { svg: null, says: made.problems.map((each) => shownProblem(each).what) };
  return {
    svg: drawingSvg(drawingOf(made.value.blanks), `${HOUSING_NAMES[kind]} · ${id}`),
    says: sayMaking(made.value),
  };
};

export const benchViews = { bench: benchView, benchItem, wrapperDrawing, isListed } as const;
