import type { MouldWatch } from "../../physics/mould/mould-watch.ts";
import { degrees, digits, duration, grouped, moment, percent, percentSpan } from "./quantities.ts";

/* What stands under the verdict on one place: lamps, second opinion, humidity, gaps. */

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
