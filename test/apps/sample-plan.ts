import { loadNorms } from "../../src/core/care/norms.ts";
import type { Reason } from "../../src/core/care/reason.ts";
import type { Act, Limits } from "../../src/core/items/campaign.ts";
import type { Assignment, Left, PersonDay, Plan } from "../../src/core/plan/plan.ts";
import { sheetRows } from "../../src/core/plan/sheet-rows.ts";
import { addDays, type Day, weekdayOf } from "../../src/core/units/day.ts";
import { readPublished } from "../../src/edge/published.ts";

/** An invented campaign, large enough to fill every part of the page. Nobody and no place in it exists. */
const day = (text: string): Day => text as Day; // literals of this file only
const FIRST = day("2026-06-29");

const PEOPLE: Plan["people"] = [
  { code: "ID", name: "Ines Dorrow", role: "lead", mouldLimit: { minutesADay: 120, daysAWeek: 2 } },
  { code: "PA", name: "Pico Amberlane", role: "cleaner", mouldLimit: { minutesADay: 240, daysAWeek: 4 } },
  { code: "TL", name: "Tevi Lusk", role: "cleaner", mouldLimit: { minutesADay: 240, daysAWeek: 4 } },
  { code: "MQ", name: "Mara Quelm", role: "cleaner", mouldLimit: null },
  { code: "JH", name: "Jon Harrowby-Nue", role: "photographer", mouldLimit: null },
  { code: "OT", name: "Otto", role: "clean-hands scribe", mouldLimit: null },
];

const STATIONS: Plan["stations"] = [
  { id: "mould bench", kind: "mould bench", places: 2 },
  { id: "clean bench", kind: "clean bench", places: 2 },
  { id: "cover stand", kind: "cover stand", places: 1 },
  { id: "camera", kind: "camera", places: 1 },
  { id: "boxing table", kind: "boxing table", places: 2 },
];
const LIMITS: Limits = {
  exposedMinutesADay: { value: 240, source: "invented" },
  exposedDaysAWeek: { value: 4, source: "invented" },
  exposedDaysInARow: { value: 2, source: "invented" },
  maskMinutes: { value: 75, source: "invented" },
  maskBreakMinutes: { value: 30, source: "invented" },
};

/** Mould minutes of the fortnight, Monday first; `null` is away. */
const EXPOSED: Readonly<Record<string, readonly (number | null)[]>> = {
  ID: [0, 95, 0, 0, 60, null, null, 0, 0, 118, 0, 0, null, null],
  PA: [228, 236, 0, 240, 190, null, null, 231, 240, 0, 214, 205, null, null],
  TL: [240, 0, 222, 238, null, null, null, null, 226, 240, 0, 239, null, null],
  MQ: [0, 0, 0, 0, 0, null, null, 0, 0, 0, 0, null, null, null],
  JH: [0, 0, 0, 0, 0, 0, null, 0, 0, 0, 0, 0, 0, null],
  OT: [0, null, 0, null, 0, null, null, 0, null, 0, null, 0, null, null],
};

const personDays = (): PersonDay[] =>
  Object.entries(EXPOSED).flatMap(([person, fortnight]) =>
    fortnight.flatMap((exposedMinutes, at) =>
      exposedMinutes === null
        ? []
        : [
            {
              day: addDays(FIRST, at),
              person,
              presentMinutes: 420,
              workMinutes: 372 - (at % 5) * 9,
              exposedMinutes,
              overheadMinutes: exposedMinutes > 0 ? 48 : 0,
            },
          ],
    ),
  );

type Line = readonly [item: string, act: Act, station: string, minutes: number, dirt: 0 | 1 | 2 | 3 | 4];
const FIRST_DAY: Readonly<Record<string, readonly Line[]>> = {
  ID: [
    ["SR-1102", "survey", "door table", 23, 0],
    ["SR-1103", "survey", "door table", 18, 0],
    ["SR-0871", "release", "ward table", 9, 0],
    ["SR-0874", "release", "ward table", 9, 0],
  ],
  PA: [
    ["SR-0310", "clean", "clean bench", 46, 1],
    ["SR-0044", "covers", "cover stand", 28, 2],
    ["SR-0412", "clean", "mould bench", 96, 3],
    ["SR-0415", "clean", "mould bench", 84, 3],
  ],
  TL: [
    ["SR-0322", "wrap", "clean bench", 25, 0],
    ["SR-0418", "clean", "mould bench", 110, 3],
    ["SR-0420", "clean", "mould bench", 82, 3],
  ],
  MQ: [
    ["SR-0207", "wrap", "clean bench", 37, 0],
    ["SR-0211", "clean", "clean bench", 64, 1],
    ["SR-0214", "clean", "clean bench", 71, 1],
    ["SR-0218", "clean", "clean bench", 58, 1],
  ],
  JH: [
    ["SR-0151", "image", "camera", 62, 0],
    ["SR-0153", "image", "camera", 58, 0],
    ["SR-0158", "image", "camera", 121, 0],
    ["SR-0160", "image", "camera", 77, 0],
  ],
  OT: [
    ["SR-0122", "box", "boxing table", 30, 0],
    ["SR-0125", "box", "boxing table", 30, 0],
    ["SR-0131", "box", "boxing table", 35, 0],
  ],
};

