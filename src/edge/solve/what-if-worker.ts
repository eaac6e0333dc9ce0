import { parentPort } from "node:worker_threads";
import { type AsItIs, answersTo, asItIs, type Case } from "../../core/plan/what-if/answers.ts";
import { ease } from "../../core/plan/what-if/ease/ease.ts";
import { sayAsk, sayEaseBinds, sayEased, sayMustLeft, sayNoHelp } from "../../core/say/ease.ts";
import { sayAnswer, sayCautions, saySupposed } from "../../core/say/what-if-answer.ts";
import type { Day } from "../../core/units/day.ts";
import { openCampaign } from "../keep/open-campaign.ts";
import { ruleBookOf } from "../rule-book.ts";
import { startSolver } from "./solver.ts";
import { type Desk, openDesk, readQuestion } from "./what-if-desk.ts";
import type { FromDesk, ToDesk } from "./what-if-messages.ts";

const { solve } = startSolver();
let desk: Promise<Desk> | null = null;
/** The plan as it is, made at the first question and kept for the others. */
let known: Promise<AsItIs> | null = null;

const tell = (message: FromDesk): void => parentPort?.postMessage(message);

async function opened(folder: string, planFrom: Day): Promise<Desk> {
  const { campaign } = await openCampaign(folder, planFrom);
  const book = ruleBookOf(folder);
  if (!campaign || !book.ok) throw new Error("The campaign folder can no longer be read.");
  return openDesk(campaign, book.value, solve);
}

async function easeBy(most: number): Promise<void> {
  if (!desk) throw new Error("Asked before a folder was opened.");
  const { campaign, routes, means } = await desk;
  known ??= asItIs(campaign, routes, means);
  const base = await known;
  tell({ line: { step: "as it is", outlook: base.outlook, draws: base.draws } });
  const trying = ease(base, means, most);
  let step = await trying.next();
  for (; !step.done; step = await trying.next()) {
    const { ask, number, of } = step.value;
    tell({ line: { step: "trying", ask: sayAsk(ask, campaign), number, of } });
  }
  const { tried, mustLeft } = step.value;
  const helping = tried.filter(({ helps }) => helps);
  tell({
    line: {
      step: "eased",
      binds: sayEaseBinds(step.value),
      helps: helping.map((each) => sayEased(each, campaign)),
      noHelp: tried.filter(({ helps }) => !helps).map((each) => sayNoHelp(each, campaign)),
      mustLeft: sayMustLeft(mustLeft, campaign),
      ...{ plans: tried.length, draws: base.draws },
    },
  });
}

async function answer(scenarios: readonly string[]): Promise<void> {
  if (!desk) throw new Error("Asked before a folder was opened.");
  const at = await desk;
  const { cases, refusals } = readQuestion(at, scenarios);
  if (refusals.length > 0) return tell({ line: { step: "refused", refusals } });
  const supposed = cases.map((each) => saySupposed(each.scenario, at.campaign));
  const changes = cases.map(({ scenario }) => scenario.changes);
  tell({ line: { step: "understood", supposed, changes } });
  known ??= asItIs(at.campaign, at.routes, at.means);
  const base = await known;
  tell({ line: { step: "as it is", outlook: base.outlook, draws: base.draws } });
  for await (const each of answersTo(base, cases, at.means)) {
    const { scenario } = cases[each.at] as Case;
    tell({ line: { ...each, said: sayAnswer(base, each), cautions: sayCautions(scenario) } });
  }
}

parentPort?.on("message", (message: ToDesk) => {
  if ("open" in message) {
    desk = opened(message.open.folder, message.open.planFrom);
    desk.catch(() => {}); // told at the first question
    return;
  }
  const answered = "ask" in message ? answer(message.ask) : easeBy(message.ease);
  answered.then(
    () => tell({ done: true }),
    (error) => {
      known = null;
      tell({ failure: String(error) });
    },
  );
});
