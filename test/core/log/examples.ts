import type { Limits } from "../../../src/core/items/campaign.ts";
import type { Kind, Payload } from "../../../src/core/log/kinds.ts";
import { type Day, dayFrom } from "../../../src/core/units/day.ts";

export const day = (text: string): Day => {
  const found = dayFrom(text);
  if (found === null) throw new Error(`There is no day ${text}.`);
  return found;
};
const common = (value: number) => ({ value, source: "common practice, no source" });
const limits: Limits = {
  exposedMinutesADay: common(180),
  exposedDaysAWeek: common(3),
  exposedDaysInARow: common(2),
  maskMinutes: common(75),
  maskBreakMinutes: common(30),
};
const place = {
  name: "Quillimbo, Tavarine Islands",
  climate: "hot_humid",
  freezer: true,
  fineFilterVacuum: false,
} as const;
const stations = [
  { id: "mould-bench", kind: "mould bench" as const, places: 2, minutesADay: 420 },
  { id: "camera", kind: "camera" as const, places: 1, minutesADay: 540 },
];
const settings = {
  name: "Saltmere Reach Harbour Papers",
  start: day("2026-06-01"),
  end: day("2027-03-14"),
  wardLitres: 900,
};
const june = (n: number): Day => day(`2026-06-${String(n).padStart(2, "0")}`);
const work = { item: "SR-0031", person: "MQ", exposed: true } as const;
const bag = { bag: "N-12", items: ["SR-0031", "SR-0032"] };

/** One payload of every kind, in an order in which a campaign could write them. All invented. */
export const EXAMPLES: { readonly [K in Kind]: Payload<K> } = {
  campaignFounded: { ...settings, place, limits, stations },
  settingsChanged: { ...settings, wardLitres: 1100 },
  placeChanged: { place: { ...place, fineFilterVacuum: true } },
  limitsChanged: { limits: { ...limits, exposedMinutesADay: common(160) } },
  stationsChanged: {
    stations: [...stations, { id: "stand", kind: "cover stand", places: 1, minutesADay: 240 }],
  },
  calendarChanged: {
    from: day("2026-07-10"),
    to: day("2026-07-10"),
    who: "everyone",
    what: "closed",
    note: "Harbour Day",
  },
  powerCut: { day: june(6), minute: 840, hours: 5 },
  personListed: {
    person: "MQ",
    name: "Mara Quelm",
    role: "cleaner",
    skills: ["clean", "image"],
    mouldWork: true,
    weekdays: [0, 1, 2, 3, 4],
    hoursADay: 7,
    until: day("2027-03-12"),
  },
  personAway: { person: "MQ", from: day("2026-10-19"), to: day("2026-10-23") },
  personHours: { person: "MQ", from: day("2026-09-01"), to: day("2026-09-30"), hours: 5 },
  cleanWorkThisWeek: { person: "MQ", from: june(29), to: day("2026-07-03") },
  itemListed: {
    item: "SR-0031",
    title: "Wreck and salvage register, East Mole, 1910-13",
    facts: { format: "bound_volume", media: ["ink_iron_gall"], leaves: 103 },
    priority: "must",
    due: day("2026-09-01"),
    arrives: june(1),
    heightMm: 360,
    widthMm: 240,
    thicknessMm: 26,
    foundIn: "Rack 2 shelf 1",
    custodianRule: "Not out of the house",
  },
  partListed: { item: "SR-0031", part: "seal", facts: { cover: "seal_wax", leaves: 1 } },
  findingRecorded: {
    item: "SR-0031",
    part: "",
    test: "wet",
    answer: "yes",
    day: june(1),
    minute: 600,
    by: "MQ",
  },
  disagreementSettled: {
    item: "SR-0031",
    part: "seal",
    test: "growth_visible",
    answer: "no",
    day: june(3),
    by: ["MQ", "ID"],
  },
  itemMoved: {
    item: "SR-0031",
    room: "Ward",
    bag: "N-12",
    shelf: "W3",
    freezer: true,
    day: june(2),
    minute: 540,
  },
  promiseMade: { item: "SR-0031", act: "image", day: day("2026-08-20"), to: "custodian's person" },
  noteWritten: { item: "SR-0031", part: "", text: "Lower board loose; keep with its strap." },
  questionAsked: { question: "Q-07", item: "SR-0031", text: "May the strap be cut?" },
  questionAnswered: { question: "Q-07", item: "SR-0031", text: "No; tie it apart with tape." },
  bagClosed: { ...bag, day: june(2), minute: 550, litres: 12, dryBulb: 27 },
  gelChanged: { ...bag, day: june(2), minute: 555, way: "in", grams: 200 },
  bagRead: { ...bag, day: june(3), minute: 560, relHum: 0.67, dryBulb: 26.5 },
  bagOpened: { ...bag, day: june(5), minute: 600 },
  bagWeighed: { item: "SR-0031", day: june(5), minute: 610, grams: 1320 },
  itemReleased: {
    ...work,
    day: june(15),
    minutes: 12,
    signed: [
      { person: "MQ", role: "cleaner" },
      { person: "ID", role: "lead" },
    ],
  },
  sessionStarted: { person: "MQ", day: june(16), minute: 480, acts: ["clean"], exposed: true },
  actDone: { ...work, day: june(16), part: "", act: "clean", minutes: 55, station: "mould-bench" },
  sessionWorked: {
    person: "MQ",
    day: june(16),
    minute: 480,
    acts: ["clean"],
    minutes: 70,
    exposedMinutes: 55,
    maskMinutes: 60,
  },
  actCopied: { ...work, day: june(1), act: "survey", minutes: 6, exposed: false },
  coversPictured: { ...work, day: june(16), minutes: 8, exposed: false, station: "stand" },
  itemWrapped: { ...work, day: june(16), minutes: 9, wrapper: "four_flap" },
  pictureTaken: { item: "SR-0031", part: "", day: june(17), shot: "fol-001r", picture: "0f".repeat(32) },
  itemBoxed: { ...work, day: june(18), minutes: 5, exposed: false, box: "K-044", shelf: "S2" },
  itemLookedBack: { item: "SR-0031", day: day("2026-09-18"), person: "ID", sound: "yes" },
  stationWiped: { station: "mould-bench", day: june(16), minute: 550, person: "MQ", minutes: 6 },
  storeListed: {
    store: "masks",
    name: "Respirators without valve",
    use: "k-mask",
    unit: "pc",
    pack: 20,
    leadDays: 42,
    route: "air",
    expires: day("2028-05-31"),
    orderBy: day("2027-01-10"),
  },
  stockCounted: { store: "masks", day: june(1), quantity: 160 },
  deliveryExpected: {
    store: "masks",
    delivery: "M-1",
    day: day("2026-08-03"),
    quantity: 240,
    note: "Left behind at the second port",
  },
  deliveryArrived: { store: "masks", delivery: "M-2", day: june(20), quantity: 40 },
  readerRead: {
    reader: "ward",
    readings: [
      { at: "2026-06-02T08:00:00", dryBulb: 27.5, relHum: 0.71 },
      { at: "2026-06-02T09:00:00", relHum: 0.7 },
    ],
  },
  planAccepted: { plan: "ab".repeat(32), from: june(1), finish: day("2027-02-20"), boxed: 1469, left: 11 },
  eventCorrected: { event: "01KT26DM80QQQQQQQQQQQQQQQQ", about: ["item:SR-0031"] },
};