const assignments = (): Assignment[] =>
  Object.entries(FIRST_DAY).flatMap(([person, lines]) =>
    lines.map(([item, act, station, minutes, dirt], at) => ({
      day: FIRST,
      person,
      station,
      item,
      act,
      minutes,
      exposed: dirt >= 3,
      dirt,
      order: at + 1,
      wipeAfter: dirt >= 2 && (lines[at + 1]?.[2] !== station || at === lines.length - 1),
    })),
  );

const NITRATE: Reason = {
  rule: "H01",
  tier: 1,
  text: "Possible nitrate: apart from people and other items, cool, vented paper or vented tin, no flames, few at a time.",
  why: "Burns fiercely without air and gives poison gas; trapped gas speeds decay",
  source: "KODAK-H182",
  sourceStatus: "seen",
  fromUnsure: true,
};
const GREEN: Reason = {
  rule: "H07",
  tier: 1,
  text: "Bright green of 1800-1935: gloves, bag, label, no dry cleaning of the green part, wipe tables damp.",
  why: "The colour is loosely bound and comes off on hands; bag, gloves and wiped surfaces keep it in",
  source: "PBP",
  sourceStatus: "seen",
  fromUnsure: false,
};
const UNTESTED: Reason = {
  rule: "N01",
  tier: 2,
  text: "Every item answers its must-ask tests before a job card exists.",
  why: "A missing answer is not a no",
  source: "CP",
  sourceStatus: "common practice",
  fromUnsure: false,
};

const number = (n: number): string => `SR-${String(n).padStart(4, "0")}`;
const many = <T>(count: number, make: (at: number) => T): T[] =>
  Array.from({ length: count }, (_, at) => make(at));

const left = (): Left[] => [
  ...many(
    9,
    (at): Left => ({
      item: number(430 + at),
      title: `Cargo ledger ${1908 + at}, wet from the roof hole`,
      must: at < 4,
      kind: "no time",
      why: `Dry by the last week of February at the earliest; the camera leaves before its ${at < 4 ? 412 : 288} pages could be cleaned.`,
      reasons: [],
      askWho: [],
    }),
  ),
  ...many(
    3,
    (at): Left => ({
      item: number(1461 + at),
      title: `Film box ${at + 1}, unmarked, 1936–47`,
      must: false,
      kind: "set aside",
      why: "Possible nitrate: kept apart, cool and vented until it is identified.",
      reasons: [NITRATE],
      askWho: ["ask_conservator", "ask_fire_authority"],
    }),
  ),
  ...many(
    38,
    (at): Left => ({
      item: number(700 + at),
      title: `Coloured chart ${at + 1}, harbour approaches`,
      must: at === 0,
      kind: "set aside",
      why: "Bright green on the sheet: no dry cleaning of the green part.",
      reasons: [GREEN],
      askWho: ["ask_conservator"],
    }),
  ),
  ...many(
    28,
    (at): Left => ({
      item: number(1110 + at),
      title: `Tariff file ${1921 + (at % 14)}, bundle ${1 + (at % 3)}`,
      must: at % 9 === 0,
      kind: "at the Door",
      why: "Not tested: does the growth smear, is the paper damp.",
      reasons: [UNTESTED],
      askWho: [],
    }),
  ),
];

const range = (p10: string, p50: string, p90: string) => ({ p10: day(p10), p50: day(p50), p90: day(p90) });
const chanceOf = (item: string, late: number, last: number): Plan["risk"]["items"][number] => ({
  item,
  must: item === "SR-0412",
  image: range("2026-11-16", "2026-12-03", "2027-01-20"),
  box: range("2026-11-16", "2026-12-04", "2027-01-21"),
  boxed: 1 - late,
  late,
  last,
});
const RISK: Plan["risk"] = {
  drivers: [
    { luck: "deliveries", days: 23, items: 6 },
    { luck: "pace", days: 19, items: 5 },
    { luck: "waits", days: 5, items: 1 },
    { luck: "minutes", days: 4, items: 1 },
    { luck: "absence", days: 3, items: 0 },
  ],
  driverDraws: 30,
  items: [chanceOf("SR-0412", 0.14, 0.02), chanceOf("SR-0077", 0.08, 0.31), chanceOf("SR-0871", 0, 0)],
  watch: ["SR-0412", "SR-0077"],
};

