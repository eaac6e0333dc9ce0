import { type Blank, flatBoard } from "./blank.ts";
import type { Book } from "./measures.ts";

/** mm */
export interface DropBackAsk {
  readonly board: number;
  readonly cloth: number;
  /** Added to each clear measure. */
  readonly play: number;
  /** Thickness of a lining, which takes room on both sides. */
  readonly lining: number;
  /** By how much the case stands over the tray at fore-edge, head and tail. */
  readonly square: number;
}

/** mm; W from the spine to the fore-edge, H along the spine, D deep. */
export interface Room {
  readonly W: number;
  readonly H: number;
  readonly D: number;
}
/** Width and height of a board, mm. */
export type BoardSize = readonly [number, number];

export interface Tray {
  readonly clear: Room;
  readonly baseBoard: BoardSize;
  readonly foreWall: BoardSize;
  readonly sideWall: BoardSize;
  readonly outside: Room;
}

export interface DropBack {
  readonly inner: Tray;
  readonly outer: Tray;
  readonly caseBoards: { readonly board: BoardSize; readonly spine: BoardSize };
  /** The closed box. */
  readonly overall: Room;
}

/** Room between the trays, and above the inner one. Common practice, no source. */
const BETWEEN = { W: 1, H: 1, D: 0.5 } as const;

/** A drop-back box: two trays in a case, walls standing on their bases.
 *  Source of the start, base = W + 1 board by H + 2 boards: a published instruction; cloth, play and square: common practice, no source. */
export function dropBackFrom(book: Book, ask: DropBackAsk): DropBack {
  const { board: b, cloth: c, square: s } = ask;
  const room = ask.play + 2 * ask.lining;
  const inner = trayAround({ W: book.width + room, H: book.height + room, D: book.thickness + room }, b, c);
  const { W, H, D } = inner.outside;
  const outer = trayAround({ W: W + BETWEEN.W, H: H + BETWEEN.H, D: D + BETWEEN.D }, b, c);
  const board: BoardSize = [outer.outside.W + s, outer.outside.H + 2 * s];
  const spine: BoardSize = [outer.outside.D, board[1]];
  return {
    inner,
    outer,
    caseBoards: { board, spine },
    overall: { W: board[0] + b + 2 * c, H: board[1] + 2 * c, D: spine[0] + 2 * b + 2 * c },
  };
}

function trayAround(clear: Room, b: number, c: number): Tray {
  const baseBoard: BoardSize = [clear.W + c + b, clear.H + 2 * (c + b)];
  const wall = clear.D + c;
  return {
    clear,
    baseBoard,
    foreWall: [baseBoard[1], wall],
    sideWall: [clear.W + c, wall],
    outside: { W: baseBoard[0] + c, H: baseBoard[1] + 2 * c, D: b + wall + c },
  };
}

/** Every board. Grain parallel to the spine; in walls at head and tail along the wall, so that they stay straight (common practice, no source). */
export function dropBackBlanks({ inner, outer, caseBoards }: DropBack): Blank[] {
  return [
    flatBoard("case-board", 2, ...caseBoards.board),
    flatBoard("case-spine", 1, ...caseBoards.spine),
    flatBoard("outer-base", 1, ...outer.baseBoard),
    flatBoard("outer-fore-wall", 1, ...standing(outer.foreWall)),
    flatBoard("outer-side-wall", 2, ...standing(outer.sideWall)),
    flatBoard("inner-base", 1, ...inner.baseBoard),
    flatBoard("inner-fore-wall", 1, ...standing(inner.foreWall)),
    flatBoard("inner-side-wall", 2, ...standing(inner.sideWall)),
  ];
}

const standing = ([long, high]: BoardSize): BoardSize => [high, long];
