import { loadNorms } from "../../core/care/norms.ts";
import type { Campaign } from "../../core/items/campaign.ts";
import { campaignRoutes } from "../../core/plan/campaign-routes.ts";
import { planStop } from "../../core/plan/stop/plan-stop.ts";
import type { StopPlan } from "../../core/plan/stop/stop-plan.ts";
import { sayDay } from "../../core/say/dates.ts";
import {
  STOP_CAUTIONS,
  STOP_HELP,
  STOP_LABELS,
  STOP_REFUSALS,
  sayAfterwards,
  sayStopBoxed,
  sayStopLine,
  sayStopPerson,
  sayStopStore,
  sayStopTodo,
  sayStopUnderstood,
  sayStopVerdict,
} from "../../core/say/stop.ts";
import { stockNow } from "../../core/stores/use/stock-now.ts";
import { type Day, dayFrom } from "../../core/units/day.ts";
import { readPublished } from "../../edge/published.ts";
import { type Given, Refusal } from "./damp/given.ts";
import { answered, cautionsOf, type DampCommand, type Figure, type Report } from "./damp/report.ts";
import { openFolder } from "./open-folder.ts";

const OPTIONS = { today: "text", days: "flag" } as const;

/** `leafward stop`: what to make safe, finish, begin and leave when work stops on a day. */
export const stop: DampCommand = (...to) =>
  answered({ name: "stop", help: STOP_HELP, options: OPTIONS }, to, async (given) => {
    const { folder, last, today } = askedFrom(given);
    const opened = await openFolder(folder, to[2], today);
    if (!opened) throw new Refusal([]);
    checkDays(opened.campaign, last);
    const norms = loadNorms(readPublished("norms.json"));
    const { care, routes, worked } = campaignRoutes(opened.book, norms, opened.campaign);
    const { campaign } = stockNow(opened.campaign, worked, norms);
    const plan = planStop({ campaign, book: opened.book, norms, care, routes }, last);
    return reportOf(plan, given.has("days"));
  });

function askedFrom(given: Given): { folder: string; last: Day; today: Day | undefined } {
  const [folder, last, ...more] = given.files;
  if (folder === undefined || last === undefined || more.length > 0)
    given.refuseInWords(STOP_REFUSALS.arguments);
  given.settle();
  const stopDay = dayFrom(last ?? "");
  const todayText = given.text("today");
  const today = todayText === undefined ? undefined : dayFrom(todayText);
  if (stopDay === null) given.refuseInWords(STOP_REFUSALS.day("<day>", last ?? ""));
  if (today === null) given.refuseInWords(STOP_REFUSALS.day("--today", todayText ?? ""));
  given.settle();
  return { folder: folder ?? "", last: stopDay as Day, today: today ?? undefined }; // settled: it is a day
}

function checkDays({ planFrom, end }: Campaign, last: Day): void {
  if (last < planFrom) throw new Refusal([STOP_REFUSALS.past(last, planFrom)]);
  if (last > end) throw new Refusal([STOP_REFUSALS.beyond(last, end)]);
}

function reportOf(plan: StopPlan, everyLine: boolean): Report {
  return {
    exit: plan.items.some(({ why }) => why !== null) ? 1 : 0,
    sections: [
      {
        understood: [sayStopUnderstood(plan)],
        verdict: sayStopVerdict(plan),
        todo: [...sayStopTodo(plan), ...sayAfterwards(plan)],
        figures: figuresOf(plan),
        cautions: cautionsOf(
          ["lies-so", "longest-wait", "drop-from-below", "stop-and-ask", "local-rules"],
          STOP_CAUTIONS,
        ),
        data: { ...plan },
      },
    ],
    ...(everyLine ? { closing: dayLines(plan) } : {}),
  };
}

function figuresOf(plan: StopPlan): Figure[] {
  const list = (label: string, values: readonly string[]): Figure[] =>
    values.map((value, at) => ({ label: at === 0 ? label : "", value }));
  return [
    { label: STOP_LABELS.boxed, value: sayStopBoxed(plan) },
    ...list(STOP_LABELS.people, plan.people.map(sayStopPerson)),
    ...list(STOP_LABELS.stores, plan.stores.map(sayStopStore)),
  ];
}

function dayLines({ lines }: StopPlan): string[] {
  const days = [...new Set(lines.map(({ day }) => day))];
  return days.flatMap((day) => [
    sayDay(day, "en-GB", "full"),
    ...lines.filter((line) => line.day === day).map((line) => `  ${sayStopLine(line)}`),
  ]);
}
