import type { OutOfRange } from "../../physics/out-of-range.ts";
import { digits, percent } from "./quantities.ts";

/* What cannot be done with what was typed, and how to mend it. */

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
  "paper-not-written": (file: string, reason: string) =>
    `The sheet ${file} could not be written (${reason}): name a file in a folder that is there, such as mix.pdf.`,
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
