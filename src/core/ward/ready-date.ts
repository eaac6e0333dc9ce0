import { type DryingPrecision, DryingRun, QUICK } from "../physics/drying/drying.ts";
import type { DryingCaution } from "../physics/drying/drying-body.ts";
import type { SorptionCaution } from "../physics/sorption/isotherm.ts";
import { type BagReading, RELEASE, type Weighing } from "./bag-state.ts";
import { gridOf, MOST_START } from "./ready-runs.ts";
import { type Band, bandOf, type Weighed, weigh } from "./ready-weights.ts";
import { TAIL_BAND, TAIL_NEEDS, tailFromWeighings, timeToTarget } from "./tail.ts";
import { OWN_ERROR, observationsOf, type Seen, stagesOf, type WardCase } from "./ward-case.ts";

/* When two readings could first pass, as a band, from the readings and weighings so far. How easily damp moves through an
 * item and how fast its surface gives it off are not known beforehand: the drying model is run over a grid of both, each run is
 * weighed by how well it meets what was seen (Bayes), and the band is read off the weighed runs. Two further directions of the
 * grid are the error a reader has in all its readings alike, and what the reading at the start was off by itself.
 * This says when to look; it releases nothing. Hours from any fixed moment. */

export type NoDate =
  | "no-closed-reading"
  | "no-surroundings"
  | "look-again-a-day-later"
  | "no-change-seen"
  | "less-than-a-third-dried"
  | "never-in-these-surroundings"
  | "perhaps-never-in-these-surroundings"
  | "readings-and-model-disagree"
  | "outside-what-was-tried";

export type ReadyCaution =
  | DryingCaution
  | SorptionCaution
  | "tail-disagrees"
  | "one-reader-one-error"
  | "readings-in-open-air-left-out"
  | "planning-figure-only";

export interface Learned {
  /** Permeability against what was assumed, a factor. */
  readonly permeability: Band;
  /** Share of the expected loss that is behind, 0 to 1. */
  readonly lossBehind: number;
  /** Mean misfit, in standard deviations of what was seen. */
  readonly misfit: number;
  readonly seen: number;
  readonly leftOut: number;
}

export type ReadyDate =
  | {
      readonly ok: true;
      /** Hour from which two readings could pass. */
      readonly hours: Band;
      readonly learned: Learned;
      /** By the exponential tail of the weighings, where there are enough. */
      readonly byTail: number | null;
      readonly cautions: readonly ReadyCaution[];
    }
  | {
      readonly ok: false;
      readonly because: readonly NoDate[];
      /** For planning a campaign, never for an item: the band so far, where there is one. */
      readonly planning: Band | null;
      readonly learned: Learned | null;
      readonly cautions: readonly ReadyCaution[];
    };

const MOST_MISFIT = 3;
const MOST_AT_EDGE = 0.15;
const LEAST_LOSS = 1 / 3;
const LEAST_HOURS = 24;

/** The ready date of one item, or why there is none yet. Same input, same answer; the order of readings does not matter. */
export function readyDate(ward: WardCase, precision: DryingPrecision = QUICK): ReadyDate {
  const { body, start } = ward;
  const cautions: ReadyCaution[] = [...body.cautions, ...body.isotherm.cautions, "release-by-reading-only"];
  const nothing = (because: NoDate): ReadyDate => ({
    ok: false,
    because: [because],
    planning: null,
    learned: null,
    cautions,
  });
  if (start === null) return nothing("no-closed-reading");
  if (stagesOf(ward).length === 0) return nothing("no-surroundings");
  const seen = observationsOf(ward, start);
  const weighed = weigh(gridOf(ward, start, seen, precision), seen, ward);
  return answer(ward, start, seen, weighed, cautions);
}

function answer(
  ward: WardCase,
  start: BagReading,
  seen: Seen,
  weighed: Weighed,
  given: readonly ReadyCaution[],
): ReadyDate {
  const hours = widened(bandOf(weighed.ready), ward.now);
  const permeability = bandOf(weighed.permeability);
  const learned: Learned = {
    permeability,
    lossBehind: lossBehind(ward, start, permeability.p50),
    misfit: weighed.misfit,
    seen: seen.observations.length,
    leftOut: seen.leftOut,
  };
  const because = refusals(ward, start, seen, weighed, hours, learned);
  const byTail = tailHours(ward, start, seen.weighings);
  const disagrees = byTail !== null && (byTail < hours.p10 || byTail > hours.p90);
  const cautions: ReadyCaution[] = [
    ...given,
    "one-reader-one-error",
    ...(disagrees ? (["tail-disagrees"] as const) : []),
    ...(seen.leftOut > 0 ? (["readings-in-open-air-left-out"] as const) : []),
  ];
  if (because.length === 0) return { ok: true, hours, learned, byTail, cautions };
  return { ok: false, because, planning: hours, learned, cautions: [...cautions, "planning-figure-only"] };
}

