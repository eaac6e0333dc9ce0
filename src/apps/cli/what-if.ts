import { parseArgs } from "node:util";
import type { Campaign } from "../../core/items/campaign.ts";
import { type Answer, answersTo, asItIs } from "../../core/plan/what-if/answers.ts";
import { sayExamples } from "../../core/say/what-if-refusals.ts";
import { dayFrom } from "../../core/units/day.ts";
import { type Solver, startSolver } from "../../edge/solve/solver.ts";
import { openDesk, readQuestion, type SaidRefusal } from "../../edge/solve/what-if-desk.ts";
import { openFolder } from "./open-folder.ts";
import { answerLines, asJson, firstLines, headLines, WHAT_IF_HELP } from "./what-if-lines.ts";
import { wrapped } from "./wrapped.ts";

type Out = (line: string) => void;

/** @returns 0 well · 2 a scenario or the folder cannot be used, which was said */
export async function whatIf(args: string[], out: Out, complain: Out): Promise<number> {
  const asked = askedFrom(args);
  if ("help" in asked) {
    (asked.help === "" ? out : complain)(
      asked.help === "" ? WHAT_IF_HELP : `${asked.help}\n\n${WHAT_IF_HELP}`,
    );
    return asked.help === "" ? 0 : 2;
  }
  const solver = startSolver();
  try {
    return await answer(asked, solver, { out, complain });
  } finally {
    await solver.close();
  }
}

interface Asked {
  readonly folder: string;
  readonly scenarios: readonly string[];
  readonly today: string | undefined;
  readonly json: boolean;
}

/** What was asked for; `help` with why when it is not enough, empty when help is what was asked for. */
function askedFrom(args: string[]): Asked | { readonly help: string } {
  try {
    const { values, positionals } = parseArgs({
      args,
      allowPositionals: true,
      options: {
        today: { type: "string" },
        json: { type: "boolean", default: false },
        help: { type: "boolean", short: "h", default: false },
      },
    });
    const [folder, ...scenarios] = positionals;
    if (values.help) return { help: "" };
    if (folder === undefined || scenarios.length === 0)
      return { help: "leafward what-if needs a campaign folder and at least one scenario in quotes." };
    if (values.today !== undefined && dayFrom(values.today) === null)
      return { help: `--today ${values.today}: expected a day such as 2026-06-01.` };
    return { folder, scenarios, today: values.today, json: values.json };
  } catch (error) {
    if (error instanceof TypeError) return { help: error.message };
    throw error;
  }
}

interface Voice {
  readonly out: Out;
  readonly complain: Out;
}

async function answer(asked: Asked, { solve }: Solver, { out, complain }: Voice): Promise<number> {
  const today = dayFrom(asked.today ?? "") ?? undefined;
  const opened = await openFolder(asked.folder, complain, today);
  if (!opened) return 2;
  const desk = openDesk(opened.campaign, opened.book, solve);
  const { campaign } = desk;
  const { cases, refusals } = readQuestion(desk, asked.scenarios);
  if (refusals.length > 0) {
    refuse(refusals, campaign, complain);
    return 2;
  }
  const say = asked.json ? () => {} : out;
  for (const line of headLines(campaign, cases)) say(line);
  complain("Working out the plan as it is …");
  const base = await asItIs(campaign, desk.routes, desk.means);
  const answers: Answer[] = [];
  let proving = false;
  for await (const each of answersTo(base, cases, desk.means)) {
    if (each.step === "first") for (const line of firstLines(base, each)) say(line);
    else if (!proving) complain("Working out each scenario's own plan, and its proof …");
    proving ||= each.step === "proved";
    answers.push(each);
  }
  if (asked.json) out(JSON.stringify(asJson(base, cases, answers), null, 1));
  else for (const line of answerLines(base, cases, answers)) out(line);
  return 0;
}

function refuse(refusals: readonly SaidRefusal[], campaign: Campaign, complain: Out): void {
  for (const { sentence } of refusals) for (const line of wrapped(sentence, "", "  ")) complain(line);
  if (!refusals.some(({ because: { why } }) => why === "not understood")) return;
  complain("");
  complain("What can be said here, for instance:");
  for (const example of sayExamples(campaign)) complain(`  ${example}`);
}
