import type { NextLooks } from "../plan/sample/next-looks.ts";
import type { CampaignSample } from "../plan/sample/strata.ts";
import type { Stratum } from "../plan/sample/stratum.ts";

/* What a sample says, in sentences. */

const count = (n: number): string => n.toLocaleString("en-GB");
const percent = (share: number): string => (100 * share).toFixed(share > 0 && share < 0.1 ? 1 : 0);
/** Ends of a share, outward to whole points once they are above ten, so that the words never promise more than the figures. */
const span = (low: number, high: number): string =>
  low === high
    ? `${percent(low)} %`
    : `${percent(Math.floor(low * 1000) / 1000)} to ${percent(Math.min(1, Math.ceil(high * 1000) / 1000))} %`;
const items = (n: number): string => `${count(n)} ${n === 1 ? "item" : "items"}`;
const range = (low: number, high: number): string =>
  low === high ? count(low) : `${count(low)} to ${count(high)}`;
const sure = (sureness: number): string => `${Number((100 * sureness).toFixed(1))} %`;

export interface SampleFigures {
  readonly looked: number;
  readonly found: number;
  readonly all: number;
  readonly sureness: number;
  readonly lot: {
    readonly low: number;
    readonly high: number;
    readonly lowItems: number;
    readonly highItems: number;
  };
  readonly binomial: { readonly low: number; readonly high: number };
  /** Looks in all for ± 5 points if the share stays, and whatever it is. */
  readonly looksIfSame: number;
  readonly looksWhatever: number;
}

export const SAMPLE_WORDS = {
  understood: ({ looked, found, all }: SampleFigures): string =>
    `Looked at ${count(looked)} of ${count(all)}; ${count(found)} of them had it.`,
  verdict: ({ lot, all, sureness, looked }: SampleFigures): string =>
    looked === all
      ? `All were looked at: ${items(lot.lowItems)} of ${count(all)} have it, and nothing is left to guess.`
      : `${span(lot.low, lot.high)} of them have it: ${range(lot.lowItems, lot.highItems)} of ${count(all)} items, ${sure(sureness)} sure. Plan with both ends, not with the middle.`,
  more: ({ looksIfSame, looked, all }: SampleFigures): string =>
    looked === all
      ? "Nothing more to look at."
      : looksIfSame <= looked
        ? "It is already known to ± 5 points: count leaves instead of looking at more."
        : `Look at ${count(looksIfSame - looked)} more (${count(looksIfSame)} in all) to know it to ± 5 points.`,
  choose: (every: number): string =>
    `Let nobody choose: take every ${count(every)}th along the shelves, whatever it looks like.`,
  kinds: "Look at 30 or more of each kind and shelf: mould keeps to a wall, red rot to a binder.",
  leaves: "Count the leaves of each one looked at: the minutes hang on leaves, not on items.",
  labels: {
    seen: "Share seen",
    lot: "Share of all",
    endless: "Endless lot",
    same: "For ± 5 points",
    whatever: "Whatever it is",
  },
  seen: ({ looked, found }: SampleFigures): string =>
    looked === 0 ? "none looked at" : `${percent(found / looked)} %`,
  lot: ({ lot, all }: SampleFigures): string =>
    `${span(lot.low, lot.high)} of ${count(all)} (hypergeometric, exact)`,
  endless: ({ binomial }: SampleFigures): string =>
    `${span(binomial.low, binomial.high)} (Clopper-Pearson, exact)`,
  same: ({ looksIfSame }: SampleFigures): string =>
    `${items(looksIfSame)} in all, if the share stays as seen`,
  whatever: ({ looksWhatever }: SampleFigures): string => `${items(looksWhatever)} in all is always enough`,
} as const;

/** What no figure can put right. */
export const SAMPLE_CAUTIONS = {
  chosen:
    "If the ones looked at were chosen, worst first or easiest first, these figures say nothing of the rest.",
  clumped:
    "Mould and insects sit together: looks at one shelf tell less than the same number spread over all.",
  "unsure-both-ways": "An unsure answer counts as no in the low end and as yes in the high end.",
  "not-tested": 'Not looked at is never "no".',
} as const;

