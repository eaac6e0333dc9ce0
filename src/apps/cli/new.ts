import { newCampaignFiles, writeNewCampaign } from "../../edge/intake/new-campaign.ts";

type Out = (line: string) => void;

/** `leafward new <folder>`: writes a campaign to begin from. Never writes into a folder that has anything in it.
 *  @returns 0 written · 2 not written */
export async function newFolder(folder: string, out: Out): Promise<number> {
  try {
    if (!(await writeNewCampaign(folder))) {
      out(`The folder "${folder}" has files in it already; nothing was written. Name a new folder.`);
      return 2;
    }
  } catch (error) {
    out(
      `The folder "${folder}" cannot be written (${error instanceof Error ? error.message : "no reason given"}).`,
    );
    return 2;
  }
  out(`Written to ${folder}: ${[...newCampaignFiles().keys()].join(", ")}.`);
  out("The rows in them are invented: put yours in their place, then run");
  out(`  leafward check "${folder}"`);
  return 0;
}
