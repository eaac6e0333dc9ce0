import { digits, measured, percent } from "./quantities.ts";

/* What the vapour of a solution does in a room. */

export function vapourFigures(of: {
  room: string;
  mostAtOnce: number;
  mostPerHour: number;
  limit: number;
  spill: { share: number; first: number; mean: number };
  volume: number;
}): { label: string; value: string }[] {
  return [
    {
      label: `In ${of.room}`,
      value: `at most ${measured(Number(of.mostAtOnce.toPrecision(2)))} open at one time (a tenth of what burns, were it all in the air)`,
    },
    {
      label: "Each hour",
      value:
        of.mostPerHour > 0
          ? `at most ${measured(Number(of.mostPerHour.toPrecision(1)))} wiped out, to stay within ${of.limit} mg/m³ over the shift (a strict 8-hour limit; yours may differ)`
          : "none: this room has no air change, so vapour only gathers",
    },
    {
      label: "If all were spilt",
      value: `${measured(of.volume)} in the air of the room is ${digits(of.spill.first)} mg/m³, ${percent(of.spill.share)} of what can explode; mean over 8 h ${digits(of.spill.mean)} mg/m³`,
    },
  ];
}
export const sayRoom = (volume: number, changes: number): string =>
  `room of ${digits(volume)} m³ with ${digits(changes)} air ${changes === 1 ? "change" : "changes"} an hour`;
export const saySpill = (share: number): string =>
  `Were it all spilt, the vapour could reach ${percent(share)} of what can explode: leave, let nobody in, switch nothing, air from outside.`;