const FORMATS: Readonly<Record<string, string>> = {
  bound_volume: "bound volumes",
  pamphlet: "pamphlets",
  loose_sheets: "files",
  scroll_roll: "scrolls",
  map_plan: "maps and plans",
  newspaper: "newspapers",
  album: "albums",
  photo_print: "prints",
  photo_cased: "cased images",
  glass_negative: "glass plates",
  film_negative: "film",
  palm_leaf_bundle: "palm-leaf bundles",
  bark_manuscript: "bark books",
  folded_book: "folded books",
  parchment_document: "parchments",
  sealed_document: "sealed documents",
};
const TESTS: Readonly<Record<Stratum["trouble"], string>> = {
  mould: "for growth, torch at a low angle",
  "red rot": "at the leather, one dry stroke of tissue",
  insects: "for anything alive, two minutes over white paper",
  wet: "for free water",
};
const named = ({ by, name }: Pick<Stratum, "by" | "name">): string =>
  by === "format"
    ? (FORMATS[name] ?? name.replaceAll("_", " "))
    : name === ""
      ? "no shelf written down"
      : name;

export const CAMPAIGN_WORDS = {
  understood: ({ looked, items: all }: CampaignSample, name: string): string =>
    `${name}: ${count(looked)} of ${items(all)} have been looked at.`,
  /** The trouble over all items that can have it. */
  verdict: (stratum: Stratum, sureness: number): string =>
    `${capital(stratum.trouble)}: ${seenWords(stratum)}${stratum.looked === stratum.items && stratum.unsure === 0 ? "." : `; ${span(stratum.low, stratum.high)} of all, ${sure(sureness)} sure.`}`,
  line: (stratum: Stratum): string =>
    `${span(stratum.low, stratum.high)}: ${seenWords(stratum)}${stratum.unsure > 0 ? `, ${count(stratum.unsure)} unsure` : ""}`,
  label: (stratum: Stratum): string => named(stratum),
  heading: { format: "by format", shelf: "by shelf, most first" },
  noneLeft:
    "No look is missing for planning: each share is known to ± 5 points, and of each kind 30 or all were looked at.",
  stillUnseen: (n: number): string =>
    `${items(n)} without an answer to one of these tests ${n === 1 ? "stays" : "stay"} at the Door all the same: npx leafward ask <folder>.`,
  next: ({ format, more, unseen, trouble, why, items: ids }: NextLooks): string =>
    `Look at ${count(more)} of the ${count(unseen)} ${named({ by: "format", name: format })} nobody has looked at, ${TESTS[trouble]} (${why === "few" ? "fewer than 30 of the kind were looked at" : "the share over all is not known to ± 5 points"}): ${ids.slice(0, 8).join(", ")}${ids.length > 8 ? ` … (all ${count(ids.length)} with --json)` : ""}.`,
  moreShelves: (n: number): string => `and ${count(n)} more shelves: --json`,
} as const;

const seenWords = ({ found, looked, items: all }: Stratum): string =>
  looked === all
    ? `${count(found)} of ${count(all)}, all looked at`
    : `${count(found)} of ${count(looked)} looked at, ${count(all)} in all`;
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export const SAMPLE_HELP = `leafward sample <looked at> <found> <of all>: how sure are we, from so many looked at
leafward sample <folder>: the same for mould, red rot, insects and wet, by format and by shelf, and what to look at next

  --sure 95              how sure to be, % (50 to 99.9)
  --all                  every shelf, not the ten worst
  --json                 the same answer as JSON: shares from 0 to 1

Exit codes: 0 well; 2 it could not be done.`;

export const SAMPLE_REFUSALS = {
  arguments:
    "Give three numbers, looked at, found, of all (npx leafward sample 90 14 6000), or one campaign folder.",
  number: (got: string): string =>
    `"${got}" is no whole number of items. Write it without a comma or blank, such as 6000.`,
  found: (found: number, looked: number): string =>
    `Found is ${count(found)}, but only ${count(looked)} were looked at. The order is: looked at, found, of all.`,
  all: (looked: number, all: number): string =>
    `Looked at is ${count(looked)}, but there are only ${count(all)} in all. The order is: looked at, found, of all.`,
  many: (all: number): string => `Of all is ${count(all)}; this works up to 1,000,000 items.`,
} as const;
