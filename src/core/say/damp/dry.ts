import { about, degrees, digits, durationSpan, gelGrams, litres, percent } from "./quantities.ts";

/* How long an item takes to dry. */

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

const dryThing = ({ kind, fanned }: DryCase): string =>
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
