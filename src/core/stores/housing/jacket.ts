import { type Blank, edgesOf, type Field, type Part, point, type Segment } from "./blank.ts";
import type { Book } from "./measures.ts";

/** mm */
export interface JacketAsk {
  /** Thickness of one cover board; 0 for a book without boards. */
  readonly boardThickness: number;
  /** How far each flap reaches inside the cover. */
  readonly flap: number;
  /** Paper folded in at head and tail; 0 for film, which is cut to the height. */
  readonly turnIn: number;
  readonly heightEase: number;
}

/** A flap ends this far before the hinge: W − 25 mm. Source: layout of a public leaflet on film jackets. */
export const FLAP_FROM_HINGE = 25;

/** A wrapper of dust-jacket type. Width 2F + 2bt + 2W + T, creased on both sides of each cover edge.
 *  Source: the same leaflet; turn-in and ease are common practice, no source. */
export function jacketBlank({ height: H, width: W, thickness: T }: Book, ask: JacketAsk): Blank {
  const { boardThickness: bt, flap: F, turnIn, heightEase } = ask;
  const edges = bt > 0 ? [F, bt, W, T, W, bt, F] : [F, W, T, W, F];
  const across = edgesOf(edges);
  const down = turnIn > 0 ? edgesOf([turnIn, H + heightEase, turnIn]) : [0, H + heightEase];
  const [width, height] = [across.at(-1) ?? 0, down.at(-1) ?? 0];
  const upright = across.slice(1, -1).map((x): Segment => ({ from: point(x, 0), to: point(x, height) }));
  const level = down.slice(1, -1).map((y): Segment => ({ from: point(0, y), to: point(width, y) }));
  return {
    part: "jacket",
    count: 1,
    width,
    height,
    outline: [point(0, 0), point(width, 0), point(width, height), point(0, height)],
    folds: [...upright, ...level],
    fields: fieldsOf(ask, edges, across, height),
    across,
    down,
    inside: [],
  };
}

const NAMES: readonly Part[] = ["flap", "front", "spine", "back", "flap"];

/** Panels between the turn-ins, the narrow board edges left unnamed, then the turn-ins. */
function fieldsOf(ask: JacketAsk, edges: readonly number[], across: readonly number[], height: number) {
  const { boardThickness, turnIn } = ask;
  const named = boardThickness > 0 ? [0, 2, 3, 4, 6] : [0, 1, 2, 3, 4];
  const panels = named.map(
    (at, i): Field => ({
      part: NAMES[i] as Part, // five of each
      x: across[at] ?? 0,
      y: turnIn,
      width: edges[at] ?? 0,
      height: height - 2 * turnIn,
    }),
  );
  if (turnIn === 0) return panels;
  const width = across.at(-1) ?? 0;
  const turned = (y: number): Field => ({ part: "turn-in", x: 0, y, width, height: turnIn });
  return [...panels, turned(0), turned(height - turnIn)];
}
