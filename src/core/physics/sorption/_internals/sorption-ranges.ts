import { OutOfRange } from "../../out-of-range.ts";
import { MOST_RELHUM, ROOM_DRY_BULB } from "../isotherm.ts";

// What a sorption curve may be asked, the value itself when it may; each throws OutOfRange otherwise.

export function fraction(relHum: number): number {
  if (!(relHum >= 0 && relHum <= MOST_RELHUM))
    throw new OutOfRange("relative humidity", relHum, "1", 0, MOST_RELHUM);
  return relHum;
}

export function temperature(dryBulb: number, range: { readonly low: number; readonly high: number }): number {
  if (!(dryBulb >= range.low && dryBulb <= range.high))
    throw new OutOfRange("dry bulb", dryBulb, "°C", range.low, range.high);
  return dryBulb;
}

export const room = (dryBulb: number): number => temperature(dryBulb, ROOM_DRY_BULB);

export function held(moistureContent: number, most: number): number {
  if (!(moistureContent >= 0 && moistureContent <= most))
    throw new OutOfRange("moisture content", moistureContent, "kg/kg", 0, most);
  return moistureContent;
}
