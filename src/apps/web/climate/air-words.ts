import { sayDay, sayNumber, sayPercent } from "../../../core/say/dates.ts";
import type { Day } from "../../../core/units/day.ts";
import { LOCALE } from "../frame/reader.ts";

/** `58%, 21.4 °C`, whichever is known. */
export const sayAir = (air: { readonly relHum?: number; readonly dryBulb?: number }): string =>
  [
    ...(air.relHum === undefined ? [] : [sayPercent(air.relHum, LOCALE)]),
    ...(air.dryBulb === undefined ? [] : [`${sayNumber(air.dryBulb, LOCALE, 1)} °C`]),
  ].join(", ");

/** `Mon 1 Jun, 14:00` of a moment written in ISO 8601. */
export const sayAt = (at: string): string =>
  `${sayDay(at.slice(0, 10) as Day, LOCALE, "short")}, ${at.slice(11, 16)}`; // an ISO moment begins with its day
