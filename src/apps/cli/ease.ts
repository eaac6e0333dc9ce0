import { parseArgs } from "node:util";
import type { Campaign } from "../../core/items/campaign.ts";
import { asItIs } from "../../core/plan/what-if/answers.ts";
import { type Ease, ease } from "../../core/plan/what-if/ease/ease.ts";
import { sayDay } from "../../core/say/dates.ts";
import {
  sayAsk,
  sayEaseBinds,
  sayEased,
  sayEaseMethod,
  sayMustLeft,
  sayNoHelp,
} from "../../core/say/ease.ts";
import { dayFrom } from "../../core/units/day.ts";
import { type Solver, startSolver } from "../../edge/solve/solver.ts";
import { openDesk } from "../../edge/solve/what-if-desk.ts";
import { openFolder } from "./open-folder.ts";
import { wrapped } from "./wrapped.ts";

type Out = (line: string) => void;

const EASE_HELP = `leafward ease: what holds the plan back, and what would help most for the asking

  npx leafward ease <folder>

Names what binds, then plans the campaign anew with each of the easiest changes to it: a delivery
sooner, more of a store, camera days, a longer day at a station, one more person, a bigger Ward, a
later end. Says what each saves, what does not help, and what brings must-do items in.

  --most n             plans made at most, 2 to 40 (8)
  --today yyyy-mm-dd   the morning to plan for
  --json               everything as JSON, nothing else on the output`;

const MOST = 8;

interface Asked {
  readonly folder: string;
  readonly most: number;
  readonly today: string | undefined;
  readonly json: boolean;
}

/** @returns 0 well · 2 the folder cannot be used, which was said */
export async function easeCommand(args: string[], out: Out, complain: Out): Promise<number> {
  const asked = askedFrom(args);
  if ("help" in asked) {
    (asked.help === "" ? out : complain)(asked.help === "" ? EASE_HELP : `${asked.help}\n\n${EASE_HELP}`);
    return asked.help === "" ? 0 : 2;
  }
  const solver = startSolver();
  try {
    return await answer(asked, solver, out, complain);
  } finally {
    await solver.close();
  }
}

function askedFrom(args: string[]): Asked | { readonly help: string } {
  try {
    const { values, positionals } = parseArgs({
      args,
      allowPositionals: true,
      options: {
        most: { type: "string", default: String(MOST) },
        today: { type: "string" },
        json: { type: "boolean", default: false },
        help: { type: "boolean", short: "h", default: false },
      },
    });
    if (values.help) return { help: "" };
    const [folder, ...more] = positionals;
    if (folder === undefined || more.length > 0)
      return { help: "leafward ease needs one campaign folder, for example demo/saltmere." };
    const most = Number(values.most);
    if (!Number.isInteger(most) || most < 2 || most > 40)
      return { help: `--most ${values.most}: expected a whole number from 2 to 40.` };
    if (values.today !== undefined && dayFrom(values.today) === null)
      return { help: `--today ${values.today}: expected a day such as 2026-06-01.` };
    return { folder, most, today: values.today, json: values.json };
  } catch (error) {
    if (error instanceof TypeError) return { help: error.message };
    throw error;
  }
}

async function answer(asked: Asked, { solve }: Solver, out: Out, complain: Out): Promise<number> {
  const today = dayFrom(asked.today ?? "") ?? undefined;
  const opened = await openFolder(asked.folder, complain, today);
  if (!opened) return 2;
  const desk = openDesk(opened.campaign, opened.book, solve);
  const { campaign } = desk;
  complain("Working out the plan as it is …");
  const base = await asItIs(campaign, desk.routes, desk.means);
  const trying = ease(base, desk.means, asked.most);
  let step = await trying.next();
  for (; !step.done; step = await trying.next()) {
    const { number, of, ask } = step.value;
    complain(`${number} of ${of}: ${sayAsk(ask, campaign)} …`);
  }
  if (asked.json)
    out(JSON.stringify({ campaign: campaign.name, planFrom: campaign.planFrom, ...step.value }));
  else for (const line of easeLines(campaign, step.value, base.draws)) out(line);
  return 0;
}

function easeLines(campaign: Campaign, found: Ease, draws: number): string[] {
  const helpful = found.tried.filter((each) => each.helps);
  const idle = found.tried.filter((each) => !each.helps);
  const listed = (lines: readonly string[]): string[] =>
    lines.flatMap((line) => wrapped(line, "  ", "     "));
  return [
    `${campaign.name}: what would help? For the morning of ${sayDay(campaign.planFrom, "en-GB", "full")}.`,
    "",
    "WHAT HOLDS THE PLAN BACK",
    ...listed(sayEaseBinds(found)),
    "",
    "WHAT WOULD HELP, most for the asking first",
    ...(helpful.length === 0
      ? ["  Nothing that was tried."]
      : listed(helpful.map((each, at) => `${at + 1}. ${sayEased(each, campaign)}`))),
    "",
    "WHAT WOULD NOT",
    ...(idle.length === 0
      ? ["  Of what was tried, nothing."]
      : listed(idle.map((each) => sayNoHelp(each, campaign)))),
    "",
    "MUST-DO ITEMS THAT DO NOT FIT",
    ...listed(sayMustLeft(found.mustLeft, campaign)),
    "",
    ...wrapped(sayEaseMethod(draws, found.tried.length), ""),
  ];
}
