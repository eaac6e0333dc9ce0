import type { Act } from "../../items/campaign.ts";

/** Words of the weekly report for a funder: no person is named in it. */
export const WEEK = {
  kind: "Weekly report",
  title: "The week",
  finishTitle: "When it will be finished",
  lead: (boxed: string, all: string): string => `${boxed} of ${all} items are in their boxes.`,
  done: "What was done",
  doneColumns: { act: "Work", week: "This week", before: "Before", left: "Still to come" },
  rooms: "Where everything is",
  roomColumns: { room: "Room", now: "Here now", toCome: "To come" },
  minutes: "Hours worked on items",
  mould: "of them near mould",
  holds: "What holds the date",
  needs: "What the campaign needs",
  orders: (count: number, late: number, names: readonly string[]): string =>
    count === 0
      ? "Nothing has to be ordered in the coming fortnight."
      : `${count} ${count === 1 ? "order has" : "orders have"} to be sent in the coming fortnight${late > 0 ? `, ${late} already too late` : ""}: ${names.join(", ")}.`,
  aside: (count: number): string => `${count} set aside until somebody outside the team has answered.`,
  door: (count: number): string => `${count} not yet fully looked at.`,
  noTime: (count: number): string => `${count} find no time before the end.`,
  without: "Without a place in the plan",
  honest: (draws: number): string =>
    `The range comes from ${draws} simulated campaigns with luck in minutes, waits, absence, deliveries and pace. Drying ends by readings, never by a date.`,
  act: {
    survey: "Surveyed",
    admit: "Taken into quarantine",
    release: "Released from quarantine",
    covers: "Covers photographed",
    wrap: "Wrapped",
    clean: "Cleaned",
    image: "Photographed",
    box: "Boxed",
  } satisfies Record<Act, string>,
  tenth: "1 campaign in 10",
  half: "Half of them",
  nineTenths: "9 in 10",
  afterEnd: (end: string): string => `after ${end}`,
  by: (day: string): string => `by ${day}`,
  allBoxed: (all: string): string => `All ${all} on their way are boxed by the end, in 9 campaigns of 10.`,
  boxed: (half: string, all: string, tenth: string): string =>
    `Boxed by the end, as likely as not: ${half} of ${all} on their way (1 campaign in 10: ${tenth} or fewer).`,
} as const;
