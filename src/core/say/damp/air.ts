import type { MouldWatch } from "../../physics/mould/mould-watch.ts";
import { digits, duration, grouped, moment } from "./quantities.ts";

/** The name of a place, in quotes. */
export const named = (name: string): string => `'${name}'`;

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

export const saySurface = (used: number, all: number): string =>
  used === all
    ? "A surface temperature was found for every reading of the air."
    : `A surface temperature was found for ${grouped(used)} of ${grouped(all)} readings of the air; the others count as missing.`;

export const sayPart = (from: number, to: number): string =>
  `Judged is the part from ${moment(from)} to ${moment(to)}.`;

export const sayWarmerSurface = (offset: number): string =>
  `--surface-offset ${offset}: a surface warmer than the air is never damper than it, so this changes nothing. For a surface 3 K colder write --surface-offset -3.`;

export const sayPlotWritten = (file: string): string => `The plot was written to ${file}.`;
