import type { Campaign, Session, WardNote } from "../../items/campaign.ts";
import type { Filed } from "../../log/kinds.ts";
import { isOf } from "../../log/standing.ts";
import type { Day } from "../../units/day.ts";
import { sayAct } from "../conditions.ts";
import { sayClock } from "../day-sheet.ts";

/** One line of what was done to an item: the day, what, by whose code or role. */
export interface HistoryLine {
  readonly day: Day;
  /** Minutes after midnight; null: not written. */
  readonly minute: number | null;
  readonly what: string;
  readonly by: string;
}

const near = (exposed: boolean): string => (exposed ? ", near mould" : "");
const percent = (relHum: number): string => `${Math.round(relHum * 100)} %`;

/** What an entry of the log tells of an item's history; null: nothing that was done to it. */
export function sayHistory(event: Filed): HistoryLine | null {
  const what = doneIn(event);
  const { payload, who } = event;
  if (what === null || !("day" in payload) || payload.day === undefined) return null;
  const minute = "minute" in payload ? (payload.minute ?? null) : null;
  const person = "person" in payload ? payload.person : who.person;
  return { day: payload.day, minute, what, by: person ?? who.role };
}

function doneIn(event: Filed): string | null {
  if (isOf(event, "itemReleased")) {
    const { minutes, exposed, signed } = event.payload;
    return `Released from the Ward, ${minutes} min${near(exposed)}; signed ${signed.map(({ person }) => person).join(" and ")}`;
  }
  if (isOf(event, "itemBoxed")) {
    const { box, shelf, minutes } = event.payload;
    return `Into box ${box}${shelf === undefined ? "" : `, ${shelf}`}, ${minutes} min`;
  }
  if (isOf(event, "itemWrapped"))
    return `Wrapped (${event.payload.wrapper.replaceAll("_", " ")}), ${event.payload.minutes} min${near(event.payload.exposed)}`;
  if (isOf(event, "coversPictured")) return acted("covers", event.payload);
  if (isOf(event, "actDone", "actCopied")) return acted(event.payload.act, event.payload);
  if (isOf(event, "itemLookedBack")) return `Looked at again on its shelf: sound ${event.payload.sound}`;
  return movedOrRead(event);
}

function movedOrRead(event: Filed): string | null {
  if (isOf(event, "itemMoved")) {
    const { room, bag, shelf, freezer } = event.payload;
    const where = [bag && `bag ${bag}`, shelf, freezer === true ? "in the freezer" : ""].filter(
      (each) => each,
    );
    return `To the ${room}${where.length > 0 ? `, ${where.join(", ")}` : ""}`;
  }
  if (isOf(event, "bagClosed")) return wardWords("closed", event.payload.litres);
  if (isOf(event, "bagOpened")) return wardWords("opened", undefined);
  if (isOf(event, "bagRead")) return wardWords("read", event.payload.relHum);
  if (isOf(event, "bagWeighed")) return wardWords("weighed", event.payload.grams);
  if (isOf(event, "gelChanged"))
    return wardWords(event.payload.way === "in" ? "gel in" : "gel out", event.payload.grams);
  return null;
}

const acted = (
  act: Session["act"],
  { minutes, exposed, station }: { minutes: number; exposed: boolean; station?: string },
): string =>
  `${sayAct(act)}, ${minutes} min${near(exposed)}${station === undefined ? "" : `, at ${station}`}`;

function wardWords(what: WardNote["what"], value: number | undefined): string {
  const grams = value === undefined ? "" : `, ${value} g`;
  switch (what) {
    case "closed":
      return `Bag closed${value === undefined ? "" : `, ${value} L`}`;
    case "opened":
      return "Bag opened";
    case "read":
      return `Bag read: ${percent(value ?? 0)}`;
    case "weighed":
      return `Weighed${grams}`;
    case "gel in":
      return `Gel in${grams}`;
    case "gel out":
      return `Gel out${grams}`;
  }
}

/** The same as far as the sheets alone tell it. */
export function historyInSheets({ sessions, ward }: Campaign, item: string): HistoryLine[] {
  return [
    ...sessions
      .filter((each) => each.item === item)
      .map((each) => ({ day: each.day, minute: null, what: acted(each.act, each), by: each.person })),
    ...ward
      .filter((each) => each.item === item)
      .map(({ day, minute, what, value }) => ({ day, minute, what: wardWords(what, value), by: "" })),
  ].sort(byTime);
}

export const byTime = (a: HistoryLine, b: HistoryLine): number =>
  a.day.localeCompare(b.day) || (a.minute ?? 0) - (b.minute ?? 0);

export const sayMoment = ({ day, minute }: HistoryLine, locale: string): string =>
  minute === null ? day : `${day} ${sayClock(minute, locale)}`;
