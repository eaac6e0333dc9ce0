/**
 * What the damp commands say: air, air-out, dry, gel, mix, clear-air. Figures go in as the physics has them (fractions, °C, hours, kg)
 * and come out with their units, rounded as coarsely as they are known.
 */
import type { AiringAdvice, AiringHours } from "../physics/air/airing.ts";
import type { MouldWatch } from "../physics/mould/mould-watch.ts";
import type { OutOfRange } from "../physics/out-of-range.ts";

// ---------------------------------------------------------------------------------------------------- numbers

/** With thousands parted: `1,250`. */
const grouped = (n: number): string => n.toLocaleString("en-GB", { maximumFractionDigits: 6 });
/** To so many digits that count: 2 for what is known within a tenth or worse, 3 for what is weighed. */
export const digits = (n: number, count = 2): string => grouped(Number(n.toPrecision(count)));

/** A fraction as whole per cent, as no hygrometer tells more. */
export const percent = (fraction: number): string => `${Math.round(100 * fraction)} %`;
const percentSpan = (low: number, high: number): string =>
  `${Math.round(100 * low)} to ${Math.round(100 * high)} %`;
/** A strength: to a tenth of a per cent where it is not whole. */
const strength = (fraction: number): string => `${Number((100 * fraction).toFixed(1))} %`;
export const degrees = (dryBulb: number): string => `${Number(dryBulb.toFixed(1))} °C`;

/** `25 min`, `7 h`, `36 h`, from two days on `12 days`. */
export function duration(hours: number): string {
  if (hours < 0.995) return `${Math.round(60 * hours)} min`;
  if (hours < 10) return `${Number(hours.toFixed(1))} h`;
  if (hours < 48) return `${Math.round(hours)} h`;
  const days = hours / 24;
  return `${days < 10 ? Number(days.toFixed(1)) : grouped(Math.round(days))} days`;
}
/** Units a span of hours is told in, by its longer end. */
const spanUnit = (hours: number): { unit: string; hours: number } =>
  hours >= 72 ? { unit: "days", hours: 24 } : { unit: "h", hours: 1 };
/** Two ends in one unit, two digits each, nothing finer than an hour: `3 to 9 h`, `12 to 110 days`. */
export function durationSpan(low: number, high: number): string {
  if (high < 1) return "less than an hour";
  const { unit, hours } = spanUnit(high);
  const [first, last] = [low / hours, high / hours].map((n) => (n < 1 ? "less than 1" : digits(n)));
  return `${first === last ? last : `${first} to ${last}`} ${unit}`;
}
/** One span of hours, two digits. */
export const about = (hours: number): string => durationSpan(hours, hours);

/** kg as `120 g` or `1.2 kg`, two digits. */
export const gelGrams = (kg: number): string => (kg < 0.9995 ? `${digits(1000 * kg)} g` : `${digits(kg)} kg`);
const weighed = (grams: number): string =>
  grams < 1000 ? `${digits(grams, 3)} g` : `${digits(grams / 1000, 4)} kg`;
const measured = (millilitres: number): string =>
  millilitres < 1000 ? `${digits(millilitres, 3)} mL` : `${digits(millilitres / 1000, 3)} L`;
const litres = (cubicMetres: number): string => `${digits(1000 * cubicMetres)} L`;
/** Whole minutes, up; from three hours on `3 h 40 min`. */
function minutes(n: number): string {
  const whole = Math.ceil(n - 1e-9);
  if (whole < 180) return `${whole} min`;
  return `${Math.floor(whole / 60)} h${whole % 60 === 0 ? "" : ` ${whole % 60} min`}`;
}

/** A moment, hours since 1970-01-01: `12 June 2026, 14:00`. */
export function moment(hours: number): string {
  const at = new Date(Math.round(hours * 60) * 60_000);
  const day = new Intl.DateTimeFormat("en-GB", { dateStyle: "long", timeZone: "UTC" }).format(at);
  return `${day}, ${at.toISOString().slice(11, 16)}`;
}

// ---------------------------------------------------------------------------------------------------- heads and faults

export const DAMP_HEADS = { todo: "Do now", figures: "Figures", cautions: "Mind" } as const;
const LOCAL = "Follow local rules and licensed practice.";

/** `--start: it is "180"; expected 20 to 98 %. Read the closed bag again.` */
export function sayRefusal(of: {
  option: string;
  got: string | undefined;
  expected: string;
  remedy: string;
}): string {
  const is = of.got === undefined ? "it is missing" : `it is "${of.got}"`;
  return `${of.option}: ${is}; expected ${of.expected}. ${of.remedy}`;
}

/** A figure beyond the range in which a model was shown to hold. */
export function sayOutOfRange({ what, got, unit, low, high }: OutOfRange): string {
  const isFraction = unit === "1" && /humidity|strength|share/.test(what);
  const value = (n: number): string =>
    isFraction ? percent(n) : `${digits(n, 3)}${unit === "1" ? "" : ` ${unit}`}`;
  const span = `${low <= Number.MIN_VALUE ? "above 0" : value(low)} to ${Number.isFinite(high) && high < 1e300 ? value(high) : "any"}`;
  return `This cannot be worked out: ${what} is ${value(got)}, expected ${span}. Check what was typed and its unit.`;
}

export const sayOptionFault = (command: string, message: string): string =>
  `${message.split(". ")[0]?.replace(/\.$/, "") ?? message}. The options are shown by: npx leafward ${command} --help`;

