import { CUT_WORDS } from "../../core/say/cutting.ts";
import type { Drawing } from "../../core/stores/housing/drawing.ts";
import { svgWindow } from "../handover/drawing-svg.ts";
import { printableIn } from "./printable.ts";
import { signSays, signSvg } from "./signs.ts";
import { typeset } from "./typeset.ts";
import { ENGLISH } from "./words.ts";

/** Every layout with its cuts in their order; no cuts where they turn corners. */
export interface CuttingPaper {
  readonly layouts: readonly {
    readonly title: string;
    readonly drawing: Drawing;
    readonly cuts: readonly string[] | null;
  }[];
  readonly cautions: readonly string[];
}

/** Room for a layout on a page, mm. */
const FIELD = { width: 180, height: 165 };

/** A page for each layout, at a round scale that fits. */
export function cuttingPaper(
  { layouts, cautions }: CuttingPaper,
  sheet: "A4" | "Letter",
): Promise<Uint8Array> {
  const sharp = "W022";
  return typeset("cutting", {
    sheet,
    language: "en",
    words: { ...ENGLISH, cutting: { title: CUT_WORDS.title, sequence: CUT_WORDS.sequence } },
    signs: { [sharp]: { svg: signSvg(sharp), says: signSays(sharp) } },
    codes: [],
    views: layouts.map(({ title, drawing, cuts }) => {
      const times = Math.ceil(Math.max(drawing.width / FIELD.width, drawing.height / FIELD.height));
      return {
        ...(printableIn({
          title,
          cautions,
          cuts: cuts ?? [CUT_WORDS.noOrder],
          scale: CUT_WORDS.scale(times),
        }) as object),
        sign: sharp,
        width: drawing.width / times,
        height: drawing.height / times,
        svg: svgWindow(drawing, { x: 0, y: 0, width: drawing.width, height: drawing.height }),
      };
    }),
  });
}
