import { ethanolHazards } from "../../core/physics/solutions/ethanol-label.ts";
import { MIX_PAPER, STATEMENTS } from "../../core/say/damp/mix-label.ts";
import { measured } from "../../core/say/damp/quantities.ts";
import { type PaperOptions, print } from "./print.ts";

/** A batch of solution, its sentences finished. */
export interface MixPaper {
  /** Strength by volume, 0 to 1. */
  readonly want: number;
  /** mL */
  readonly volume: number;
  readonly made: string;
  readonly useBy: string;
  readonly recipe: string;
  readonly todo: readonly string[];
  readonly figures: readonly { readonly label: string; readonly value: string }[];
  readonly cautions: readonly string[];
}

/** mL. Bench bottles, and what a bottle with the smaller label may hold. */
const BENCH_BOTTLE = 500;
const SMALL_TO = 3000;
const MOST_LABELS = 8;
/** Sides of a pictogram, mm, up to three litres and above: CLP Regulation annex I, table 1.3. */
const SIDES = { small: 16, large: 23 } as const;
/** Corner to corner of the drawing's square in its box. */
const SHARE_OF_BOX = 0.92;
/** Side of the box a pictogram is printed in, mm, for a label of the size. */
export const pictogramBox = (label: keyof typeof SIDES): number => (SIDES[label] * Math.SQRT2) / SHARE_OF_BOX;

/** Gloves, goggles, no flame, no smoking. */
const SIGNS = ["W021", "M004", "M009", "P003", "P002"];

/** A sheet to mix by, and labels: one for each bench bottle, and a larger one for a can of more than three litres. */
export function mixPaper(paper: MixPaper, options: PaperOptions): Promise<Uint8Array> {
  const { signal, pictograms, hazards, precautions } = ethanolHazards(paper.want);
  const label = {
    content: MIX_PAPER.content(paper.want),
    signal: signal ? MIX_PAPER.signals[signal] : "",
    pictograms,
    statements: [...hazards, ...precautions].map((code) => STATEMENTS[code]),
  };
  const small = Math.min(MOST_LABELS, Math.ceil(paper.volume / BENCH_BOTTLE));
  const view = {
    ...paper,
    label,
    signs: SIGNS,
    words: MIX_PAPER,
    volumeWords: measured(paper.volume),
    small: { count: small, box: pictogramBox("small") },
    large: { count: paper.volume > SMALL_TO ? 1 : 0, box: pictogramBox("large") },
  };
  return print("mix-paper", { views: [view], signs: [...SIGNS, ...pictograms], codes: [] }, options);
}
