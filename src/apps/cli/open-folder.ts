import type { RuleBook } from "../../core/care/rule-book.ts";
import type { Campaign } from "../../core/items/campaign.ts";
import { sayProblem } from "../../core/say/problems.ts";
import { readCampaignFolder } from "../../edge/intake/read-campaign.ts";
import { ruleBookOf } from "../../edge/rule-book.ts";

/** A campaign and the rules it works by; null when one of them cannot be used, which was then said. */
export async function openFolder(
  folder: string,
  complain: (line: string) => void,
): Promise<{ readonly campaign: Campaign; readonly book: RuleBook } | null> {
  const read = await readCampaignFolder(folder);
  const book = ruleBookOf(folder);
  const faults = [
    ...(read.campaign ? [] : read.problems.filter(({ severity }) => severity === "stop")),
    ...(book.ok ? [] : book.problems),
  ];
  for (const problem of faults.slice(0, 10)) complain(sayProblem(problem));
  return read.campaign && book.ok ? { campaign: read.campaign, book: book.value } : null;
}
