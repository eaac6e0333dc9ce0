import type { Count } from "../page.ts";

const of = (count: Count, one: string, many: string): string => `${count.text} ${count.n === 1 ? one : many}`;

/** What is next for a bag, on its tile; and what to do about it. */
export const WARD_TASKS = {
  "take-gel-out-now": ["Take the gel out now", "It is as dry as this material bears."],
  "too-damp-without-gel": ["Still damp", "At 65 % or more mould grows: put gel in today, and tell the lead."],
  "keep-dry-on": ["Dry on", "Too damp for a release: put fresh gel in."],
  close: ["Close a bag", "An open item spreads spores, and nothing can be read."],
  release: ["May be released", "Two people look at it and sign."],
  "take-out-of-freezer": ["Take it out of the freezer", "Then leave it sealed for a day or two."],
  read: ["Read it", "Through the closed bag."],
  "read-and-change-gel": ["Read it, see to the gel", "Every third day at least."],
  "answer-tests": ["Tests not answered", "Not tested is never no: answer them at the Door."],
  ask: ["Wait for an answer", "A rule keeps it here."],
  "warm-up": ["Warming up, sealed", "Opened cold it gathers dew."],
  watch: ["Under watch", "Look again when the days are over."],
  freeze: ["In the freezer", "Count from a core that is cold."],
} as const;

export const ward = {
  title: "Ward",
  intro:
    "Bags on their shelves: what cannot wait stands first. Release is earned by readings, never by a date.",
  due: (bags: Count, later: Count) =>
    `${bags.n === 0 ? "Nothing is due now" : `${of(bags, "bag", "bags")} to see to now`}${later.n === 0 ? "" : `, ${later.text} later today`}`,
  today: (clock: string) => `today, ${clock}`,
  shelf: (name: string) => (name === "" ? "No shelf written" : `Shelf ${name}`),
  bag: (name: string) => `Bag ${name}`,
  items: (items: Count) => of(items, "item", "items"),
  unread: "not read yet",
  gel: "with gel",
  open: "open",
  freezer: "freezer",
  now: "now",
  from: (when: string) => `from ${when}`,
  ready: (first: string, last: string) =>
    first === last ? `ready about ${first}` : `ready ${first} to ${last}`,
  usually: (first: string, last: string) => `usually ready ${first} to ${last}`,
  noDate: "no date yet",
  read: "Read",
  show: "Show",
  filters: { all: "All", due: "Now", release: "May be released", freezer: "Freezer", open: "Open" },
  find: "Bag or item",
  none: "No bag fits",
  noneHelp: "Show all, or clear what is typed.",
  empty: "The Ward is empty",
  emptyHelp: "What needs drying, watching or freezing is put in a bag here.",
  loose: "In the Ward, in no bag",
  looseHelp: "Unbagged things spread spores and insects. Put each in a bag.",
  toCome: (items: Count) => `To be put in (${items.text})`,
  toComeToday: "planned for today",
  putIn: "Put an item in",
  back: "All bags",
  noBag: (bag: string) => `Nothing lies in a bag ${bag} now`,
  noBagHelp: "It may have been released, or moved to another bag.",
} as const;

/** One bag. */
export const bag = {
  acts: "What to do",
  read: "Read",
  gel: "Gel",
  weigh: "Weigh",
  open: "Open",
  close: "Close",
  release: "Release",
  freezer: "Freezer",
  cancel: "Cancel",
  contents: "In this bag",
  since: (day: string) => `in the Ward since ${day}`,
  curve: "Readings",
  curveSays: (readings: Count, last: string) =>
    `Relative humidity in the bag over the days; ${of(readings, "reading", "readings")}, the last ${last}. The same figures stand in the table.`,
  table: "Readings as a table",
  columns: { when: "When", what: "What", value: "Figure", warmth: "°C" },
  noReadings: "No reading yet",
  noReadingsHelp: "Read it at closing, before gel goes in: that reading is where the drying curve begins.",
  passLine: "55 % passes",
  gelSpan: "gel inside",
  band: "ready, by readings",
  bandPlanning: "reckoned with, no date",
  today: "now",
  entry: {
    read: "read",
    closed: "closed",
    opened: "opened",
    "gel in": "gel put in",
    "gel out": "gel taken out",
  },
  why: { earned: "It may leave", held: "Why it may not leave yet" },
  met: "yes",
  unmet: "no",
  expected: "When it may be ready",
  cautions: "To mind",
  because: "No date yet, because",
} as const;