const FAULTS = {
  "no-logger-file": () =>
    "Which file? Give one logger file or more, for example: npx leafward air upstairs-store.csv",
  "no-such-file": (file: string) => `${file}: there is no such file. Check its name and folder.`,
  "not-two-files": (got: string) =>
    `This needs the inside file and the outside file, in this order; it got ${got}. Or type both airs: --inside "26 C 70 %" --outside "31 C 60 %".`,
  "not-both-airs": () => 'Give both --inside and --outside, each as "26 C 70 %".',
  "no-readings-left": (file: string, span: string) =>
    `${file}: no reading lies between --from and --to; the file runs from ${span}. Choose days inside it.`,
  "no-temperature": (file: string) =>
    `${file}: it has no temperature, and mould cannot be judged by humidity alone. Choose the column, for example --column temperature=2.`,
  "no-humidity": (file: string) =>
    `${file}: it has no humidity. Choose the column, for example --column humidity=3.`,
  "surface-apart": (file: string) =>
    `${file}: no surface temperature lies within six hours before any reading of the air. Check that both files are of the same days.`,
  "no-common-hours": (inside: string, outside: string) =>
    `The two files share no hours, so they cannot be compared: inside ${inside}; outside ${outside}. Take an outside file of the same days.`,
  "typical-year": (file: string) =>
    `${file} is a typical year put together from several, so its days are not these days: it cannot say whether to open the windows now. Take an outside logger, or type --outside "31 C 60 %".`,
  "plot-not-written": (file: string, reason: string) =>
    `The plot could not be written to ${file} (${reason}). Choose a folder that is there.`,
  "gel-without-bag": () =>
    "With --gel also say how large the bag is, for example --bag 12L: the air in it decides how fast the gel works.",
  "no-room-or-gel": () =>
    "Where does it dry? Say --room 50 (the room's humidity in %), or --gel 500g --bag 12L.",
  "bag-too-small": (bag: string, item: string) =>
    `--bag: it is ${bag}, but the item alone fills ${item}. Give the size of the bag as closed, item included.`,
  "leaves-not-fanned": () =>
    "--fanned: palm leaves and boards are not fanned, as prising them apart splits them. Leave it out.",
  "readings-need-order": (option: string) =>
    `--${option}: the days must rise from the first to the last, each once. Write them in order, for example --${option} 0:80,3:72.`,
  "first-reading-missing": () =>
    "No reading of the closed bag from the start: give it with --start 80 or as the first of --readings, for example --readings 0:80,3:72.",
} as const satisfies Record<string, (...words: string[]) => string>;

export const sayFault = (code: keyof typeof FAULTS, ...words: string[]): string =>
  (FAULTS[code] as (...all: string[]) => string)(...words);

// ---------------------------------------------------------------------------------------------------- air

const named = (name: string): string => `'${name}'`;

/** The verdict on one series; what is going on now before what was. */
export function sayAirVerdict(name: string, watch: MouldWatch): string {
  const { state, stateNow } = watch;
  if (state === "unknown")
    return `Nothing can be said of mould in ${named(name)}: no two readings lie within six hours of each other.`;
  if (state === "quiet")
    return `No lamp is lit in ${named(name)}, and that is no all-clear: ${quietBecause(watch)}`;
  const why = airReason(watch);
  if (airGrade(watch) === "watch") {
    if (!watch.damp.isLit && state === "act")
      return `Watch ${named(name)}, damp enough for mould for short spells: ${why}`;
    return watch.damp.isLitNow
      ? `Watch ${named(name)}, it is damp now: ${why}`
      : `Watch ${named(name)}: ${why} At the end of the file it was drier.`;
  }
  return stateNow === "act"
    ? `Mould can be growing in ${named(name)}: ${why}`
    : `Mould can have grown in ${named(name)}: ${why} At the end of the file it was drier.`;
}

/** How urgent it is: as the watch has it, but for less than two days in all above the critical humidity without any growth, a watch.
 *  Common practice, no source. */
export const airGrade = (watch: MouldWatch): MouldWatch["state"] =>
  watch.state === "act" && isShort(watch) ? "watch" : watch.state;
const isShort = ({ index, critical }: MouldWatch): boolean => index.highest < 1 && critical.hours < 48;

const quietBecause = ({ damp }: MouldWatch): string =>
  damp.longest
    ? `it was at 65 % or more for ${duration(damp.longest.hours)} at the longest, and two days are needed.`
    : "it was never at 65 % or more.";

/** The strongest reason, with figures. */
function airReason({ index, critical, damp, dose }: MouldWatch): string {
  if (index.highest >= 3)
    return `the mould index reached ${index.highest.toFixed(1)} of 6; from 3 on growth is seen by eye${index.firstVisible === null ? "" : `, first about ${moment(index.firstVisible)}`}.`;
  if (index.highest >= 1)
    return `the mould index reached ${index.highest.toFixed(1)} of 6; from 1 on growth has begun, seen with a microscope.`;
  const dampRun = damp.isLit && damp.longest ? duration(damp.longest.hours) : null;
  if (critical.isLit && critical.longest && (critical.hours >= 48 || dampRun === null))
    return `it was damper than mould needs for ${duration(critical.hours)} in all, ${duration(critical.longest.hours)} at the longest (from ${moment(critical.longest.from)})${dampRun === null ? "" : `, and at 65 % or more for ${dampRun} without a break`}.`;
  if (dampRun !== null && damp.longest)
    return `it stood at 65 % or more for ${dampRun} without a break from ${moment(damp.longest.from)}, long enough for the moulds of sized paper, leather and dirt${critical.isLit ? `, and was damper still for ${duration(critical.hours)} in all` : ""}.`;
  return `the dose model counts ${digits(dose.highest)} days of full damp; 17 are enough.`;
}

