import { copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, test } from "vitest";
import type { LogEvent } from "../../../src/core/log/event.ts";
import { migrate, NEWEST, versionOf } from "../../../src/edge/keep/migrations.ts";
import { openFileKeep } from "../../../src/edge/keep/open-keep.ts";
import { openFile } from "../../../src/edge/keep/sqlite-base.ts";
import { notes } from "../../core/log/some-events.ts";
import { eventsOf } from "./keep-claims.ts";

/** A log file of each version, as that version once wrote it. They are never written again. */
const golden = join(dirname(fileURLToPath(import.meta.url)), "..", "..", "golden");
const events: LogEvent[] = readFileSync(join(golden, "log", "v1-1-house.jsonl"), "utf8")
  .split("\n")
  .slice(0, 5)
  .map((line) => JSON.parse(line));
const folder = mkdtempSync(join(tmpdir(), "leafward-versions-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const versions = Array.from({ length: NEWEST }, (_, at) => at + 1);

describe.each(versions)("a log of version %i", (version) => {
  const old = join(golden, "keep", `v${version}.db`);

  test("lies here as an example", () => {
    expect(existsSync(old)).toBe(true);
  });

  test("is led to the newest version and tells the same", async () => {
    const path = join(folder, `v${version}.db`);
    copyFileSync(old, path);
    const opened = await openFileKeep(path);
    if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
    const keep = opened.value;
    expect(await eventsOf(keep, events[0]?.campaign)).toEqual(events);
    expect(await keep.append(notes("later", "x"))).toMatchObject({ added: 1, place: 6 });
    await keep.saveSnapshot("saltmere", 6, new Uint8Array([1]));
    expect((await keep.snapshot("saltmere"))?.place).toBe(6);
    await keep.close();
    const file = openFile(path, "read");
    expect(file.ok && (await versionOf(file.value.base.db))).toBe(NEWEST);
  });

  test("can be read where it lies, without being led on", async () => {
    const opened = await openFileKeep(old, "read");
    expect(opened.ok && (await eventsOf(opened.value, events[0]?.campaign))).toEqual(events);
    if (opened.ok) await opened.value.close();
  });
});

test("a step that fails leaves the version before it", async () => {
  const path = join(folder, "torn.db");
  copyFileSync(join(golden, "keep", "v1.db"), path);
  const file = openFile(path, "write");
  if (!file.ok) throw new Error(JSON.stringify(file.problems));
  const { base } = file.value;
  await base.db.schema.createTable("leafward_snapshot").addColumn("other", "text").execute();
  await expect(migrate(base)).rejects.toThrow(/already exists/);
  expect(await versionOf(base.db)).toBe(1);
  await base.close();
});
