import type { Route } from "../../core/care/care.ts";
import type { Campaign } from "../../core/items/campaign.ts";
import { PLAN_DEFAULTS } from "../../core/plan/make-plan.ts";
import type { Difference, Outlook } from "../../core/plan/what-if/compare.ts";
import type { Scenario } from "../../core/plan/what-if/read-scenario.ts";
import type { RelaxedCase } from "../../core/plan/what-if/relaxed-case.ts";
import type { ReleaseQueue } from "../../core/plan/what-if/release-queue.ts";
import { sayDay } from "../../core/say/dates.ts";
import {
  compareRows,
  NOISE_DAYS,
  sayChange,
  sayChangeCaution,
  sayDifference,
  sayFirstLook,
  sayReleaseQueue,
} from "../../core/say/what-if.ts";
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
  "everyone 5 hours from 2026-06-10 to 2026-06-30"
  "Ward 800 litres"    "end 2027-02-01"    "only ID releases"    "120 mould minutes a day"

Limits that guard people can be made tighter, never looser.

  --today yyyy-mm-dd   the morning to plan for
  --json               everything as JSON, nothing else on the output`;

const COLUMNS = 3;
const LABEL_WIDTH = 23;
const COLUMN_WIDTH = 19;
/** A campaign to be planned: the one as it is, or a scenario's. */
export interface Case {
  readonly head: string;
  readonly scenario: Scenario | null;
  readonly campaign: Campaign;
  readonly routes: readonly Route[];
}

export interface Answered extends Case {
  readonly look: RelaxedCase["look"];
  readonly outlook: Outlook;
  readonly difference: Difference | null;
  readonly queue: ReleaseQueue | null;
}

export function headLines(cases: readonly Case[]): string[] {
  const base = cases[0]?.campaign;
  if (!base) return [];
  return [
    `${base.name}: what if? For the morning of ${sayDay(base.planFrom, "en-GB", "full")}.`,
    ...cases.flatMap((each) =>
      sayCase(each, base).flatMap((line, at) =>
        wrapped(line, at === 0 ? `  ${each.head}  ` : "     ", "     "),
      ),
    ),
    "",
  ];
}

/** The changes of a scenario, a line each. */
function sayCase({ scenario }: Case, base: Campaign): string[] {
  if (!scenario) return [];
  const alone = base.people.find((each) => each.code === scenario.releasesAlone);
  return [
    ...scenario.changes.map((each) => sayChange(each, base)),
    ...(alone ? [`${alone.name} (${alone.code}) alone releases from the Ward`] : []),
  ];
}

export function firstLookLines(heads: readonly string[], relaxed: readonly RelaxedCase[]): string[] {
  return [
    "First look, what no plan can beat (waiting till the box, must-do and urgent items weighing more):",
    ...relaxed.map(
      ({ look }, at) =>
        `  ${(heads[at] ?? "").padEnd(10)}${sayFirstLook(look, at === 0 ? null : (relaxed[0]?.look ?? null))}`,
    ),
    "",
  ];
}

export function answerLines(answered: readonly Answered[], draws: number): string[] {
  const [base, ...scenarios] = answered;
  if (!base) return [];
  const beside = scenarios.filter((each) => each.difference !== null);
  const blocks: string[] = [];
  for (let at = 0; at < beside.length; at += COLUMNS)
    blocks.push(...tableLines([base, ...beside.slice(at, at + COLUMNS)]), "");
  return [
    ...blocks,
    ...scenarios.flatMap((each) => [...paragraph(base, each), ""]),
    ...wrapped(
      `${draws} simulated campaigns each, the same seeds for all; ${NOISE_DAYS} days or less are within the noise of making plans. A short search for each: leafward plan searches longer, and its dates may lie some days from these. Programmes proved to ${proofOf(answered)} % of the best possible. Nothing here changes the plan or the folder.`,
      "",
    ),
  ];
}

const proofOf = (answered: readonly Answered[]): string =>
  (100 * Math.max(...answered.map((each) => each.outlook.proof.gap))).toFixed(2);

function tableLines(columns: readonly Answered[]): string[] {
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

function paragraph(base: Answered, { head, scenario, outlook, difference, queue }: Answered): string[] {
  if (!scenario) return [];
  const cautions = [...new Set(scenario.changes.flatMap((each) => sayChangeCaution(each) ?? []))];
  const said = [
    ...(difference ? sayDifference(base.outlook, outlook, difference) : []),
    ...(queue ? sayReleaseQueue(queue) : []),
    ...cautions.map((each) => `Mind: ${each}`),
  ];
  return said.flatMap((line, at) => wrapped(line, at === 0 ? `${head}  ` : "   ", "   "));
}

export function asJson(answered: readonly Answered[], draws: number): unknown {
  const base = answered[0]?.campaign;
  return {
    campaign: base?.name,
    planFrom: base?.planFrom,
    draws,
    seed: PLAN_DEFAULTS.seed,
    plans: answered.map((each) => ({
      head: each.head,
      supposed: base ? sayCase(each, base) : [],
      changes: each.scenario?.changes ?? [],
      firstLook: each.look,
      outlook: each.outlook,
      difference: each.difference,
      releaseQueue: each.queue,
      cautions: each.scenario?.changes.flatMap((change) => sayChangeCaution(change) ?? []) ?? [],
    })),
  };
}
