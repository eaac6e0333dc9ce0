import { roomLog } from "../climate.ts";
import { workdays } from "../days.ts";
import { type Draft, number } from "../draft.ts";
import { isSound, type Trial, trialSessions } from "../pilot.ts";
import type { ClimateRow, Invented, SessionRow } from "../rows.ts";
import { type Chance, seeded } from "../seeded.ts";
import { answerAll, findingsOf } from "../survey.ts";
import { tablesOf } from "../tables.ts";
import { CALENDAR, CAMPAIGN, DELIVERIES, PEOPLE, STORES } from "./house.ts";
import { accounts, gazettes } from "./paper.ts";
import { albumsAndPrints, film, plates } from "./photographs.ts";
import { befall } from "./troubles.ts";

const SURVEY = workdays("2026-06-01", "2026-08-28");
const MUST: Readonly<Record<string, number>> = {
  plate: 0.16,
  film: 0.22,
  "album or print": 0.15,
  gazette: 0.26,
  "account book": 0.3,
};

/** Marabelle Studio and the Lissabwe Gazette: 4,300 items of a photographer and a newspaper in one house. */
export function marabelle(): Invented {
  const chance = seeded(20260901);
  const drafts = [
    ...plates(chance),
    ...film(chance),
    ...albumsAndPrints(chance),
    ...gazettes(chance),
    ...accounts(chance),
  ];
  number(drafts, "MG", 4);
  befall(chance, drafts);
  consign(drafts);
  wish(chance, drafts);
  answerAll(chance, drafts, 43);
  const findings = findingsOf(chance, drafts, { days: SURVEY, people: ["BO", "RV", "CM", "TB"] });
  return {
    folder: "marabelle",
    campaign: CAMPAIGN,
    tables: tablesOf(drafts, findings, {
      people: PEOPLE,
      calendar: CALENDAR,
      stores: STORES,
      deliveries: DELIVERIES,
      sessions: trial(chance, drafts),
      ward: [],
    }),
    climate: climate(chance),
  };
}

/** Plates from a cousin's barn and film from the bank's vault come later. */
function consign(drafts: readonly Draft[]): void {
  const lot = (name: string): Draft[] => drafts.filter((draft) => draft.lot === name);
  for (const draft of lot("plate").slice(1700)) draft.row.arrives = "2027-01-11";
  for (const draft of lot("film").slice(900, 1299)) draft.row.arrives = "2026-11-02";
}

/** What the house wants first, and what it wants for its show and for the year book. */
function wish(chance: Chance, drafts: readonly Draft[]): void {
  for (const draft of drafts) draft.row.priority = chance.happens(MUST[draft.lot] ?? 0.2) ? "must" : "want";
  const here = drafts.filter((draft) => draft.row.arrives === undefined && draft.row.priority === "must");
  for (const draft of chance.some(here, 150))
    draft.row.due = chance.pick(["2026-12-18", "2027-04-16", "2027-07-30"]);
}

/** The summer trial: forty-seven items on a hired stand. */
function trial(chance: Chance, drafts: readonly Draft[]): SessionRow[] {
  const here = drafts.filter((draft) => draft.row.arrives === undefined);
  const some = (lot: string, count: number, fits: (draft: Draft) => boolean): Draft[] =>
    chance.some(
      here.filter((draft) => draft.lot === lot && fits(draft)),
      count,
    );
  const survey = [4.5, 0.01] as const;
  const safe = (draft: Draft): boolean => isSound(draft) && draft.answers.film_edge_mark === "safety";
  const whole = (draft: Draft): boolean =>
    isSound(draft) && draft.answers.glass_broken === "no" && draft.answers.emulsion_lifting === "no";
  const flat = (draft: Draft): boolean =>
    isSound(draft) && draft.row.format === "photo_print" && draft.answers.stuck_to_glass === "no";
  const trials: Trial[] = [
    { items: some("plate", 16, whole), acts: { survey, clean: [7.5, 0], image: [2.6, 0], box: [0.9, 0] } },
    {
      items: some("plate", 4, (draft) => draft.answers.growth_visible === "yes"),
      acts: { survey, admit: [6, 0], release: [5, 0] },
    },
    { items: some("film", 9, safe), acts: { survey, clean: [0, 1.7], image: [0, 2], box: [1.6, 0] } },
    {
      items: some("album or print", 7, flat),
      acts: { survey, clean: [2.3, 0], image: [3.8, 0], box: [1.2, 0] },
    },
    { items: some("gazette", 6, isSound), acts: { survey, clean: [4, 0.22], image: [7, 0.95], box: [6, 0] } },
    {
      items: some("account book", 5, (draft) => isSound(draft) && draft.row.cover === "paper"),
      acts: { survey, clean: [3.4, 0], image: [6, 0.9], box: [5.5, 0] },
    },
  ];
  return trialSessions(chance, trials, {
    days: SURVEY,
    people: {
      survey: ["RV", "CM"],
      admit: ["TB"],
      release: ["BO"],
      clean: ["RV", "TB", "GW"],
      image: ["NA", "OF"],
      box: ["SL"],
    },
  });
}

/** Three readers, June to August: the one in the press attic sticks on 20 July. */
function climate(chance: Chance): Record<string, ClimateRow[]> {
  const span = { from: "2026-06-01", to: "2026-08-31" };
  return {
    "film-room": roomLog(chance, { ...span, warmth: [26, 37], damp: [41, 24], weather: 1.6, drift: [2, -3] }),
    "plate-room": roomLog(chance, {
      ...span,
      warmth: [24, 32],
      damp: [46, 34],
      weather: 1.1,
      drift: [1, -3],
    }),
    "press-attic": roomLog(chance, {
      ...span,
      warmth: [25, 39],
      damp: [40, 21],
      weather: 1.6,
      fails: { on: "2026-07-20", how: "stuck" },
    }),
  };
}
