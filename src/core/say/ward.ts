import { addDays, type Day } from "../units/day.ts";
import type { WardForecast } from "../ward/forecast.ts";
import type { ItemInWard } from "../ward/item-in-ward.ts";
import { CAUTIONS, NO_DATE, RELEASE_CONDITIONS, RELEASE_MISSING } from "./cautions/ward.ts";

/** What a bag says in one line. */
export function sayBag({ state }: ItemInWard): string {
  const { latest, release, gelInside, closedSince, drying } = state;
  if (release.earned) return "release earned by its readings: a person looks at it and releases it";
  const reads = latest ? `reads ${Math.round(latest.relHum * 100)} %` : "has no reading that counts yet";
  const gel = gelInside ? ", gel in it" : "";
  const open = closedSince === null ? ", open" : "";
  const stop = drying === "stop" ? "; stop drying now" : drying === "over-dried" ? "; over-dried" : "";
  return `${reads}${gel}${open}${stop}`;
}

/** The first thing a release still asks for; empty when it is earned. */
export const sayMissing = ({ state }: ItemInWard): string => {
  const check = state.release.checks.find((each) => !each.met && each.missing !== "");
  return check?.missing ? RELEASE_MISSING[check.missing] : "";
};

/** Every condition of a release, met or not, and what is missing. */
export const sayChecks = ({ state }: ItemInWard): string[] =>
  state.release.checks.map(({ condition, met, missing }) =>
    met
      ? `yes  ${RELEASE_CONDITIONS[condition]}`
      : `no   ${RELEASE_CONDITIONS[condition]} ${missing ? RELEASE_MISSING[missing] : ""}`.trim(),
  );

/** From when two readings could pass, as a band; or why there is no date. */
export function sayReady({ days, from, bag }: WardForecast, today: Day): string[] {
  const at = (count: number): Day => addDays(today, Math.max(0, Math.ceil(count)));
  if (from === "earned") return ["It may go now."];
  const band = `likeliest ${at(days.typical)}, between ${at(days.low)} and ${at(days.high)}`;
  if (from === "readings") return [`Look from ${at(days.typical)} on (${band}), by its readings.`];
  const because = bag && !bag.ready.ok ? bag.ready.because.map((code) => NO_DATE[code]) : [];
  const source =
    from === "readings, for planning only" ? "its readings so far" : "the norm, less the days behind";
  return [`No date for this item yet. The plan reckons with ${band}, by ${source}.`, ...because];
}

/** What to mind, each once, worst first as the model gives them. */
export const sayBagCautions = (bag: ItemInWard): string[] => [
  ...new Set([...bag.state.cautions, ...bag.ready.cautions].map((code) => CAUTIONS[code])),
];
