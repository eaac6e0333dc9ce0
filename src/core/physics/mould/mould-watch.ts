/**
 * The mould watch: a long series of readings under three lamps together, with the dose model as a second opinion.
 *
 * 1. damp: 65 % or more at the surface for 48 hours. Watch.
 * 2. critical: above the critical-humidity parabola of the readiest surfaces. Act.
 * 3. index: the VTT mould index reaches 1. Act; from 3 it can be seen.
 *
 * No lamp is an all-clear: the index is blind below 80 %, and a series tells only of the place where the logger lay.
 */
import type { RunMeter } from "./_internals/mould-meters.ts";
import { SeriesPass, zeroOf } from "./_internals/series-pass.ts";
import type { ClimateSeries, Run } from "./climate-series.ts";
import type { GrowthClassName } from "./mould-growth.ts";
import { CRITICAL_DOSE_DAYS } from "./mould-limits.ts";
import { type WatchRules, watchRulesFrom } from "./watch-rules.ts";

export interface Lamp {
  /** At any time in the series. */
  readonly isLit: boolean;
  /** At the end of the series. */
  readonly isLitNow: boolean;
  readonly firstLit: number | null;
  readonly longest: Run | null;
  /** What is still going on at the end. */
  readonly now: Run | null;
  /** Hours of all runs together. */
  readonly hours: number;
}
export interface Moment {
  readonly at: number;
  readonly relHum: number;
  readonly temperature: number;
}
export type WatchReason =
  | { readonly code: "damp-too-long" | "above-critical"; readonly hours: number; readonly from: number }
  | { readonly code: "index-at-one" | "index-visible"; readonly index: number; readonly at: number }
  | { readonly code: "dose-reached"; readonly days: number; readonly at: number };

export interface MouldWatch {
  /** `unknown`: no two readings within 6 hours. `quiet`: no lamp, which is no all-clear. */
  readonly state: "unknown" | "quiet" | "watch" | "act";
  /** The same at the end of the series. */
  readonly stateNow: "unknown" | "quiet" | "watch" | "act";
  readonly damp: Lamp;
  /** With the degree counted: hours above, times how far above (fraction · h). */
  readonly critical: Lamp & { readonly excessHours: number };
  readonly index: Lamp & {
    readonly growthClass: GrowthClassName;
    readonly highest: number;
    readonly atEnd: number;
    readonly firstVisible: number | null;
  };
  /** Second opinion: days of full dose, and whether it parts from the index. */
  readonly dose: { readonly highest: number; readonly share: number; readonly disagrees: boolean };
  readonly dampest: Moment | null;
  /** Where the humidity stood furthest above the parabola (or least below it). */
  readonly furthest: (Moment & { readonly excess: number }) | null;
  /** Stretches without a gap of more than 6 h; each is judged by itself. */
  readonly stretches: readonly Run[];
  readonly readings: { readonly used: number; readonly missing: number };
  readonly reasons: readonly WatchReason[];
  readonly cautions: readonly WatchCaution[];
}
export type WatchCaution =
  | "vtt-alone-is-no-all-clear"
  | "quiet-is-no-all-clear"
  | "index-blind-below-80"
  | "second-opinion-disagrees"
  | "series-has-gaps"
  | "air-not-surface"
  | "reading-above-saturation"
  | "warmer-than-fitted"
  | "no-readings";

/** Watches over a series of any length; time grows with the number of readings alone.
 *  @throws OutOfRange naming the reading when a temperature is outside −60 to 90 °C, a humidity outside 0 to 1.05, or time does not rise
 *  @throws RangeError when the columns differ in length */
export function watchMould(series: ClimateSeries, given: Partial<WatchRules> = {}): MouldWatch {
  const rules = watchRulesFrom(given);
  const pass = new SeriesPass(rules);
  pass.readThrough(series);
  return watchOf(pass, rules, zeroOf(series), series.surface === undefined);
}

