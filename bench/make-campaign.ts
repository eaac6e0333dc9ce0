import type { Campaign, Finding, Item, Person, Skill } from "../src/core/items/campaign.ts";
import { seeded } from "../src/core/plan/chance.ts";
import { addDays, type Day } from "../src/core/units/day.ts";

export interface CampaignSize {
  readonly items: number;
  readonly people: number;
  readonly weeks: number;
  readonly seed: number;
}

const START = "2026-06-01" as Day;
const FORMATS = [
  {
    format: "bound_volume",
    share: 0.142,
    leaves: [80, 280],
    required: ["rub_mark", "bright_green", "opening_angle", "leaves_stuck"],
  },
  { format: "loose_sheets", share: 0.635, leaves: [40, 130], required: ["rusted_fasteners", "media_flakes"] },
  { format: "map_plan", share: 0.065, leaves: [1, 2], required: ["media_flakes", "springs_back"] },
  { format: "photo_print", share: 0.123, leaves: [1, 2], required: ["emulsion_lifting", "stuck_to_glass"] },
  { format: "newspaper", share: 0.035, leaves: [60, 120], required: [] },
] as const;
const ASKED = [
  "wet",
  "damp_to_touch",
  "growth_visible",
  "live_insects",
  "rodent_signs",
  "guano",
  "powder_between",
  "fragments_fall",
];

/** An invented campaign of any size, the same for the same seed: mixed formats, one item in seven mouldy, four leather covers in ten. */
export function makeCampaign({ items, people, weeks, seed }: CampaignSize): Campaign {
  const draw = seeded(seed);
  const made = Array.from({ length: items }, (_, at) => makeItem(at, draw));
  const end = addDays(START, weeks * 7 - 1);
  return {
    name: `Bench ${items}`,
    place: { name: "nowhere", climate: "hot_humid", freezer: true, fineFilterVacuum: true },
    start: START,
    end,
    planFrom: START,
    wardLitres: 2 * items,
    stations: [
      { id: "dirty", kind: "mould bench", places: people, minutesADay: 420 },
      { id: "clean", kind: "clean bench", places: people, minutesADay: 420 },
      { id: "stand", kind: "cover stand", places: 1, minutesADay: 420 },
      { id: "camera", kind: "camera", places: Math.max(1, Math.round(items / weeks / 40)), minutesADay: 480 },
      { id: "boxes", kind: "boxing table", places: 2, minutesADay: 420 },
    ],
    limits: {
      exposedMinutesADay: { value: 180, source: "common practice, no source" },
      exposedDaysAWeek: { value: 3, source: "common practice, no source" },
      exposedDaysInARow: { value: 2, source: "DGUV Regel 112-190, earlier edition" },
      maskMinutes: { value: 75, source: "DGUV Regel 112-190, current edition" },
      maskBreakMinutes: { value: 30, source: "DGUV Regel 112-190, current edition" },
    },
    items: made.map((each) => each.item),
    findings: made.flatMap((each) => each.findings),
    people: Array.from({ length: people }, (_, at) => makePerson(at)),
    calendar: [{ from: addDays(START, 28), to: end, who: "P2", what: "clean work" }],
    stores: [
      {
        id: "masks",
        name: "masks",
        use: "k-mask",
        unit: "pc",
        onHand: 20 * people,
        pack: 20,
        leadDays: 42,
        route: "air",
      },
      {
        id: "boxes",
        name: "boxes",
        use: "k-box-vol",
        unit: "pc",
        onHand: 50,
        pack: 25,
        leadDays: 70,
        route: "sea",
      },
    ],
    deliveries: [
      { store: "masks", day: addDays(START, 49), quantity: 400 },
      { store: "boxes", day: addDays(START, 60), quantity: 400 },
    ],
    sessions: [],
    ward: [],
    climate: [],
  };
}

function makeItem(at: number, draw: () => number): { item: Item; findings: Finding[] } {
  let u = draw();
  const kind =
    FORMATS.find((each) => {
      u -= each.share;
      return u < 0;
    }) ?? FORMATS[1];
  const id = `B${String(at + 1).padStart(5, "0")}`;
  const leather = kind.format === "bound_volume" && draw() < 0.43;
  const mould = draw();
  const answers: Record<string, string | number> = {};
  for (const test of [...ASKED, ...kind.required]) answers[test] = "no";
  if (kind.format === "bound_volume") {
    answers.opening_angle = 110;
    answers.rub_mark = leather
      ? (["none", "trace", "clear", "heavy"][Math.floor(draw() * 4)] ?? "none")
      : "none";
  }
  if (mould < 0.14) {
    answers.growth_visible = "yes";
    answers.growth_smears = mould < 0.06 ? "yes" : "no";
    answers.erh = mould < 0.06 ? 72 : 52;
    answers.mould_extent_pct = Math.floor(40 * draw());
  }
  const leaves = Math.floor(kind.leaves[0] + (kind.leaves[1] - kind.leaves[0]) * draw());
  const item: Item = {
    id,
    title: `Item ${at + 1}`,
    facts: {
      format: kind.format,
      support: "paper_rag",
      media: ["ink_carbon"],
      cover: leather ? "leather_sheep" : "none",
      leaves,
      mass_kg: 1 + 2 * draw(),
    },
    parts: [],
    priority: draw() < 0.2 ? "must" : "want",
    ...(draw() < 0.2 ? { arrives: addDays(START, 44) } : {}),
    heightMm: 330,
    widthMm: 240,
    thicknessMm: Math.round(20 + 60 * draw()),
  };
  return {
    item,
    findings: Object.entries(answers).map(([test, answer]) => ({ item: id, part: "", test, answer })),
  };
}

const ROLES: readonly { role: string; skills: readonly Skill[]; mouldWork: boolean }[] = [
  { role: "lead", skills: ["lead", "clean", "box"], mouldWork: true },
  { role: "photographer", skills: ["image"], mouldWork: true },
  { role: "cleaner", skills: ["clean", "box"], mouldWork: true },
  { role: "photographer", skills: ["image", "box"], mouldWork: false },
  { role: "cleaner", skills: ["clean", "box"], mouldWork: true },
  { role: "boxer", skills: ["box"], mouldWork: false },
];

function makePerson(at: number): Person {
  const role = ROLES[at % ROLES.length] ?? { role: "boxer", skills: ["box"], mouldWork: false };
  return { code: `P${at}`, name: `Person ${at}`, ...role, weekdays: [0, 1, 2, 3, 4], hoursADay: 7 };
}
