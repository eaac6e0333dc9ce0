import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll } from "vitest";
import { newCampaignFiles } from "../../../src/edge/intake/new-campaign.ts";
import { type CampaignRead, readCampaignFolder } from "../../../src/edge/intake/read-campaign.ts";

type Files = Readonly<Record<string, string | Uint8Array | null>>;

const made: string[] = [];
afterAll(async () => {
  for (const folder of made) await rm(folder, { recursive: true, force: true });
});

/** An empty folder that is gone after the tests. */
export async function emptyFolder(name = "campaign"): Promise<string> {
  const top = await mkdtemp(join(tmpdir(), "leafward-"));
  made.push(top);
  const folder = join(top, name);
  await mkdir(folder);
  return folder;
}

/** A sound small campaign with some files changed, added, or (null) taken out. */
export async function folderWith(files: Files, name?: string): Promise<string> {
  const folder = await emptyFolder(name);
  for (const [path, content] of Object.entries({ ...Object.fromEntries(newCampaignFiles()), ...files })) {
    if (content === null) continue;
    await mkdir(dirname(join(folder, path)), { recursive: true });
    await writeFile(join(folder, path), content);
  }
  return folder;
}

export const readWith = async (files: Files, name?: string): Promise<CampaignRead> =>
  readCampaignFolder(await folderWith(files, name));

/** campaign.json with some settings changed or, when undefined, taken out. */
export const campaignWith = (changes: Readonly<Record<string, unknown>>): string =>
  JSON.stringify({ ...JSON.parse(newCampaignFiles().get("campaign.json") ?? ""), ...changes });

export const rows = (...lines: string[]): string => `${lines.join("\r\n")}\r\n`;

/** The first problem of a code; fails the test when there is none. */
export function the(code: string, { problems }: Pick<CampaignRead, "problems">) {
  const found = problems.find((each) => each.code === code);
  if (found === undefined)
    throw new Error(`No problem ${code} in ${problems.map((each) => each.code).join(", ")}`);
  return found;
}

export const codes = ({ problems }: Pick<CampaignRead, "problems">): string[] =>
  problems.map(({ code }) => code);
