import type { Plan } from "../../core/plan/plan.ts";
import type { Replan } from "../../core/plan/replan/changes.ts";
import {
  type CampaignWords,
  REPLAN_LABELS,
  sayAfresh,
  sayArrived,
  sayDueDays,
  sayKept,
  sayMoved,
  sayNearDays,
  sayPaces,
  sayReplanHead,
} from "../../core/say/replan.ts";
import { answerLines } from "./answer.ts";
import { wrapped } from "./wrapped.ts";

const LABEL = 12;
/** A screen holds so many reasons; the rest is in changes.csv. */
const MOST = { moved: 7, near: 3 };

/** What was kept and what was not, at most a screen. */
export function replanLines(plan: Plan, its: Replan, words: CampaignWords): string[] {
  const section = (label: string, sentences: readonly string[], most = 1): string[] => [
    ...sentences
      .slice(0, most)
      .flatMap((text, at) => wrapped(text, (at === 0 ? label : "").padEnd(LABEL), " ".repeat(LABEL))),
    ...(sentences.length > most
      ? [`${" ".repeat(LABEL)}… and ${sentences.length - most} more reasons in changes.csv.`]
      : []),
  ];
  const arrived = sayArrived(its);
  const finish = answerLines(plan).filter((line) => /^(Finish|Does not fit)/.test(line));
  return [
    ...wrapped(sayReplanHead(plan.campaign, its), ""),
    ...section(REPLAN_LABELS.kept, [sayKept(its)]),
    ...section(REPLAN_LABELS.moved, sayMoved(its, words), MOST.moved),
    ...section(REPLAN_LABELS.near, sayNearDays(its, words), MOST.near),
    ...section(REPLAN_LABELS.due, [sayDueDays(its)]),
    ...section(REPLAN_LABELS.arrived, arrived === "" ? [] : [arrived]),
    ...section(REPLAN_LABELS.paces, [sayPaces(its)]),
    ...section(REPLAN_LABELS.afresh, [sayAfresh(its)]),
    ...finish.flatMap((line) => wrapped(line, "", " ".repeat(LABEL))),
  ];
}
