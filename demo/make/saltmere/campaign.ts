import { roomLog } from "../climate.ts";
import { workdays } from "../days.ts";
import { type Draft, number, racks } from "../draft.ts";
import { isSound, type Trial, trialSessions } from "../pilot.ts";
import type { ClimateRow, Invented, SessionRow } from "../rows.ts";
import { type Chance, seeded } from "../seeded.ts";
import { answerAll, findingsOf } from "../survey.ts";
import { tablesOf } from "../tables.ts";
import { bagsInWard } from "../ward.ts";
import { CALENDAR, CAMPAIGN, DELIVERIES, PEOPLE, STORES } from "./house.ts";
import { charts, files, filmBoxes, ledgers, newspapers, photographs } from "./lots.ts";
import { befall } from "./troubles.ts";
import { consign, wish } from "./wishes.ts";

/** Saltmere Reach Harbour Papers: 1,480 items in a hot, wet port town. */
export function saltmere(): Invented {
  const chance = seeded(20260601);
  const drafts = [
    ...ledgers(chance),
    ...files(chance),
    ...charts(chance),
    ...photographs(chance),
    ...filmBoxes(),
    ...newspapers(chance),
  ];
  number(drafts, "SR", 4);
  befall(chance, drafts, racks(chance, "Rack", 12, 6));
  consign(drafts);
  wish(chance, drafts);
  answerAll(chance, drafts, 15);
  const findings = findingsOf(chance, drafts, {
    days: workdays("2026-03-02", "2026-05-29"),
    people: ["PA", "TL", "MQ", "ID"],
  });
  const worked = trial(chance, drafts);
  const lying = bagsInWard(seeded(20260531), inWard(drafts, worked), {
    today: "2026-06-01",
    by: ["PA", "MQ"],
  });
  return {
    folder: "saltmere",
    campaign: CAMPAIGN,
    tables: tablesOf(drafts, findings, {
      people: PEOPLE,
      calendar: CALENDAR,
      stores: STORES,
      deliveries: DELIVERIES,
      sessions: [...worked, ...lying.sessions],
      ward: lying.notes,
    }),
    climate: climate(chance),
  };
}

/** Six files with living growth, bagged in May and not yet released. */
const inWard = (drafts: readonly Draft[], worked: readonly SessionRow[]): Draft[] => {
  const touched = new Set(worked.map((row) => row.item));
  return drafts
    .filter(
      (draft) =>
        draft.lot === "file" &&
        draft.answers.growth_smears === "yes" &&
        typeof draft.answers.erh === "number" &&
        draft.parts.length === 0 &&
        draft.row.arrives === undefined &&
        !touched.has(draft.row.item),
    )
    .slice(0, 6);
};

/** The spring trial: forty-six items, with a borrowed camera in the last weeks of it. */
function trial(chance: Chance, drafts: readonly Draft[]): SessionRow[] {
  const here = drafts.filter((draft) => draft.row.arrives === undefined && !draft.parts.length);
  const some = (count: number, fits: (draft: Draft) => boolean): Draft[] =>
    chance.some(here.filter(fits), count);
  const survey = [4.5, 0.02] as const;
  const trials: Trial[] = [
    {
      items: some(12, (d) => d.lot === "file" && isSound(d)),
      acts: { survey, clean: [2, 0.18], image: [4, 0.55], box: [2, 0] },
    },
    { items: some(6, (d) => d.lot === "file" && isSound(d)), acts: { survey, clean: [2, 0.18] } },
    {
      items: some(7, (d) => d.lot === "file" && d.answers.growth_smears === "yes"),
      acts: { survey, admit: [7, 0], release: [6, 0], clean: [6, 1.3] },
    },
    {
      items: some(
        6,
        (d) => d.lot === "ledger" && ["clear", "heavy"].includes(String(d.answers.rub_mark)) && isSound(d),
      ),
      acts: { survey, covers: [12, 0], wrap: [15, 0], clean: [7, 0], image: [5, 0.9], box: [6, 0] },
    },
    {
      items: some(5, (d) => d.lot === "ledger" && d.row.cover === "paper" && isSound(d)),
      acts: { survey, clean: [3.5, 0], image: [5, 0.9], box: [6, 0] },
    },
    {
      items: some(
        3,
        (d) => d.lot === "ledger" && d.answers.growth_smears === "no" && d.answers.rub_mark === "none",
      ),
      acts: { survey, admit: [7, 0], release: [6, 0], clean: [14, 0.35] },
    },
    {
      items: some(3, (d) => d.lot === "chart" && d.row.format === "map_plan" && isSound(d)),
      acts: { survey, clean: [7, 0], image: [9, 0], box: [1.5, 0] },
    },
    {
      items: some(4, (d) => d.lot === "photograph" && d.row.format === "photo_print" && isSound(d)),
      acts: { survey, clean: [2.2, 0], image: [4, 0], box: [1.5, 0] },
    },
  ];
  return trialSessions(chance, trials, {
    days: workdays("2026-03-02", "2026-05-29"),
    people: {
      survey: ["PA", "TL", "MQ"],
      admit: ["PA", "MQ"],
      release: ["ID"],
      covers: ["JH"],
      wrap: ["PA", "TL"],
      clean: ["PA", "TL", "MQ"],
      image: ["JH", "MQ"],
      box: ["OT", "TL"],
    },
  });
}

/** Three readers, March to May: the one in the Ward sticks on 11 May. */
function climate(chance: Chance): Record<string, ClimateRow[]> {
  const span = { from: "2026-03-01", to: "2026-05-31" };
  return {
    "upstairs-store": roomLog(chance, {
      ...span,
      warmth: [27, 32.4],
      damp: [87, 71],
      weather: 0.5,
      drift: [0.3, -2],
    }),
    "clean-room": roomLog(chance, { ...span, warmth: [25.5, 28.5], damp: [60, 53], weather: 0.4 }),
    ward: roomLog(chance, {
      ...span,
      warmth: [25, 27.5],
      damp: [52, 47],
      weather: 0.4,
      fails: { on: "2026-05-11", how: "stuck" },
    }),
  };
}
