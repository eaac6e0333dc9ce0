import { DRAWING_WORDS } from "../../core/say/housing.ts";
import type { Drawing } from "../../core/stores/housing/drawing.ts";
import type { Sheet } from "../../core/stores/housing/sheets.ts";
import { tilesOf } from "../../core/stores/housing/tiles.ts";
import { svgWindow } from "../handover/drawing-svg.ts";
import { printableIn } from "./printable.ts";
import { signSays, signSvg } from "./signs.ts";
import { typeset } from "./typeset.ts";
import { ENGLISH } from "./words.ts";

/** What stands beside the drawing on the first page. */
export interface HousingPaper {
  readonly title: string;
  /** What it is for: number, size. */
  readonly subtitle: string;
  readonly drawing: Drawing;
  readonly pieces: readonly {
    readonly name: string;
    readonly count: number;
    readonly size: string;
    readonly grain: string;
  }[];
  readonly making: readonly string[];
  readonly cautions: readonly string[];
}

/** What one page holds at true scale, mm: the sheet less room that office printers leave white, the bar and the page's name. */
const FIELDS: Readonly<Record<"A4" | "Letter", Sheet>> = {
  A4: { width: 186, height: 256 },
  Letter: { width: 190, height: 238 },
};
/** White at the left of a page: half of what its width leaves over. mm */
const LEFT = { A4: 12, Letter: 12.95 } as const;
/** Of the neighbouring page, printed beyond the crosses, so that a join can be glued. mm */
const BEYOND = 4;

/** First the pieces, how it is made, and a map of the pages; then the drawing at true scale, over as many pages as it takes. */
export function housingPaper(paper: HousingPaper, sheet: "A4" | "Letter"): Promise<Uint8Array> {
  const { drawing, ...said } = paper;
  const field = FIELDS[sheet];
  const tiles = tilesOf(drawing, field);
  const whole = { x: 0, y: 0, width: drawing.width, height: drawing.height };
  const sharp = "W022";
  return typeset("housing", {
    sheet,
    language: "en",
    words: { ...ENGLISH, drawing: WORDS },
    signs: { [sharp]: { svg: signSvg(sharp), says: signSays(sharp) } },
    codes: [],
    views: [{ ...(printableIn(said) as object), sign: sharp, field, left: LEFT[sheet], beyond: BEYOND }],
    overview: { svg: svgWindow(drawing, whole), ...whole },
    tiles: tiles.map((tile) => ({
      ...tile,
      svg: svgWindow(drawing, {
        x: tile.x - BEYOND,
        y: tile.y - BEYOND,
        width: tile.width + 2 * BEYOND,
        height: tile.height + 2 * BEYOND,
      }),
    })),
  });
}

const WORDS = {
  ...DRAWING_WORDS,
  piece: "Piece",
  count: "How many",
  size: "Across × up, mm",
  along: "Grain",
  making: "How it goes together",
  map: "Map of the pages",
  then: "then pages of the drawing at true scale:",
  row: "row",
  column: "column",
  scale:
    "Print at 100 %, never “fit to page”. Then measure the bar: it must be 100 mm. Trim the left and upper edge of a page along its crosses and lay it cross on cross over the pages before. Pages on which nothing is cut or folded are left out.",
};
