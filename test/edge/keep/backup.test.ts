import { spawnSync } from "node:child_process";
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DatabaseSync } from "@photostructure/sqlite";
import fc from "fast-check";
import { afterAll, describe, expect, test } from "vitest";
import type { LogEvent } from "../../../src/core/log/event.ts";
import { addDays, type Day } from "../../../src/core/units/day.ts";
import { backUp } from "../../../src/edge/keep/backup.ts";
import { dailyBackup, keptDays, setBackupPlace } from "../../../src/edge/keep/daily-backup.ts";
import type { Keep } from "../../../src/edge/keep/keep.ts";
import { openKeep } from "../../../src/edge/keep/open-keep.ts";
import { restore } from "../../../src/edge/keep/restore.ts";
import { sumOf } from "../../../src/edge/keep/sums.ts";
import { verifyFile } from "../../../src/edge/keep/verify.ts";
import { day } from "../../core/log/examples.ts";
import { notes } from "../../core/log/some-events.ts";
import { eventsOf } from "./keep-claims.ts";

const TODAY = day("2026-06-19");
const WHEN = "2026-06-19T063000";
const root = mkdtempSync(join(tmpdir(), "leafward-backup-"));
afterAll(() => rmSync(root, { recursive: true, force: true }));

let count = 0;
function place(name: string): string {
  const path = join(root, `${++count}`, name);
  mkdirSync(path, { recursive: true });
  return path;
}

async function opened(folder: string): Promise<Keep> {
  const keep = await openKeep(folder);
  if (!keep.ok) throw new Error(JSON.stringify(keep.problems));
  return keep.value;
}

async function folderWith(...batches: readonly (readonly LogEvent[])[]): Promise<string> {
  const folder = place("saltmere");
  const keep = await opened(folder);
  for (const batch of batches) await keep.append(batch);
  await keep.close();
  return folder;
}

async function kept(folder: string): Promise<LogEvent[]> {
  const keep = await opened(folder);
  const events = await eventsOf(keep);
  await keep.close();
  return events;
}

async function madeIn(folder: string, to = place("stick")): Promise<string> {
  const made = await backUp(folder, to, WHEN, TODAY);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value.path;
}

const codesOf = async (path: string): Promise<string[]> => {
  const read = await verifyFile(path, TODAY);
  return (read.ok ? read.value.problems : read.problems).map(({ code }) => code);
};
const spoil = (path: string, statement: string): void => {
  const file = new DatabaseSync(path);
  file.exec(statement);
  file.close();
};
const some = notes("tablet-1", ..."abcdefghij");

describe("a backup", () => {
  test("made while somebody writes is whole, and is one file with its sum beside it", async () => {
    const folder = await folderWith(some.slice(0, 5));
    const writer = await opened(folder);
    await writer.append(some.slice(5, 7));
    const to = place("stick");
    const path = await madeIn(folder, to);
    await writer.append(some.slice(7));
    await writer.close();
    expect(readdirSync(to).sort()).toEqual([
      `saltmere.${WHEN}.leafward.db`,
      `saltmere.${WHEN}.leafward.db.sha256`,
    ]);
    const read = await verifyFile(path, TODAY);
    expect(read).toMatchObject({
      ok: true,
      value: { campaigns: [{ campaign: "saltmere", events: 7, devices: 1 }], problems: [] },
    });
  });

  // Source: GNU coreutils, sha256sum: the form of its lines, checked by the program itself.
  const noProgram = spawnSync("sha256sum", ["--version"]).error !== undefined;
  test.skipIf(noProgram)("has a sum that sha256sum agrees with", async () => {
    const path = await madeIn(await folderWith(some));
    const check = spawnSync("sha256sum", ["-c", `${path}.sha256`], {
      cwd: join(path, ".."),
      encoding: "utf8",
    });
    expect(check.stdout).toContain(": OK");
  });

  test("is never written over, and a place that is not there is said", async () => {
    const folder = await folderWith(some);
    const to = place("stick");
    await madeIn(folder, to);
    expect(await backUp(folder, to, WHEN, TODAY)).toMatchObject({ problems: [{ code: "backup-there" }] });
    expect(await backUp(folder, join(root, "gone"), WHEN, TODAY)).toMatchObject({
      problems: [{ code: "backup-no-place" }],
    });
  });

  test("of a damaged log is refused, and leaves nothing behind", async () => {
    const folder = await folderWith(some);
    spoil(join(folder, "log.leafward.db"), "delete from leafward_event where place = 4");
    const to = place("stick");
    expect(await backUp(folder, to, WHEN, TODAY)).toMatchObject({
      problems: [{ code: "keep-places-missing", got: "4" }],
    });
    expect(readdirSync(to)).toEqual([]);
  });
});

