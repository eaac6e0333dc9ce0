import type { Surroundings } from "../../../core/physics/drying/drying.ts";
import type { DryingBody } from "../../../core/physics/drying/drying-body.ts";
import { CAUTIONS, NO_DATE } from "../../../core/say/cautions/ward.ts";
import { DRY_TODO, type DryCase, sayDryCase } from "../../../core/say/damp/dry.ts";
import { sayFault } from "../../../core/say/damp/faults.ts";
import {
  readyFigures,
  sayNoDate,
  sayReadyBand,
  sayReadyNow,
  sayRest,
} from "../../../core/say/damp/ready-date.ts";
import type { BagReading, Weighing } from "../../../core/ward/bag-state.ts";
import { type NoDate, type ReadyDate, readyDate } from "../../../core/ward/ready-date.ts";
import type { WardCase, WardStage } from "../../../core/ward/ward-case.ts";
import type { Given } from "./given.ts";
import { pairsFrom } from "./quantity.ts";
import { cautionsOf, type Report } from "./report.ts";

/* Readings and weighings so far, and the ready date they allow. */

export interface Looks {
  readonly hasLooks: boolean;
  /** The first reading, from which drying is counted. */
  readonly first: BagReading | null;
  readonly readings: readonly BagReading[];
  readonly weighings: readonly Weighing[];
  /** h */
  readonly now: number;
  readonly rest: number;
  readonly readerError: number;
}

export function looksFrom(given: Given): Looks {
  const readerError = given.quantity(
    "reader-error",
    "relHum",
    {
      low: 0.005,
      high: 0.1,
      remedy: "Try the reader over a salt solution; 3 % is usual.",
    },
    0.03,
  );
  const step =
    1000 *
    given.quantity(
      "scale-step",
      "mass",
      {
        low: 1e-5,
        high: 0.1,
        remedy: "Give it with its unit, for example 1g.",
      },
      1e-3,
    );
  const readings = pairs(given, "readings", { low: 5, high: 100, unit: "%" }).map(
    ({ day, value }): BagReading => ({ hours: 24 * day, relHum: value / 100, error: readerError }),
  );
  const weighings = pairs(given, "weighings", { low: 1, high: 200_000, unit: "g" }).map(
    ({ day, value }): Weighing => ({ hours: 24 * day, grams: value, scaleStep: step }),
  );
  const last = Math.max(0, ...[...readings, ...weighings].map(({ hours }) => hours));
  return {
    hasLooks: readings.length + weighings.length > 0,
    first: readings[0] ?? null,
    readings,
    weighings,
    now:
      24 *
      given.quantity(
        "now",
        "days",
        {
          low: last / 24,
          high: 3660,
          remedy: "Today cannot lie before the last look.",
        },
        last / 24,
      ),
    rest: given.quantity(
      "rest",
      "hours",
      {
        low: 2,
        high: 240,
        remedy: "A bag must be closed for two hours at the least, better a day, before it is read.",
      },
      24,
    ),
    readerError,
  };
}

function pairs(given: Given, name: string, range: { low: number; high: number; unit: string }) {
  const text = given.text(name);
  if (text === undefined) return [];
  const found = pairsFrom(text);
  const isIn = ({ day, value }: { day: number; value: number }): boolean =>
    day >= 0 && day <= 3660 && value >= range.low && value <= range.high;
  if (found === null || !found.every(isIn)) {
    given.refuse({
      option: `--${name}`,
      got: text,
      expected: `pairs of day and value, day:value, days from 0, values ${range.low} to ${range.high} ${range.unit}`,
      remedy: `Write it like ${name === "readings" ? "0:80,3:72,7:66" : "0:812,3:806,7:801"}.`,
    });
    return [];
  }
  if (found.some(({ day }, i) => i > 0 && day <= (found[i - 1]?.day ?? 0)))
    given.refuseInWords(sayFault("readings-need-order", name));
  return found;
}

/** The band in which two readings could first pass, or why no date can be known yet. */
export function readyReport(of: DryCase, looks: Looks, body: DryingBody, place: Surroundings): Report {
  const start = looks.first ?? { hours: 0, relHum: of.start, error: looks.readerError };
  const ward: WardCase = {
    body,
    dryBulb: of.dryBulb,
    start,
    stages: stagesOf(looks, start, place),
    readings: looks.readings,
    weighings: looks.weighings,
    now: Math.max(looks.now, start.hours) + 2 * LAID_OPEN,
    target: of.want,
  };
  const ready = readyDate(ward);
  const isRoom = place.kind === "room" && looks.readings.length > 1;
  return {
    exit: ready.ok || !ready.because.some((code) => MENDS.includes(code)) ? 0 : 1,
    sections: [
      {
        understood: [sayDryCase(of), ...(isRoom ? [sayRest(looks.rest)] : [])],
        verdict: verdictOf(ready, ward.now),
        todo: [
          ...(isRoom && !ready.ok && ready.because.includes("readings-and-model-disagree")
            ? [DRY_TODO.rest()]
            : []),
          ...(ready.ok ? [] : [DRY_TODO.readings()]),
          DRY_TODO.look(of),
        ],
        figures: readyFigures({
          band: ready.ok ? ready.hours : ready.planning,
          isForPlanning: !ready.ok,
          lossBehind: ready.learned?.lossBehind ?? null,
          permeability: ready.learned?.permeability ?? null,
          seen: ready.learned?.seen ?? 0,
          leftOut: ready.learned?.leftOut ?? 0,
          byTail: ready.ok ? ready.byTail : null,
        }),
        cautions: cautionsOf([...ready.cautions, "person-releases"], CAUTIONS),
        data: { wanted: of, nowHours: ward.now, ready: { ...ready, cautions: undefined } },
      },
    ],
  };
}

/** Something to mend now, and not only to wait for. */
const MENDS: readonly NoDate[] = [
  "never-in-these-surroundings",
  "perhaps-never-in-these-surroundings",
  "readings-and-model-disagree",
  "outside-what-was-tried",
];

function verdictOf(ready: ReadyDate, now: number): string {
  if (!ready.ok) return [sayNoDate(), ...ready.because.map((code) => NO_DATE[code])].join(" ");
  return ready.hours.p90 - now < 1 ? sayReadyNow() : sayReadyBand(ready.hours, now);
}

/** In a room the item is closed in a bag for a while before each reading; in a bag it lies there throughout. */
function stagesOf({ readings, rest }: Looks, start: BagReading, place: Surroundings): WardStage[] {
  const stages: WardStage[] = [{ fromHours: start.hours, surroundings: place }];
  if (place.kind === "bag") return stages;
  let before = start.hours;
  for (const { hours } of readings) {
    if (hours <= start.hours) continue;
    const closedFor = Math.min(rest, (hours - before) / 2);
    stages.push({ fromHours: hours - closedFor, surroundings: closedBagIn(place) });
    stages.push({ fromHours: hours + LAID_OPEN, surroundings: place });
    before = hours;
  }
  return stages;
}

/** So soon after a reading it lies open again, h: the reading still counts as one of the closed bag. */
const LAID_OPEN = 0.01;

/** A bag without gel that lies close around the item. */
const closedBagIn = ({ relHum }: Surroundings): Surroundings => ({
  kind: "bag",
  airVolume: REST_AIR,
  leak: 0,
  relHum,
});
/** Air around an item in its bag, m³. Common practice, no source. */
const REST_AIR = 2e-3;
