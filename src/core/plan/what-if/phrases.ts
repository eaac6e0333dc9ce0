import type { Day } from "../../units/day.ts";
import type { Span } from "./change.ts";

/* Scenarios in the words that `readScenario` understands, for what was pointed at instead of typed. */

const span = ({ from, to }: Span): string => (from === to ? `on ${from}` : `from ${from} to ${to}`);

/** Somebody away, or on clean work, on these days. */
export const personPhrase = (code: string, what: "away" | "on clean work", days: Span): string =>
  `${code} ${what} ${span(days)}`;

/** A station shut on these days, or there on more of them. */
export const stationPhrase = (id: string, what: "closed" | "open", days: Span): string =>
  `${id} ${what} ${span(days)}`;

export const endPhrase = (day: Day): string => `end ${day}`;

/** All that is on its way of a store, later by so many days; less than 0: earlier. */
export const latePhrase = (store: string, days: number): string =>
  `${store} ${Math.abs(days)} days ${days < 0 ? "early" : "late"}`;

/** So much more of a store on a day. */
export const deliveryPhrase = (store: string, quantity: number, day: Day): string =>
  `${quantity} more ${store} on ${day}`;