describe("verify names each kind of damage", () => {
  test.each([
    ["a sum that differs", "insert into leafward_snapshot values ('x', 1, x'00')", ["keep-sum-differs"]],
    [
      "an entry whose text was changed",
      'update leafward_event set body = replace(body, \'"text":"c"\', \'"text":"C"\')',
      ["keep-sum-differs", "event-altered", "chain-gap"],
    ],
    [
      "an entry that is no JSON",
      "update leafward_event set body = '{' where place = 10",
      ["keep-sum-differs", "keep-row"],
    ],
    [
      "an entry filed as another",
      "update leafward_event set device = 'z' where place = 10",
      ["keep-sum-differs", "keep-row"],
    ],
    [
      "entries taken out",
      "delete from leafward_event where place in (3, 4)",
      ["keep-sum-differs", "keep-places-missing", "chain-gap"],
    ],
  ])("%s", async (_, statement, codes) => {
    const path = await madeIn(await folderWith(some));
    expect(await codesOf(path)).toEqual([]);
    spoil(path, statement);
    expect(await codesOf(path)).toEqual(codes);
  });

  test("whatever byte of a file is changed is found", async () => {
    const path = await madeIn(await folderWith(some));
    const whole = readFileSync(path);
    const copy = join(place("copy"), "log.db");
    copyFileSync(`${path}.sha256`, `${copy}.sha256`);
    await fc.assert(
      fc.asyncProperty(fc.nat(whole.length - 1), fc.integer({ min: 1, max: 255 }), async (at, by) => {
        const bytes = Buffer.from(whole);
        bytes.writeUInt8(bytes.readUInt8(at) ^ by, at);
        writeFileSync(copy, bytes);
        expect(await codesOf(copy)).not.toEqual([]);
      }),
      { numRuns: 60, seed: 11 },
    );
  });
});

describe("restore", () => {
  test("into a folder without a log gives the log that was copied", async () => {
    const path = await madeIn(await folderWith(some));
    const folder = join(root, "fresh");
    expect(await restore(path, folder, WHEN, TODAY)).toMatchObject({
      ok: true,
      value: { beside: null, takenOver: null },
    });
    expect(await kept(folder)).toEqual(some);
  });

  test("keeps the old log beside it and takes over what is newer and whole in it", async () => {
    const folder = await folderWith(some.slice(0, 6));
    const path = await madeIn(folder);
    const keep = await opened(folder);
    await keep.append(some.slice(6));
    await keep.close();
    spoil(join(folder, "log.leafward.db"), "update leafward_event set body = '{\"id\":3}' where place = 3");
    const done = await restore(path, folder, WHEN, TODAY);
    expect(done).toMatchObject({
      ok: true,
      value: { takenOver: { added: 4, problems: [{ code: "not-an-event" }] } },
    });
    expect(await kept(folder)).toEqual(some);
    expect(existsSync(join(folder, `log.leafward.before-${WHEN}.db`))).toBe(true);
  });

  test("puts it in the place of a file that is a log no more, and keeps that too", async () => {
    const folder = await folderWith(some);
    const path = await madeIn(folder);
    writeFileSync(join(folder, "log.leafward.db"), "nothing to be read");
    expect(await restore(path, folder, WHEN, TODAY)).toMatchObject({ ok: true, value: { takenOver: null } });
    expect(await kept(folder)).toEqual(some);
    expect(readFileSync(join(folder, `log.leafward.before-${WHEN}.db`), "utf8")).toBe("nothing to be read");
  });

  test.each([
    ["a spoilt backup", async (path: string) => writeFileSync(path, "spoilt"), "keep-not-ours"],
    [
      "a backup that is not as its sum says",
      async (path: string) => spoil(path, "insert into leafward_snapshot values ('x', 1, x'00')"),
      "keep-sum-differs",
    ],
  ])("refuses %s and changes nothing", async (_, change, code) => {
    const folder = await folderWith(some);
    const path = await madeIn(folder);
    await change(path);
    const before = await sumOf(join(folder, "log.leafward.db"));
    expect(await restore(path, folder, WHEN, TODAY)).toMatchObject({ ok: false, problems: [{ code }] });
    expect(await sumOf(join(folder, "log.leafward.db"))).toBe(before);
    expect(readdirSync(folder)).toEqual(["log.leafward.db"]);
  });

  test("refuses while the log is in use, and a backup of another campaign", async () => {
    const folder = await folderWith(some);
    const path = await madeIn(folder);
    const keep = await opened(folder);
    expect(await restore(path, folder, WHEN, TODAY)).toMatchObject({ problems: [{ code: "keep-in-use" }] });
    await keep.close();
    const other = await folderWith(notes("tablet-9", "x").map((event) => event));
    spoil(join(other, "log.leafward.db"), "update leafward_event set campaign = 'another'");
    expect(await restore(path, other, WHEN, TODAY)).toMatchObject({
      problems: [{ code: "backup-of-another", got: "another" }],
    });
  });
});

