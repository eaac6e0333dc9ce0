import { makeCampaign } from "../../../../bench/make-campaign.ts";
import { careOfCampaign } from "../../../../src/core/care/item-care.ts";
import { loadNorms } from "../../../../src/core/care/norms.ts";
import { routeOf } from "../../../../src/core/care/route.ts";
import type { Campaign } from "../../../../src/core/items/campaign.ts";
import { type Job, type PlanProblem, planProblem, type Task } from "../../../../src/core/plan/problem.ts";
import { kindOf } from "../../../../src/core/plan/work.ts";
import { readPublished } from "../../../../src/edge/published.ts";
import { publishedRuleBook } from "../../../../src/edge/rule-book.ts";

const norms = loadNorms(readPublished("norms.json"));
const book = publishedRuleBook();

export function problemOf(campaign: Campaign): PlanProblem {
  const routes = careOfCampaign(book, campaign).map((each) => routeOf(norms, each));
  return planProblem(campaign, routes, norms);
}

export const smallCampaign = (): Campaign => makeCampaign({ items: 40, people: 4, weeks: 12, seed: 2 });

/** So many items in the Ward whose wait is 2, 12 or 22 days, and then a box that takes no time; people are there every day. */
export function waitingProblem(count: number): PlanProblem {
  const made = makeCampaign({ items: 200, people: 4, weeks: 6, seed: 9 });
  const people = made.people.map((each) => ({ ...each, weekdays: [0, 1, 2, 3, 4, 5, 6] }));
  const problem = problemOf({ ...made, people });
  const like = problem.jobs.find(({ tasks }) => tasks.some(({ act }) => act === "release")) as Job;
  const task = (act: "release" | "box"): Task => ({
    act,
    kind: kindOf({ act, exposed: false }),
    minutes: { low: 0.01, typical: 0.01, high: 0.01 },
    exposed: false,
    dirt: 0,
    uses: new Map(),
  });
  const jobs = Array.from(
    { length: count },
    (_, at): Job => ({
      ...like,
      item: { ...like.item, id: `W${at}` },
      route: { ...like.route, wardDays: { low: 2, typical: 12, high: 22 }, wardLitres: 0 },
      tasks: [task("release"), task("box")],
      inWard: true,
      ready: 12,
      due: null,
    }),
  );
  return { ...problem, jobs };
}
