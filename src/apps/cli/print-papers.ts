import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { loadNorms } from "../../core/care/norms.ts";
import { planPicture } from "../../core/plan/picture/plan-picture.ts";
import { DAYS_LAID } from "../../core/plan/sheet-rows.ts";
import { sayDay } from "../../core/say/dates.ts";
import { addDays, type Day } from "../../core/units/day.ts";
import { benchCardView } from "../../edge/papers/bench-card-view.ts";
import { daySheetViews } from "../../edge/papers/day-sheet-view.ts";
import { bagTags, benchCardFiles, daySheets, orderList } from "../../edge/papers/papers.ts";
import { planPicturePaper } from "../../edge/papers/plan-picture-paper.ts";
import { bagTagViews, orderListView } from "../../edge/papers/store-views.ts";
import { readPublished } from "../../edge/published.ts";
import { publishedRuleBook } from "../../edge/rule-book.ts";
import type { PlannedFolder } from "./plan-folder.ts";

const FORTNIGHT = 13;

/** Prints the papers into a folder and names the files: sheets and cards of the first three working days, tags of the fortnight (or cards and tags of all), orders, the plan drawn. */
export async function printPapers(
  planned: PlannedFolder,
  folder: string,
  { sheet, allCards }: { readonly sheet: "A4" | "Letter"; readonly allCards: boolean },
): Promise<string[]> {
  const { plan, campaign, care, routes } = planned;
  const tagsUntil = allCards ? plan.end : addDays(plan.planFrom, FORTNIGHT);
  const workDays = [...new Set(plan.assignments.map((each) => each.day))].sort().slice(0, DAYS_LAID);
  const written: string[] = [];
  const write = async (name: string, bytes: Promise<Uint8Array> | Uint8Array): Promise<void> => {
    await writeFile(join(folder, name), await bytes);
    written.push(name);
  };
  const sheets = workDays.flatMap((day) => daySheetViews(plan, campaign, routes, day));
  if (sheets.length > 0) await write("day-sheets.pdf", daySheets(sheets, { sheet }));
  const cardsUntil = allCards ? plan.end : (workDays.at(-1) ?? plan.planFrom);
  const cards = benchViews({ plan, campaign, care, routes }, cardsUntil);
  const files = await benchCardFiles(cards, { sheet });
  for (const [at, bytes] of files.entries())
    await write(
      files.length === 1 ? "bench-cards.pdf" : `bench-cards-${String(at + 1).padStart(2, "0")}.pdf`,
      bytes,
    );
  const tags = bagTagViews(plan, campaign, routes, plan.planFrom, tagsUntil);
  if (tags.length > 0) await write("bag-tags.pdf", bagTags(tags, { sheet }));
  await write("order-list.pdf", orderList(orderListView(plan), { sheet }));
  const said = { campaign: plan.campaign, day: sayDay(plan.planFrom, "en-GB") };
  await write("plan-picture.pdf", planPicturePaper(planPicture(planned), said, sheet));
  return written;
}

/** Cards of the items worked on by the last day, in the order they are first worked on. */
function benchViews({ plan, campaign, care, routes }: Omit<PlannedFolder, "problems" | "use">, last: Day) {
  const book = publishedRuleBook();
  const norms = loadNorms(readPublished("norms.json"));
  const context = {
    campaign: campaign.name,
    endings: book.endings,
    families: book.families,
    storeWords: (use: string) =>
      norms.unit(use) === "pc" ? norms.what(use) : `${norms.unit(use)} ${norms.what(use)}`,
  };
  const careOf = new Map(care.map((each) => [each.item.id, each]));
  const routeOf = new Map(routes.map((route) => [route.item, route]));
  const items = new Set(
    plan.assignments
      .filter((each) => each.day <= last)
      .sort((a, b) => a.day.localeCompare(b.day))
      .map((each) => each.item),
  );
  return [...items].flatMap((id) => {
    const [one, route] = [careOf.get(id), routeOf.get(id)];
    return one && route ? [benchCardView(one, route, context)] : [];
  });
}
