import { LOCAL_RULES } from "./heads.ts";
import { digits, minutes } from "./quantities.ts";

/* How long a room is left alone after dusty work. */

export const sayClearVerdict = (wait: number): string =>
  `After the last dusty work wait ${minutes(wait)} before going in again, mask on, to wipe down; after wiping wait ${minutes(wait)} more before anyone unmasks there.`;
export const CLEAR_TODO = {
  leave: (): string =>
    "Bag or cover what is open, leave the purifier and extraction on, go out and shut the door; take the mask off outside only.",
  wait: (wait: number): string => `Write the time on the door: nobody in for ${minutes(wait)}.`,
  wipe: (): string =>
    "Go in masked, wipe every level surface damp, top to bottom, and vacuum the floor with a class H cleaner: what has settled lifts again.",
  unmask: (wait: number): string =>
    `Wiping stirs dust: go out, wait ${minutes(wait)} once more, and only then is the room one to work in without a mask.`,
} as const;
/** As `LEAST_WAIT` of the room air. */
const LEAST_MINUTES = 30;

export function clearFigures(of: {
  volume: number;
  height: number;
  changes: number;
  purifier: number;
  mixing: number;
  rate: number;
  minutes99: number;
  minutes999: number;
}): { label: string; value: string }[] {
  return [
    { label: "Room", value: `${digits(of.volume)} m³, ${digits(of.height)} m high` },
    {
      label: "Clean air",
      value: `${digits(of.changes)} air changes an hour${of.purifier > 0 ? ` and a purifier of ${digits(of.purifier, 3)} m³/h (${digits(of.purifier / of.volume)} an hour)` : ""}, counted ${of.mixing === 1 ? "in full" : `by ${digits(of.mixing)} as the air is not quite mixed`}`,
    },
    { label: "With settling", value: `${digits(of.rate)} an hour for spores of 2.5 µm` },
    {
      label: "99 % gone",
      value: `after ${minutes(of.minutes99)}${of.minutes99 < LEAST_MINUTES ? `; ${LEAST_MINUTES} min is the least all the same` : ""}`,
    },
    { label: "99.9 % gone", value: `after ${minutes(of.minutes999)}` },
  ];
}
export const CLEAR_CAUTIONS: Readonly<
  Record<"figures-count-dust-not-health" | "stale-air" | "local-rules", string>
> = {
  "figures-count-dust-not-health":
    "The wait is counted from dust and spores of one size: it does not say that the air is safe. Who is allergic or unwell stays out.",
  "stale-air":
    "Air changes guessed for a shut room are often far fewer than thought: take 0.3 an hour when nothing is known.",
  "local-rules": LOCAL_RULES,
};
