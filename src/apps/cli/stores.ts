import { loadNorms } from "../../core/care/norms.ts";
import { STORES_HELP, STORES_WORDS, saySubstitute } from "../../core/say/stores.ts";
import type { Goods } from "../../core/stores/goods/goods.ts";
import { type StoreOutlook, storeOutlooks } from "../../core/stores/projection/store-outlook.ts";
import { addDays, type Day, dayFrom } from "../../core/units/day.ts";
import { openCampaign } from "../../edge/keep/open-campaign.ts";
import { readPublished } from "../../edge/published.ts";
import { storeMeans } from "../../edge/store-goods.ts";
import { type Given, Refusal } from "./damp/given.ts";
import { answered, type DampCommand, type Report } from "./damp/report.ts";
import { sayProblems } from "./plan.ts";
import { type PlannedFolder, planFolder } from "./plan-folder.ts";
import { dataOf, storeReport } from "./store-report.ts";
import { storeTable } from "./store-table.ts";
import { wrapped } from "./wrapped.ts";

const OPTIONS = { item: "text", all: "flag", today: "text" } as const;
const WEEK = 7;
const SCREEN_LINES = 24;
/** Below what is understood, and below the verdict. */
const BLANK_LINES = 2;
const MOST_LATE = 2;

/** `leafward stores`: what runs out when, what to send for and by when; of one store its course week by week. */
export const stores: DampCommand = (...to) =>
  answered({ name: "stores", help: STORES_HELP, options: OPTIONS }, to, async (given) => {
    const { folder, today } = askedFrom(given);
    const { campaign } = await openCampaign(folder, today);
    if (campaign?.stores.length === 0) return emptyReport();
    const planned = await planFolder(folder, today, to[2]);
    sayProblems(planned.problems, { complain: to[2], folder });
    if (planned.campaign === null) throw new Refusal([]);
    const norms = loadNorms(readPublished("norms.json"));
    const means = storeMeans(norms, planned.stock, planned.plan.finish);
    const outlooks = storeOutlooks(planned.campaign, planned.use, means);
    const item = given.text("item");
    if (item === undefined) return reportOf(planned, outlooks, means.goods, given.has("all"));
    const one = named(outlooks, item);
    if (one) return storeReport(one, planned, means);
    const known = outlooks.map(({ store }) => store.id);
    throw new Refusal([STORES_WORDS.unknown(item, known)]);
  });

/** By its short name, or by a part of its name that no other has. */
function named(outlooks: readonly StoreOutlook[], item: string): StoreOutlook | undefined {
  const like = outlooks.filter(({ store }) => store.name.toLowerCase().includes(item.toLowerCase()));
  return outlooks.find(({ store }) => store.id === item) ?? (like.length === 1 ? like[0] : undefined);
}

function askedFrom(given: Given): { folder: string; today: Day | undefined } {
  const [folder, ...more] = given.files;
  if (folder === undefined || more.length > 0) given.refuseInWords(STORES_WORDS.arguments);
  const text = given.text("today");
  const today = text === undefined ? undefined : dayFrom(text);
  if (today === null) given.refuseInWords(STORES_WORDS.day(text ?? ""));
  given.settle();
  return { folder: folder ?? "", today: today ?? undefined };
}

const emptyReport = (): Report => ({
  exit: 0,
  sections: [
    {
      ...{ understood: [], verdict: STORES_WORDS.none, todo: [STORES_WORDS.noneTodo] },
      ...{ figures: [], cautions: [], data: { stores: [] } },
    },
  ],
});

function reportOf(
  { campaign, plan }: PlannedFolder,
  outlooks: readonly StoreOutlook[],
  goods: Goods,
  all: boolean,
): Report {
  const today = campaign.planFrom;
  const due = plan.orders.filter(({ orderBy }) => orderBy <= addDays(today, WEEK));
  const late = outlooks.filter(({ orders }) => orders.some((order) => order.late));
  const short = outlooks.filter(({ runsOut }) => runsOut.p50);
  const head = {
    understood: [STORES_WORDS.understood(campaign.name, today, campaign.end)],
    verdict: STORES_WORDS.verdict(short.length, due.length, late.length),
    todo: late.slice(0, MOST_LATE).map(({ store }) => saySubstitute(store.name, goods.substitute(store.use))),
  };
  const lines = (texts: readonly string[], indent = ""): number =>
    texts.flatMap((text) => wrapped(text, indent)).length;
  const above = lines([...head.understood, head.verdict]) + BLANK_LINES;
  const taken = above + (head.todo.length > 0 ? 2 + lines(head.todo, "     ") : 0);
  return {
    exit: due.length + late.length > 0 ? 1 : 0,
    sections: [{ ...head, figures: [], cautions: [], data: { stores: outlooks.map(dataOf) } }],
    closing: storeTable(outlooks, today, all ? Number.POSITIVE_INFINITY : SCREEN_LINES - taken),
  };
}
