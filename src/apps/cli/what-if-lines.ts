import type { Campaign } from "../../core/items/campaign.ts";
import { PLAN_DEFAULTS } from "../../core/plan/make-plan.ts";
import type { Answer, AsItIs, Case } from "../../core/plan/what-if/answers.ts";
import type { Difference, Outlook } from "../../core/plan/what-if/compare.ts";
import { sayDay } from "../../core/say/dates.ts";
import { compareRows, NOISE_DAYS } from "../../core/say/what-if.ts";
import { sayAnswer, sayCautions, saySupposed } from "../../core/say/what-if-answer.ts";
import { wrapped } from "./wrapped.ts";

export const WHAT_IF_HELP = `leafward what-if: what a change would do to the plan, beside the plan as it is

  npx leafward what-if <folder> "<scenario>" ["<scenario>" …]

A scenario is one or more changes in plain words, joined by ";":
  "PA on clean work from 2026-07-06"          "PA away from 2026-07-01 to 2026-07-20"
  "one more cleaner from 2026-07-06"          "one more cleaner without mould work from 2026-07-06"
  "masks 21 days late"                        "40 more boxes on 2026-09-01"
  "camera closed 2026-09-01 to 2026-09-14"    "second camera"    "free camera days Mon-Fri"
  "400 more like loose_sheets from 2026-06-15"
  "mouldy items from 2026-11-01"              (held back until then)
  "mouldy items last"                         (or: first)
  "rains start on 2027-05-20"                 (what must be dry and boxed by then)
  "room 33 C and 70 % until 2026-06-30"       "camera 12 hours a day"
  "freezer holds 60 items per 9-day cycle"
  "everyone 5 hours from 2026-06-10 to 2026-06-30"
  "Ward 800 litres"    "end 2027-02-01"    "only ID releases"    "120 mould minutes a day"

Limits that guard people can be made tighter, never looser.

  --today yyyy-mm-dd   the morning to plan for
  --json               everything as JSON, nothing else on the output`;

const COLUMNS = 3;
const LABEL_WIDTH = 24;
const COLUMN_WIDTH = 19;
const AS_IT_IS = "as it is";

type First = Answer & { readonly step: "first" };
type Proved = Answer & { readonly step: "proved" };

const letter = (at: number): string => (at < 26 ? String.fromCharCode(65 + at) : `S${at + 1}`);

export function headLines(base: Campaign, cases: readonly Case[]): string[] {
  return [
    `${base.name}: what if? For the morning of ${sayDay(base.planFrom, "en-GB", "full")}.`,
    ...cases.flatMap((each, at) =>
      saySupposed(each.scenario, base).flatMap((line, n) =>
        wrapped(line, n === 0 ? `  ${letter(at)}  ` : "     ", "     "),
      ),
    ),
    "",
  ];
}

export const firstLines = (base: AsItIs, first: First): string[] => [
  ...sayAnswer(base, first).flatMap((line, n) =>
    wrapped(line, n === 0 ? `${letter(first.at)}  First answer, not yet proved: ` : "   ", "   "),
  ),
  "",
];

export function answerLines(base: AsItIs, cases: readonly Case[], answers: readonly Answer[]): string[] {
  const proved = answers.filter((each) => each.step === "proved");
  const beside = proved.filter((each) => each.difference !== null);
  const blocks: string[] = [];
  for (let at = 0; at < beside.length; at += COLUMNS)
    blocks.push(...tableLines(base, beside.slice(at, at + COLUMNS)), "");
  return [
    ...blocks,
    ...proved.flatMap((each) => [...paragraph(base, cases[each.at] as Case, each), ""]),
    ...wrapped(
      `${base.draws} simulated campaigns each, the same seeds for all; ${NOISE_DAYS} days or less are within the noise of making plans. A short search for each: leafward plan searches longer, and its dates may lie some days from these. Programmes proved to ${percent([base.outlook, ...proved.map((each) => each.outlook)], "gap")} %, plans to ${percent([base.outlook, ...proved.map((each) => each.outlook)], "itemGap")} % of the best possible. Nothing here changes the plan or the folder.`,
      "",
    ),
  ];
}

const percent = (outlooks: readonly Outlook[], gap: "gap" | "itemGap"): string =>
  (100 * Math.max(...outlooks.map(({ proof }) => proof[gap]))).toFixed(2);

function tableLines(base: AsItIs, answers: readonly Proved[]): string[] {
  const columns: readonly { head: string; outlook: Outlook; difference: Difference | null }[] = [
    { head: AS_IT_IS, outlook: base.outlook, difference: null },
    ...answers.map((each) => ({ ...each, head: letter(each.at) })),
  ];
  const line = (label: string, cells: readonly string[]): string =>
    `${label.padEnd(LABEL_WIDTH)}${cells.map((each) => each.padEnd(COLUMN_WIDTH)).join(" ")}`.trimEnd();
  const outlooks = columns.map((each) => each.outlook);
  const rows = compareRows().filter(({ idle }) => !idle?.(outlooks));
  return [
    line(
      "",
      columns.map((each) => each.head),
    ),
    ...rows.map(({ label, cell }) =>
      line(
        label,
        columns.map((each) => cell(each.outlook, each.difference)),
      ),
    ),
  ];
}

function paragraph(base: AsItIs, { scenario }: Case, answer: Proved): string[] {
  const said = [...sayAnswer(base, answer), ...sayCautions(scenario).map((each) => `Mind: ${each}`)];
  return said.flatMap((line, n) => wrapped(line, n === 0 ? `${letter(answer.at)}  ` : "   ", "   "));
}

export function asJson(base: AsItIs, cases: readonly Case[], answers: readonly Answer[]): unknown {
  const { campaign, outlook, draws } = base;
  const of = (at: number, step: Answer["step"]): Answer | undefined =>
    answers.find((each) => each.at === at && each.step === step);
  return {
    campaign: campaign.name,
    planFrom: campaign.planFrom,
    draws,
    seed: PLAN_DEFAULTS.seed,
    plans: [
      { head: AS_IT_IS, outlook, difference: null },
      ...cases.map((each, at) => ({
        head: letter(at),
        supposed: saySupposed(each.scenario, campaign),
        changes: each.scenario.changes,
        first: of(at, "first") ?? null,
        ...of(at, "proved"),
        cautions: sayCautions(each.scenario),
      })),
    ],
  };
}
