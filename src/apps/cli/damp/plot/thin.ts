import { LONGEST_STEP } from "../../../../core/physics/mould/climate-series.ts";

export interface Scale {
  readonly x: (hours: number) => number;
  readonly y: (value: number) => number;
}

/** A line through any number of readings as an SVG path: in each column of pixels the lowest and the highest reading, in the order
 *  of time, so that no spike is lost and no file grows beyond its width. It breaks where readings are missing for 6 h. */
export function linePath(hours: Float64Array, values: Float64Array, { x, y }: Scale): string {
  const parts: string[] = [];
  let column = emptyColumn(Number.NaN);
  let isOpen = false;
  let before = Number.NaN;
  const flush = (): void => {
    for (const { at, value } of column.inOrder()) {
      parts.push(`${isOpen ? "L" : "M"}${tenth(x(at))} ${tenth(y(value))}`);
      isOpen = true;
    }
  };
  for (let i = 0; i < hours.length; i++) {
    const [at, value] = [hours[i] as number, values[i] as number]; // i stays below the length
    if (Number.isNaN(value)) continue;
    const pixel = Math.floor(x(at));
    const isGap = at - before > LONGEST_STEP;
    if (pixel !== column.pixel || isGap) {
      flush();
      column = emptyColumn(pixel);
    }
    if (isGap) isOpen = false;
    column.take(at, value);
    before = at;
  }
  flush();
  return parts.join("");
}

const tenth = (n: number): string => String(Math.round(n * 10) / 10);

interface Point {
  readonly at: number;
  readonly value: number;
}

function emptyColumn(pixel: number) {
  let [low, high]: [Point | null, Point | null] = [null, null];
  return {
    pixel,
    take(at: number, value: number): void {
      if (low === null || value < low.value) low = { at, value };
      if (high === null || value > high.value) high = { at, value };
    },
    inOrder(): Point[] {
      if (low === null || high === null) return [];
      if (low.at === high.at) return [low];
      return low.at < high.at ? [low, high] : [high, low];
    },
  };
}
