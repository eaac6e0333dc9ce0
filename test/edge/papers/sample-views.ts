// Invented papers of an invented harbour office; no real person or collection is meant.
import type {
  BagTagView,
  BenchCardView,
  BenchStep,
  DayRow,
  DaySheetView,
  OrderListView,
} from "../../../src/edge/papers/views.ts";

export const CAMPAIGN = "Saltmere Reach Harbour Papers, Quillimbo";

const titles = [
  "Harbour dues, inward, 1894 to 1901",
  "Pilots' day book",
  "Correspondence with the lighthouse board at Tern Sound",
  "Tariff book with manuscript slips, second copy, kept in the upstairs store over the fish hall since 1951",
  "Crew lists, sail",
  "Chart of the inner roads, hand-coloured",
  "Wharf rents",
  "Letters out, copied",
];
const titleOf = (n: number): string => titles[n % titles.length] ?? "";
const idOf = (n: number): string => `${n % 3 === 0 ? "LDG" : "FIL"}-${String(n + 1).padStart(4, "0")}`;

export const PROTECTION = ["FFP2 mask", "nitrile gloves", "breathable coverall", "goggles"] as const;

const leaves: BenchStep = {
  room: "Bench",
  act: "Clean edges, then leaves",
  methods: ["air bulb", "soft brush toward the nozzle", "fine-filter vacuum through mesh"],
  minutes: "45 to 70",
  exposed: true,
  protection: PROTECTION,
  uses: ["1 table paper", "1 pair of gloves"],
};

const steps: readonly BenchStep[] = [
  {
    room: "Ward",
    act: "Release look",
    methods: [],
    minutes: "6",
    exposed: true,
    protection: ["FFP2 mask", "nitrile gloves"],
    uses: [],
  },
  {
    room: "Camera",
    act: "Picture the covers",
    methods: ["at the dirty-zone stand"],
    minutes: "12",
    exposed: true,
    protection: ["FFP2 mask", "nitrile gloves"],
    uses: ["1 table paper"],
  },
  {
    room: "Bench",
    act: "Wrap the cover",
    methods: ["strong paper over all board edges"],
    minutes: "15",
    exposed: true,
    protection: ["FFP2 mask", "nitrile gloves"],
    uses: ["1 wrapper sheet 700 × 1000 mm", "1 m cotton tape"],
  },
  leaves,
  {
    room: "Camera",
    act: "Picture the leaves",
    methods: ["cradle at the book's own angle"],
    minutes: "95",
    exposed: false,
    protection: [],
    uses: [],
  },
  {
    room: "Shelf",
    act: "Box",
    methods: ["own drop-back box"],
    minutes: "10",
    exposed: false,
    protection: [],
    uses: ["1 box, flat-packed"],
  },
];

export const benchCard = (n = 0, changes: Partial<BenchCardView> = {}): BenchCardView => ({
  campaign: CAMPAIGN,
  item: idOf(n),
  title: titleOf(n),
  format: "Bound volume, 320 leaves, 380 × 250 × 60 mm",
  parts: ["cover", "text block", "loose slips (14)"],
  where: "Ward, bag 17, upper shelf",
  conditions: ["Red rot, clear powder", "dormant mould on the first gathering", "damp: unsure"],
  steps,
  never: [
    "oil or dress the leather",
    "put water or a damp swab on any part",
    "use alcohol on the item",
    "brush the leather",
    "use an eraser",
    "press the book flat",
  ],
  notYet: [
    { action: "wrap the cover for good", until: "until the covers are pictured" },
    { action: "turn or clean leaves", until: "until it is wrapped" },
    { action: "take it to the camera room", until: "until it is cleaned and released" },
  ],
  stops: ["colour or fibre on the tool", "powder that is not leather", "droppings", "anyone feels unwell"],
  askWho: ["the conservator, by picture"],
  lookBefore: [
    "tag and title agree",
    "bag readings 55 % or less, twice",
    "pictures of the covers are on the list",
  ],
  lookAfter: [
    "nothing loose left on the table",
    "wrapper covers all board edges",
    "look again on day 14 and day 30",
  ],
  custodianRule: "The slips stay between the leaves where they were found.",
  signs: ["W009", "M017", "M009", "M004"],
  reasons: [
    {
      rule: "B02",
      text: "Covers cannot be seen once wrapped, and unwrapped they redden every leaf.",
      source: "common practice",
    },
    { rule: "B03", text: "Oil only makes mess, water turns it black.", source: "WUSTL" },
    {
      rule: "B13",
      text: "Two troubles, one order: dry, picture, wipe down, wrap, clean.",
      source: "common practice",
    },
    { rule: "C04", text: "Team cleaning of items is dry cleaning.", source: "common practice" },
    {
      rule: "C09",
      text: "Brush toward a low-suction fine-filter nozzle, through mesh when weak.",
      source: "TNA-INACT",
    },
  ],
  ...changes,
});

const timeOf = (n: number): string =>
  `${String(8 + (n % 9)).padStart(2, "0")}:30–${String(9 + (n % 9)).padStart(2, "0")}:10`;

