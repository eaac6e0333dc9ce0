import { everyDay } from "./days.ts";
import type { ClimateRow } from "./rows.ts";
import type { Chance } from "./seeded.ts";

export interface Room {
  readonly from: string;
  readonly to: string;
  /** Coolest and warmest hour of a middling day, °C. */
  readonly warmth: readonly [number, number];
  /** Dampest and driest hour of a middling day, % RH. */
  readonly damp: readonly [number, number];
  /** Change over the whole log, °C and % RH, as the season moves on. */
  readonly drift?: readonly [number, number];
  /** How much days differ, °C; humidity follows at three times that. */
  readonly weather: number;
  /** From this day on the reader fails: `stuck` repeats its last value, `blank` writes the hour and nothing else. */
  readonly fails?: { readonly on: string; readonly how: "stuck" | "blank" };
}

/** Hourly readings of one room: a daily swing, slow weather, a little noise. Warm hours are dry hours. */
export function roomLog(chance: Chance, room: Room): ClimateRow[] {
  const days = everyDay(room.from, room.to);
  let weather = 0;
  const rows = days.flatMap((day, at) => {
    weather = 0.7 * weather + room.weather * (chance.next() - 0.5) * 2;
    const season = days.length > 1 ? at / (days.length - 1) : 0;
    return Array.from({ length: 24 }, (_, hour) => reading(chance, room, day, hour, weather, season));
  });
  return room.fails ? failing(rows, room.fails.on, room.fails.how) : rows;
}

function reading(
  chance: Chance,
  room: Room,
  day: string,
  hour: number,
  weather: number,
  season: number,
): ClimateRow {
  // warmest at three in the afternoon; a parabola stands in for the sine, so that every machine draws the same log
  const fromPeak = Math.min(Math.abs(hour - 15), 24 - Math.abs(hour - 15)) / 12;
  const warm = 1 - fromPeak * fromPeak * (3 - 2 * fromPeak);
  const [coolest, warmest] = room.warmth;
  const [dampest, driest] = room.damp;
  const [warmer, damper] = room.drift ?? [0, 0];
  const noise = (): number => (chance.next() - 0.5) * 0.6;
  const celsius = coolest + (warmest - coolest) * warm + weather + warmer * season + noise();
  const percent = dampest + (driest - dampest) * warm - 3 * weather + damper * season + 2 * noise();
  return {
    time: `${day}T${String(hour).padStart(2, "0")}:00`,
    temperature_c: celsius.toFixed(1),
    rh_pct: Math.min(98, Math.max(9, percent)).toFixed(1),
  };
}

function failing(rows: readonly ClimateRow[], on: string, how: "stuck" | "blank"): ClimateRow[] {
  const first = rows.findIndex((row) => row.time >= on);
  const last = rows[first - 1];
  return rows.map((row, at) => {
    if (at < first) return row;
    return how === "blank" ? { time: row.time } : { ...last, time: row.time };
  });
}
