import type { Sheet } from "../../housing/sheets.ts";
import type { Rectangle } from "./free-space.ts";
import { type PlainItem, SLACK } from "./sheet-problem.ts";

/** A stretch of the edge up to which a roll is laid. */
interface Step {
  x: number;
  y: number;
  width: number;
}

export interface Laid extends Rectangle {
  readonly item: number;
  readonly turned: boolean;
}

/**
 * Lays items on a roll without end: always in the lowest gap, the item that fits it best, the earlier in the order of equals.
 * Source: scoring rule of the lowest gap, Leung, Zhang and Sim, European Journal of OR 215 (2011), from memory.
 */
export function layOnRoll(
  items: readonly PlainItem[],
  order: Int32Array,
  width: number,
): { readonly laid: Laid[]; readonly length: number } {
  const edge: Step[] = [{ x: 0, y: 0, width }];
  const open = Array.from(order);
  const laid: Laid[] = [];
  let length = 0;
  while (open.length > 0) {
    const at = lowest(edge);
    const gap = edge[at] as Step;
    const walls = [wallOf(edge, at - 1, gap.y), wallOf(edge, at + 1, gap.y)] as const;
    const best = bestFor(gap, walls, items, open);
    if (best === null) {
      fillUp(edge, at);
      continue;
    }
    const item = open.splice(best.place, 1)[0] as number;
    const x = best.atRight ? gap.x + gap.width - best.size.width : gap.x;
    laid.push({ item, turned: best.turned, x, y: gap.y, ...best.size });
    length = Math.max(length, gap.y + best.size.height);
    raise(edge, at, x, best.size);
  }
  return { laid, length };
}

function lowest(edge: readonly Step[]): number {
  let best = 0;
  for (let n = 1; n < edge.length; n++) if ((edge[n] as Step).y < (edge[best] as Step).y - SLACK) best = n;
  return best;
}

const wallOf = (edge: readonly Step[], n: number, y: number): number =>
  edge[n] === undefined ? Number.POSITIVE_INFINITY : (edge[n] as Step).y - y;

interface Choice {
  readonly place: number;
  readonly turned: boolean;
  readonly atRight: boolean;
  readonly size: Sheet;
}

function bestFor(
  gap: Step,
  walls: readonly [number, number],
  items: readonly PlainItem[],
  open: readonly number[],
): Choice | null {
  let best: Choice | null = null;
  let most = -1;
  for (let place = 0; place < open.length && most < 4; place++) {
    const { width, height, mayTurn } = items[open[place] as number] as PlainItem;
    for (let turn = 0; turn < (mayTurn ? 2 : 1); turn++) {
      const size = turn === 0 ? { width, height } : { width: height, height: width };
      const score = scoreOf(size, gap, walls);
      if (score > most) {
        most = score;
        const atRight =
          equal(size.height, walls[1]) || (!equal(size.height, walls[0]) && walls[1] > walls[0]);
        best = { place, turned: turn === 1, atRight, size };
      }
    }
  }
  return best;
}

const equal = (a: number, b: number): boolean => Math.abs(a - b) < SLACK;

/** Both sides level 4, the whole width 3, level with the higher wall 2, with the lower 1, neither 0; too wide −1. */
function scoreOf({ width, height }: Sheet, gap: Step, [left, right]: readonly [number, number]): number {
  if (width > gap.width + SLACK) return -1;
  const [higher, lower] = left > right ? [left, right] : [right, left];
  if (equal(width, gap.width)) return equal(height, higher) || equal(height, lower) ? 4 : 3;
  return equal(height, higher) ? 2 : equal(height, lower) ? 1 : 0;
}

/** Nothing fits: the gap is given up to its lower wall. */
function fillUp(edge: Step[], at: number): void {
  const gap = edge[at] as Step;
  const [before, after] = [
    edge[at - 1]?.y ?? Number.POSITIVE_INFINITY,
    edge[at + 1]?.y ?? Number.POSITIVE_INFINITY,
  ];
  gap.y = Math.min(before, after);
  join(edge);
}

function raise(edge: Step[], at: number, x: number, size: Sheet): void {
  const gap = edge[at] as Step;
  const raised: Step = { x, y: gap.y + size.height, width: size.width };
  const before: Step = { x: gap.x, y: gap.y, width: x - gap.x };
  const after: Step = {
    x: x + size.width,
    y: gap.y,
    width: gap.x + gap.width - x - size.width,
  };
  edge.splice(at, 1, ...[before, raised, after].filter((step) => step.width > SLACK));
  join(edge);
}

function join(edge: Step[]): void {
  for (let n = edge.length - 1; n > 0; n--) {
    const [one, next] = [edge[n - 1] as Step, edge[n] as Step];
    if (!equal(one.y, next.y)) continue;
    one.width += next.width;
    edge.splice(n, 1);
  }
}
