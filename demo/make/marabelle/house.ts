import { limits, store } from "../house.ts";
import type { CalendarRow, DeliveryRow, PersonRow, StoreRow } from "../rows.ts";

export const CAMPAIGN = {
  leafward: 1,
  name: "Marabelle Studio and the Lissabwe Gazette",
  place: { name: "Lissabwe on the river", climate: "hot_dry", freezer: false, fineFilterVacuum: true },
  start: "2026-09-01",
  end: "2027-10-31",
  planFrom: "2026-09-01",
  dates: "year first",
  rooms: { wardLitres: 700 },
  stations: [
    { id: "mould-bench", kind: "mould bench", places: 2, minutesADay: 420 },
    { id: "clean-bench", kind: "clean bench", places: 4, minutesADay: 420 },
    { id: "cover-stand", kind: "cover stand", places: 1, minutesADay: 240 },
    { id: "camera-light", kind: "camera", places: 1, minutesADay: 420 },
    { id: "camera-platen", kind: "camera", places: 1, minutesADay: 420 },
    { id: "boxing-table", kind: "boxing table", places: 3, minutesADay: 420 },
  ],
  limits,
};

export const PEOPLE: readonly PersonRow[] = [
  { person: "BO", name: "Bram Oskeld", role: "lead", mould_work: "yes", hours: 7 },
  { person: "RV", name: "Ruti Vane", role: "cleaner", mould_work: "yes", hours: 7 },
  {
    person: "CM",
    name: "Cal Morrow-Jin",
    role: "cleaner",
    skills: ["clean", "box", "write"],
    mould_work: "yes",
    hours: 7,
  },
  { person: "NA", name: "Nim Astorell", role: "photographer", mould_work: "yes", hours: 7 },
  { person: "OF", name: "Odile Farrowmede", role: "photographer", mould_work: "yes", hours: 7 },
  { person: "TB", name: "Tam Bexley-Oru", role: "cleaner", mould_work: "yes", hours: 7 },
  { person: "SL", name: "Shia Lorrimund", role: "boxer", mould_work: "yes", hours: 7 },
  {
    person: "GW",
    name: "Gaspar Wendry",
    role: "cleaner",
    skills: ["clean", "box", "write"],
    mould_work: "no",
    hours: 7,
  },
];

const everyone = (
  from: string,
  to: string,
  what: "closed" | "hours",
  note: string,
  hours?: number,
): CalendarRow => ({
  from,
  to,
  who: "everyone",
  what,
  ...(hours === undefined ? {} : { hours }),
  note,
});

export const CALENDAR: readonly CalendarRow[] = [
  everyone("2026-09-01", "2026-09-18", "hours", "Heat: dawn shift, no loading outdoors after ten", 5),
  everyone("2026-12-24", "2027-01-01", "closed", "Year's end"),
  everyone(
    "2027-02-08",
    "2027-02-19",
    "closed",
    "Flood: streets under water; two metres of flood-soiled files are handed in, not yet numbered",
  ),
  everyone("2027-02-22", "2027-03-26", "hours", "Mud and generator hours", 5),
  everyone("2027-04-26", "2027-06-18", "hours", "Heat to 41 C: dawn shift", 4),
  {
    from: "2027-05-03",
    to: "2027-05-14",
    who: "camera-light",
    what: "closed",
    note: "Film room at 41 C: cleared, nobody works beside nitrate",
  },
  {
    from: "2027-02-22",
    to: "2027-03-05",
    who: "boxing-table",
    what: "closed",
    note: "Ground floor being dried",
  },
  { from: "2026-11-23", to: "2026-12-04", who: "RV", what: "away" },
  { from: "2027-07-05", to: "2027-07-16", who: "NA", what: "away" },
  { from: "2027-08-02", to: "2027-08-13", who: "BO", what: "away" },
  { from: "2026-10-12", to: "2026-10-12", who: "everyone", what: "closed", note: "River Day" },
  { from: "2027-07-20", to: "2027-07-20", who: "everyone", what: "closed", note: "Printers' Day" },
];

export const STORES: readonly StoreRow[] = [
  store("masks", "Disposable respirators without valve", "k-mask", "pc", 120, 20, 42, "air", {
    expires: "2029-03-31",
  }),
  store("gloves", "Nitrile gloves, powder free", "k-gloves", "pairs", 1200, 100, 28, "air", {
    expires: "2029-03-31",
  }),
  store("aprons", "Aprons with sleeves", "k-apron", "pc", 150, 50, 42, "sea"),
  store("coveralls", "Breathable coveralls", "k-coverall", "pc", 30, 25, 42, "sea"),
  store("hair", "Hair covers", "k-hair", "pc", 300, 100, 28, "air"),
  store("goggles", "Goggles", "k-goggles", "pc", 16, 5, 42, "air"),
  store("wipes", "Lint-free wipes", "k-cloth", "pc", 3500, 500, 28, "air"),
  store("ethanol", "Ethanol, 70 %, never near film", "k-eth", "L", 20, 5, 10, "local"),
  store("detergent", "Plain detergent, for the acrylic platen too", "k-det", "L", 12, 1, 3, "local"),
  store("table-cover", "Table paper and film", "k-cover", "m2", 600, 50, 7, "local"),
  store("waste-bags", "Waste bags", "k-bags-waste", "pc", 500, 50, 4, "local"),
  store("sponges", "Rubber sponge blocks", "k-sponge-light", "pc", 40, 24, 56, "air", {
    expires: "2027-06-30",
  }),
  store("brushes", "Softest goat-hair brushes", "k-brush", "pc", 30, 5, 42, "air"),
  store("mesh", "Nylon mesh 30 x 30 cm", "k-mesh", "pc", 40, 10, 10, "local"),
  store("gauze", "Gauze for the nozzle", "k-gauze", "pc", 300, 50, 10, "local"),
  store("swabs", "Cotton buds", "k-swab", "pc", 2000, 500, 10, "local"),
  store("gel", "Silica gel, orange, dry", "k-gel", "kg", 20, 5, 42, "air"),
  store("bags", "Zip polyethylene bags", "k-bag", "pc", 180, 100, 7, "local"),
  store("readers", "Humidity cards", "k-reader", "pc", 60, 30, 42, "air", { expires: "2028-01-31" }),
  store("wrap-paper", "Wrapper paper 120 g", "k-wrap-paper", "m2", 15, 10, 63, "sea"),
  store("tape", "Cotton tape", "k-tape", "m", 300, 50, 42, "air"),
  store("four-flaps", "Four-flaps for plates, unbuffered", "k-fourflap", "pc", 800, 100, 70, "sea", {
    order_by: "2027-01-29",
  }),
  store("boxes", "Boxes for volumes, plates and film", "k-box-vol", "pc", 200, 25, 84, "sea"),
  store("folders", "Unbuffered folders for prints", "k-folder", "pc", 450, 50, 70, "sea"),
  store("labels", "Labels", "k-label", "pc", 3500, 500, 14, "local"),
];

export const DELIVERIES: readonly DeliveryRow[] = [
  {
    store: "four-flaps",
    date: "2026-12-14",
    quantity: 900,
    note: "Promised for 2 November; six weeks late, wrong grain and sent back once",
  },
  { store: "boxes", date: "2027-01-25", quantity: 200 },
  { store: "masks", date: "2027-02-01", quantity: 60, note: "Before the flood, by road" },
  { store: "gloves", date: "2027-03-01", quantity: 600 },
];
