import { mondays } from "../days.ts";
import { limits, store } from "../house.ts";
import type { CalendarRow, DeliveryRow, PersonRow, StoreRow } from "../rows.ts";
import { closed, usualStores } from "../usual.ts";

const START = "2026-10-05";
const END = "2027-05-07";

export const CAMPAIGN = {
  leafward: 1,
  name: "House of the Nine Lamps",
  place: { name: "Upper Sarrowen valley", climate: "warm_wet_season", freezer: true, fineFilterVacuum: true },
  start: START,
  end: END,
  planFrom: START,
  dates: "year first",
  rooms: { wardLitres: 700 },
  stations: [
    { id: "mould-bench", kind: "mould bench", places: 1, minutesADay: 360 },
    { id: "clean-bench", kind: "clean bench", places: 3, minutesADay: 420 },
    { id: "cover-stand", kind: "cover stand", places: 1, minutesADay: 240 },
    { id: "camera", kind: "camera", places: 1, minutesADay: 540 },
    { id: "boxing-table", kind: "boxing table", places: 1, minutesADay: 420 },
  ],
  limits,
};

export const PEOPLE: readonly PersonRow[] = [
  {
    person: "SW",
    name: "Sela Wenmar",
    role: "lead",
    skills: ["lead", "clean", "image", "box"],
    mould_work: "yes",
    hours: 7,
  },
  { person: "HK", name: "Hoby Kestrane", role: "cleaner", mould_work: "yes", hours: 7 },
  {
    person: "AT",
    name: "Anouk Teel",
    role: "photographer",
    skills: ["image", "clean", "box"],
    mould_work: "yes",
    hours: 7,
  },
  {
    person: "DO",
    name: "Dame Orrel",
    role: "custodian's person",
    skills: ["box", "write"],
    mould_work: "no",
    hours: 4,
  },
];

/** The school has the camera on two days a week, so it is here from Monday to Wednesday. */
const cameraDays: CalendarRow[] = mondays(START, END).map((monday) => ({
  from: monday,
  to: plusTwo(monday),
  who: "camera",
  what: "open",
  note: "",
}));

function plusTwo(monday: string): string {
  return new Date(Date.parse(`${monday}T00:00:00Z`) + 2 * 86_400_000).toISOString().slice(0, 10);
}

export const CALENDAR: readonly CalendarRow[] = [
  ...cameraDays,
  { from: "2026-11-23", to: "2026-12-04", who: "SW", what: "away", note: "On leave" },
  closed("2026-11-09", "Feast of lamps", "2026-11-10"),
  closed("2026-12-24", "Turn of the year", "2027-01-02"),
  closed("2027-02-17", "Freezer failed in the night; everyone carries packs to the ice house"),
];

export const STORES: readonly StoreRow[] = [
  ...usualStores(0.6),
  store("cases", "Cases and boxes for bundles", "k-box-vol", "pc", 160, 20, 70, "sea", {
    order_by: "2026-11-13",
  }),
  store("tape", "Undyed cotton tape", "k-tape", "m", 240, 50, 28, "air"),
  store("blotters", "Blotting paper A3", "k-blot", "sheets", 60, 20, 28, "air"),
  store("folders", "Folders for sheets", "k-folder", "pc", 200, 50, 56, "sea"),
];

export const DELIVERIES: readonly DeliveryRow[] = [
  {
    store: "cases",
    date: "2027-01-18",
    quantity: 240,
    note: "Promised for 14 December; five weeks late, the pass was closed by snow",
  },
  { store: "masks", date: "2026-11-16", quantity: 100 },
];