const workRow = (n: number, changes: Partial<DayRow & { kind: "work" }> = {}): DayRow => ({
  kind: "work",
  time: timeOf(n),
  item: idOf(n),
  title: titleOf(n),
  items: [],
  act: ["Clean edges, then leaves", "Wrap the cover", "Picture the covers", "Box"][n % 4] ?? "",
  how: n % 4 === 0 ? "air bulb, then soft brush" : "",
  station: "mould bench 1",
  dirt: n < 3 ? "dust" : n < 6 ? "red rot" : "dormant mould",
  minutes: 20 + ((n * 7) % 30),
  exposed: n >= 3,
  ...changes,
});

/** A day of so many pieces of work, a wipe-down between them, a break after every fourth. */
export function rowsOf(pieces: number): readonly DayRow[] {
  const rows: DayRow[] = [];
  for (let n = 0; n < pieces; n++) {
    rows.push(workRow(n));
    if (n + 1 < pieces && n >= 2)
      rows.push({
        kind: "wipe-down",
        time: timeOf(n),
        text: "Wipe down mould bench 1: sheet off, wipe, dry, fresh gloves",
        minutes: 20,
      });
    if (n % 4 === 3 && n + 1 < pieces)
      rows.push({
        kind: "break",
        time: timeOf(n),
        text: "Mask off: 30 min outside the zone, drink water",
        minutes: 30,
      });
  }
  return rows;
}

export const daySheet = (person = "Pico Amberlane", changes: Partial<DaySheetView> = {}): DaySheetView => ({
  campaign: CAMPAIGN,
  day: "Tuesday 2 June 2026",
  person,
  role: "cleaner",
  stations: ["mould bench 1", "clean bench 2"],
  rows: rowsOf(6),
  hours: "08:00–16:15",
  sums: "work 307 min · changing and clearing 83 min",
  notes: ["Somebody stays in the building until 16:15."],
  clockNote: "Clock times are a proposal.",
  mould: { today: 168, limitToday: 180, week: "318 min on 2 of 3 days, today among them" },
  maskRule: "after 75 min of wear, 30 min off, outside the zone",
  protection: PROTECTION,
  signs: ["W009", "M017", "M004", "M009", "M010", "M011", "P022"],
  stops: [
    "colour or fibre on the tool",
    "powder that is not leather",
    "droppings",
    "leaves that stick",
    "growth that looks fresh",
    "anyone feels unwell",
  ],
  askWho: "Ines Dorrow",
  ...changes,
});

export const cleanDaySheet = (person = "Mara Quelm"): DaySheetView =>
  daySheet(person, {
    role: "clean-hands scribe",
    stations: ["boxing table"],
    rows: [
      workRow(9, {
        act: "Box",
        how: "own drop-back box",
        station: "",
        dirt: "",
        exposed: false,
        minutes: 10,
      }),
      workRow(10, {
        act: "Box",
        how: "four-flap, then shared box",
        station: "",
        dirt: "",
        exposed: false,
        minutes: 25,
      }),
    ],
    sums: "work 35 min · briefing 30 min",
    notes: [],
    mould: null,
    maskRule: "",
    protection: ["clean hands"],
    signs: ["M011"],
  });

export const bagTag = (n = 0, changes: Partial<BagTagView> = {}): BagTagView => ({
  campaign: CAMPAIGN,
  number: idOf(n),
  title: titleOf(n),
  alsoInside: n % 4 === 1 ? ["FIL-0981", "FIL-0982"] : [],
  dateIn: "Tuesday 2 June 2026",
  reason: "Living mould on the first gathering; damp",
  openOnlyBy: "a trained person in mask and gloves, at the mould bench",
  signs: ["W009", "M017", "M009", "P010"],
  release: "Released only by two readings of 55 % RH or less, a day apart; first try after 16 June.",
  ...changes,
});

export const order: OrderListView = {
  campaign: CAMPAIGN,
  day: "Tuesday 2 June 2026",
  lines: [
    {
      store: "FFP2 masks, two shapes",
      packs: 12,
      quantity: "12 × 20 = 240 masks",
      orderBy: "Friday 29 May 2026",
      neededBy: "Monday 10 August 2026",
      route: "sea",
      why: "Used up on 10 August at the planned pace; ten weeks by sea.",
      late: "4 days too late already: 26 mould sessions wait unless some come by air.",
    },
    {
      store: "Drop-back boxes 400 × 280 × 80 mm",
      packs: 9,
      quantity: "9 × 10 = 90 boxes",
      orderBy: "Monday 15 June 2026",
      neededBy: "Monday 7 September 2026",
      route: "sea",
      why: "One box for each ledger with red rot.",
      late: "",
    },
    {
      store: "Zip polyethylene bags, large",
      packs: 2,
      quantity: "2 × 100 = 200 bags",
      orderBy: "Monday 3 August 2026",
      neededBy: "Monday 10 August 2026",
      route: "local",
      why: "The 130 files with growth need one each, and one in five tears.",
      late: "",
    },
  ],
  notes: ["Ethanol is held by the shipping line; detergent wipes serve for the tables until it is here."],
};