/** Forms. */
export const form = {
  relHum: "Relative humidity in the bag, %",
  dryBulb: "Temperature beside it, °C (if shown)",
  grams: "Grams",
  saidRead: (bag: string, value: string) => `Bag ${bag} reads ${value}`,
  weighWhat: "Which item is on the scale, bag, gel and box off?",
  saidWeighed: (item: string, value: string) => `${item} weighs ${value}`,
  gelIn: "Gel put in",
  gelOut: "Gel taken out",
  gelSwap: "Gel changed for dry",
  gelGrams: "Grams of gel put in (if weighed)",
  gelHelp:
    "With gel inside the reader shows the gel. Before a release it comes out, and the bag rests two days.",
  saidGel: (bag: string, what: string) => `${what}: bag ${bag}`,
  saidOpened: (bag: string) => `Opened bag ${bag}`,
  saidClosed: (bag: string) => `Closed bag ${bag}`,
  openHelp: "Once it was open, the readings before no longer count for a release.",
  closeHelp: "Close it with the reader inside, and read it now: the count for a release begins here.",
  minutes: "Minutes near it",
  minutesHelp: "They go on your account. Count changing and clearing in.",
  more: (what: string) => `More: ${what}`,
  less: (what: string) => `Less: ${what}`,
  powerCut: "Hours without power",
  powerCutSave: "Write the power cut down",
  powerCutHelp: "Four hours or more begin the count anew, unless the core stayed below −18 °C.",
  saidPowerCut: "Power cut written down",
  intoFreezer: "Goes into the freezer now",
  outOfFreezer: "Comes out of the freezer now",
  freezerHelp:
    "Sealed, core at −20 °C, no self-defrosting cabinet. Not photographs other than modern prints, not glass, not oil or acrylic on canvas. After droppings never freeze first.",
  thawHelp: "Leave it sealed until it is as warm as the room, 24 to 48 hours: opened cold it gathers dew.",
  saidFreezer: (bag: string, isIn: boolean) =>
    `Bag ${bag} ${isIn ? "is in the freezer" : "is out of the freezer"}`,
} as const;

/** Leaving the Ward. */
export const leaving = {
  which: "Which of them leaves",
  looked: "We have both looked at it: no smell, no fresh growth, nothing soft or damp",
  lookedHelp: "If there is any: do not release it. Close the bag, and tell the lead.",
  first: "First to sign",
  second: "Second to sign",
  choose: "Each chooses their own name",
  notYet: "Nothing in this bag has earned its release yet.",
  unsigned: "Two different people sign.",
  unlooked: "Both look at it first.",
  sign: "Release",
  said: (items: string) => `Released ${items}`,
  rest: "What stays is closed in again; its count begins anew.",
} as const;

/** Putting items in. */
export const putIn = {
  title: "Put items in a bag",
  back: "All bags",
  free: (bag: string) => `New: ${bag}`,
  wants: (litres: number) => `They want about ${litres} litres.`,
  which: "Items",
  add: "Scan or type each of them",
  nothing: "No item chosen yet.",
  takeOff: (item: string) => `Not ${item}`,
  bag: "Bag",
  bagHelp: "A new number, or one that stands here",
  shelf: "Shelf",
  litres: "Litres of the bag (if known)",
  freezer: "It goes straight into the freezer",
  mixed: "They do not have the same trouble. Keep mould, insects, wet and dry things in bags apart.",
  anew: (items: Count) =>
    `This bag has ${of(items, "item", "items")} already. Opened now, its readings begin anew for all of them.`,
  there: (item: string, bag: string) => `${item} lies in bag ${bag} now.`,
  noWard: (item: string) => `By its answers ${item} needs no Ward. Put it in only if you doubt them.`,
  save: "Put in and close",
  said: (items: Count, bag: string) => `${of(items, "item", "items")} in bag ${bag}`,
  next: "Then read it: the first reading is where the drying curve begins.",
  noItems: "Choose an item first.",
  noBagName: "Give the bag a number.",
} as const;

/** Before somebody opens what may be mouldy. */
export const near = {
  title: "Before you open it",
  text: "In the dirty zone, mask and gloves on before the bag is opened, and off outside it. Never alone in the building.",
  local: "Follow local rules and licensed practice.",
  left: (minutes: string) => `${minutes} near mould left for you today.`,
  stop: {
    "clean work": (name: string) => `${name} is on clean work this week: somebody else does this.`,
    day: (name: string) => `${name} has no minutes near mould left today: somebody else does this.`,
    week: (name: string) => `${name} has had the days near mould of this week: somebody else does this.`,
    row: (name: string) => `${name} has had the days near mould in a row: somebody else does this.`,
    mask: (name: string) => `${name}'s mask has to come off now, for a break outside.`,
  },
} as const;

/** When a bag may be ready, by what is known of it. Days come in as written. */
export const ready = {
  earned: () => "It may go now.",
  readings: (likely: string, first: string, last: string) =>
    first === last
      ? `Look from ${likely} on, by its readings.`
      : `Look from ${likely} on; between ${first} and ${last}, by its readings.`,
  gelOut:
    "By readings and model it may be dry enough: take the gel out, read the bag at once, and again after two days.",
  "readings, for planning only": (likely: string, first: string, last: string) =>
    `No date for it yet. The plan reckons with ${likely}, between ${first} and ${last}, by its readings so far.`,
  "norm less the days behind": (likely: string, first: string, last: string) =>
    `No date for it yet. The plan reckons with ${likely}, between ${first} and ${last}, as such items usually take.`,
} as const;
