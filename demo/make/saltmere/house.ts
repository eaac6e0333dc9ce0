import { limits, store } from "../house.ts";
import type { CalendarRow, DeliveryRow, PersonRow, StoreRow } from "../rows.ts";

export const CAMPAIGN = {
  leafward: 1,
  name: "Saltmere Reach Harbour Papers",
  place: { name: "Quillimbo, Tavarine Islands", climate: "hot_humid", freezer: true, fineFilterVacuum: true },
  start: "2026-06-01",
  end: "2027-03-14",
  planFrom: "2026-06-01",
  dates: "year first",
  rooms: { wardLitres: 900 },
  stations: [
    { id: "mould-bench", kind: "mould bench", places: 2, minutesADay: 420 },
    { id: "clean-bench", kind: "clean bench", places: 3, minutesADay: 420 },
    { id: "cover-stand", kind: "cover stand", places: 1, minutesADay: 240 },
    { id: "camera", kind: "camera", places: 1, minutesADay: 540 },
    { id: "boxing-table", kind: "boxing table", places: 2, minutesADay: 420 },
  ],
  limits,
};

export const PEOPLE: readonly PersonRow[] = [
  { person: "ID", name: "Ines Dorrow", role: "lead", mould_work: "yes", hours: 7 },
  { person: "PA", name: "Pico Amberlane", role: "cleaner", mould_work: "yes", hours: 7 },
  { person: "TL", name: "Tevi Lusk", role: "cleaner", mould_work: "yes", hours: 7 },
  {
    person: "MQ",
    name: "Mara Quelm",
    role: "cleaner",
    skills: ["clean", "image", "box"],
    mould_work: "yes",
    hours: 7,
  },
  {
    person: "JH",
    name: "Jon Harrowby-Nue",
    role: "photographer",
    skills: ["image", "write"],
    mould_work: "yes",
    hours: 7,
  },
  { person: "OT", name: "Otto", role: "boxer", skills: ["box", "write"], mould_work: "no", hours: 7 },
];

const closed = (from: string, note: string, to?: string): CalendarRow => ({
  from,
  ...(to ? { to } : {}),
  who: "everyone",
  what: "closed",
  note,
});

export const CALENDAR: readonly CalendarRow[] = [
  {
    from: "2026-06-02",
    to: "2027-03-14",
    who: "camera",
    what: "open",
    note: "Hired; leaves by ship on 14 March",
  },
  { from: "2026-06-29", to: "2027-03-14", who: "TL", what: "clean work" },
  closed("2026-07-10", "Harbour Day"),
  closed("2026-08-14", "Feast of the Boats"),
  closed("2026-09-21", "Islands Day"),
  closed("2026-11-05", "Storm warning, fish hall shut", "2026-11-06"),
  closed("2026-12-24", "Year's end", "2027-01-03"),
  closed("2027-02-12", "Lamp Night"),
  { from: "2026-08-03", to: "2026-08-07", who: "PA", what: "away" },
  { from: "2026-10-19", to: "2026-10-23", who: "MQ", what: "away" },
  { from: "2026-09-28", to: "2026-10-02", who: "JH", what: "away" },
  { from: "2027-01-18", to: "2027-01-20", who: "ID", what: "away" },
  { from: "2026-09-01", to: "2027-03-12", who: "OT", what: "hours", hours: 4, note: "Afternoons" },
];

export const STORES: readonly StoreRow[] = [
  store("masks", "Disposable respirators without valve", "k-mask", "pc", 160, 20, 42, "air", {
    expires: "2028-05-31",
  }),
  store("gloves", "Nitrile gloves, three sizes", "k-gloves", "pairs", 500, 50, 28, "air", {
    expires: "2029-01-31",
  }),
  store("aprons", "Aprons with sleeves", "k-apron", "pc", 150, 50, 42, "sea"),
  store("coveralls", "Breathable coveralls", "k-coverall", "pc", 20, 25, 42, "sea"),
  store("hair", "Hair covers", "k-hair", "pc", 300, 100, 28, "air"),
  store("goggles", "Goggles", "k-goggles", "pc", 14, 5, 42, "air"),
  store("wipes", "Lint-free wipes", "k-cloth", "pc", 2000, 500, 28, "air"),
  store("ethanol", "Ethanol, 70 %", "k-eth", "L", 6, 5, 14, "local"),
  store("detergent", "Plain detergent", "k-det", "L", 8, 1, 3, "local"),
  store("table-cover", "Table paper and film", "k-cover", "m2", 300, 50, 7, "local"),
  store("waste-bags", "Waste bags", "k-bags-waste", "pc", 250, 50, 5, "local"),
  store("sponge-light", "Rubber sponge blocks, light", "k-sponge-light", "pc", 120, 24, 56, "air", {
    expires: "2027-11-30",
  }),
  store("sponge-heavy", "Rubber sponge blocks, heavy", "k-sponge-heavy", "pc", 60, 24, 56, "air", {
    expires: "2027-11-30",
  }),
  store("brushes", "Soft goat-hair brushes", "k-brush", "pc", 20, 5, 42, "air"),
  store("mesh", "Nylon mesh 30 x 30 cm", "k-mesh", "pc", 30, 10, 14, "local"),
  store("gauze", "Gauze for the nozzle", "k-gauze", "pc", 200, 50, 14, "local"),
  store("swabs", "Cotton buds", "k-swab", "pc", 3000, 500, 14, "local"),
  store("gel", "Silica gel, orange, dry", "k-gel", "kg", 25, 5, 42, "air"),
  store("bags", "Zip polyethylene bags, three sizes", "k-bag", "pc", 220, 100, 7, "local"),
  store("readers", "Humidity cards", "k-reader", "pc", 90, 30, 42, "air", { expires: "2027-12-31" }),
  store("wrap-paper", "Wrapper paper 120 g", "k-wrap-paper", "m2", 30, 10, 70, "sea"),
  store("tape", "Cotton tape", "k-tape", "m", 250, 50, 42, "air"),
  store("boxes", "Flat-packed boxes for volumes and files", "k-box-vol", "pc", 110, 25, 84, "sea", {
    order_by: "2026-06-12",
  }),
  store("folders", "Folders for sheets", "k-folder", "pc", 900, 100, 84, "sea", { order_by: "2026-06-12" }),
  store("labels", "Solvent-proof labels", "k-label", "pc", 1500, 500, 14, "local"),
];

export const DELIVERIES: readonly DeliveryRow[] = [
  {
    store: "masks",
    date: "2026-08-24",
    quantity: 240,
    note: "Promised for 3 August; three weeks late, left behind at the second port",
  },
  {
    store: "ethanol",
    date: "2026-10-05",
    quantity: 20,
    note: "Promised for 8 June; held by the shipping line as flammable",
  },
  { store: "folders", date: "2026-08-31", quantity: 600 },
  { store: "sponge-light", date: "2026-09-07", quantity: 72 },
  { store: "gel", date: "2026-07-13", quantity: 15 },
  { store: "gloves", date: "2026-09-07", quantity: 300 },
];
