import type { Problem } from "../../../core/outcome/problem.ts";
import { problem } from "../problem.ts";
import { DATE_ORDERS, type DateOrder, dayOfPacked, isUnsure, NO_DAY, writtenGroups } from "./packed-date.ts";
import type { ReadingStore } from "./reading-store.ts";

/** What speaks for an order besides the dates themselves. */
export interface OrderHints {
  readonly file: string;
  readonly given: DateOrder | null;
  /** From letters in a heading, `MM/DD/YYYY`. */
  readonly written: DateOrder | null;
  /** The first date as written. */
  readonly firstText: string;
  readonly hasHalfDays: boolean;
  readonly isFahrenheit: boolean;
  /** Words of the headings are of a language that writes the day first. */
  readonly isDayFirstLanguage: boolean;
}

export interface DecidedOrder {
  readonly order: DateOrder;
  readonly doubts: readonly Problem[];
}

interface Evidence {
  readonly order: DateOrder;
  /** Rows whose date does not exist in this order. */
  readonly impossible: number;
  /** Days travelled from row to row, to and fro: least in the right order. */
  readonly travelled: number;
}

/** The order of day, month and year, by all rows together. */
export function decideDateOrder(store: ReadingStore, hints: OrderHints): DecidedOrder {
  if (firstDate(store, isUnsure) === null) return { order: orderSeen(hints.firstText), doubts: [] };
  const evidence = DATE_ORDERS.map((order) => evidenceFor(store, order));
  const settled = hints.given ?? hints.written;
  const fewest = Math.min(...evidence.map(({ impossible }) => impossible));
  const possible = evidence.filter(({ impossible }) => impossible === fewest);
  const chosen = evidence.find(
    ({ order }) => order === settled && (hints.given !== null || mostlyFits(order, evidence, store)),
  );
  if (chosen !== undefined) return { order: chosen.order, doubts: mixed(chosen, store, hints) };
  const [only] = possible;
  if (only !== undefined && possible.length === 1)
    return { order: only.order, doubts: mixed(only, store, hints) };
  return amongSeveral(possible, store, hints);
}

function firstDate({ date, size }: ReadingStore, isWanted: (packed: number) => boolean): number | null {
  for (let i = 0; i < size; i++) if (isWanted(date[i] ?? 0)) return date[i] ?? 0;
  return null;
}

/** 3 March is the same day in both orders. */
const isTwoDays = (packed: number): boolean => dayOfPacked(packed, "d-m-y") !== dayOfPacked(packed, "m-d-y");

/** Where every date is certain by itself the order is only told, not decided. */
function orderSeen(text: string): DateOrder {
  if (/^\D{0,5}(?:\d{4}\D|\d{8})/.test(text)) return "y-m-d";
  return /^\s*\p{L}{3,}\.?\s+\d{1,2}\b/u.test(text) ? "m-d-y" : /^\d{1,2}\D/.test(text) ? "d-m-y" : "y-m-d";
}

function evidenceFor({ date, size }: ReadingStore, order: DateOrder): Evidence {
  let impossible = 0;
  let travelled = 0;
  let last = -1;
  let lastDay = NO_DAY;
  let day = NO_DAY;
  for (let i = 0; i < size; i++) {
    const packed = date[i] as number; // i stays below size
    if (packed !== last) {
      last = packed;
      day = dayOfPacked(packed, order);
      if (day !== NO_DAY) {
        if (lastDay !== NO_DAY) travelled += Math.abs(day - lastDay);
        lastDay = day;
      }
    }
    if (day === NO_DAY) impossible++;
  }
  return { order, impossible, travelled };
}

const mostlyFits = (order: DateOrder, evidence: readonly Evidence[], { size }: ReadingStore): boolean =>
  (evidence.find((each) => each.order === order)?.impossible ?? size) <= size / 100;

/** Several orders are possible for every row: the one in which the days go on most evenly, else what is usual, with its reason. */
function amongSeveral(possible: readonly Evidence[], store: ReadingStore, hints: OrderHints): DecidedOrder {
  const usual = possible.filter(({ order }) => order !== "y-m-d");
  const sorted = [...possible].sort((a, b) => a.travelled - b.travelled);
  const [best, next] = sorted;
  if (best !== undefined && next !== undefined && best.travelled * 1.5 + 1 < next.travelled)
    return {
      order: best.order,
      doubts: [...mixed(best, store, hints), ...stepsDecided(best.order, possible, hints)],
    };
  const [one, ...others] = usual;
  if (one !== undefined && others.length === 0) return { order: one.order, doubts: mixed(one, store, hints) };
  const [order, why] = usualOrder(hints);
  const example = firstDate(store, isTwoDays);
  if (example === null) return { order, doubts: [] };
  return {
    order,
    doubts: [
      problem(
        "logger-date-order",
        isDotted(hints) ? "note" : "ask",
        { file: hints.file },
        {
          got: writtenGroups(example),
          expected: `${SAID[order]}, because ${why}`,
          remedy: "Say which is right before you rely on the days.",
        },
      ),
    ],
  };
}

const SAID: Readonly<Record<DateOrder, string>> = {
  "d-m-y": "day first",
  "m-d-y": "month first",
  "y-m-d": "year first",
};

/** Dates with dots have the day first; common practice, no source. */
const isDotted = ({ firstText }: OrderHints): boolean => /^\d{1,2}\.\d{1,2}\./.test(firstText);

function usualOrder(hints: OrderHints): readonly [DateOrder, string] {
  const { hasHalfDays, isFahrenheit, isDayFirstLanguage } = hints;
  if (isDotted(hints)) return ["d-m-y", "dates with dots have the day first"];
  if (isDayFirstLanguage) return ["d-m-y", "the headings are in a language that writes the day first"];
  if (hasHalfDays && isFahrenheit) return ["m-d-y", "AM, PM and °F go with the month first"];
  if (isFahrenheit) return ["m-d-y", "°F goes with the month first"];
  if (hasHalfDays) return ["m-d-y", "AM and PM go with the month first"];
  return ["d-m-y", "most of the world writes the day first"];
}

function stepsDecided(order: DateOrder, possible: readonly Evidence[], { file }: OrderHints): Problem[] {
  if (possible.every((each) => each.order === order || each.order === "y-m-d")) return [];
  return [
    problem(
      "logger-date-order-steps",
      "note",
      { file },
      {
        expected: `${SAID[order]}, because only then do the days follow each other`,
        remedy: "Nothing needs to be done if the first and the last day are right.",
      },
    ),
  ];
}

function mixed(
  { order, impossible }: Evidence,
  { size, date }: ReadingStore,
  { file }: OrderHints,
): Problem[] {
  if (impossible === 0) return [];
  let example = "";
  for (let i = 0; i < size && example === ""; i++) {
    const packed = date[i] as number; // i stays below size
    if (dayOfPacked(packed, order) === NO_DAY) example = writtenGroups(packed);
  }
  return [
    problem(
      "logger-dates-mixed",
      "ask",
      { file },
      {
        got: `${impossible} (e.g. ${example})`,
        expected: SAID[order],
        remedy: "A spreadsheet may have turned some dates round; export the file again from the logger.",
      },
    ),
  ];
}
