import type { Route } from "../care/care.ts";
import type { Campaign } from "../items/campaign.ts";
import { addDays } from "../units/day.ts";
import { type MouldOutlook, mouldOutlooks } from "../ward/mould-outlook.ts";
import type { Left } from "./plan.ts";
import type { Walk } from "./walk.ts";

const STUCK: Readonly<Record<string, string>> = {
  survey: "waits for its survey",
  admit: "waits for a place in the Ward or for someone who may do mould work",
  release: "is still in the Ward",
  covers: "waits for its cover pictures",
  wrap: "waits for its wrapper",
  clean: "waits for the Bench",
  image: "waits for the camera",
  box: "waits for its box",
};

/** Where and from when mould could begin on an item that is left, in words; empty where no reader sees it begin. */
function mouldWhere(outlook: MouldOutlook | undefined, { planFrom }: Campaign): string {
  if (!outlook?.known || outlook.days.low === null) return "";
  if (outlook.days.low === 0) return ` Mould may have begun on it in '${outlook.reader}' already.`;
  return ` Mould could begin on it in '${outlook.reader}' from ${addDays(planFrom, outlook.days.low)}.`;
}

/** Every item that will not be boxed by the end, must-do items first, each with why. */
export function leftOf(campaign: Campaign, routes: readonly Route[], plan: Walk): Left[] {
  const items = new Map(campaign.items.map((item) => [item.id, item]));
  const mould = mouldOutlooks(campaign);
  const left: Left[] = [];
  const add = (route: Route, kind: Left["kind"], why: string): void => {
    const item = items.get(route.item);
    if (!item) return;
    left.push({
      item: item.id,
      title: item.title,
      must: item.priority === "must",
      kind,
      why,
      reasons: route.stoppedBy,
      askWho: route.askWho,
    });
  };
  for (const route of routes) {
    if (route.destiny === "set aside")
      add(route, "set aside", route.stoppedBy[0]?.text ?? "A rule stops the work.");
    if (route.destiny === "at the Door")
      add(route, "at the Door", "Must-ask tests have no answer yet. A missing answer is not a no.");
  }
  for (const [job, ends] of plan.ends) {
    const next = ends.findIndex((end) => end < 0);
    const act = job.tasks[next]?.act;
    if (act)
      add(
        job.route,
        "no time",
        `On the last day it ${STUCK[act]}.${mouldWhere(mould.get(job.item.id), campaign)}`,
      );
  }
  return left.sort(
    (a, b) => Number(b.must) - Number(a.must) || a.kind.localeCompare(b.kind) || a.item.localeCompare(b.item),
  );
}
