import { fold } from "../../core/log/fold.ts";
import type { CampaignState } from "../../core/log/state.ts";
import { readCampaignFolder } from "../intake/read-campaign.ts";
import { KeepFault } from "./keep.ts";
import { campaignHere, eventsIn } from "./open-campaign.ts";
import { mayHaveLog, openKeep } from "./open-keep.ts";

/** Everything the log of a campaign folder holds, filed under what it speaks of; null: there is no log yet.
 *  @throws KeepFault where there is one that cannot be read */
export async function readState(folder: string): Promise<CampaignState | null> {
  if (!mayHaveLog(folder)) return null;
  const opened = await openKeep(folder, "read");
  if (!opened.ok) {
    const [problem] = opened.problems;
    if (problem) throw new KeepFault(problem, null);
    return null;
  }
  const keep = opened.value;
  try {
    const campaign = await campaignHere(keep, (await readCampaignFolder(folder)).campaign);
    return campaign === null ? null : fold(await eventsIn(keep, campaign));
  } finally {
    await keep.close();
  }
}
