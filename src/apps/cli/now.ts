import { type Day, dayFrom } from "../../core/units/day.ts";

/** This morning on the wall of this machine, and the moment as it stands in the name of a file: `2026-06-19T063000`. */
export function machineNow(): { readonly today: Day; readonly stamp: string; readonly ms: number } {
  const now = new Date();
  const two = (n: number): string => `${n}`.padStart(2, "0");
  const text = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  const stamp = `${text}T${two(now.getHours())}${two(now.getMinutes())}${two(now.getSeconds())}`;
  return { today: dayFrom(text) as Day, stamp, ms: now.getTime() }; // a date of the machine is a day
}
