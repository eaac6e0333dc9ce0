import { sayProblem } from "../../core/say/problems.ts";
import { backUp, makeOwnBackups } from "../../edge/keep/backup.ts";
import { backupPlace, setBackupPlace } from "../../edge/keep/daily-backup.ts";
import { machineNow } from "./now.ts";
import { askedOf } from "./own-options.ts";

type Out = (line: string) => void;

const HELP = `leafward backup: copy the log of a campaign, and read the copy from end to end

  npx leafward backup <folder> [to]

Others may go on writing meanwhile. The copy is named after the folder and the moment, with its
SHA-256 beside it (sha256sum -c checks it anywhere). Without [to] it goes into backups/ of the folder,
which is on the disk of the log itself: name a stick or another disk.
A backup of the day is also made whenever the log is begun, changed by leafward keep, or planned from;
the last 7 days, 4 weeks and 12 months stay.

  --daily   send the backups of the day to [to] as well, from now on`;

/** @returns 0 made and whole · 1 made, but something in the log must be looked at · 2 not made */
export async function backupLog(args: string[], out: Out, complain: Out): Promise<number> {
  const asked = askedOf(args, { help: HELP, least: 1, most: 2, flags: ["daily"] }, out, complain);
  if ("exit" in asked) return asked.exit;
  const [folder = "", to] = asked.given;
  if (asked.has("daily") && to === undefined) {
    complain(HELP);
    return 2;
  }
  const { today, stamp } = machineNow();
  const made = await backUp(folder, to ?? (await makeOwnBackups(folder)), stamp, today);
  if (!made.ok) {
    for (const problem of made.problems) complain(sayProblem(problem));
    return 2;
  }
  const { path, sum, verified } = made.value;
  const entries = verified.campaigns.reduce((all, { events }) => all + events, 0);
  out(`${path}`);
  out(`Read from end to end: ${entries.toLocaleString("en-GB")} entries. SHA-256 ${sum}`);
  for (const problem of verified.problems) out(sayProblem(problem));
  if (asked.has("daily") && to !== undefined) {
    await setBackupPlace(folder, to);
    out(`From now on the backups of the day go there too.`);
  } else if (to === undefined && (await backupPlace(folder)) === null)
    out(
      "This is on the disk of the log itself. Name a stick or another disk as well: npx leafward backup <folder> <to> --daily",
    );
  return verified.problems.some(({ severity }) => severity !== "note") ? 1 : 0;
}
