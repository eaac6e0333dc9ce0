import { type CellReading, refused } from "./cell-reading.ts";
import { type DateEvidence, type DateOrder, type DateReading, dateFrom } from "./dates.ts";

const ISO = "Write yyyy-mm-dd, e.g. 2026-06-02.";
const SETTLE = 'Write dates as yyyy-mm-dd, or set "dates" in campaign.json to "day first" or "month first".';

type Either = Extract<DateReading, { kind: "either" }>;
type Order = DateOrder | "two orders" | null;

/** Reads a day, by the order its column has; a day that nothing settles is asked about. */
export function readDay(written: string, order: Order, evidence: DateEvidence | undefined): CellReading {
  const reading = dateFrom(written);
  switch (reading.kind) {
    case "day":
      return { value: reading.day };
    case "short year":
      return refused("short-year", "stop", {
        got: written,
        expected: "a year of four digits",
        remedy: "Write the whole year, e.g. 2026-06-02.",
      });
    case "none":
      return refused("not-a-date", "stop", { got: written, expected: "a date", remedy: ISO });
    case "either":
      return order === "two orders"
        ? contradictory(written, reading, evidence)
        : inOrder(written, reading, order);
  }
}

function inOrder(written: string, { dayFirst, monthFirst }: Either, order: DateOrder | null): CellReading {
  if (order === null)
    return refused("ambiguous-date", "ask", {
      got: written,
      expected: `${dayFirst} or ${monthFirst}`,
      remedy: SETTLE,
    });
  const value = order === "day first" ? dayFirst : monthFirst;
  if (value !== null) return { value };
  return refused("not-a-date", "stop", { got: written, expected: `a date, ${order}`, remedy: ISO });
}

/** Where the orders contradict, only a date that fits the commoner order and no other is taken. */
function contradictory(written: string, reading: Either, evidence: DateEvidence | undefined): CellReading {
  const commoner = evidence?.commoner() ?? null;
  if (commoner === "day first" && reading.monthFirst === null) return { value: reading.dayFirst };
  if (commoner === "month first" && reading.dayFirst === null) return { value: reading.monthFirst };
  return refused("contradictory-dates", "ask", {
    got: written,
    expected: `${evidence?.dayFirst ?? 0} day first, ${evidence?.monthFirst ?? 0} month first`,
    remedy: "Write every date of the column as yyyy-mm-dd.",
  });
}
