/* What a closed bag says about the item in it, and whether its release is earned. Readings earn it; no date and no weight does.
 * Hours from any fixed moment, relative humidity a fraction. The order of the readings in the list does not matter. */

/** A look at the humidity reader in the bag. */
export interface BagReading {
  readonly hours: number;
  readonly relHum: number;
  /** Plus or minus, fraction; left out: 0.03, a usual reader. */
  readonly error?: number;
  /** °C in the bag */
  readonly dryBulb?: number;
}

/** The item on a scale, bag, gel and box taken off. */
export interface Weighing {
  readonly hours: number;
  readonly grams: number;
  /** Step of the scale; left out: 1 g. */
  readonly scaleStep?: number;
}

export interface BagEvent {
  readonly hours: number;
  readonly what: "closed" | "opened" | "gel put in" | "gel taken out";
}

/** What drying must spare: skin, leaf, wood, lacquer and image layers are not taken below 40 to 45 %. */
export type Spared = "paper" | "skin" | "palm leaf" | "wood" | "lacquer" | "image layer";

export interface BagLog {
  readonly material: Spared;
  readonly events: readonly BagEvent[];
  readonly readings: readonly BagReading[];
  /** Whether the stricter published floor is asked for: 48 hours below 50 %. */
  readonly asks48HoursBelow50: boolean;
}

/** Two readings of 55 % or less, a day apart: common practice, no source. 48 h below 50 %: The National Archives (UK), Mould in
 *  archive collections: remediation. Never above 60 % with the reader's error on top: nothing grows below 60 % (Beuchat 1981).
 *  Rebound and slope: common practice, no source. */
export const RELEASE = {
  passRelHum: 0.55,
  hoursApart: 24,
  neverAbove: 0.6,
  floorRelHum: 0.5,
  floorHours: 48,
  /** The first reading after closing counts as "at closing" when it was taken this soon, h. */
  atClosingHours: 12,
  reboundHours: 48,
  reboundMost: 0.02,
} as const;
/** Common practice, no source. */
export const STOP_DRYING = { from: 0.45, below: 0.4 } as const;
export const USUAL_READER_ERROR = 0.03;
/** A reading this old says little about today, h. Common practice, no source. */
const OLD_READING = 168;
/** A closed bag shows at most about this much more for each kelvin it warms (Studies in Conservation, 1964). */
const MOST_PER_KELVIN = 0.0035;
const STEADY_KELVIN = 1;

export type ReleaseCondition =
  | "bag-is-closed"
  | "gel-is-out"
  | "two-readings-pass"
  | "error-leaves-room"
  | "rebound-is-small"
  | "48-hours-below-50";

/** One thing a release asks for, with what was seen and what is missing. */
export interface ReleaseCheck {
  readonly condition: ReleaseCondition;
  readonly met: boolean;
  /** Code of what is missing or in the way; empty when met. */
  readonly missing: ReleaseMissing | "";
  /** The figure that decided: relative humidity, rebound or hours. */
  readonly seen?: number;
  readonly wanted?: number;
}

export type ReleaseMissing =
  | "close-the-bag"
  | "take-the-gel-out"
  | "read-it"
  | "read-again-a-day-later"
  | "still-too-damp"
  | "reader-too-coarse"
  | "read-at-closing"
  | "read-after-two-days"
  | "it-came-back"
  | "stay-below-50-longer";

export type WardCaution =
  | "release-by-reading-only"
  | "gel-speaks-first"
  | "reading-is-old"
  | "temperature-moved"
  | "stop-drying-now"
  | "over-dried"
  | "person-releases";

export interface BagState {
  readonly closedSince: number | null;
  readonly gelInside: boolean;
  readonly latest: BagReading | null;
  /** What the bag showed two days after closing, less what it showed at closing. */
  readonly rebound: number | null;
  readonly drying: "go on" | "stop" | "over-dried" | "not known";
  readonly release: { readonly earned: boolean; readonly checks: readonly ReleaseCheck[] };
  readonly cautions: readonly WardCaution[];
}

