import type { Surroundings } from "../physics/drying/drying.ts";
import type { DryingBody } from "../physics/drying/drying-body.ts";
import type { BagReading, Weighing } from "./bag-state.ts";

/* One item in the Ward: what it is, what it lay in, what reader and scale showed. Hours from any fixed moment. */

export interface WardStage {
  readonly fromHours: number;
  readonly surroundings: Surroundings;
}

export interface WardCase {
  readonly body: DryingBody;
  /** °C */
  readonly dryBulb: number;
  /** A reading of the closed, rested bag when drying began. */
  readonly start: BagReading | null;
  /** What it lay in, from the start on; the last one goes on. */
  readonly stages: readonly WardStage[];
  /** In the closed bag; those taken while it lay open are left out. */
  readonly readings: readonly BagReading[];
  readonly weighings: readonly Weighing[];
  readonly now: number;
  /** Left out: the pass line of release. */
  readonly target?: number;
}

/** What one reading is off by itself, beside the shared error: reader, rest of the bag and model. Common practice, no source. */
export const OWN_ERROR = 0.01;
/** Share by which the isotherm may misjudge a change of weight. Common practice, no source. */
const WEIGHT_SHARE = 0.1;
/** Before it, a freshly closed bag shows the air that was shut in. Common practice, no source. */
const SETTLING_HOURS = 2;

export interface Observation {
  readonly hours: number;
  readonly kind: "reading" | "weighing";
  /** Relative humidity, or kg/kg against the first weighing. */
  readonly value: number;
  readonly sd: number;
}

export interface Seen {
  readonly observations: readonly Observation[];
  readonly leftOut: number;
  readonly weighings: readonly Weighing[];
}

const inOrder = <T extends { readonly hours: number }>(what: readonly T[], from: number, to: number): T[] =>
  what.filter((each) => each.hours >= from && each.hours <= to).sort((a, b) => a.hours - b.hours);

export function observationsOf(ward: WardCase, start: BagReading): Seen {
  const { readings, weighings, now } = ward;
  const stages = stagesOf(ward);
  const looked = inOrder(readings, start.hours, now).filter((each) => each.hours > start.hours);
  const closed = looked.filter((each) => isOfClosedBag(each, stages));
  const onScale = inOrder(weighings, start.hours, now);
  const observations = [
    ...closed.map(
      (each): Observation => ({ hours: each.hours, kind: "reading", value: each.relHum, sd: OWN_ERROR }),
    ),
    ...lossesOf(onScale),
  ].sort((a, b) => a.hours - b.hours);
  return { observations, leftOut: looked.length - closed.length, weighings: onScale };
}

/** Weights as shares of the first one: what box and scale add alike falls out. */
function lossesOf(weighings: readonly Weighing[]): Observation[] {
  const first = weighings[0];
  if (!first) return [];
  return weighings.map((each) => {
    const scale = Math.max(each.scaleStep ?? 1, first.scaleStep ?? 1) / first.grams;
    const value = each.grams / first.grams;
    return { hours: each.hours, kind: "weighing", value, sd: Math.hypot(scale, WEIGHT_SHARE * (1 - value)) };
  });
}

/** Those that have begun, in order. */
export const stagesOf = ({ stages, now }: WardCase): WardStage[] =>
  stages.filter((each) => each.fromHours <= now).sort((a, b) => a.fromHours - b.fromHours);

/** Whether a reading is one of a closed bag that had time to settle. */
function isOfClosedBag({ hours }: BagReading, stages: readonly WardStage[]): boolean {
  const stage = stages.findLast((each) => each.fromHours <= hours) ?? stages[0];
  return stage?.surroundings.kind === "bag" && hours - stage.fromHours >= SETTLING_HOURS;
}
