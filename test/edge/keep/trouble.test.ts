import { spawn, spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import {
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statfsSync,
  statSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import { DatabaseSync } from "@photostructure/sqlite";
import { afterAll, describe, expect, test } from "vitest";
import type { LogEvent } from "../../../src/core/log/event.ts";
import { verifyChain } from "../../../src/core/log/verify-chain.ts";
import { backUp } from "../../../src/edge/keep/backup.ts";
import { type Keep, KeepFault } from "../../../src/edge/keep/keep.ts";
import { openFileKeep } from "../../../src/edge/keep/open-keep.ts";
import { restore } from "../../../src/edge/keep/restore.ts";
import { day } from "../../core/log/examples.ts";
import { notes } from "../../core/log/some-events.ts";
import { eventsOf } from "./keep-claims.ts";

const folder = mkdtempSync(join(tmpdir(), "leafward-trouble-"));
const disk = join(folder, "disk");
const mounted = mountSmallDisk();
if (!mounted) console.warn("Skipped: no small disk can be mounted here (that needs Linux and root).");
const writer = join(dirname(fileURLToPath(import.meta.url)), "writes-until-stopped.ts");
const WRITE = ["--import", "tsx", writer];

afterAll(() => {
  if (mounted) spawnSync("umount", ["--lazy", disk]);
  rmSync(folder, { recursive: true, force: true });
});

function mountSmallDisk(): boolean {
  if (process.platform !== "linux" || process.getuid?.() !== 0) return false;
  mkdirSync(disk, { recursive: true });
  return spawnSync("mount", ["-t", "tmpfs", "-o", "size=1m", "tmpfs", disk]).status === 0;
}

async function open(path: string): Promise<Keep> {
  const opened = await openFileKeep(path);
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  return opened.value;
}

const sumOf = (path: string): string => createHash("sha256").update(readFileSync(path)).digest("hex");
const long = "A line of the ledger. ".repeat(80);

/** A log of forty long notes, closed. */
async function written(
  name: string,
): Promise<{ readonly path: string; readonly events: readonly LogEvent[] }> {
  const path = join(folder, name);
  const events = notes("tablet-1", ...Array.from({ length: 40 }, () => long));
  const keep = await open(path);
  await keep.append(events);
  await keep.close();
  return { path, events };
}

describe.skipIf(!mounted)("a small disk", () => {
  test("that is full refuses, keeps what it had, and goes on once there is room", async () => {
    const path = join(disk, "log.leafward.db");
    const ballast = join(disk, "ballast");
    writeFileSync(ballast, Buffer.alloc(300_000));
    const keep = await open(path);
    const events = notes("tablet-1", ...Array.from({ length: 600 }, () => long));
    let taken = 0;
    let refusal = await keep.append([]);
    for (; refusal.refused.length === 0; taken += 10)
      refusal = await keep.append(events.slice(taken, taken + 10));
    taken -= 10;
    expect(refusal).toMatchObject({ added: 0, refused: [{ code: "keep-full" }] });
    expect(taken).toBeGreaterThan(20);
    expect(await eventsOf(keep)).toEqual(events.slice(0, taken));
    rmSync(ballast);
    expect(await keep.append(events.slice(taken, taken + 10))).toMatchObject({ added: 10, refused: [] });
    await keep.close();
    const again = await open(path);
    expect(await eventsOf(again)).toEqual(events.slice(0, taken + 10));
    await again.close();
  });

  test("without room for the entries a backup has not keeps the log that is there, and nothing else", async () => {
    spawnSync("umount", ["--lazy", disk]);
    expect(mountSmallDisk()).toBe(true);
    const campaign = join(disk, "campaign");
    mkdirSync(campaign);
    const path = join(campaign, "log.leafward.db");
    const events = notes("tablet-1", ...Array.from({ length: 90 }, () => long));
    const first = await open(path);
    await first.append(events.slice(0, 5));
    await first.close();
    const today = day("2026-06-19");
    const backup = await backUp(campaign, folder, "2026-06-19", today);
    if (!backup.ok) throw new Error(JSON.stringify(backup.problems));
    const more = await open(path);
    await more.append(events);
    await more.close();
    const { bavail, bsize } = statfsSync(disk);
    writeFileSync(join(disk, "ballast"), Buffer.alloc(bavail * bsize - statSync(path).size - 120_000));
    expect(await restore(backup.value.path, campaign, "2026-06-19T070000", today)).toMatchObject({
      ok: false,
      problems: [{ code: "keep-full" }],
    });
    expect(readdirSync(campaign)).toEqual(["log.leafward.db"]);
    rmSync(join(disk, "ballast"));
    const again = await open(path);
    expect(await eventsOf(again)).toEqual(events);
    await again.close();
  });

  test("that may only be read is read, and takes nothing", async () => {
    const { path, events } = await written("moved.db");
    spawnSync("umount", ["--lazy", disk]);
    expect(mountSmallDisk()).toBe(true);
    copyFileSync(path, join(disk, "log.leafward.db"));
    expect(spawnSync("mount", ["-o", "remount,ro", disk]).status).toBe(0);
    const keep = await open(join(disk, "log.leafward.db"));
    expect(keep.shut).toMatchObject({ code: "keep-read-only" });
    expect(await eventsOf(keep)).toEqual(events);
    expect((await keep.append(notes("b", "x"))).refused).toMatchObject([{ code: "keep-read-only" }]);
    await keep.saveSnapshot("saltmere", 1, new Uint8Array([1]));
    await keep.close();
    expect(await openFileKeep(join(disk, "new.db"))).toMatchObject({
      ok: false,
      problems: [{ code: "keep-unopened" }],
    });
  });
});

describe.skipIf(process.platform === "win32")("a limit on the size of files", () => {
  test("refuses like a full disk, and what was acknowledged is there", async () => {
    const path = join(folder, "limited.db");
    const command = `ulimit -f 400; exec "$0" "$@"`;
    const run = spawnSync("sh", ["-c", command, process.execPath, ...WRITE, path, long], {
      encoding: "utf8",
    });
    const said = run.stdout.trim().split("\n");
    expect(said.at(-1)).toBe("keep-full");
    const keep = await open(path);
    expect((await eventsOf(keep)).map(({ id }) => id)).toEqual(said.slice(0, -1));
    await keep.close();
  });
});

describe("a program killed while it writes", () => {
  test("has lost nothing that was acknowledged, and has written nothing by halves", async () => {
    const path = join(folder, "killed.db");
    const acknowledged: string[] = [];
    const child = spawn(process.execPath, [...WRITE, path], { stdio: ["ignore", "pipe", "inherit"] });
    for await (const id of createInterface(child.stdout)) {
      acknowledged.push(id);
      if (acknowledged.length === 200) child.kill("SIGKILL");
    }
    const keep = await open(path);
    const kept = await eventsOf(keep);
    expect(acknowledged.length).toBeGreaterThanOrEqual(200);
    expect(kept.slice(0, acknowledged.length).map(({ id }) => id)).toEqual(acknowledged);
    expect(kept.length - acknowledged.length).toBeLessThanOrEqual(1);
    expect(verifyChain(kept)).toEqual([]);
    await keep.close();
  });
});

describe("a damaged file", () => {
  test("cut off short is opened for reading alone, and not touched", async () => {
    const { path } = await written("short.db");
    truncateSync(path, 40_960);
    const before = sumOf(path);
    const keep = await open(path).catch(() => null);
    if (keep) {
      expect(keep.shut).toMatchObject({ code: "keep-damaged" });
      expect((await keep.append(notes("b", "x"))).refused).toMatchObject([{ code: "keep-damaged" }]);
      await expect(eventsOf(keep)).rejects.toThrow(KeepFault);
      await keep.close();
    } else
      expect(await openFileKeep(path)).toMatchObject({ ok: false, problems: [{ code: "keep-damaged" }] });
    expect(sumOf(path)).toBe(before);
  });

  test("overwritten in its middle is never written to again", async () => {
    const { path } = await written("spoilt.db");
    const bytes = readFileSync(path);
    bytes.fill(0xa5, 12_288, 16_384);
    writeFileSync(path, bytes);
    const opened = await openFileKeep(path);
    if (opened.ok) {
      expect(opened.value.shut).toMatchObject({ code: "keep-damaged" });
      await opened.value.close();
    } else expect(opened.problems).toMatchObject([{ code: "keep-damaged" }]);
    expect(readFileSync(path).equals(bytes)).toBe(true);
  });

  test.each([
    ["a letter", "Dear all, the log is on the other stick. ".repeat(50)],
    ["a letter that begins like a database", `SQLite format 3\u0000${"x".repeat(5000)}`],
  ])("that is no log at all but %s is refused, and not touched", async (_, text) => {
    const path = join(folder, "letter.db");
    writeFileSync(path, text);
    expect(await openFileKeep(path)).toMatchObject({ ok: false, problems: [{ code: "keep-not-ours" }] });
    expect(readFileSync(path, "utf8")).toBe(text);
  });

  test("another program's database is refused, and not touched", async () => {
    const path = join(folder, "other.db");
    const other = new DatabaseSync(path);
    other.exec("create table shopping (thing text)");
    other.close();
    const before = sumOf(path);
    expect(await openFileKeep(path)).toMatchObject({ ok: false, problems: [{ code: "keep-not-ours" }] });
    expect(sumOf(path)).toBe(before);
  });

  test("a log of a newer Leafward is refused, and not touched", async () => {
    const { path } = await written("newer.db");
    const file = new DatabaseSync(path);
    file.exec("update leafward_version set number = 99");
    file.close();
    expect(await openFileKeep(path)).toMatchObject({
      ok: false,
      problems: [{ code: "keep-newer", got: "99" }],
    });
  });

  test("a writer that does not end is waited for, and then told of", async () => {
    const { path } = await written("busy.db");
    const other = new DatabaseSync(path);
    const keep = await open(path);
    other.exec("begin immediate");
    expect((await keep.append(notes("b", "x"))).refused).toMatchObject([{ code: "keep-in-use" }]);
    other.exec("commit");
    expect(await keep.append(notes("b", "x"))).toMatchObject({ added: 1 });
    other.close();
    await keep.close();
  });
});