describe("the backup of the day", () => {
  test("is made once a day, beside the log and on the stick; a stick that is not there is said and stops nothing", async () => {
    const folder = await folderWith(some);
    const stick = place("stick");
    await setBackupPlace(folder, stick);
    expect((await dailyBackup(folder, TODAY)).made).toHaveLength(2);
    expect(await dailyBackup(folder, TODAY)).toEqual({ made: [], problems: [] });
    rmSync(stick, { recursive: true });
    const next = await dailyBackup(folder, addDays(TODAY, 1));
    expect(next).toMatchObject({ made: [{}], problems: [{ code: "backup-no-place" }] });
  });

  test("takes its turns: old ones go, those made by hand and those of others stay", async () => {
    const folder = await folderWith(some);
    const to = join(folder, "backups");
    mkdirSync(to);
    const days = Array.from({ length: 40 }, (_, back) => addDays(TODAY, -1 - back));
    const byHand = [
      "saltmere.2026-05-12T101500.leafward.db",
      "nine-lamps.2026-05-12.leafward.db",
      "letter.txt",
    ];
    for (const name of [...byHand, ...days.map((each) => `saltmere.${each}.leafward.db`)])
      writeFileSync(join(to, name), "");
    await dailyBackup(folder, TODAY);
    const left = readdirSync(to);
    expect(left).toEqual(expect.arrayContaining(byHand));
    const stay = [...keptDays([TODAY, ...days])].map((each) => `saltmere.${each}.leafward.db`);
    expect(left.filter((name) => /^saltmere\.\d{4}-\d{2}-\d{2}\.leafward\.db$/.test(name)).sort()).toEqual(
      stay.sort(),
    );
  });
});

describe("turns of days, weeks and months", () => {
  test("by a worked example", () => {
    const all = Array.from({ length: 400 }, (_, back) => addDays(day("2026-06-19"), -back));
    const stay = [...keptDays(all)].sort().reverse();
    // Worked by hand on a calendar: 19 June 2026 is a Friday; weeks end on Sundays, months on their last day.
    expect(stay).toEqual([
      ...["2026-06-19", "2026-06-18", "2026-06-17", "2026-06-16", "2026-06-15", "2026-06-14", "2026-06-13"],
      ...["2026-06-07", "2026-05-31"],
      ...["2026-04-30", "2026-03-31", "2026-02-28", "2026-01-31", "2025-12-31", "2025-11-30", "2025-10-31"],
      ...["2025-09-30", "2025-08-31", "2025-07-31"],
    ]);
  });

  test("taken every day for years never leave more than 23, nor lose the newest", () => {
    fc.assert(
      fc.property(fc.array(fc.nat(900), { minLength: 1, maxLength: 200 }), (backs) => {
        let there: Day[] = [];
        for (const back of [...backs].sort((a, b) => b - a)) {
          there = [...there, addDays(day("2026-06-19"), -back)];
          there = there.filter((each) => keptDays(there).has(each));
          expect(there.length).toBeLessThanOrEqual(23);
          expect(there.at(-1)).toBe(addDays(day("2026-06-19"), -back));
        }
      }),
      { numRuns: 20, seed: 3 },
    );
  });
});