/** What a pass tells.   @param zero moment from which the pass counts */
function watchOf(pass: SeriesPass, rules: WatchRules, zero: number, isAirOnly: boolean): MouldWatch {
  const damp = lampOf(pass.damp, zero);
  const critical = { ...lampOf(pass.critical, zero), excessHours: pass.excessHours };
  const index = { ...lampOf(pass.atOne, zero), ...indexOf(pass, rules, zero) };
  const dose = doseOf(pass);
  const isKnown = pass.stretches.some((stretch) => stretch.hours > 0);
  const state = stateOf(isKnown, damp.isLit || dose.share >= 1, critical.isLit || index.isLit);
  return {
    state,
    stateNow: stateOf(isKnown, damp.isLitNow, critical.isLitNow || index.isLitNow),
    damp,
    critical,
    index,
    dose,
    dampest: pass.dampest && { ...pass.dampest, at: zero + pass.dampest.at },
    furthest: pass.furthest && { ...pass.furthest, at: zero + pass.furthest.at },
    stretches: pass.stretches.map(({ from, hours }) => ({ from: zero + from, hours })),
    readings: { used: pass.used, missing: pass.missing },
    reasons: reasonsOf(pass, zero, damp, critical, index),
    cautions: cautionsOf(pass, state, isAirOnly, damp.isLit || critical.isLit, dose.disagrees),
  };
}

const indexOf = ({ index, visible }: SeriesPass, { growthClass }: WatchRules, zero: number) => ({
  growthClass,
  highest: index.highest,
  atEnd: index.index,
  firstVisible: visible.isLit ? zero + visible.firstLit : null,
});

function doseOf({ dose: { highest }, index }: SeriesPass): MouldWatch["dose"] {
  const share = highest / CRITICAL_DOSE_DAYS;
  return { highest, share, disagrees: share >= 1 !== index.highest >= 1 };
}

function reasonsOf(
  pass: SeriesPass,
  zero: number,
  damp: Lamp,
  critical: Lamp,
  index: MouldWatch["index"],
): WatchReason[] {
  const reasons: WatchReason[] = [];
  const at = zero + pass.index.highestAt;
  if (damp.isLit && damp.longest) reasons.push({ code: "damp-too-long", ...damp.longest });
  if (critical.isLit && critical.longest) reasons.push({ code: "above-critical", ...critical.longest });
  if (index.isLit)
    reasons.push({ code: index.highest >= 3 ? "index-visible" : "index-at-one", index: index.highest, at });
  if (pass.dose.highest >= CRITICAL_DOSE_DAYS)
    reasons.push({ code: "dose-reached", days: pass.dose.highest, at: zero + pass.dose.highestAt });
  return reasons;
}

function cautionsOf(
  pass: SeriesPass,
  state: MouldWatch["state"],
  isAirOnly: boolean,
  isDamp: boolean,
  disagrees: boolean,
): WatchCaution[] {
  const holds: Record<WatchCaution, boolean> = {
    "no-readings": state === "unknown",
    "vtt-alone-is-no-all-clear": true,
    "quiet-is-no-all-clear": state === "quiet",
    "index-blind-below-80": isDamp && pass.index.highest < 1,
    "second-opinion-disagrees": disagrees,
    "series-has-gaps": pass.stretches.length > 1,
    "air-not-surface": isAirOnly,
    "reading-above-saturation": pass.wasOverRead,
    "warmer-than-fitted": pass.wasTooWarm,
  };
  return (Object.keys(holds) as WatchCaution[]).filter((code) => holds[code]);
}

function stateOf(isKnown: boolean, isWatch: boolean, isAct: boolean): MouldWatch["state"] {
  if (!isKnown) return "unknown";
  if (isAct) return "act";
  return isWatch ? "watch" : "quiet";
}

const lampOf = (run: RunMeter, zero: number): Lamp => ({
  isLit: run.isLit,
  isLitNow: run.isLitNow,
  firstLit: run.isLit ? zero + run.firstLit : null,
  longest: run.longestHours > 0 ? { from: zero + run.longestFrom, hours: run.longestHours } : null,
  now: run.runHours > 0 ? { from: zero + run.runFrom, hours: run.runHours } : null,
  hours: run.hours,
});
