/* Where an axis has its marks. */

export interface Tick {
  readonly at: number;
  readonly label: string;
}

/** Round marks between two values, four to eight of them. */
export function valueTicks(low: number, high: number): Tick[] {
  const rough = (high - low) / 6;
  const size = 10 ** Math.floor(Math.log10(rough));
  const step = size * ([1, 2, 5, 10].find((each) => each * size >= rough) ?? 10);
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, i) => {
    const at = (first + i) * step;
    return { at, label: String(Number(at.toFixed(6))) };
  });
}

const HOUR = 3.6e6; // ms
const MOST_TICKS = 9;
const HOUR_STEPS = [1, 2, 3, 6, 12];
const DAY_STEPS = [1, 2, 3, 7, 14];
const MONTH_STEPS = [1, 2, 3, 6, 12, 24];

/** Marks on hours, days, months or years, whichever leaves the axis readable. @param from, to hours since 1970-01-01 */
export function timeTicks(from: number, to: number): Tick[] {
  const days = (to - from) / 24;
  const hourStep = HOUR_STEPS.find((step) => (24 * days) / step <= MOST_TICKS);
  if (hourStep !== undefined)
    return evenTicks(from, to, hourStep, (at) => `${at.getUTCDate()} ${month(at)} ${clock(at)}`);
  const dayStep = DAY_STEPS.find((step) => days / step <= MOST_TICKS);
  if (dayStep !== undefined)
    return evenTicks(
      from,
      to,
      24 * dayStep,
      (at) => `${at.getUTCDate()} ${month(at)}${isFirst(at, from) ? ` ${at.getUTCFullYear()}` : ""}`,
    );
  const monthStep = MONTH_STEPS.find((step) => days / 30.4 / step <= MOST_TICKS) ?? 60;
  return monthTicks(from, to, monthStep);
}

/** The year is written once where days are marked. */
const isFirst = (at: Date, from: number): boolean =>
  at.getTime() / HOUR - from < 24 * 14 && at.getTime() / HOUR >= from;

function evenTicks(from: number, to: number, step: number, label: (at: Date) => string): Tick[] {
  const ticks: Tick[] = [];
  for (let at = Math.ceil(from / step) * step; at <= to; at += step)
    ticks.push({ at, label: label(new Date(at * HOUR)) });
  return ticks.map((tick, i) => (i === 0 ? tick : { ...tick, label: tick.label.replace(/ \d{4}$/, "") }));
}

function monthTicks(from: number, to: number, step: number): Tick[] {
  const start = new Date(from * HOUR);
  const first = 12 * start.getUTCFullYear() + start.getUTCMonth();
  const ticks: Tick[] = [];
  for (let n = Math.ceil(first / step) * step; ; n += step) {
    const at = Date.UTC(Math.floor(n / 12), n % 12) / HOUR;
    if (at > to) return ticks;
    if (at >= from) ticks.push({ at, label: `${month(new Date(at * HOUR))} ${Math.floor(n / 12)}` });
  }
}

const month = (at: Date): string => at.toLocaleString("en-GB", { month: "short", timeZone: "UTC" });
const clock = (at: Date): string => at.toISOString().slice(11, 16);
