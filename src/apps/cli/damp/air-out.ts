import {
  type Air,
  type AiringCaution,
  type AirReadings,
  airingAdvice,
  airingHours,
} from "../../../core/physics/air/airing.ts";
import { humidityRatioFromRelHum } from "../../../core/physics/air/moist-air.ts";
import { CAUTIONS } from "../../../core/say/cautions/storage.ts";
import {
  AIRING_CAUTIONS,
  AIRING_TODO,
  airingFigures,
  sayAiringVerdict,
  sayClocks,
} from "../../../core/say/damp/air-out.ts";
import { sayFault, sayRefusal } from "../../../core/say/damp/faults.ts";
import type { LoggerCorrections, LoggerImport } from "../../../edge/intake/loggers/logger-reading.ts";
import { seriesFrom } from "./air-series.ts";
import { type Given, Refusal } from "./given.ts";
import { AIR_OUT_HELP } from "./help-damp.ts";
import { correctionsFrom, type FileRead, LOGGER_OPTIONS, readFile } from "./logger-files.ts";
import { airFrom } from "./quantity.ts";
import { answered, cannot, cautionsOf, type DampCommand, type Report } from "./report.ts";

const OPTIONS = { inside: "text", outside: "text", surface: "text", ...LOGGER_OPTIONS } as const;
/** Longest time a reading stands, h; as the watch has it. */
const FRESH = 6;

/** What is compared: the two airs of one moment, and how often airing would dry where there are files. */
interface Compared {
  readonly inside: Air;
  readonly outside: Air;
  readonly at: number | null;
  readonly hours: ReturnType<typeof airingHours> | null;
  readonly understood: readonly string[];
}

/** Open the windows now, or not: by the water in a kilogram of air, never by relative humidities. */
export const airOut: DampCommand = (...to) =>
  answered({ name: "air-out", help: AIR_OUT_HELP, options: OPTIONS }, to, async (given) => {
    const corrections = correctionsFrom(given);
    const surface = given.has("surface")
      ? given.temperature("surface", {
          low: -30,
          high: 50,
          remedy: "Measure the coldest wall or shelf back.",
        })
      : null;
    const typed = given.has("inside") || given.has("outside");
    const compared = typed ? fromWords(given) : await fromFiles(given, corrections);
    given.settle();
    return reportOf(compared, surface);
  });

function fromWords(given: Given): Compared {
  if (!given.has("inside") || !given.has("outside")) throw cannot("not-both-airs");
  const [inside, outside] = (["inside", "outside"] as const).map((name) => typedAir(given, name)) as [
    Air,
    Air,
  ];
  return { inside, outside, at: null, hours: null, understood: [] };
}

function typedAir(given: Given, name: "inside" | "outside"): Air {
  const text = given.text(name) ?? "";
  const air = airFrom(text);
  if (air !== null && air.dryBulb >= -40 && air.dryBulb <= 60 && air.relHum >= 0.01 && air.relHum <= 1)
    return air;
  given.refuseInWords(
    sayRefusal({
      option: `--${name}`,
      got: text,
      expected: "a temperature, -40 to 60 °C, and a relative humidity, 1 to 100 %",
      remedy: 'Write both in quotes, like "26 C 70 %".',
    }),
  );
  return { dryBulb: 20, relHum: 0.5 };
}

async function fromFiles(given: Given, corrections: LoggerCorrections): Promise<Compared> {
  const [first, second, ...more] = given.files;
  if (first === undefined || second === undefined || more.length > 0)
    throw cannot("not-two-files", given.files.length === 0 ? "none" : given.files.join(", "));
  given.settle();
  const [inside, outside] = [await readFile(first, corrections), await readFile(second, corrections)];
  const faults = [inside, outside].flatMap((read) => (read.ok ? lacks(read.read) : read.faults));
  if (faults.length > 0 || !inside.ok || !outside.ok) throw new Refusal(faults);
  return compare(inside, outside);
}

