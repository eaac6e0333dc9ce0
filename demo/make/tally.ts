import { careOfCampaign } from "../../src/core/care/item-care.ts";
import { loadNorms } from "../../src/core/care/norms.ts";
import { routeOf } from "../../src/core/care/route.ts";
import { readCampaignFolder } from "../../src/edge/intake/read-campaign.ts";
import { readPublished } from "../../src/edge/published.ts";
import { publishedRuleBook } from "../../src/edge/rule-book.ts";

/** How many items of a folder have each condition, on any of their parts, and what becomes of them. An unsure counts for itself. */
export async function tally(folder: string): Promise<Map<string, number>> {
  const { campaign } = await readCampaignFolder(folder);
  if (!campaign) throw new Error(`${folder} cannot be read.`);
  const counts = new Map<string, number>();
  const count = (what: string): void => void counts.set(what, (counts.get(what) ?? 0) + 1);
  const norms = loadNorms(readPublished("norms.json"));
  for (const care of careOfCampaign(publishedRuleBook(), campaign)) {
    const all = [care.whole, ...care.parts.map((part) => part.care)];
    for (const condition of new Set(all.flatMap((each) => each.conditions))) count(condition);
    if (all.some((each) => each.unsureConditions.length > 0)) count("a condition left unsure");
    count(routeOf(norms, care).destiny);
  }
  counts.delete("water_sensitive"); // holds for nearly all: nobody has shown otherwise
  return counts;
}

/** The rows of a table for the README: one a condition, one column a campaign. */
export function tallyRows(columns: readonly ReadonlyMap<string, number>[]): string[] {
  const names = [...new Set(columns.flatMap((column) => [...column.keys()]))].sort();
  return names.map(
    (name) =>
      `| ${name.replaceAll("_", " ")} | ${columns.map((column) => column.get(name) ?? 0).join(" | ")} |`,
  );
}
