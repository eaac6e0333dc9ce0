import { sayProblem } from "../../core/say/problems.ts";
import { readCampaignFolder } from "../../edge/intake/read-campaign.ts";
import type { Keep } from "../../edge/keep/keep.ts";
import { campaignHere } from "../../edge/keep/open-campaign.ts";
import { mayHaveLog, openKeep } from "../../edge/keep/open-keep.ts";
import { takeIn } from "../../edge/keep/take-in.ts";
import { ruleBookOf } from "../../edge/rule-book.ts";
import { machineNow } from "./now.ts";

export interface OpenLog {
  readonly keep: Keep;
  /** The name under which the campaign was founded. */
  readonly campaign: string;
}

/** The log of a campaign folder, begun from its sheets where there is none yet; null, and said why, where it cannot be had. */
export async function logOf(folder: string, complain: (line: string) => void): Promise<OpenLog | null> {
  const isNew = !mayHaveLog(folder);
  const sheets = await readCampaignFolder(folder);
  const opened = await openKeep(folder);
  if (!opened.ok) {
    for (const problem of opened.problems) complain(sayProblem(problem));
    return null;
  }
  const keep = opened.value;
  const book = ruleBookOf(folder);
  if (isNew && sheets.campaign && book.ok) {
    complain("Beginning the log from the sheets …");
    await takeIn(keep, sheets.campaign, book.value.tests, machineNow().ms);
  }
  const campaign = await campaignHere(keep, sheets.campaign);
  if (campaign !== null) return { keep, campaign };
  await keep.close();
  return null;
}
