import type { LoggerGap, LoggerGaps } from "./logger-reading.ts";

const LONGEST_KEPT = 200;
/** A gap begins where half a step more than usual has passed. */
export const GAP_FROM = 1.5;
const STEPS_LOOKED_AT = 20_001;

/** Median of the steps forward, in minutes; put to whole minutes when it is within 2.5 % of them. 0: fewer than two times. */
export function usualStepOf(minutes: Float64Array): number {
  const every = Math.max(1, Math.floor(minutes.length / STEPS_LOOKED_AT));
  const steps: number[] = [];
  for (let i = 1; i < minutes.length; i += every) {
    const step = (minutes[i] as number) - (minutes[i - 1] as number); // i stays inside
    if (step > 0) steps.push(step);
  }
  const median = Float64Array.from(steps).sort()[Math.floor(steps.length / 2)] ?? 0;
  const whole = Math.round(median);
  return whole > 0 && Math.abs(median - whole) <= 0.025 * whole ? whole : median;
}

/** Stretches without readings, in readings that are in order. */
export function gapsOf(minutes: Float64Array, usualStep: number): LoggerGaps {
  const found: { at: number; missing: number; step: number }[] = [];
  let missing = 0;
  let beyond = 0;
  if (usualStep > 0)
    for (let i = 1; i < minutes.length; i++) {
      const step = (minutes[i] as number) - (minutes[i - 1] as number); // i stays inside
      if (step <= usualStep * GAP_FROM) continue;
      const lost = Math.max(1, Math.round(step / usualStep) - 1);
      found.push({ at: i, missing: lost, step });
      missing += lost;
      beyond += step - usualStep;
    }
  const longest = [...found]
    .sort((a, b) => b.step - a.step)
    .slice(0, LONGEST_KEPT)
    .sort((a, b) => a.at - b.at);
  return {
    count: found.length,
    missing,
    hours: Math.round((beyond / 60) * 100) / 100,
    longest: longest.map(
      (gap): LoggerGap => ({
        from: isoMinute(minutes[gap.at - 1] ?? 0),
        to: isoMinute(minutes[gap.at] ?? 0),
        missing: gap.missing,
      }),
    ),
  };
}

/** `2026-06-02T08:00`, with seconds only where there are some. */
export function isoMinute(minutes: number): string {
  const iso = new Date(Math.round(minutes * 60) * 1000).toISOString();
  return iso.slice(17, 19) === "00" ? iso.slice(0, 16) : iso.slice(0, 19);
}
