import { sayDay, sayMinutes } from "../../../../core/say/dates.ts";
import { days as words } from "../../../../core/say/rooms/plan.ts";
import type { Day } from "../../../../core/units/day.ts";
import { count, LOCALE } from "../../frame/reader.ts";
import { type Row, weekOf } from "./calendar.ts";

/** What a row is called. */
export function rowName(row: Row): string {
  if (row.kind === "person") return row.person.name;
  if (row.kind === "station") return row.station.id;
  return row.what === "end" ? words.end : words.goods;
}

/** One cell in words, the same for picture, table and screen reader; never why somebody is on clean work. */
export function cellWords(row: Row, at: number): string {
  if (row.kind === "station") return row.station.isOpen[at] ? words.stationOpen : words.stationShut;
  if (row.kind === "marks") {
    const here = row.marks.filter((mark) => mark.at === at);
    if (row.what === "end") return here.length > 0 ? words.ends : "–";
    return here.length === 0 ? words.noDelivery : here.map(deliveryWords).join(", ");
  }
  const minutes = row.near[at] ?? -2;
  if (minutes === -2) return words.closed;
  if (minutes === -1) return words.away;
  const { limit } = row.person;
  if (limit === null || weekOf(row.near, Math.floor(at / 7)).days === 0) return words.clean;
  return words.near(sayMinutes(minutes, LOCALE), sayMinutes(limit.minutesADay, LOCALE));
}

export const deliveryWords = ({
  name,
  quantity,
}: {
  readonly name: string;
  readonly quantity: number;
}): string => words.delivery(count(quantity).text, name);

/** A person's week against its limit; null: clean work. */
export function weekWords(row: Row & { kind: "person" }, week: number): string | null {
  const { days, minutes } = weekOf(row.near, week);
  const { limit } = row.person;
  if (limit === null || days === 0) return null;
  return words.nearWeek(sayMinutes(minutes, LOCALE), days, limit.daysAWeek);
}

export const spotWords = (row: Row, day: Day, at: number): string =>
  words.spot(rowName(row), sayDay(day, LOCALE, "full"), cellWords(row, at));
