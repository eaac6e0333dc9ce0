import type { RuleBook } from "../../core/care/rule-book.ts";
import type { Campaign } from "../../core/items/campaign.ts";
import { sayProblem } from "../../core/say/problems.ts";
import type { Day } from "../../core/units/day.ts";
import { openCampaign } from "../../edge/keep/open-campaign.ts";
import { ruleBookOf } from "../../edge/rule-book.ts";

/** A campaign as its log or its sheets tell it, and the rules it works by; null when one of them cannot be used, which was then said. */
export async function openFolder(
  folder: string,
  complain: (line: string) => void,
  today?: Day,
): Promise<{ readonly campaign: Campaign; readonly book: RuleBook } | null> {
  const read = await openCampaign(folder, today);
  const book = ruleBookOf(folder);
  const faults = [
    ...read.problems.filter(({ severity, code }) =>
      read.campaign ? code === "sheets-differ" : severity === "stop",
    ),
    ...(book.ok ? [] : book.problems),
  ];
  for (const problem of faults.slice(0, 10)) complain(sayProblem(problem));
  return read.campaign && book.ok ? { campaign: read.campaign, book: book.value } : null;
}
