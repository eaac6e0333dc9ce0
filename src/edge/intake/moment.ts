import type { Day } from "../../core/units/day.ts";
import { type DateOrder, dateFrom } from "./dates.ts";

const CLOCK =
  /^(\d{1,2})[:.h](\d{2})(?:[:.](\d{2})(?:[.,]\d+)?)?\s*([AP]\.?M\.?)?\s*(?:Z|[+-]\d{2}:?\d{2})?$/i;

/** Date and time of day as ISO 8601 local time to the second; a zone written after it is left out. Null: cannot be read. */
export function momentFrom(written: string, order: DateOrder | null): string | null {
  const text = written.trim();
  const cut = /^(\d{4}-\d{2}-\d{2})T/.test(text) ? 10 : text.search(/\s+\d{1,2}[:.h]\d{2}/);
  const day = dayFromWritten(cut < 0 ? text : text.slice(0, cut), order);
  const clock = cut < 0 ? "00:00:00" : clockFrom(text.slice(cut).replace(/^[T\s]+/, ""));
  return day === null || clock === null ? null : `${day}T${clock}`;
}

function dayFromWritten(written: string, order: DateOrder | null): Day | null {
  const reading = dateFrom(written.trim());
  if (reading.kind === "day") return reading.day;
  if (reading.kind !== "either") return null;
  if (order === null)
    return reading.dayFirst === null
      ? reading.monthFirst
      : reading.monthFirst === null
        ? reading.dayFirst
        : null;
  return order === "day first" ? reading.dayFirst : reading.monthFirst;
}

function clockFrom(written: string): string | null {
  const match = CLOCK.exec(written);
  if (!match) return null;
  const half = match[4]?.[0]?.toLowerCase();
  const hour = half === undefined ? Number(match[1]) : (Number(match[1]) % 12) + (half === "p" ? 12 : 0);
  const [minute, second] = [Number(match[2]), Number(match[3] ?? 0)];
  if (hour > 23 || minute > 59 || second > 59) return null;
  return [hour, minute, second].map((n) => String(n).padStart(2, "0")).join(":");
}
