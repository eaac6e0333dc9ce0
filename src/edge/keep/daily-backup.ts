import { readdir, readFile, rm, writeFile } from "node:fs/promises";
import { basename, join, resolve } from "node:path";
import type { Problem } from "../../core/outcome/problem.ts";
import { type Day, dayFrom, mondayOf } from "../../core/units/day.ts";
import { backUp, backupName, makeOwnBackups, ownBackups } from "./backup.ts";
import { sumFileOf } from "./sums.ts";

const SETTING = "backup.leafward.json";
const KEPT = { days: 7, weeks: 4, months: 12 } as const;

/** The folder or stick the daily backups of a campaign go to; null: none was set. */
export async function backupPlace(folder: string): Promise<string | null> {
  try {
    const { to } = JSON.parse(await readFile(join(folder, SETTING), "utf8")) as { readonly to?: unknown };
    return typeof to === "string" ? to : null;
  } catch {
    return null;
  }
}

export const setBackupPlace = (folder: string, to: string): Promise<void> =>
  writeFile(join(folder, SETTING), `${JSON.stringify({ to: resolve(to) }, null, 2)}\n`);

export interface DailyBackup {
  /** Backups made now; none when the day has its backup already. */
  readonly made: readonly string[];
  readonly problems: readonly Problem[];
}

/** The backup of the day, beside the log and in the place that was set, and old ones taken away by turns. Nothing here is ever fatal. */
export async function dailyBackup(folder: string, today: Day): Promise<DailyBackup> {
  const made: string[] = [];
  const problems: Problem[] = [];
  await makeOwnBackups(folder).catch(() => {}); // said below: the place is not there
  for (const place of await placesOf(folder)) {
    const done = await backUp(folder, place, today, today);
    if (done.ok) {
      made.push(done.value.path);
      problems.push(...done.value.verified.problems.filter(({ severity }) => severity !== "note"));
      await takeTurns(folder, place);
    } else problems.push(...done.problems.filter(({ code }) => code !== "backup-there"));
  }
  return { made, problems };
}

/** Takes away what was left of a backup of a day that somebody stopped. */
export async function dropUnfinished(folder: string, day: Day): Promise<void> {
  for (const place of await placesOf(folder))
    for (const end of ["", "-journal", "-wal", "-shm"])
      await rm(join(place, `${backupName(folder, day)}.part${end}`), { force: true });
}

async function placesOf(folder: string): Promise<string[]> {
  const set = await backupPlace(folder);
  return [ownBackups(folder), ...(set === null ? [] : [set])];
}

/** Takes away daily backups whose turn is over; those made by hand stay. */
async function takeTurns(folder: string, place: string): Promise<void> {
  const name = basename(resolve(folder));
  const days = (await readdir(place)).flatMap((file) => {
    const day = file.startsWith(`${name}.`) ? dayFrom(file.slice(name.length + 1, name.length + 11)) : null;
    return day !== null && file === backupName(folder, day) ? [day] : [];
  });
  const kept = keptDays(days);
  for (const day of days.filter((each) => !kept.has(each))) {
    const path = join(place, backupName(folder, day));
    await rm(path);
    await rm(sumFileOf(path), { force: true });
  }
}

/** Of the days with a backup: the newest seven, the last of each of the newest four weeks and of the newest twelve months.
 *  Counted by what is there, so that a clock set wrong takes nothing away early. */
export function keptDays(days: readonly Day[]): ReadonlySet<Day> {
  const newest = [...new Set(days)].sort().reverse();
  const lastOfEach = (periodOf: (day: Day) => string, most: number): Day[] =>
    newest.filter((day, at) => at === 0 || periodOf(day) !== periodOf(newest[at - 1] ?? day)).slice(0, most);
  return new Set([
    ...newest.slice(0, KEPT.days),
    ...lastOfEach(mondayOf, KEPT.weeks),
    ...lastOfEach((day) => day.slice(0, 7), KEPT.months),
  ]);
}