/** The state at an hour, from what was written down until then. */
export function bagStateFromLog(log: BagLog, now: number): BagState {
  const events = eventsUntil(log.events, now);
  const readings = readingsUntil(log.readings, now);
  const closure = closureOf(events);
  const inside = readings.filter((each) => closure.since !== null && each.hours >= closure.quietSince);
  const rebound = reboundOf(inside, closure.quietSince);
  const latest = inside.at(-1) ?? null;
  const checks = [
    closedCheck(closure),
    gelCheck(closure),
    ...passChecks(inside),
    reboundCheck(inside, closure.quietSince, rebound),
    ...(log.asks48HoursBelow50 ? [floorCheck(readings)] : []),
  ];
  const drying = dryingOf(log.material, latest);
  return {
    closedSince: closure.since,
    gelInside: closure.gelInside,
    latest,
    rebound,
    drying,
    release: { earned: checks.every((check) => check.met), checks },
    cautions: cautionsOf({ closure, latest, inside, drying, now }),
  };
}

/** Of one hour the dampest reading comes last, so that it counts; a bag is opened before gel is touched and closed after. */
const readingsUntil = (readings: readonly BagReading[], now: number): BagReading[] =>
  readings
    .filter((each) => each.hours <= now)
    .sort((a, b) => a.hours - b.hours || a.relHum - b.relHum || errorOf(a) - errorOf(b));

const ORDER_IN_AN_HOUR = ["opened", "gel taken out", "gel put in", "closed"] as const;
const eventsUntil = (events: readonly BagEvent[], now: number): BagEvent[] =>
  events
    .filter((each) => each.hours <= now)
    .sort((a, b) => a.hours - b.hours || ORDER_IN_AN_HOUR.indexOf(a.what) - ORDER_IN_AN_HOUR.indexOf(b.what));

interface Closure {
  readonly since: number | null;
  readonly gelInside: boolean;
  /** Since when nobody opened the bag or touched the gel. */
  readonly quietSince: number;
}

function closureOf(events: readonly BagEvent[]): Closure {
  let since: number | null = null;
  let gelInside = false;
  for (const { what, hours } of events) {
    if (what === "closed") since = hours;
    if (what === "opened") since = null;
    if (what === "gel put in") gelInside = true;
    if (what === "gel taken out") gelInside = false;
  }
  return { since, gelInside, quietSince: events.at(-1)?.hours ?? Number.POSITIVE_INFINITY };
}

const closedCheck = (closure: Closure): ReleaseCheck => ({
  condition: "bag-is-closed",
  met: closure.since !== null,
  missing: closure.since === null ? "close-the-bag" : "",
});

/** Gel holds the air of the bag down while the core is still damp: what is read beside it is the gel. */
const gelCheck = (closure: Closure): ReleaseCheck => ({
  condition: "gel-is-out",
  met: !closure.gelInside,
  missing: closure.gelInside ? "take-the-gel-out" : "",
});

const errorOf = (reading: BagReading): number => reading.error ?? USUAL_READER_ERROR;

/** A reading brought to the warmest of its neighbours: a bag read cold shows too little. */
function warmed(reading: BagReading, all: readonly BagReading[]): number {
  const warmest = Math.max(...all.map((each) => each.dryBulb ?? Number.NEGATIVE_INFINITY));
  const colder = reading.dryBulb === undefined ? 0 : warmest - reading.dryBulb;
  return reading.relHum + (colder > STEADY_KELVIN ? colder * MOST_PER_KELVIN : 0);
}

/** The last readings in a row that pass, the latest last; one above the line breaks the row. */
function passingRow(inside: readonly BagReading[]): readonly BagReading[] {
  const above = inside.findLastIndex((each) => warmed(each, inside) > RELEASE.passRelHum);
  return inside.slice(above + 1);
}