export const AIR_TODO: Readonly<Record<MouldWatch["state"], readonly string[]>> = {
  act: [
    "Look at the objects today, the coldest corner first, in mask and gloves; open and touch as little as you can.",
    "Bring the air below 60 %: dehumidify, or open windows only when that dries (npx leafward air-out says when).",
    "Bag what is damp or mouldy and take it to the Ward; keep people without protection out.",
    "Find where the damp comes from: a leak, a cold wall, the ground, wet things brought in.",
  ],
  watch: [
    "Look at the objects this week, the coldest corner first, in mask and gloves.",
    "Bring the air below 60 %: dehumidify, or open windows only when that dries (npx leafward air-out says when).",
    "Lay a second logger at the coldest wall or shelf back, or give its temperature with --surface-offset -3.",
  ],
  quiet: ["Leave the logger where it is coldest and dampest, and look at the objects at every round."],
  unknown: [
    "Check that the logger runs and how it was exported; set it to a reading every hour or less.",
    "Look at the objects meanwhile, the coldest corner first.",
  ],
};

const GROWTH_CLASS_WORDS: Readonly<Record<MouldWatch["index"]["growthClass"], string>> = {
  "very-sensitive": "very sensitive: leather, paste, dirty or overgrown things",
  sensitive: "sensitive: paper, board, wood",
  "medium-resistant": "medium resistant",
  resistant: "resistant",
};

const lit = (isLit: boolean, isLitNow: boolean): string =>
  isLitNow ? "LIT NOW" : isLit ? "was lit, not now" : "not lit";

export interface AirFigures {
  readonly watch: MouldWatch;
  readonly above60: number;
  readonly above65: number;
  readonly knownHours: number;
  readonly warmth: { readonly low: number; readonly mean: number; readonly high: number };
  readonly damp: { readonly low: number; readonly mean: number; readonly high: number };
  readonly judgedAt: "air" | "surface file" | "surface offset";
  readonly gapHours: number;
  readonly gapCount: number;
}

export function airFigures(of: AirFigures): { label: string; value: string }[] {
  const { watch, knownHours } = of;
  const { damp, critical, index, dose } = watch;
  const share = (hours: number): string =>
    hours <= 0
      ? `never in ${duration(knownHours)}`
      : `${duration(hours)} of ${duration(knownHours)} (${percent(hours / knownHours)})`;
  const longest = (run: MouldWatch["damp"]["longest"]): string =>
    run === null ? "" : `; longest ${duration(run.hours)} from ${moment(run.from)}`;
  return [
    {
      label: "Lamp 1, damp",
      value: `${lit(damp.isLit, damp.isLitNow)}: 65 % or more for 48 h${longest(damp.longest)}`,
    },
    {
      label: "Lamp 2, critical",
      value: `${lit(critical.isLit, critical.isLitNow)}: damper than the readiest surfaces need at that warmth${longest(critical.longest)}`,
    },
    {
      label: "Lamp 3, index",
      value: `${lit(index.isLit, index.isLitNow)}: mould index, 1 begun and 3 visible of 6; highest ${index.highest.toFixed(1)}, at the end ${index.atEnd.toFixed(1)} (${GROWTH_CLASS_WORDS[index.growthClass]})`,
    },
    {
      label: "Second opinion",
      value: `dose model: ${dose.highest < 0.05 ? "none" : `${digits(dose.highest)} days of full damp`}; growth is expected at 17`,
    },
    { label: "60 % or more", value: share(of.above60) },
    { label: "65 % or more", value: share(of.above65) },
    ...(watch.furthest === null ? [] : [{ label: "Worst moment", value: worst(watch.furthest) }]),
    {
      label: "Humidity",
      value: `${percentSpan(of.damp.low, of.damp.high)}, mean ${percent(of.damp.mean)}${of.judgedAt === "air" ? "" : ", of the air"}`,
    },
    {
      label: "Temperature",
      value: `${of.warmth.low.toFixed(1)} to ${of.warmth.high.toFixed(1)} °C, mean ${of.warmth.mean.toFixed(1)} °C`,
    },
    { label: "Judged at", value: JUDGED[of.judgedAt] },
    {
      label: "Gaps",
      value:
        of.gapCount === 0
          ? "none longer than 6 h"
          : `${grouped(of.gapCount)} longer than 6 h, ${duration(of.gapHours)} in all without readings`,
    },
  ];
}

const JUDGED: Readonly<Record<AirFigures["judgedAt"], string>> = {
  air: "the air where the logger lay",
  "surface file": "the surface, by its own file, where it is colder than the air",
  "surface offset": "the surface, by the offset given, where it is colder than the air",
};
const worst = (at: NonNullable<MouldWatch["furthest"]>): string =>
  `${percent(at.relHum)} at ${degrees(at.temperature)} on ${moment(at.at)}`;

export const saySurface = (used: number, all: number): string =>
  used === all
    ? "A surface temperature was found for every reading of the air."
    : `A surface temperature was found for ${grouped(used)} of ${grouped(all)} readings of the air; the others count as missing.`;

export const sayPart = (from: number, to: number): string =>
  `Judged is the part from ${moment(from)} to ${moment(to)}.`;

export const sayWarmerSurface = (offset: number): string =>
  `--surface-offset ${offset}: a surface warmer than the air is never damper than it, so this changes nothing. For a surface 3 K colder write --surface-offset -3.`;

export const sayPlotWritten = (file: string): string => `The plot was written to ${file}.`;

const STATE_WORDS: Readonly<Record<MouldWatch["state"], string>> = {
  act: "act",
  watch: "watch",
  quiet: "no lamp",
  unknown: "not known",
};