/** Saltmere Reach on the Monday of its seventh week. */
export const samplePlan = (): Plan => ({
  campaign: "Saltmere Reach Harbour Papers",
  place: "Quillimbo, Tavarine Islands",
  start: day("2026-05-18"),
  end: day("2027-03-12"),
  planFrom: FIRST,
  itemCount: 1480,
  routed: 1299,
  doneBefore: 112,
  finish: {
    p10: day("2027-01-22"),
    p50: day("2027-02-09"),
    p90: day("2027-03-05"),
    boxed: { p10: 1274, p50: 1286, p90: 1290 },
    draws: 400,
    unfinished: 28,
  },
  risk: RISK,
  proof: {
    objective: 184_220,
    bound: 181_907,
    gap: 0.0126,
    classes: 74,
    rows: 3120,
    columns: 8455,
    itemObjective: 187_410,
    itemBound: 181_907,
    itemGap: 0.0294,
  },
  binds: [
    {
      resource: "mould minutes",
      weight: 0.41,
      load: 0.97,
      sentence: "Mould minutes: one more person for mould work from week 9 would save eight working days.",
    },
    {
      resource: "camera",
      weight: 0.18,
      load: 0.88,
      sentence: "Camera: a second camera would save two working days, and only after October.",
    },
    {
      resource: "ward",
      weight: 0.07,
      load: 0.74,
      sentence: "Ward: six more bags of 60 litres would let the wet ledgers in a week sooner.",
    },
    {
      resource: "k-fourflap",
      weight: 0.02,
      load: 0.61,
      sentence: "Wrappers: the August parcel covers the need until the middle of November.",
    },
  ],
  left: left(),
  assignments: assignments(),
  clock: sheetRows(
    assignments(),
    { people: PEOPLE, stations: STATIONS, limits: LIMITS },
    loadNorms(readPublished("norms.json")),
  ),
  personDays: personDays(),
  itemDays: [],
  orders: [
    {
      store: "mask-p3",
      name: "Masks, P3, without valve",
      unit: "pieces",
      packs: 12,
      quantity: 240,
      route: "ship",
      orderBy: FIRST,
      neededBy: day("2026-08-31"),
      late: false,
      why: "Two a day for each exposed person; those on hand last until 28 August.",
    },
    {
      store: "sponge",
      name: "Rubber sponges",
      unit: "pieces",
      packs: 5,
      quantity: 60,
      route: "air",
      orderBy: day("2026-07-03"),
      neededBy: day("2026-07-20"),
      late: true,
      why: "The June parcel is 12 days behind; heavy soot files begin on 20 July.",
    },
    {
      store: "box-vol",
      name: "Drop-back boxes, three sizes",
      unit: "boxes",
      packs: 9,
      quantity: 225,
      route: "ship",
      orderBy: day("2026-07-24"),
      neededBy: day("2026-10-05"),
      late: false,
      why: "Orders close in week 10; the ledgers of the north shelf start in October.",
    },
  ],
  stores: [],
  rooms: [
    { room: "Door", now: 28, toCome: 0, wait: "waits for its tests" },
    { room: "Ward", now: 64, toCome: 75, wait: "4 to 21 days, released by readings" },
    { room: "Bench", now: 31, toCome: 986, wait: "about 9 weeks for mouldy files" },
    { room: "Camera", now: 46, toCome: 1148, wait: "3 to 5 days" },
    { room: "Shelf", now: 118, toCome: 1284, wait: "boxed the same day or the next" },
  ],
  people: PEOPLE,
  stations: STATIONS,
});

/** A campaign in which nothing has been decided yet: every part of the page shows its empty state. */
export const emptyPlan = (): Plan => ({
  ...samplePlan(),
  itemCount: 0,
  routed: 0,
  doneBefore: 0,
  finish: { p10: null, p50: null, p90: null, boxed: { p10: 0, p50: 0, p90: 0 }, draws: 0, unfinished: 0 },
  risk: { drivers: [], driverDraws: 0, items: [], watch: [] },
  binds: [],
  left: [],
  assignments: [],
  clock: [],
  personDays: [],
  orders: [],
  rooms: [],
  people: [],
  stations: [],
});

/** Many people and many items left out, to see that the page stays quick and whole. */
export const crowdedPlan = (): Plan => {
  const base = samplePlan();
  const people = many(12, (at) => {
    const one = PEOPLE[at % PEOPLE.length] ?? PEOPLE[0];
    return {
      code: `P${at}`,
      name: `${one?.name ?? ""} ${at}`,
      role: one?.role ?? "",
      mouldLimit: one?.mouldLimit ?? null,
    };
  });
  return {
    ...base,
    itemCount: 20_000,
    people,
    personDays: people.flatMap(({ code }) =>
      many(14, (at) => addDays(FIRST, at))
        .filter((each) => weekdayOf(each) < 5)
        .map((each) => ({
          day: each,
          person: code,
          presentMinutes: 420,
          workMinutes: 380,
          exposedMinutes: 180,
          overheadMinutes: 48,
        })),
    ),
    left: many(2400, (at) => ({
      item: number(at),
      title: `Harbour file ${at}`,
      must: false,
      kind: "at the Door",
      why: "Not tested: is the paper damp.",
      reasons: [UNTESTED],
      askWho: [],
    })),
  };
};

/** The smallest sheet a picture can be. */
export const samplePicture =
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 297 210" width="297mm" height="210mm"><title>The plan</title><rect width="297" height="210" fill="#fff"/></svg>';
