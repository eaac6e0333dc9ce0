import { existsSync } from "node:fs";
import { join } from "node:path";
import { prove } from "../../core/care/proof/prove.ts";
import type { Problem } from "../../core/outcome/problem.ts";
import { sayProblem } from "../../core/say/problems.ts";
import type { CampaignRead } from "../../edge/intake/read-campaign.ts";
import { type CampaignOpened, openCampaign } from "../../edge/keep/open-campaign.ts";
import { LOCAL_RULES, ruleBookOf } from "../../edge/rule-book.ts";
import { startSat } from "../../edge/solve/sat.ts";
import { disagreementLines } from "./disagreement-lines.ts";

type Out = (line: string) => void;

/** Problems of one code in one file from which only the first are shown. */
const MANY = 40;
const FIRST = 10;
const MARKS: Readonly<Record<Problem["severity"], string>> = {
  stop: "MEND  ",
  ask: "DECIDE",
  note: "note  ",
};

/** `leafward check`: says everything that stands in the way of a campaign folder, by file, then what was read.
 *  @returns 0 nothing to mend · 1 something to mend or decide · 2 the folder cannot be used at all */
export async function checkFolder(
  folder: string,
  out: Out,
  options: { readonly all?: boolean } = {},
): Promise<number> {
  const read = await openCampaign(folder);
  const rules = await localRules(folder);
  const all = { ...read, problems: [...read.problems, ...rules.problems] };
  for (const [file, problems] of byFile(all.problems)) printFile(file, problems, out, options.all === true);
  printCounts(read, out);
  printLog(read, folder, out);
  for (const line of rules.said) out(line);
  const open = read.log?.disagreements.length ?? 0;
  out(verdict(all, open));
  return Math.max(exitCode(all), open > 0 ? 1 : 0);
}

/** The campaign's own rules are read, checked and proved like the published ones. */
async function localRules(folder: string): Promise<{ said: string[]; problems: readonly Problem[] }> {
  if (!existsSync(join(folder, LOCAL_RULES))) return { said: [], problems: [] };
  const book = ruleBookOf(folder);
  if (!book.ok) return { said: [], problems: book.problems };
  const sat = await startSat();
  const { verdicts } = prove(book.value, sat);
  sat.close();
  const own = book.value.rules.filter((rule) => rule.local).length;
  const broken = verdicts.filter((each) => !each.holds);
  return {
    said: [
      `${LOCAL_RULES.padEnd(12)}${number(own).padStart(10)} own rules; ${verdicts.length - broken.length} of ${verdicts.length} safety claims hold with them.`,
      "",
    ],
    problems: broken.map((each) => ({
      code: "claim-broken",
      severity: "stop",
      file: LOCAL_RULES,
      got: each.about || each.id,
      expected: each.says,
      remedy: `npx leafward prove ${folder} shows an item that breaks it.`,
    })),
  };
}

export function exitCode({ campaign, problems }: CampaignRead): number {
  if (campaign === null) return 2;
  return problems.some(({ severity }) => severity !== "note") ? 1 : 0;
}

/** In the order of the files as they were read; inside a file by line. */
function byFile(problems: readonly Problem[]): Map<string, Problem[]> {
  const groups = new Map<string, Problem[]>();
  for (const problem of problems) {
    const file = problem.file ?? "";
    const group = groups.get(file);
    if (group) group.push(problem);
    else groups.set(file, [problem]);
  }
  for (const group of groups.values()) group.sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
  return groups;
}

function printFile(file: string, problems: readonly Problem[], out: Out, all: boolean): void {
  out(file === "" ? "The campaign as a whole" : file);
  const seen = new Map<string, number>();
  const totals = totalsOf(problems);
  for (const { file: _, ...problem } of problems) {
    const total = totals.get(problem.code) ?? 0;
    const nth = (seen.get(problem.code) ?? 0) + 1;
    seen.set(problem.code, nth);
    if (all || total <= MANY || nth <= FIRST) out(`  ${MARKS[problem.severity]}  ${sayProblem(problem)}`);
    else if (nth === FIRST + 1)
      out(`          … and ${number(total - FIRST)} more like the last; --all shows every one.`);
  }
  out("");
}

function totalsOf(problems: readonly Problem[]): Map<string, number> {
  const totals = new Map<string, number>();
  for (const { code } of problems) totals.set(code, (totals.get(code) ?? 0) + 1);
  return totals;
}

const number = (n: number): string => n.toLocaleString("en-GB");

function printCounts({ counts }: CampaignRead, out: Out): void {
  const rows = Object.entries(counts);
  if (rows.length === 0) return;
  out(`${"".padEnd(12)}${"rows".padStart(10)}${"used".padStart(10)}${"set aside".padStart(12)}`);
  for (const [table, { rows: all, used }] of rows) {
    const aside = all === used ? "" : number(all - used);
    out(
      `${table.padEnd(12)}${number(all).padStart(10)}${number(used).padStart(10)}${aside.padStart(12)}`.trimEnd(),
    );
  }
  out("");
}

function printLog({ log }: CampaignOpened, folder: string, out: Out): void {
  if (log === null) return;
  out(`${log.where}: ${number(log.entries)} entries; this is what plans and advice go by.\n`);
  const lines = disagreementLines(folder, log.disagreements);
  for (const line of lines) out(line);
  if (lines.length > 0) out("");
}

function verdict({ campaign, problems }: CampaignRead, open: number): string {
  const of = (wanted: Problem["severity"]): number =>
    problems.filter(({ severity }) => severity === wanted).length;
  const [stop, ask, note] = [of("stop"), of("ask"), of("note")];
  const tally = `${number(stop)} to mend, ${number(ask + open)} to decide, ${number(note)} to note.`;
  if (campaign === null) return `This folder cannot be used yet: ${tally}`;
  return stop + ask === 0
    ? `Nothing to mend: ${tally}`
    : `Rows set aside are not planned until they are mended: ${tally}`;
}