/** The closing table, the worst first. */
export function airComparison(
  rows: readonly {
    name: string;
    watch: MouldWatch;
    above65: number;
    knownHours: number;
    meanDamp: number;
    meanWarmth: number;
  }[],
): string[] {
  const cells = rows.map(({ name, watch, above65, knownHours, meanDamp, meanWarmth }) => [
    name,
    STATE_WORDS[airGrade(watch)],
    STATE_WORDS[airGradeNow(watch)],
    knownHours > 0 ? percent(above65 / knownHours) : "-",
    watch.damp.longest === null ? "-" : duration(watch.damp.longest.hours),
    watch.index.highest.toFixed(1),
    Number.isNaN(meanDamp) ? "-" : percent(meanDamp),
    Number.isNaN(meanWarmth) ? "-" : `${meanWarmth.toFixed(1)} °C`,
  ]);
  const heads = ["", "at worst", "at the end", "65 % or more", "longest", "index", "mean RH", "mean T"];
  const widths = heads.map((head, i) => Math.max(head.length, ...cells.map((row) => row[i]?.length ?? 0)));
  const line = (row: readonly string[]): string =>
    `  ${row.map((cell, i) => (i < 3 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0))).join("  ")}`.trimEnd();
  const [first, last] = [rows[0], rows.at(-1)];
  const worstFirst =
    first && last && isWorse(first.watch, last.watch) ? ` ${named(first.name)} needs you first.` : "";
  return [`Side by side, the worst first.${worstFirst}`, line(heads), ...cells.map(line)];
}

/** At the end it is never graded above the whole. */
const airGradeNow = (watch: MouldWatch): MouldWatch["state"] =>
  watch.stateNow === "act" ? airGrade(watch) : watch.stateNow;

const RANK: Readonly<Record<MouldWatch["state"], number>> = { act: 3, watch: 2, unknown: 1, quiet: 0 };
/** For sorting, the worst first: state, then state at the end, index, and time above the critical humidity. */
export const compareWatches = (a: MouldWatch, b: MouldWatch): number =>
  RANK[airGrade(b)] - RANK[airGrade(a)] ||
  RANK[b.stateNow] - RANK[a.stateNow] ||
  b.index.highest - a.index.highest ||
  b.critical.hours - a.critical.hours ||
  b.damp.hours - a.damp.hours;
const isWorse = (a: MouldWatch, b: MouldWatch): boolean => compareWatches(a, b) < 0 && RANK[a.state] > 0;

/** The option that settles what a file left open. */
export const DOUBT_OPTIONS: Readonly<Record<string, string>> = {
  "logger-date-order": "--date-order dmy, mdy or ymd",
  "logger-date-order-steps": "--date-order dmy, mdy or ymd",
  "logger-dates-mixed": "--date-order dmy, mdy or ymd",
  "logger-unit-temperature": "--unit C or --unit F",
  "logger-unit-humidity": "--unit % or --unit fraction",
  "logger-numbers-mixed": "--decimal , or --decimal .",
  "logger-several-sensors": "--sensor and its name",
  "logger-several-times": "--column time= and its heading",
  "logger-no-headings": "--column temperature= and humidity= with their numbers, 0 being the first",
  "logger-no-values": "--column temperature= and humidity= with their headings or numbers, 0 being the first",
  "logger-no-readings": "--column time= with its heading, or --date-order",
  "logger-no-date": "--column date= with its heading",
  "logger-zones-in-cells": "--offset +02:00",
  "logger-summer-time": "--summer-time out, or none if the clock kept one time all year",
};
export const sayDoubtOption = (option: string): string => `Settle it with ${option}.`;

/** What the picture shows, for who cannot see it. */
export const sayPlotText = (
  name: string,
  from: number,
  to: number,
  verdict: string,
  figures: AirFigures,
): string =>
  `Three panels over one time axis, ${moment(from)} to ${moment(to)}, of ${named(name)}: temperature (${figures.warmth.low.toFixed(1)} to ${figures.warmth.high.toFixed(1)} °C), relative humidity (${percentSpan(figures.damp.low, figures.damp.high)}) with lines at 60 and 65 %, and the mould index (highest ${figures.watch.index.highest.toFixed(1)} of 6); between them three bands show when each lamp was lit. ${verdict}`;
export const PLOT_WORDS = {
  title: (name: string): string => `Mould watch: ${name}`,
  temperature: "Temperature, °C",
  relHum: (atSurface: boolean): string => `Relative humidity${atSurface ? " at the surface" : ""}, %`,
  lamps: [
    "Lamp 1, damp: 65 % or more for 48 h",
    "Lamp 2, critical: damper than mould needs",
    "Lamp 3, index: 1 or more",
  ],
  index: "Mould index, 0 to 6",
  visible: "3 visible",
  begun: "1 begun",
  time: (from: number, to: number): string =>
    `Time, ${moment(from)} to ${moment(to)} (local standard time of the logger)`,
} as const;

// ---------------------------------------------------------------------------------------------------- air-out

const airWords = ({ dryBulb, relHum }: { dryBulb: number; relHum: number }, ratio: number): string =>
  `${degrees(dryBulb)}, ${percent(relHum)}: ${(1000 * ratio).toFixed(1)} g of water in a kilogram of air`;

export function sayAiringVerdict(advice: AiringAdvice, wets: boolean): string {
  const grams = Math.abs(1000 * advice.difference).toFixed(1);
  if (wets) return "Keep the windows shut: the air outside would leave dew on the coldest surface inside.";
  if (advice.windows === "open")
    return `Open the windows now: each kilogram of air that is changed carries ${grams} g of water out.`;
  if (advice.windows === "keep-shut")
    return `Keep the windows shut: each kilogram of outside air would bring ${grams} g of water in.`;
  return `It makes no sure difference: inside and outside differ by ${grams} g of water in a kilogram of air, within what the readers may err. Leave the windows shut.`;
}

export const AIRING_TODO: Readonly<Record<AiringAdvice["windows"], readonly string[]>> = {
  open: [
    "Open opposite windows wide for 10 to 20 minutes while someone stays, then shut them and read the loggers again.",
    "Lift or cover what lies loose, and keep mouldy things bagged: a draught carries spores.",
  ],
  "keep-shut": [
    "Keep windows and doors shut, and dry with a dehumidifier if the room must come down.",
    "Ask again when the weather changes, or at another hour of the day.",
  ],
  unsure: ["Ask again when the weather has changed; dry with a dehumidifier meanwhile."],
};

