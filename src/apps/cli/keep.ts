import { sayProblem } from "../../core/say/problems.ts";
import type { Day } from "../../core/units/day.ts";
import { readCampaignFolder } from "../../edge/intake/read-campaign.ts";
import { type DailyBackup, dailyBackup } from "../../edge/keep/daily-backup.ts";
import { openKeep } from "../../edge/keep/open-keep.ts";
import { type TakenIn, takeIn } from "../../edge/keep/take-in.ts";
import { ruleBookOf } from "../../edge/rule-book.ts";
import { disagreementLines } from "./disagreement-lines.ts";
import { machineNow } from "./now.ts";
import { askedOf } from "./own-options.ts";

type Out = (line: string) => void;

const HELP = `leafward keep: begin the log of a campaign, or take in what its sheets say otherwise

  npx leafward keep <folder>

The first time it writes all the sheets say into log.leafward.db in that folder; from then on the log
is what counts. Change a sheet and run it again: what is new is added, what is gone is corrected.
Nothing that people wrote into the log elsewhere is touched, and nothing is ever taken out of it.
With LEAFWARD_DATABASE_URL set the log is in that PostgreSQL database.

  --look   only tell what would be written`;

const SHOWN = 10;

/** @returns 0 the log says what the sheets say · 1 so it does, but something must be mended or settled · 2 nothing was written */
export async function keepSheets(args: string[], out: Out, complain: Out): Promise<number> {
  const asked = askedOf(args, { help: HELP, least: 1, most: 1, flags: ["look"] }, out, complain);
  if ("exit" in asked) return asked.exit;
  const [folder = ""] = asked.given;
  const sheets = await readCampaignFolder(folder);
  const book = ruleBookOf(folder);
  const stops = [
    ...(sheets.campaign ? [] : sheets.problems.filter(({ severity }) => severity === "stop")),
    ...(book.ok ? [] : book.problems),
  ];
  if (sheets.campaign === null || !book.ok) return refuse(stops.map(sayProblem), complain);
  const opened = await openKeep(folder);
  if (!opened.ok) return refuse(opened.problems.map(sayProblem), complain);
  const keep = opened.value;
  if (keep.shut) {
    await keep.close();
    return refuse([sayProblem(keep.shut)], complain);
  }
  const { today, ms } = machineNow();
  const taken = await takeIn(keep, sheets.campaign, book.value.tests, ms, asked.has("look"));
  await keep.close();
  for (const problem of taken.problems.slice(0, SHOWN)) out(sayProblem(problem));
  if (taken.refused.length > 0) return refuse(taken.refused.slice(0, SHOWN).map(sayProblem), complain);
  for (const line of takenLines(taken, keep.where, asked.has("look"))) out(line);
  for (const line of disagreementLines(folder, taken.disagreements)) out(line);
  if (!asked.has("look")) for (const line of await backupLines(folder, today)) out(line);
  const aside = sheets.problems.filter(({ severity }) => severity !== "note").length;
  if (aside > 0)
    out(`${aside} places in the sheets must be mended first and were left out: npx leafward check ${folder}`);
  return aside + taken.disagreements.length > 0 ? 1 : 0;
}

function refuse(lines: readonly string[], complain: Out): number {
  for (const line of lines.slice(0, SHOWN)) complain(line);
  return 2;
}

function takenLines({ changes, added, entries }: TakenIn, where: string, look: boolean): string[] {
  const { fresh, gone } = changes;
  if (fresh + gone === 0)
    return [`${where} says what the sheets say: ${count(entries, "entry", "entries")}.`];
  const what = `${fresh} new in the sheets, ${gone} no longer there (a changed row is both)`;
  if (look) return [`${where}: ${what}. Nothing was written.`];
  return [
    `${where}: ${what}. Written: ${count(added, "entry", "entries")}; ${count(entries, "entry", "entries")} in all.`,
  ];
}

export const backupLines = async (folder: string, today: Day): Promise<string[]> =>
  sayBackup(await dailyBackup(folder, today));

export const sayBackup = ({ made, problems }: DailyBackup): string[] => [
  ...made.map((path) => `Backup of the day: ${path}`),
  ...problems.map((each) => `Backup: ${sayProblem(each)}`),
];

const count = (n: number, one: string, many: string): string =>
  `${n.toLocaleString("en-GB")} ${n === 1 ? one : many}`;