function lacks({ reading }: LoggerImport): string[] {
  const { file, columns, isHumidityFromDewPoint, place } = reading;
  return [
    ...(columns.temperature === undefined ? [sayFault("no-temperature", file)] : []),
    ...(columns.relHum === undefined && !isHumidityFromDewPoint ? [sayFault("no-humidity", file)] : []),
    ...(place?.isTypicalYear === true ? [sayFault("typical-year", file)] : []),
  ];
}

type Good = Extract<FileRead, { ok: true }>;

function compare(inside: Good, outside: Good): Compared {
  const offsets = [inside.read.reading.offset, outside.read.reading.offset] as const;
  const [ours, theirs] = offsets;
  const areClocksKnown = ours !== null && theirs !== null;
  const [ins, outs] = [readingsOf(inside, 0), readingsOf(outside, areClocksKnown ? (ours - theirs) / 60 : 0)];
  const last = lastTogether(ins, outs);
  if (last === null) throw cannot("no-common-hours", spanOf(inside), spanOf(outside));
  return {
    ...last,
    hours: airingHours(ins, outs),
    understood: [...inside.understood, ...outside.understood, sayClocks(areClocksKnown)],
  };
}

const spanOf = ({ read }: Good): string =>
  `${read.reading.firstAt.replace("T", " ")} to ${read.reading.lastAt.replace("T", " ")}`;

/** On the clock of the inside file. */
function readingsOf({ read }: Good, laterBy: number): AirReadings {
  const { hours, dryBulb, relHum } = seriesFrom(read.series);
  return { hours: hours.map((hour) => hour + laterBy), dryBulb, relHum };
}

/** The last inside reading that has a fresh outside reading beside it. */
function lastTogether(
  inside: AirReadings,
  outside: AirReadings,
): { inside: Air; outside: Air; at: number } | null {
  let out = outside.hours.length - 1;
  for (let i = inside.hours.length - 1; i >= 0; i--) {
    const at = inside.hours[i] ?? Number.NaN;
    while (out >= 0 && ((outside.hours[out] ?? 0) > at || readingAt(outside, out) === null)) out--;
    const [here, there] = [readingAt(inside, i), readingAt(outside, out)];
    if (here && there && at - (outside.hours[out] ?? Number.NaN) <= FRESH)
      return { inside: here, outside: there, at };
  }
  return null;
}

function readingAt({ dryBulb, relHum }: AirReadings, place: number): Air | null {
  const air = { dryBulb: dryBulb[place] ?? Number.NaN, relHum: Math.min(1, relHum[place] ?? Number.NaN) };
  return Number.isNaN(air.dryBulb + air.relHum) ? null : air;
}

function reportOf({ inside, outside, at, hours, understood }: Compared, surface: number | null): Report {
  const advice = airingAdvice(inside, outside, surface);
  const wets = advice.cautions.includes("airing-would-wet-cold-surfaces");
  const ratios = [inside, outside].map((air) => humidityRatioFromRelHum(air.dryBulb, air.relHum)) as [
    number,
    number,
  ];
  return {
    exit: 0,
    sections: [
      {
        understood,
        verdict: sayAiringVerdict(advice, wets),
        todo: AIRING_TODO[advice.windows],
        figures: airingFigures({ inside, outside, ratios, advice, at, hours }),
        cautions: [
          ...cautionsOf(
            advice.cautions.filter((code) => advice.windows === "open" || !ONLY_WHEN_OPEN.includes(code)),
            CAUTIONS,
          ),
          ...cautionsOf(["rain", "dust", "pests", "security"], AIRING_CAUTIONS),
        ],
        data: {
          windows: advice.windows,
          inside,
          outside,
          humidityRatios: { inside: ratios[0], outside: ratios[1] },
          difference: advice.difference,
          error: advice.error,
          relHumIfAllAirChanged: advice.relHumThen,
          ...(hours === null ? {} : { hours: { ...hours, byHourOfDay: Array.from(hours.byHourOfDay) } }),
        },
      },
    ],
  };
}

/** Beside advice to keep shut these would only confuse; rain, dust, pests and security have sentences of their own. */
const ONLY_WHEN_OPEN: readonly AiringCaution[] = [
  "airing-cools-the-room",
  "airing-dries-below-30",
  "airing-not-in-rain-or-dust",
];
