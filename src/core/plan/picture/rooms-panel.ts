import { type Across, area, line, PLOT, steps, text } from "./marks.ts";
import type { PlanPicture } from "./plan-picture.ts";
import type { PictureWords } from "./words.ts";

export const ROOM_HEIGHT = 56;

/** Litres in the Ward under the line of what it holds. */
export function wardPanel(
  { ward, wardLitres }: PlanPicture,
  words: PictureWords,
  x: Across,
  top: number,
): string[] {
  const y = scale(Math.max(wardLitres, ...ward, 1), top);
  return [
    ...axis(y, top, words.wardLimit(wardLitres), wardLitres),
    area(steps(ward, x, y), "used", 1),
    line(PLOT.left, y(wardLitres), PLOT.right, y(wardLitres), 1, "4 2"),
  ];
}

/** Hours at the camera within the hours it is open. */
export function cameraPanel(
  { camera, cameraOpen }: PlanPicture,
  words: PictureWords,
  x: Across,
  top: number,
): string[] {
  const most = Math.max(...cameraOpen, ...camera, 1);
  const y = scale(most, top);
  return [
    ...axis(y, top, words.cameraMost(most), most),
    area(steps(cameraOpen, x, y), "none", 0.5),
    area(steps(camera, x, y), "black"),
  ];
}

const scale =
  (most: number, top: number) =>
  (value: number): number =>
    top + ROOM_HEIGHT - (ROOM_HEIGHT * value) / most;

function axis(y: (value: number) => number, top: number, limit: string, value: number): string[] {
  return [
    line(PLOT.left, top, PLOT.left, top + ROOM_HEIGHT, 0.8),
    line(PLOT.left, y(0), PLOT.right, y(0), 0.8),
    text(PLOT.right + 8, y(value) + 4, limit),
    text(PLOT.right + 8, y(0), "0"),
  ];
}
