import { sayRefusal } from "../../../core/say/damp/faults.ts";
import type { Given } from "./given.ts";
import { lengthsFrom, MEASURES, quantityFrom } from "./quantity.ts";

export interface RoomSize {
  /** m³ */
  readonly volume: number;
  /** m; null when only a volume was given. */
  readonly height: number | null;
}

const LEAST = 1;
const MOST = 1e5;

/** `5x4x3` (length, width, height in m) or `40m3`.   @returns null when nothing was given */
export function roomFrom(given: Given, name = "room"): RoomSize | null {
  const text = given.text(name);
  if (text === undefined) return null;
  const sides = lengthsFrom(text, MEASURES.metres, 3);
  const volume = sides
    ? sides.reduce((product, side) => product * side, 1)
    : quantityFrom(text, MEASURES.space);
  if (volume !== null && volume >= LEAST && volume <= MOST) return { volume, height: sides?.[2] ?? null };
  given.refuseInWords(
    sayRefusal({
      option: `--${name}`,
      got: text,
      expected: `length x width x height in metres, or a volume, ${LEAST} to 100,000 m³`,
      remedy: "Write it like 5x4x3 or 40m3.",
    }),
  );
  return { volume: LEAST, height: null };
}
