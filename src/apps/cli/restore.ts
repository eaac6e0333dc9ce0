import { sayProblem } from "../../core/say/problems.ts";
import { restore } from "../../edge/keep/restore.ts";
import { machineNow } from "./now.ts";
import { askedOf } from "./own-options.ts";

type Out = (line: string) => void;

const HELP = `leafward restore: put a backup in the place of a log

  npx leafward restore <backup> <folder>

The backup is read from end to end first. The log that was in the folder is kept beside it under
another name; whatever in it is whole and newer than the backup is taken over, so nothing that was
acknowledged is given up. With LEAFWARD_DATABASE_URL set, what is missing in that database is added.`;

/** @returns 0 restored · 1 restored, but something must be looked at · 2 nothing was changed */
export async function restoreLog(args: string[], out: Out, complain: Out): Promise<number> {
  const asked = askedOf(args, { help: HELP, least: 2, most: 2 }, out, complain);
  if ("exit" in asked) return asked.exit;
  const [backup = "", folder = ""] = asked.given;
  const { today, stamp } = machineNow();
  const done = await restore(backup, folder, stamp, today);
  if (!done.ok) {
    for (const problem of done.problems.slice(0, 10)) complain(sayProblem(problem));
    complain("Nothing was changed.");
    return 2;
  }
  const { verified, takenOver, beside } = done.value;
  const entries = verified.campaigns.reduce((all, { events }) => all + events, 0);
  out(
    `Restored: ${entries.toLocaleString("en-GB")} entries of ${verified.campaigns.map(({ campaign }) => campaign).join(", ")}.`,
  );
  if (beside) out(`The log that was there: ${beside}`);
  if (beside && takenOver === null) out("Nothing of it could be read.");
  if (takenOver)
    out(`Taken over from it: ${takenOver.added.toLocaleString("en-GB")} entries the backup had not.`);
  const problems = [...verified.problems, ...(takenOver?.problems ?? [])];
  for (const problem of problems.slice(0, 10)) out(sayProblem(problem));
  return problems.some(({ severity }) => severity !== "note") ? 1 : 0;
}