export const AIRING_CAUTIONS: Readonly<Record<"rain" | "dust" | "pests" | "security", string>> = {
  rain: "Never in rain, mist or snow, nor with sprinklers or wet scaffolding before the window.",
  dust: "Not in dust, sand, smoke, pollen or heavy traffic: what settles on the items costs more hours than the damp.",
  pests: "Screens on every open window, and shut before dusk: insects, rodents, birds and bats come in.",
  security: "Somebody stays in the room the whole time; shut and lock afterwards, and keep escape ways free.",
};

export function airingFigures(of: {
  inside: { dryBulb: number; relHum: number };
  outside: { dryBulb: number; relHum: number };
  ratios: readonly [number, number];
  advice: AiringAdvice;
  at: number | null;
  hours: AiringHours | null;
}): { label: string; value: string }[] {
  const { advice, hours } = of;
  return [
    ...(of.at === null ? [] : [{ label: "Read at", value: moment(of.at) }]),
    { label: "Inside", value: airWords(of.inside, of.ratios[0]) },
    { label: "Outside", value: airWords(of.outside, of.ratios[1]) },
    {
      label: "Difference",
      value: `outside carries ${Math.abs(1000 * advice.difference).toFixed(1)} ± ${(1000 * advice.error).toFixed(1)} g/kg ${advice.difference >= 0 ? "less" : "more"} (readers 3 % off)`,
    },
    {
      label: "If all air changed",
      value: `the room would come to ${advice.relHumThen > 1 ? "100 % and dew" : percent(advice.relHumThen)} at its present warmth`,
    },
    ...(hours === null || Number.isNaN(hours.hoursAWeek)
      ? []
      : [
          {
            label: "Airing dries",
            value: `${Math.round(hours.hoursAWeek)} of 168 hours a week, from ${duration(hours.comparedHours)} with both loggers`,
          },
          { label: "Best hours", value: bestHours(hours.byHourOfDay) },
        ]),
  ];
}

/** The hours of the day in which airing dries at least half the time, as spans. */
function bestHours(shares: Float64Array): string {
  const isGood = Array.from(shares, (share) => share >= 0.5);
  if (isGood.every(Boolean)) return "any hour of the day, more often than not";
  const starts = isGood.flatMap((good, hour) => (good && !isGood[(hour + 23) % 24] ? [hour] : []));
  const clock = (hour: number): string => `${String(hour % 24).padStart(2, "0")}:00`;
  const spans = starts.map((start) => {
    let end = start;
    while (isGood[end % 24]) end++;
    return `${clock(start)} to ${clock(end)}`;
  });
  return spans.length === 0 ? "none in which it dries more often than not" : spans.join(" and ");
}

export const sayClocks = (same: boolean): string =>
  same
    ? "Both clocks were put to one time by the offsets in the files."
    : "The files do not both say how far their clocks are ahead of UTC: they were taken to show the same time (--offset +02:00 sets both).";

// ---------------------------------------------------------------------------------------------------- dry

export const DRY_KINDS = ["book", "file", "palm-leaf", "leather-board", "loose-leaves"] as const;
export type DryKind = (typeof DRY_KINDS)[number];
const DRY_NAMES: Readonly<Record<DryKind, string>> = {
  book: "a closed book",
  file: "a closed file of loose papers",
  "palm-leaf": "a bundle of palm leaves",
  "leather-board": "a leather-covered board",
  "loose-leaves": "single leaves with air on both sides",
};
const FANNED: Readonly<Record<"book" | "file", string>> = {
  book: "a book stood open and fanned",
  file: "a file loosened into sheaves",
};

export interface DryCase {
  readonly kind: DryKind;
  readonly fanned: boolean;
  /** m: height, width, thickness. */
  readonly size: readonly [number, number, number];
  readonly start: number;
  readonly want: number;
  readonly dryBulb: number;
  readonly room: number;
  readonly isRoomAssumed: boolean;
  readonly gel: { readonly mass: number; readonly bag: number } | null;
}

export const dryThing = ({ kind, fanned }: DryCase): string =>
  fanned && (kind === "book" || kind === "file") ? FANNED[kind] : DRY_NAMES[kind];

export function sayDryCase(of: DryCase): string {
  const size = of.size.map((metres) => digits(1000 * metres, 3)).join(" × ");
  const place = of.gel
    ? `in a closed bag of ${litres(of.gel.bag)} with ${gelGrams(of.gel.mass)} of dry gel, in a room at ${percent(of.room)}${of.isRoomAssumed ? " (assumed; --room says otherwise)" : ""}`
    : `in a room at ${percent(of.room)}`;
  return `I took it as ${dryThing(of)}, ${size} mm, at ${percent(of.start)} in its closed bag, drying to ${percent(of.want)} at ${degrees(of.dryBulb)} ${place}.`;
}

/** @param band hours; an end null: not within three years */
export function sayDryVerdict(
  of: DryCase,
  band: { low: number; usual: number | null; high: number | null },
): string {
  const to = `a reading of ${percent(of.want)}`;
  if (band.usual === null)
    return `It may never get down to ${to} in this place: only if damp moves more easily than usual, then from ${about(band.low)} on.`;
  if (band.high === null)
    return `It takes ${about(band.low)} or more until ${to}, likeliest ${about(band.usual)}, and may take more than three years.`;
  return band.high < 1
    ? `It takes less than an hour until ${to}: look then, and release by readings only.`
    : `It takes ${durationSpan(band.low, band.high)} until ${to}, likeliest ${about(band.usual)}: look then, and release by readings only.`;
}

export const sayAlreadyThere = (of: DryCase): string =>
  `It shows ${percent(of.start)}, which is ${percent(of.want)} or less already: read the closed bag twice, a day apart, before anything is released.`;
