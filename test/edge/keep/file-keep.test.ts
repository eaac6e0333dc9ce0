import { mkdtempSync, readdirSync, rmSync, truncateSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DatabaseSync } from "@photostructure/sqlite";
import { afterAll, describe, expect, test } from "vitest";
import type { LogEvent } from "../../../src/core/log/event.ts";
import type { Keep } from "../../../src/edge/keep/keep.ts";
import { openFileKeep } from "../../../src/edge/keep/open-keep.ts";
import { notes } from "../../core/log/some-events.ts";
import { eventsOf, keepClaims } from "./keep-claims.ts";

const folder = mkdtempSync(join(tmpdir(), "leafward-keep-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

let count = 0;
const newPath = () => join(folder, `${++count}.db`);
async function open(path: string, wish: "write" | "read" = "write"): Promise<Keep> {
  const opened = await openFileKeep(path, wish);
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  return opened.value;
}

describe("a keep in a file", () => {
  keepClaims(() => open(newPath()));

  test("is there the next time, and one file when nobody has it open", async () => {
    const path = newPath();
    const events = notes("tablet-1", "one", "two");
    const first = await open(path);
    await first.append(events);
    await first.close();
    expect(readdirSync(folder).filter((name) => name.startsWith(`${count}.db`))).toEqual([`${count}.db`]);
    const second = await open(path, "read");
    expect(await eventsOf(second)).toEqual(events);
    expect((await second.append(notes("tablet-2", "x"))).refused).toMatchObject([{ code: "keep-read-only" }]);
    await second.close();
  });

  test("is shared by two programs: places stay 1, 2, 3 …", async () => {
    const path = newPath();
    const [here, there] = [await open(path), await open(path)];
    await Promise.all(notes("a", ..."12345").map((event) => here.append([event])));
    await Promise.all(notes("b", ..."12345").map((event) => there.append([event])));
    expect((await here.after("saltmere", 0, 99)).map(({ place }) => place)).toEqual(
      Array.from({ length: 10 }, (_, at) => at + 1),
    );
    await here.close();
    await there.close();
  });

  test("gives no snapshot in which a letter changed since", async () => {
    const path = newPath();
    const keep = await open(path);
    await keep.saveSnapshot("saltmere", 1, new TextEncoder().encode("growth: dead"));
    await keep.close();
    const file = new DatabaseSync(path);
    file.exec("update leafward_snapshot set bytes = cast(replace(bytes, 'dead', 'live') as blob)");
    file.close();
    const again = await open(path);
    expect(await again.snapshot("saltmere")).toBeNull();
    await again.close();
  });

  test("of any size that was cut short is not opened", async () => {
    const path = newPath();
    const keep = await open(path);
    await keep.saveSnapshot("saltmere", 1, new Uint8Array(70_000_000)); // more than is looked through page by page
    await keep.close();
    truncateSync(path, 66_000_000);
    expect(await openFileKeep(path)).toMatchObject({ ok: false, problems: [{ code: "keep-damaged" }] });
  });

  test("waits until all that was asked is written before it closes", async () => {
    const path = newPath();
    const keep = await open(path);
    const [event] = notes("a", "late") as [LogEvent];
    const asked = keep.append([event]);
    await keep.close();
    expect(await asked).toMatchObject({ added: 1 });
    const again = await open(path, "read");
    expect(await eventsOf(again)).toEqual([event]);
    await again.close();
  });
});
