import { isMirrored } from "../frame/direction.ts";

/** Where a day stands in the picture, in per cent of its width. */
export function columnOf(at: number, days: number): { readonly x: string; readonly width: string } {
  const width = 100 / days;
  return { x: `${(isMirrored() ? days - 1 - at : at) * width}%`, width: `${width}%` };
}
