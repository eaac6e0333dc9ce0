import { stat } from "node:fs/promises";
import { join } from "node:path";
import { sayProblem } from "../../core/say/problems.ts";
import { databaseUrl, LOG_FILE } from "../../edge/keep/open-keep.ts";
import { verifyDatabase, verifyFile } from "../../edge/keep/verify.ts";
import { machineNow } from "./now.ts";
import { askedOf } from "./own-options.ts";

type Out = (line: string) => void;

const HELP = `leafward verify: is the log whole, to its last page and entry

  npx leafward verify <folder or file>

Reads the pages of the file, the sum beside it, every entry against its hash and its kind, whether
each device's entries follow one on the other without a gap, and whether they tell a campaign.
Nothing is written. With LEAFWARD_DATABASE_URL set a folder means that database.`;

const SHOWN = 40;

/** @returns 0 whole · 1 something must be looked at · 2 it is damaged or cannot be read */
export async function verifyLog(args: string[], out: Out, complain: Out): Promise<number> {
  const asked = askedOf(args, { help: HELP, least: 1, most: 1 }, out, complain);
  if ("exit" in asked) return asked.exit;
  const [path = ""] = asked.given;
  const { today } = machineNow();
  const isFolder = (await stat(path).catch(() => null))?.isDirectory() ?? false;
  const url = databaseUrl();
  const read =
    isFolder && url !== undefined
      ? await verifyDatabase(url, today)
      : await verifyFile(isFolder ? join(path, LOG_FILE) : path, today);
  if (!read.ok) {
    for (const problem of read.problems) complain(sayProblem(problem));
    return 2;
  }
  const { where, campaigns, problems } = read.value;
  for (const { campaign, events, devices, tells } of campaigns)
    out(
      `${where}  ${campaign}: ${events.toLocaleString("en-GB")} entries of ${devices} ${devices === 1 ? "device" : "devices"}${tells ? "" : "; they do not tell a whole campaign yet"}.`,
    );
  if (campaigns.length === 0) out(`${where}  no entries.`);
  for (const problem of problems.slice(0, SHOWN)) out(sayProblem(problem));
  if (problems.length > SHOWN) out(`… and ${problems.length - SHOWN} more.`);
  if (problems.length === 0) out("Whole: pages, sums, every entry, every chain.");
  if (problems.some(({ severity }) => severity === "stop")) return 2;
  return problems.some(({ severity }) => severity === "ask") ? 1 : 0;
}