export const sayNeverReached = (of: DryCase, rest: number): string =>
  of.gel
    ? `It will not get down to ${percent(of.want)}: with this gel the bag comes down to about ${percent(rest)} and no further.`
    : `It will never get down to ${percent(of.want)} in a room at ${percent(of.room)}.`;

export const DRY_TODO = {
  look: (of: DryCase): string =>
    of.gel
      ? "Take the gel out and close the bag two days before each reading that is to count."
      : "Close it in a bag with a reader a day before each reading that is to count.",
  readings: (): string =>
    "Read or weigh it every few days and give that with --readings and --weighings: the band narrows with each.",
  fan: (): string =>
    "If it may be stood open, fan it in moving air apart from mould work: days instead of weeks (try --fanned).",
  drierRoom: (): string => "Bring it into a drier room, or use gel: npx leafward gel says how much.",
  moreGel: (): string =>
    "More gel, or fresh gel in several changes: npx leafward gel says how much it bears.",
  rest: (): string =>
    "Was the bag closed for longer, or shorter, before the readings? Say so with --rest: after a day it shows the outside of a thick item, not its core.",
  mould: (): string =>
    "It is damp enough for mould while it waits: dry it first of all, look at it daily, and ask a conservator about freezing what cannot be dried within two days.",
} as const;

export function dryFigures(of: {
  fast: number | null;
  usual: number | null;
  slow: number | null;
  spread: number;
  water: number;
  dryMass: number;
  after: readonly { days: number; relHum: number }[];
  lowest: number;
}): { label: string; value: string }[] {
  const time = (hours: number | null): string => (hours === null ? "more than three years" : about(hours));
  return [
    ...(of.fast === null
      ? []
      : [
          {
            label: "Time",
            value: `fast ${time(of.fast)}, usual ${time(of.usual)}, slow ${time(of.slow)} (damp moves ${of.spread} times as easily or hardly as assumed)`,
          },
        ]),
    { label: "Water to lose", value: `${gelGrams(of.water)} from ${digits(of.dryMass)} kg of dry matter` },
    ...of.after.map(({ days, relHum }) => ({
      label: `After ${about(24 * days)}`,
      value: `a rested closed bag would show about ${percent(relHum)}`,
    })),
    { label: "At the lowest", value: `about ${percent(of.lowest)} within three years` },
  ];
}

export function sayReadyBand(band: { p10: number; p50: number; p90: number }, now: number): string {
  const day = (hours: number): string => String(Math.round(hours / 24));
  const left = durationSpan(Math.max(0, band.p10 - now), Math.max(0, band.p90 - now));
  return `Two readings could first pass between day ${day(band.p10)} and day ${day(band.p90)}, likeliest about day ${day(band.p50)}: ${left} from the last look.`;
}
export const sayReadyNow = (): string =>
  "By readings and model two readings could pass now: read the closed bag twice, a day apart.";
export const sayNoDate = (): string => "No date can be known yet.";
export function readyFigures(of: {
  band: { p10: number; p50: number; p90: number } | null;
  isForPlanning: boolean;
  lossBehind: number | null;
  permeability: { p10: number; p50: number; p90: number } | null;
  seen: number;
  leftOut: number;
  byTail: number | null;
}): { label: string; value: string }[] {
  const day = (hours: number): string =>
    Number.isFinite(hours) ? `day ${(hours / 24).toFixed(hours < 240 ? 1 : 0)}` : "not within three years";
  const { band, permeability } = of;
  return [
    ...(band === null
      ? []
      : [
          {
            label: of.isForPlanning ? "For planning only" : "Ready",
            value: `P10 ${day(band.p10)}, P50 ${day(band.p50)}, P90 ${day(band.p90)}`,
          },
        ]),
    ...(of.lossBehind === null ? [] : [{ label: "Way behind it", value: percent(of.lossBehind) }]),
    ...(permeability === null
      ? []
      : [
          {
            label: "Ease of damp",
            value: `${digits(permeability.p50)} times what was assumed (${digits(permeability.p10)} to ${digits(permeability.p90)})`,
          },
        ]),
    { label: "Looks used", value: `${of.seen}${of.leftOut > 0 ? `, and ${of.leftOut} left out` : ""}` },
    ...(of.byTail === null ? [] : [{ label: "By the scale alone", value: day(of.byTail) }]),
  ];
}
export const sayRest = (hours: number): string =>
  `I took it that the item lay open in the room, and closed in a bag for the ${duration(hours)} before each reading (--rest says otherwise).`;

// ---------------------------------------------------------------------------------------------------- gel

export function sayGelVerdict(of: {
  charges: readonly { readonly dryMass: number; readonly relHumAfter: number }[];
  to: number;
  low: number;
  high: number;
  isReached: boolean;
  conditioned: number | null;
}): string {
  const fresh = of.conditioned === null ? "fresh dry gel" : `gel that was left at ${percent(of.conditioned)}`;
  const [first] = of.charges;
  if (first === undefined) return "No gel is needed: the bag rests at the wanted humidity already.";
  const total = of.charges.reduce((sum, { dryMass }) => sum + dryMass, 0);
  if (!of.isReached)
    return `Gel alone will not do: after ${of.charges.length} changes the bag would still rest at ${percent(of.charges.at(-1)?.relHumAfter ?? 0)}.`;
  if (of.charges.length === 1)
    return `Put in ${gelGrams(first.dryMass)} of ${fresh}: the bag then comes to rest at about ${percent(of.to)} (${percentSpan(of.low, of.high)}).`;
  return `It takes ${of.charges.length} changes of gel, ${gelGrams(first.dryMass)} of ${fresh} at the first and never more than it bears at one time, ${gelGrams(total)} in all, to come to rest at about ${percent(of.to)}.`;
}

