import { absHumidityFromRelHum } from "../air/moist-air.ts";
import { withinRange } from "../out-of-range.ts";

/* How much water a drying room has to be rid of, and by which means. Water in g/h, volumes m³, relative humidity a fraction. */

export type RoomLoadCaution = "outside-air-wets-the-room" | "thumb-rule-only" | "drainage-and-power-needed";

/** Capacity a dehumidifier needs for each m³ of room, g/(h m³), for 20 °C and 50 %.
 *  Source: Dantherm quick reference (a maker's thumb rules); the store row supposes 0.3 air changes an hour. */
export const DEHUMIDIFIER_RULES = [
  { use: "museum store", gramsPerHourAndCubicMetre: 1.2 },
  { use: "general", gramsPerHourAndCubicMetre: 2.0 },
  { use: "water damage, dried in 8 to 12 days", gramsPerHourAndCubicMetre: 4.0 },
] as const;

/** g/h a dehumidifier should take out, by the thumb rule of its use. @param volume above 0, m³ */
export const dehumidifierCapacity = (volume: number, gramsPerHourAndCubicMetre: number): number =>
  withinRange("room volume", volume, "m³", 1e-3, 1e6) *
  withinRange("thumb rule", gramsPerHourAndCubicMetre, "g/(h m³)", 0, 100);

/** Air by temperature (°C) and relative humidity. */
export interface Air {
  readonly dryBulb: number;
  readonly relHum: number;
}

/** g/h that airing takes out of a room: volume × air changes × (water in the inside air − in the outside air).
 *  Below 0 the outside air brings water in: do not air.   @param airChangeRate 0 to 60, 1/h */
export function ventilationLoad(volume: number, airChangeRate: number, inside: Air, outside: Air): number {
  withinRange("room volume", volume, "m³", 1e-3, 1e6);
  withinRange("air change rate", airChangeRate, "1/h", 0, 60);
  const waterIn = absHumidityFromRelHum(inside.dryBulb, inside.relHum); // kg/m³
  const waterOut = absHumidityFromRelHum(outside.dryBulb, outside.relHum);
  return 1000 * volume * airChangeRate * (waterIn - waterOut);
}

/** A person at light work breathes and sweats out about this, g/h. Common practice, no source. */
export const GRAMS_PER_PERSON_HOUR = { low: 40, usual: 60, high: 100 } as const;

export interface RoomLoad {
  /** What a dehumidifier must take out to hold the room, g/h; never below 0. */
  readonly toTakeOut: number;
  /** By airing; below 0 it brings water in. */
  readonly byAiring: number;
  readonly fromItems: number;
  readonly fromPeople: number;
  readonly cautions: readonly RoomLoadCaution[];
}

/** What a room with drying items and people needs. @param fromItems g/h   @param people 0 to 1000 */
export function roomLoad(
  room: {
    readonly volume: number;
    readonly airChangeRate: number;
    readonly inside: Air;
    readonly outside: Air;
  },
  fromItems: number,
  people: number,
): RoomLoad {
  const byAiring = ventilationLoad(room.volume, room.airChangeRate, room.inside, room.outside);
  const fromPeople = withinRange("people", people, "1", 0, 1000) * GRAMS_PER_PERSON_HOUR.usual;
  return {
    toTakeOut: Math.max(0, withinRange("water from items", fromItems, "g/h", 0, 1e6) + fromPeople - byAiring),
    byAiring,
    fromItems,
    fromPeople,
    cautions: [
      "thumb-rule-only",
      "drainage-and-power-needed",
      ...(byAiring < 0 ? (["outside-air-wets-the-room"] as const) : []),
    ],
  };
}