/** Never narrower than a quarter of the remaining time either way: model and surroundings are not that well known. */
const widened = ({ p10, p50, p90 }: Band, now: number): Band => ({
  p10: Math.min(p10, now + (1 - TAIL_BAND) * (p50 - now)),
  p50,
  p90: Math.max(p90, now + (1 + TAIL_BAND) * (p50 - now)),
});

function refusals(
  ward: WardCase,
  start: BagReading,
  seen: Seen,
  weighed: Weighed,
  hours: Band,
  learned: Learned,
): NoDate[] {
  const last = seen.observations.at(-1);
  const when = (so: boolean, code: NoDate): NoDate[] => (so ? [code] : []);
  if (start.relHum <= (ward.target ?? RELEASE.passRelHum)) return [];
  return [
    ...when(last === undefined || last.hours - start.hours < LEAST_HOURS, "look-again-a-day-later"),
    ...when(last !== undefined && !changeSeen(start, seen), "no-change-seen"),
    ...when(learned.lossBehind < LEAST_LOSS, "less-than-a-third-dried"),
    ...when(!Number.isFinite(hours.p50), "never-in-these-surroundings"),
    ...when(Number.isFinite(hours.p50) && !Number.isFinite(hours.p90), "perhaps-never-in-these-surroundings"),
    ...when(weighed.misfit > MOST_MISFIT, "readings-and-model-disagree"),
    ...when(weighed.atEdge > MOST_AT_EDGE, "outside-what-was-tried"),
  ];
}

/** A change beyond what a reading is off by itself, or three steps of the scale. */
function changeSeen(start: BagReading, { observations, weighings }: Seen): boolean {
  const lowest = Math.min(...observations.filter((o) => o.kind === "reading").map((o) => o.value));
  const [first, last] = [weighings[0], weighings.at(-1)];
  const steps =
    first && last ? (first.grams - last.grams) / Math.max(first.scaleStep ?? 1, last.scaleStep ?? 1) : 0;
  return start.relHum - lowest > 2 * OWN_ERROR || steps >= TAIL_NEEDS.scaleSteps;
}

/** How much of the way from the start to the target has been gone now, by the likeliest run; the target counts as the end. */
function lossBehind(ward: WardCase, start: BagReading, permeability: number): number {
  const run = new DryingRun(ward.body, ward.dryBulb, QUICK);
  run.scale(permeability, 1);
  run.start(Math.min(MOST_START, start.relHum), start.hours);
  const before = run.water;
  const toLose = before - run.waterAtRelHum(ward.target ?? RELEASE.passRelHum);
  const stages = stagesOf(ward);
  for (const [i, stage] of stages.entries()) {
    const ends = stages[i + 1]?.fromHours ?? ward.now;
    run.place(stage.surroundings);
    if (ends > run.hours) run.goOn(ends);
  }
  return toLose <= 0 ? 1 : Math.min(1, Math.max(0, (before - run.water) / toLose));
}

/** The hour by the tail of the weighings; only in a room of one relative humidity, whose asymptote the isotherm gives. */
function tailHours(ward: WardCase, start: BagReading, weighings: readonly Weighing[]): number | null {
  const place = ward.stages.at(-1)?.surroundings;
  const first = weighings[0];
  if (!first || place?.kind !== "room" || typeof place.relHum !== "number") return null;
  const { isotherm } = ward.body;
  const content = (relHum: number): number => isotherm.moistureContentFromRelHum(relHum, ward.dryBulb);
  const dry = first.grams / (1 + content(Math.min(MOST_START, start.relHum)));
  const weighed = weighings.map((each) => ({ hours: each.hours, moistureContent: each.grams / dry - 1 }));
  const [asymptote, from, target] = [
    content(place.relHum),
    content(Math.min(MOST_START, start.relHum)),
    content(ward.target ?? RELEASE.passRelHum),
  ];
  if (target <= asymptote) return null;
  const late = weighed.filter(
    (each) => from - each.moistureContent >= TAIL_NEEDS.lossBehind * (from - asymptote),
  );
  const last = late.at(-1);
  const fell = late.length > 0 ? ((late[0]?.moistureContent ?? 0) - (last?.moistureContent ?? 0)) * dry : 0;
  if (!last || late.length < TAIL_NEEDS.weighings || fell < TAIL_NEEDS.scaleSteps * (first.scaleStep ?? 1))
    return null;
  const tail = tailFromWeighings(late, asymptote);
  return tail && last.hours + timeToTarget(last.moistureContent, target, asymptote, tail.rate);
}