export const GEL_TODO = {
  apart: (): string =>
    "Lay the gel in a perforated box or behind tissue, never touching the item; weigh it, date the bag, put a reader in.",
  change: (): string =>
    "Leave each charge until the reader stands still for two days, then change it for the next.",
  read: (): string =>
    "When the reader shows the wanted humidity take the gel out, close the bag, and read after two days: only that counts.",
  noGel: (): string => "Open and fan the item, or dry the air of a separate room: npx leafward dry compares.",
  condition: (floor: number): string =>
    `Gel left in air of ${percent(Math.max(floor, 0.45))} until it gains no more cannot dry the item too far: use it if nobody can look daily (--conditioned ${Math.round(100 * Math.max(floor, 0.45))}).`,
} as const;

export function gelFigures(of: {
  dryMass: number;
  water: number;
  gelMass: number;
  mostGelMass: number;
  startContent: number;
  floor: number;
  charges: readonly { readonly dryMass: number; readonly relHumAfter: number }[];
  packets: { readonly count: number; readonly mass: number; readonly changes: number };
  din: { readonly units: number; readonly days: number };
  oven: {
    readonly low: number;
    readonly high: number;
    readonly hours: { readonly low: number; readonly high: number };
  };
}): { label: string; value: string }[] {
  const most = Number.isFinite(of.mostGelMass)
    ? `${gelGrams(of.mostGelMass)}, so that even gel that holds 15 % more leaves it at ${percent(of.floor)} or above`
    : `no limit: gel of that humidity cannot bring it below ${percent(of.floor)}`;
  return [
    { label: "Water to take up", value: `${gelGrams(of.water)} from ${digits(of.dryMass)} kg of dry matter` },
    { label: "All at once", value: `${gelGrams(of.gelMass)} ± 15 % reach the wanted humidity` },
    { label: "Most at one time", value: most },
    ...(of.charges.length < 2 ? [] : of.charges).slice(0, MOST_CHARGES_SHOWN).map((charge, i) => ({
      label: `Charge ${i + 1}`,
      value: `${gelGrams(charge.dryMass)}, comes to rest at ${percent(charge.relHumAfter)}`,
    })),
    ...(of.charges.length > MOST_CHARGES_SHOWN
      ? [
          {
            label: "and so on",
            value: `${of.charges.length} charges, the last to ${percent(of.charges.at(-1)?.relHumAfter ?? 0)}`,
          },
        ]
      : []),
    {
      label: "Packets",
      value:
        of.packets.count > 0
          ? `${of.packets.count} of ${gelGrams(of.packets.mass)} at one time${of.packets.changes > 1 ? `, changed ${of.packets.changes - 1} times` : ""}`
          : `one of ${gelGrams(of.packets.mass)} is more than the item bears: use loose gel or smaller packets`,
    },
    {
      label: "DIN 55474 units",
      value: `${Math.ceil(of.din.units - 1e-9)} for ${of.din.days} days, the item's own water counted in`,
    },
    {
      label: "Drying gel again",
      value: `${of.oven.low} to ${of.oven.high} °C for ${of.oven.hours.low} to ${of.oven.hours.high} h, until two weighings an hour apart differ by less than half a per cent`,
    },
  ];
}
const MOST_CHARGES_SHOWN = 6;

export const sayGelCase = (of: {
  material: string;
  mass: number;
  from: number;
  to: number;
  dryBulb: number;
  bag: number;
  isBagAssumed: boolean;
  floor: number;
  conditioned: number | null;
  days: number;
}): string =>
  `I took it as ${digits(of.mass, 3)} kg of ${of.material} at ${percent(of.from)}, to come down to ${percent(of.to)} and never below ${percent(of.floor)}, at ${degrees(of.dryBulb)}, with ${litres(of.bag)} of air in the bag${of.isBagAssumed ? " (assumed; --bag says otherwise)" : ""}${of.days > 0 ? `, ${of.days} days of leak through the film counted` : ""}.`;

// ---------------------------------------------------------------------------------------------------- mix

export interface MixCase {
  readonly want: number;
  readonly stock: number;
  /** mL */
  readonly volume: number;
  readonly dryBulb: number;
}
export const sayMixVerdict = (
  of: MixCase,
  recipe: { stockMass: number; waterMass: number; stockVolume: number },
): string =>
  `Weigh ${weighed(recipe.stockMass)} of the ${strength(of.stock)} alcohol and add ${weighed(recipe.waterMass)} of clean water: that gives ${measured(of.volume)} of ${strength(of.want)} by volume. Without a balance: measure ${measured(recipe.stockVolume)} of the alcohol and fill up with water to ${measured(of.volume)}.`;

export const MIX_TODO = {
  place: (): string =>
    "Work at an open window or under extraction, away from flame, hot lamps, switches and running motors; gloves and goggles on.",
  weigh: (grams: number, perPercent: number): string =>
    `Weigh 100 mL of the finished solution: it must weigh ${grams.toFixed(1)} g; each ${perPercent.toFixed(2)} g more means 1 % weaker.`,
  label: (of: MixCase): string =>
    `Label the bottle at once: "ethanol ${strength(of.want)} in water, highly flammable", the date and your name; half a litre at most at each bench.`,
  out: (millilitres: number, room: string): string =>
    `Have no more than ${measured(Number(millilitres.toPrecision(2)))} of it open at one time in the ${room}.`,
} as const;

export const MIX_CAUTIONS: Readonly<
  Record<"never-near-nitrate" | "buy-locally" | "ventilate" | "local-rules", string>
> = {
  "never-near-nitrate":
    "Never near nitrate film: neither the bottle nor a wet cloth in the room where such film lies, opens or is suspected.",
  ventilate:
    "Ventilate while you wipe and until the smell is gone; wipe small areas, and stop at headache or dizziness.",
  "buy-locally":
    "Buy the alcohol locally: carrying it by air, post or ship is regulated, and in some places so is buying or keeping it.",
  "local-rules": `${LOCAL} Ask whoever is answerable for fire safety how much may be kept, and where.`,
};

