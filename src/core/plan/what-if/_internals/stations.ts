import type { CalendarEntry, Campaign, Station } from "../../../items/campaign.ts";
import { addDays, type Day, mondayOf } from "../../../units/day.ts";
import type { Change, Span } from "../change.ts";

const rowsOf = (campaign: Campaign, id: string, what: CalendarEntry["what"]): CalendarEntry[] =>
  campaign.calendar.filter((row) => row.who === id && row.what === what);

/** More days for a station that is there on given days only. One without such days is there always, and stays so. */
export function withOpening(
  campaign: Campaign,
  { station, from, to }: Change & { change: "open" },
): Campaign {
  if (rowsOf(campaign, station, "open").length === 0) return campaign;
  return { ...campaign, calendar: [...campaign.calendar, { who: station, what: "open", from, to }] };
}

/** The station's own days replaced by weekdays, from its first week to its last. Days it is closed, for whatever reason, stay closed. */
export function withWeekdays(campaign: Campaign, change: Change & { change: "weekdays" }): Campaign {
  const { station, weekdays } = change;
  const opens = rowsOf(campaign, station, "open");
  const first = opens.map((row) => row.from).sort()[0] ?? campaign.start;
  const lastOpen =
    opens
      .map((row) => row.to)
      .sort()
      .at(-1) ?? campaign.end;
  const others = campaign.calendar.filter((row) => !(row.who === station && row.what === "open"));
  const days: CalendarEntry[] = [];
  for (let monday = mondayOf(first); monday <= lastOpen; monday = addDays(monday, 7))
    for (const { from, to } of runsOf(weekdays, monday))
      if (to >= first) days.push({ who: station, what: "open", from: from < first ? first : from, to });
  return { ...campaign, calendar: [...others, ...days] };
}

/** The longer of the two stands: whoever works there keeps their own hours. */
export const withLongerDay = (
  campaign: Campaign,
  { station, hours }: Change & { change: "longer at" },
): Campaign => ({
  ...campaign,
  stations: campaign.stations.map((each) =>
    each.id === station ? { ...each, minutesADay: Math.max(each.minutesADay, hours * 60) } : each,
  ),
});

/** Stretches of neighbouring weekdays in the week of a Monday. */
function runsOf(weekdays: readonly number[], monday: Day): Span[] {
  const sorted = [...new Set(weekdays)].sort((a, b) => a - b);
  const runs: { from: Day; to: Day; last: number }[] = [];
  for (const weekday of sorted) {
    const run = runs.at(-1);
    const day = addDays(monday, weekday);
    if (run && weekday === run.last + 1) Object.assign(run, { to: day, last: weekday });
    else runs.push({ from: day, to: day, last: weekday });
  }
  return runs;
}

/** Stations like the first of the kind, there on the same days but none outside `from` to `to`. */
export function withStations(campaign: Campaign, change: Change & { change: "more stations" }): Campaign {
  const model = campaign.stations.find((each) => each.kind === change.kind);
  if (!model) return campaign;
  const stations = [...campaign.stations];
  const calendar = [...campaign.calendar];
  for (let n = 0; n < change.count; n++) {
    const station = copyOf(model, stations);
    stations.push(station);
    const own = campaign.calendar.filter((row) => row.who === model.id);
    const opens = own.some((row) => row.what === "open")
      ? own.flatMap((row) => (row.what === "open" ? overlap(row, change) : []))
      : [{ from: change.from, to: change.to }];
    calendar.push(
      ...own.filter((row) => row.what !== "open").map((row) => ({ ...row, who: station.id })),
      ...opens.map((span): CalendarEntry => ({ who: station.id, what: "open", ...span })),
    );
    if (opens.length === 0)
      calendar.push({ who: station.id, what: "closed", from: campaign.start, to: campaign.end });
  }
  return { ...campaign, stations, calendar };
}

function copyOf(model: Station, stations: readonly Station[]): Station {
  let n = 2;
  while (stations.some((each) => each.id === `${model.id}-${n}`)) n++;
  return { ...model, id: `${model.id}-${n}`, places: 1 };
}

function overlap(a: Span, b: Span): Span[] {
  const from = a.from > b.from ? a.from : b.from;
  const to = a.to < b.to ? a.to : b.to;
  return from <= to ? [{ from, to }] : [];
}
