import { planPicture } from "../../../core/plan/picture/plan-picture.ts";
import type { Plan } from "../../../core/plan/plan.ts";
import { DAYS_LAID } from "../../../core/plan/sheet-rows.ts";
import { sayDay } from "../../../core/say/dates.ts";
import type { PaperKind } from "../../../core/say/papers/command.ts";
import { addDays, type Day } from "../../../core/units/day.ts";
import { calendars } from "../../../edge/handover/calendars.ts";
import { tablePackage } from "../../../edge/handover/table-package.ts";
import { benchCardView } from "../../../edge/papers/bench-card-view.ts";
import { boxLabelViews } from "../../../edge/papers/box-label-view.ts";
import { daySheetViews } from "../../../edge/papers/day-sheet-view.ts";
import { filledBoxes } from "../../../edge/papers/filled-boxes.ts";
import { labels } from "../../../edge/papers/label-view.ts";
import { bagTags, benchCardFiles, daySheets, orderList } from "../../../edge/papers/papers.ts";
import { planPicturePaper } from "../../../edge/papers/plan-picture-paper.ts";
import { sheets } from "../../../edge/papers/sheet-view.ts";
import { stationSheetViews } from "../../../edge/papers/station-sheet-view.ts";
import { bagTagViews, orderListView } from "../../../edge/papers/store-views.ts";
import { weekView } from "../../../edge/papers/week-view.ts";
import { publishedGoods } from "../../../edge/store-goods.ts";
import type { PlannedFolder } from "../plan-folder.ts";
import { cardContext } from "./card-context.ts";
import { numbered, oneFile, type PaperSource, type Printed } from "./printed.ts";

/** Papers told by the plan alone. */
export type PlanSource = Pick<PlannedFolder, "plan" | "campaign" | "care" | "routes" | "use"> & {
  readonly sheet: "A4" | "Letter";
  /** Cards and tags to the end, not of the next days. */
  readonly allCards: boolean;
};

const FORTNIGHT = 13;

const workDays = ({ assignments }: Plan): Day[] =>
  [...new Set(assignments.map(({ day }) => day))].sort().slice(0, DAYS_LAID);
const fortnight = ({ plan, allCards }: PlanSource): Day =>
  allCards ? plan.end : addDays(plan.planFrom, FORTNIGHT);

/** The papers that `leafward plan` prints with every plan. */
export const PLAN_PAPERS = {
  "day-sheets": ({ plan, campaign, routes, sheet }: PlanSource): Promise<Printed[]> => {
    const views = workDays(plan).flatMap((day) => daySheetViews(plan, campaign, routes, day));
    return oneFile("day-sheets.pdf", views, () => daySheets(views, { sheet }));
  },
  "bench-cards": async (source: PlanSource): Promise<Printed[]> =>
    numbered("bench-cards", await benchCardFiles(benchViews(source), { sheet: source.sheet })),
  "bag-tags": (source: PlanSource): Promise<Printed[]> => {
    const { plan, campaign, routes, sheet } = source;
    const views = bagTagViews(plan, campaign, routes, plan.planFrom, fortnight(source));
    return oneFile("bag-tags.pdf", views, () => bagTags(views, { sheet }));
  },
  orders: async ({ plan, campaign: { stores }, sheet }: PlanSource): Promise<Printed[]> => {
    const view = orderListView(plan, { stores, goods: publishedGoods() });
    return [{ name: "order-list.pdf", bytes: await orderList(view, { sheet }) }];
  },
  picture: async (source: PlanSource): Promise<Printed[]> => {
    const said = { campaign: source.plan.campaign, day: sayDay(source.plan.planFrom, "en-GB") };
    return [
      { name: "plan-picture.pdf", bytes: await planPicturePaper(planPicture(source), said, source.sheet) },
    ];
  },
} satisfies Partial<Record<PaperKind, (source: PlanSource) => Promise<Printed[]>>>;

/** Cards of the items worked on by the last day wanted, in the order they are first worked on. */
function benchViews({ plan, campaign, care, routes, allCards }: PlanSource) {
  const last = allCards ? plan.end : (workDays(plan).at(-1) ?? plan.planFrom);
  const context = cardContext(campaign.name);
  const careOf = new Map(care.map((each) => [each.item.id, each]));
  const routeOf = new Map(routes.map((route) => [route.item, route]));
  const soon = plan.assignments.filter(({ day }) => day <= last).sort((a, b) => a.day.localeCompare(b.day));
  return [...new Set(soon.map(({ item }) => item))].flatMap((id) => {
    const [one, route] = [careOf.get(id), routeOf.get(id)];
    return one && route ? [benchCardView(one, route, context)] : [];
  });
}

/** Papers that need a plan and are printed when asked for. */
export const ASKED_PLAN_PAPERS = {
  "station-sheets": ({ plan, campaign, sheet }: PlanSource): Promise<Printed[]> => {
    const views = workDays(plan).flatMap((day) => stationSheetViews(plan, campaign, day));
    return oneFile("station-sheets.pdf", views, () => sheets(views, { sheet }));
  },
  "box-labels": (source: PlanSource & PaperSource): Promise<Printed[]> => {
    const { plan, state, sheet } = source;
    const soon = plan.itemDays.filter(({ days }) => days.box && days.box <= fortnight(source));
    const boxes = [...filledBoxes(state), ...soon.map(({ item }) => ({ box: item, items: [item] }))];
    const views = boxLabelViews(plan.campaign, boxes, source);
    return oneFile("box-labels.pdf", views, () => labels(views, { sheet }));
  },
  week: async ({ plan, campaign, sheet }: PlanSource): Promise<Printed[]> => [
    { name: "week.pdf", bytes: await sheets([weekView(plan, campaign)], { sheet }) },
  ],
  calendar: async (source: PlanSource & PaperSource): Promise<Printed[]> =>
    calendars(source).map(({ name, text }) => ({ name: `calendar/${name}`, bytes: text })),
  tables: async ({ campaign, plan }: PlanSource): Promise<Printed[]> =>
    tablePackage(campaign, plan).map(({ name, text }) => ({ name: `tables/${name}`, bytes: text })),
} satisfies Partial<Record<PaperKind, (source: PlanSource & PaperSource) => Promise<Printed[]>>>;