export function mixFigures(of: {
  recipe: {
    stockMass: number;
    waterMass: number;
    stockVolume: number;
    waterVolume: number;
    finalVolume: number;
    contraction: number;
  };
  dryBulb: number;
  flash: number;
  vapourPpm: number;
  wipeArea: { low: number; high: number };
  transport: { un: number; packingGroup: string } | null;
}): { label: string; value: string }[] {
  const { recipe } = of;
  return [
    {
      label: "By mass",
      value: `${weighed(recipe.stockMass)} alcohol + ${weighed(recipe.waterMass)} water`,
    },
    {
      label: "By volume",
      value: `${measured(recipe.stockVolume)} alcohol, water to the mark of ${measured(recipe.finalVolume)} (about ${measured(recipe.waterVolume)}), all at ${degrees(of.dryBulb)}`,
    },
    {
      label: "Contraction",
      value: `the mixture fills ${digits(recipe.contraction)} mL less than its parts did`,
    },
    {
      label: "Flash point",
      value: `about ${Math.round(of.flash)} °C ± 3 K${of.flash <= of.dryBulb ? ": it catches fire at room temperature" : ""}`,
    },
    {
      label: "Vapour over it",
      value: `up to ${digits(of.vapourPpm)} ppm ± 10 % at ${degrees(of.dryBulb)} close to the liquid; it burns from 33,000 ppm`,
    },
    {
      label: "Wipes",
      value: `about ${digits(of.wipeArea.low)} to ${digits(of.wipeArea.high)} m² for one pass`,
    },
    ...(of.transport === null
      ? []
      : [
          {
            label: "Transport",
            value: `UN ${of.transport.un}, packing group ${of.transport.packingGroup} (from memory: check)`,
          },
        ]),
  ];
}

export function vapourFigures(of: {
  room: string;
  mostAtOnce: number;
  mostPerHour: number;
  limit: number;
  spill: { share: number; first: number; mean: number };
  volume: number;
}): { label: string; value: string }[] {
  return [
    {
      label: `In ${of.room}`,
      value: `at most ${measured(Number(of.mostAtOnce.toPrecision(2)))} open at one time (a tenth of what burns, were it all in the air)`,
    },
    {
      label: "Each hour",
      value:
        of.mostPerHour > 0
          ? `at most ${measured(Number(of.mostPerHour.toPrecision(1)))} wiped out, to stay within ${of.limit} mg/m³ over the shift (a strict 8-hour limit; yours may differ)`
          : "none: this room has no air change, so vapour only gathers",
    },
    {
      label: "If all were spilt",
      value: `${measured(of.volume)} in the air of the room is ${digits(of.spill.first)} mg/m³, ${percent(of.spill.share)} of what can explode; mean over 8 h ${digits(of.spill.mean)} mg/m³`,
    },
  ];
}
export const sayRoom = (volume: number, changes: number): string =>
  `room of ${digits(volume)} m³ with ${digits(changes)} air ${changes === 1 ? "change" : "changes"} an hour`;
export const saySpill = (share: number): string =>
  `Were it all spilt, the vapour could reach ${percent(share)} of what can explode: leave, let nobody in, switch nothing, air from outside.`;

// ---------------------------------------------------------------------------------------------------- clear-air

export const sayClearVerdict = (wait: number): string =>
  `After the last dusty work wait ${minutes(wait)} before going in again, mask on, to wipe down; after wiping wait ${minutes(wait)} more before anyone unmasks there.`;
export const CLEAR_TODO = {
  leave: (): string =>
    "Bag or cover what is open, leave the purifier and extraction on, go out and shut the door; take the mask off outside only.",
  wait: (wait: number): string => `Write the time on the door: nobody in for ${minutes(wait)}.`,
  wipe: (): string =>
    "Go in masked, wipe every level surface damp, top to bottom, and vacuum the floor with a class H cleaner: what has settled lifts again.",
  unmask: (wait: number): string =>
    `Wiping stirs dust: go out, wait ${minutes(wait)} once more, and only then is the room one to work in without a mask.`,
} as const;
/** As `LEAST_WAIT` of the room air. */
const LEAST_MINUTES = 30;

export function clearFigures(of: {
  volume: number;
  height: number;
  changes: number;
  purifier: number;
  mixing: number;
  rate: number;
  minutes99: number;
  minutes999: number;
}): { label: string; value: string }[] {
  return [
    { label: "Room", value: `${digits(of.volume)} m³, ${digits(of.height)} m high` },
    {
      label: "Clean air",
      value: `${digits(of.changes)} air changes an hour${of.purifier > 0 ? ` and a purifier of ${digits(of.purifier, 3)} m³/h (${digits(of.purifier / of.volume)} an hour)` : ""}, counted ${of.mixing === 1 ? "in full" : `by ${digits(of.mixing)} as the air is not quite mixed`}`,
    },
    { label: "With settling", value: `${digits(of.rate)} an hour for spores of 2.5 µm` },
    {
      label: "99 % gone",
      value: `after ${minutes(of.minutes99)}${of.minutes99 < LEAST_MINUTES ? `; ${LEAST_MINUTES} min is the least all the same` : ""}`,
    },
    { label: "99.9 % gone", value: `after ${minutes(of.minutes999)}` },
  ];
}
export const CLEAR_CAUTIONS: Readonly<
  Record<"figures-count-dust-not-health" | "stale-air" | "local-rules", string>
> = {
  "figures-count-dust-not-health":
    "The wait is counted from dust and spores of one size: it does not say that the air is safe. Who is allergic or unwell stays out.",
  "stale-air":
    "Air changes guessed for a shut room are often far fewer than thought: take 0.3 an hour when nothing is known.",
  "local-rules": LOCAL,
};
