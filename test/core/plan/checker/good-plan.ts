import { readFileSync } from "node:fs";
import { makeCampaign } from "../../../../bench/make-campaign.ts";
import { loadNorms } from "../../../../src/core/care/norms.ts";
import type { Campaign, Finding, Item } from "../../../../src/core/items/campaign.ts";
import { campaignRoutes } from "../../../../src/core/plan/campaign-routes.ts";
import { gapOver, itemBoundOf, planValue } from "../../../../src/core/plan/checker/certificate.ts";
import { checkPlan } from "../../../../src/core/plan/checker/check-plan.ts";
import type { Fault } from "../../../../src/core/plan/checker/fault.ts";
import { PlanOnPaper } from "../../../../src/core/plan/checker/plan-on-paper.ts";
import { presentMinutes } from "../../../../src/core/plan/checker/presence.ts";
import { makePlan, PLAN_DEFAULTS } from "../../../../src/core/plan/make-plan.ts";
import type { Assignment, Plan } from "../../../../src/core/plan/plan.ts";
import type { Solve } from "../../../../src/core/plan/programme.ts";
import { projectStores } from "../../../../src/core/stores/orders.ts";
import { addDays } from "../../../../src/core/units/day.ts";
import { readPublished } from "../../../../src/edge/published.ts";
import { publishedRuleBook } from "../../../../src/edge/rule-book.ts";

export const norms = loadNorms(readPublished("norms.json"));
export const book = publishedRuleBook();

export const planOf = async (campaign: Campaign, solve: Solve): Promise<Plan> => {
  const { routes } = campaignRoutes(book, norms, campaign);
  const { plan, use } = await makePlan(campaign, routes, norms, solve, { ...PLAN_DEFAULTS, draws: 10 });
  const { orders, lines } = projectStores(campaign, use);
  return { ...plan, orders, stores: lines };
};

export const faultsOf = (campaign: Campaign, plan: PlanOnPaper["plan"]): Fault[] =>
  checkPlan(campaign, book, norms, plan);

/** An invented campaign in which growth is on items that are cleaned before anything else is done with them. */
function plainCampaign(): Campaign {
  const made = makeCampaign({ items: 110, people: 5, weeks: 6, seed: 3 });
  const grows = new Set(
    made.findings
      .filter(({ test, answer }) => test === "growth_visible" && answer === "yes")
      .map(({ item }) => item),
  );
  const isPlain = ({ id, facts }: Item): boolean =>
    !grows.has(id) || (facts.cover === "none" && facts.format !== "photo_print");
  const items = made.items.filter(isPlain);
  const kept = new Set(items.map(({ id }) => id));
  return { ...made, items, findings: made.findings.filter(({ item }) => kept.has(item)) };
}

/** A campaign with everything a plan can show: work near mould, red rot, an item without tests, one set aside, and labels that run out. */
export function fullCampaign(): Campaign {
  const made = plainCampaign();
  const [pattern] = made.items.filter(({ facts }) => facts.format === "newspaper");
  if (!pattern) throw new Error("The invented campaign has no newspaper.");
  const { arrives: _, ...like } = pattern;
  const aside: Finding = { item: "Y-ASIDE", part: "", test: "guano", answer: "yes" };
  const answers = made.findings.filter(({ item, test }) => item === pattern.id && test !== "guano");
  return {
    ...made,
    wardLitres: 2000,
    items: [
      ...made.items,
      { ...like, id: "X-DOOR", title: "Untested" },
      { ...like, id: "Y-ASIDE", title: "Set aside" },
    ],
    findings: [...made.findings, ...answers.map((each) => ({ ...each, item: "Y-ASIDE" })), aside],
    stores: [
      ...made.stores,
      {
        id: "labels",
        name: "labels",
        use: "k-label",
        unit: "pc",
        onHand: 20,
        pack: 50,
        leadDays: 5,
        route: "local",
      },
    ],
  };
}

/** Where a good plan and its campaign are kept, so that the checker's claims do not hang on what the planner makes of it today. */
export const KEPT = new URL("../../../golden/good-plan/", import.meta.url);
const kept = (name: string): unknown => JSON.parse(readFileSync(new URL(name, KEPT), "utf8"));
export const keptCampaign = (): Campaign => kept("campaign.json") as Campaign;
export const keptPlan = (): Plan => kept("plan.json") as Plan;

/** The plan with its sums told anew after its work was changed, so that only the change itself is wrong; orders and stores are left out. */
export function retold(campaign: Campaign, plan: Plan): PlanOnPaper["plan"] {
  const { orders: _, stores: __, ...rest } = plan;
  const assignments = numbered(plan.assignments);
  const told = { ...rest, assignments, personDays: [], itemDays: itemDaysOf(plan, assignments) };
  const paper = new PlanOnPaper(campaign, book, norms, told);
  const itemObjective = planValue(paper);
  return {
    ...told,
    personDays: personDaysOf(paper, plan),
    proof: { ...plan.proof, itemObjective, itemGap: gapOver(itemObjective, itemBoundOf(plan.proof)) },
  };
}

/** Each sheet numbered anew: clean work first, else as it was. */
function numbered(work: readonly Assignment[]): Assignment[] {
  const count = new Map<string, number>();
  return [...work]
    .sort((a, b) => Number(a.exposed) - Number(b.exposed) || a.order - b.order)
    .map((each) => {
      const sheet = `${each.person}|${each.day}`;
      const order = (count.get(sheet) ?? 0) + 1;
      count.set(sheet, order);
      return { ...each, order };
    });
}

const itemDaysOf = (plan: Plan, work: readonly Assignment[]): Plan["itemDays"] =>
  plan.itemDays.map(({ item, days }) => ({
    item,
    days: Object.fromEntries(
      Object.keys(days).flatMap((act) => {
        const own = work.filter((each) => each.item === item && each.act === act).map(({ day }) => day);
        return own.length > 0 ? [[act, own.sort().at(-1)]] : [];
      }),
    ),
  }));

const minutesOf = (work: readonly Assignment[]): number =>
  work.reduce((sum, { minutes }) => sum + minutes, 0);

/** The lines the plan had, and those its sheets now need. */
function personDaysOf(paper: PlanOnPaper, plan: Plan): Plan["personDays"] {
  const known = plan.personDays.map(({ person, day }) => `${person}|${day}`);
  return [...new Set([...known, ...paper.sheets.keys()])].map((key) => {
    const [code = "", day = ""] = key.split("|");
    const sheet = paper.sheets.get(key) ?? [];
    const near = sheet.filter((each) => each.exposed);
    const person = paper.people.get(code);
    const date = addDays(day as Plan["start"], 0);
    const present = person ? presentMinutes(paper.campaign, person, date, norms.band("s-pdca").typical) : 0;
    // Taking off, wiping down, tools and waste are 63 min, putting on and laying out 20 (data/norms.json, typical).
    return {
      person: code,
      day: date,
      presentMinutes: present,
      workMinutes: minutesOf(sheet),
      exposedMinutes: near.length > 0 ? minutesOf(near) + 63 : 0,
      overheadMinutes: near.length > 0 ? 83 : 0,
    };
  });
}