function passChecks(inside: readonly BagReading[]): ReleaseCheck[] {
  const row = passingRow(inside);
  const [first, last] = [row[0], row.at(-1)];
  const latest = inside.at(-1);
  const apart = first && last ? last.hours - first.hours : 0;
  const two: ReleaseCheck = {
    condition: "two-readings-pass",
    met: apart >= RELEASE.hoursApart,
    missing: "",
    ...(latest ? { seen: warmed(latest, inside) } : {}),
    wanted: RELEASE.passRelHum,
  };
  const missing = !latest ? "read-it" : !last ? "still-too-damp" : "read-again-a-day-later";
  return [two.met ? two : { ...two, missing }, errorCheck(row, inside)];
}

function errorCheck(row: readonly BagReading[], inside: readonly BagReading[]): ReleaseCheck {
  const most = Math.max(...row.map((each) => warmed(each, inside) + errorOf(each)));
  const met = row.length > 0 && most <= RELEASE.neverAbove + 1e-9;
  const missing = met ? "" : row.length === 0 ? "read-it" : "reader-too-coarse";
  return {
    condition: "error-leaves-room",
    met,
    missing,
    ...(row.length > 0 ? { seen: most } : {}),
    wanted: RELEASE.neverAbove,
  };
}

function reboundOf(inside: readonly BagReading[], quietSince: number): number | null {
  const first = inside.find((each) => each.hours - quietSince <= RELEASE.atClosingHours);
  const after = inside.filter((each) => each.hours - quietSince >= RELEASE.reboundHours);
  if (!first || after.length === 0) return null;
  return Math.max(...after.map((each) => warmed(each, inside))) - warmed(first, inside);
}

function reboundCheck(
  inside: readonly BagReading[],
  quietSince: number,
  rebound: number | null,
): ReleaseCheck {
  const atClosing = inside.some((each) => each.hours - quietSince <= RELEASE.atClosingHours);
  const met = rebound !== null && rebound <= RELEASE.reboundMost + 1e-9;
  const missing = met
    ? ""
    : rebound !== null
      ? "it-came-back"
      : atClosing
        ? "read-after-two-days"
        : "read-at-closing";
  return {
    condition: "rebound-is-small",
    met,
    missing,
    ...(rebound !== null ? { seen: rebound } : {}),
    wanted: RELEASE.reboundMost,
  };
}

/** Readings below 50 % in a row up to the last one, over 48 hours; gel may lie beside them, as the floor is one of the air. */
function floorCheck(readings: readonly BagReading[]): ReleaseCheck {
  const above = readings.findLastIndex((each) => each.relHum >= RELEASE.floorRelHum);
  const row = readings.slice(above + 1);
  const hours = row.length === 0 ? 0 : (row.at(-1)?.hours ?? 0) - (row[0]?.hours ?? 0);
  const met = hours >= RELEASE.floorHours;
  return {
    condition: "48-hours-below-50",
    met,
    missing: met ? "" : readings.length === 0 ? "read-it" : "stay-below-50-longer",
    seen: hours,
    wanted: RELEASE.floorHours,
  };
}

function dryingOf(material: Spared, latest: BagReading | null): BagState["drying"] {
  if (latest === null) return "not known";
  if (material === "paper") return "go on";
  if (latest.relHum < STOP_DRYING.below) return "over-dried";
  return latest.relHum <= STOP_DRYING.from ? "stop" : "go on";
}

function cautionsOf(seen: {
  closure: Closure;
  latest: BagReading | null;
  inside: readonly BagReading[];
  drying: BagState["drying"];
  now: number;
}): WardCaution[] {
  const { closure, latest, inside, drying, now } = seen;
  const warmth = inside.flatMap((each) => (each.dryBulb === undefined ? [] : [each.dryBulb]));
  const moved = warmth.length > 1 && Math.max(...warmth) - Math.min(...warmth) > STEADY_KELVIN;
  return [
    "release-by-reading-only",
    "person-releases",
    ...when(closure.gelInside, "gel-speaks-first"),
    ...when(latest !== null && now - latest.hours > OLD_READING, "reading-is-old"),
    ...when(moved, "temperature-moved"),
    ...when(drying === "stop", "stop-drying-now"),
    ...when(drying === "over-dried", "over-dried"),
  ];
}

const when = (so: boolean, caution: WardCaution): WardCaution[] => (so ? [caution] : []);
