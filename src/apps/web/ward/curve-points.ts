import { type Day, dayNumber, dayOfNumber } from "../../../core/units/day.ts";
import type { BagView } from "./bag-view.ts";
import type { When } from "./ward-items.ts";

/** What the picture of a bag shows; hours since 1970. */
export interface BagCurvePoints {
  readonly from: number;
  readonly to: number;
  readonly now: number;
  readonly points: readonly {
    readonly hours: number;
    readonly percent: number;
    readonly isBesideGel: boolean;
  }[];
  readonly gel: readonly { readonly from: number; readonly to: number }[];
  readonly ready: { readonly from: number; readonly likely: number; readonly to: number } | null;
  /** Days that are named under the picture. */
  readonly days: readonly Day[];
}

/** A band that reaches further is cut off, so that the readings stay readable. */
const MOST_AHEAD_HOURS = 45 * 24;
const MOST_DAYS_NAMED = 6;

const hoursAt = ({ day, minute }: When): number => dayNumber(day) * 24 + minute / 60;

export function curveOf({
  entries,
  band,
  ...view
}: Pick<BagView, "entries" | "band" | "day" | "minute">): BagCurvePoints {
  const now = hoursAt(view);
  const first = entries[0];
  const from = first ? hoursAt(first) - 6 : now - 24;
  const ahead = (days: number): number => now + Math.min(MOST_AHEAD_HOURS, days * 24);
  const ready = band && { from: ahead(band.low), likely: ahead(band.typical), to: ahead(band.high) };
  const to = Math.max(now, ready?.to ?? 0) + 12;
  const gel = gelSpans(entries, now);
  const points = entries.flatMap((entry) => {
    if (entry.what !== "read") return [];
    const hours = hoursAt(entry);
    return [
      {
        hours,
        percent: (entry.value ?? 0) * 100,
        isBesideGel: gel.some((span) => span.from <= hours && hours < span.to),
      },
    ];
  });
  const [start, end] = [Math.ceil(from / 24), Math.floor(to / 24)];
  const step = Math.max(1, Math.ceil((end - start) / MOST_DAYS_NAMED));
  const days = Array.from({ length: Math.max(0, Math.floor((end - start) / step)) }, (_, i) =>
    dayOfNumber(start + i * step),
  );
  return { from, to, now, points, gel, ready, days };
}

function gelSpans(entries: BagView["entries"], now: number): { from: number; to: number }[] {
  const spans: { from: number; to: number }[] = [];
  let since: number | null = null;
  for (const entry of entries) {
    const hours = hoursAt(entry);
    if (entry.what === "gel in") since ??= hours;
    if (entry.what === "gel out" && since !== null) {
      spans.push({ from: since, to: hours });
      since = null;
    }
  }
  return since === null ? spans : [...spans, { from: since, to: now }];
}
