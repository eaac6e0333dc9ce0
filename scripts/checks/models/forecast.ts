import { dehumidifierCapacity, ventilationLoad } from "../../../src/core/physics/rooms/room-load.ts";
import {
  aitkenAsymptote,
  diffusivityFromTail,
  dryMassFromWet,
  tailFromWeighings,
  timeToTarget,
} from "../../../src/core/ward/tail.ts";
import { type CheckModels, type Inputs, num } from "../model.ts";

/** Drying of a hemlock slab, 15.15 × 14.8 × 0.75 cm: hours and moisture content, % of dry mass; at last 6.6 %.
 *  Source: Gilliland and Sherwood, quoted in Seader and Henley, Separation Process Principles, ch. 18. */
const HEMLOCK = {
  halfThickness: 0.00375, // m
  finalPercent: 6.6,
  percentAtHour: new Map([
    [0, 127],
    [1, 112],
    [2, 96.8],
    [3, 83.5],
    [4, 73.6],
    [5, 64.9],
    [6, 57.2],
    [7, 51.7],
    [8, 46.1],
    [9, 41.8],
    [10, 38.5],
    [12, 30.8],
    [14, 26.4],
    [16, 20.9],
    [18, 16.5],
    [20, 14.3],
    [22, 12.1],
  ]),
} as const;

function numbers(inputs: Inputs, name: string): number[] {
  const value = inputs[name];
  if (!Array.isArray(value) || value.some((each) => typeof each !== "number"))
    throw new TypeError(`input "${name}" is ${JSON.stringify(value)}, expected a list of numbers`);
  return value as number[];
}

function hemlockTail(inputs: Inputs) {
  const from = num(inputs, "fromH");
  const weighed = [...HEMLOCK.percentAtHour]
    .filter(([hours]) => hours >= from)
    .map(([hours, percent]) => ({ hours, moistureContent: percent / 100 }));
  const tail = tailFromWeighings(weighed, num(inputs, "asymptotePct") / 100);
  if (!tail) throw new RangeError(`fewer than two weighings from hour ${from} on`);
  return {
    kPerH: tail.rate,
    amplitude: 100 * tail.amplitude,
    D_m2s: diffusivityFromTail(tail.rate, HEMLOCK.halfThickness),
  };
}

/** °C and per cent, as the rows give air. */
function air(inputs: Inputs, name: string) {
  const [dryBulb = Number.NaN, percent = Number.NaN] = numbers(inputs, name);
  return { dryBulb, relHum: percent / 100 };
}

export const models: CheckModels = {
  "forecast.dataset": (inputs) => ({
    mcPct: numbers(inputs, "tHours").map((hours) => HEMLOCK.percentAtHour.get(hours)),
    finalPct: HEMLOCK.finalPercent,
  }),
  "forecast.tailFit": hemlockTail,
  "forecast.readyTime": (inputs) => ({
    days: timeToTarget(
      num(inputs, "w_now"),
      num(inputs, "w_target"),
      num(inputs, "w_inf"),
      num(inputs, "kPerDay"),
    ),
  }),
  "forecast.aitken": (inputs) => {
    const [w0 = Number.NaN, w1 = Number.NaN, w2 = Number.NaN] = numbers(inputs, "w");
    return { w_inf: aitkenAsymptote(w0, w1, w2) };
  },
  "forecast.dryMass": (inputs) => {
    const { dry, water } = dryMassFromWet(num(inputs, "wetG"), num(inputs, "mcPctDryBasis") / 100);
    return { dryG: dry, waterG: water };
  },
  "room.dehumidifierRule": (inputs) => ({
    gPerH: dehumidifierCapacity(num(inputs, "volumeM3"), num(inputs, "gPerHM3")),
  }),
  "room.ventilationLoad": (inputs) => ({
    gPerH: ventilationLoad(
      num(inputs, "volumeM3"),
      num(inputs, "ach"),
      air(inputs, "in"),
      air(inputs, "out"),
    ),
  }),
};
