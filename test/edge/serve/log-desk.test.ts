import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DatabaseSync } from "@photostructure/sqlite";
import { inflateSync, strFromU8 } from "fflate";
import { afterAll, beforeEach, describe, expect, test } from "vitest";
import type { LogEvent } from "../../../src/core/log/event.ts";
import { fold } from "../../../src/core/log/fold.ts";
import { snapshotOf } from "../../../src/core/log/snapshot.ts";
import { eventsAbout, type Subject } from "../../../src/core/log/state.ts";
import type { Keep } from "../../../src/edge/keep/keep.ts";
import { openFileKeep } from "../../../src/edge/keep/open-keep.ts";
import { packedState, unpackedState } from "../../../src/edge/keep/packed-state.ts";
import { openDesk } from "../../../src/edge/serve/log-desk.ts";
import { deviceCalled, notes } from "../../core/log/some-events.ts";

const folder = mkdtempSync(join(tmpdir(), "leafward-desk-"));
const path = join(folder, "log.leafward.db");
const EARLIER = notes("tablet-1", "one", "two", "three");
const SINCE = notes("tablet-2", "four", "five");
beforeEach(() => rmSync(path, { force: true }));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function open(): Promise<Keep> {
  const opened = await openFileKeep(path);
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  return opened.value;
}

/** A server's day: it takes entries, is asked for the state, and saves it when it ends. */
async function aDay(...events: readonly LogEvent[]): Promise<string> {
  const keep = await open();
  const desk = await openDesk(keep, "saltmere");
  await desk.append(events);
  const { state } = await desk.state();
  await desk.close();
  await keep.close();
  return snapshotOf(state);
}

function spoil(sql: string): void {
  const file = new DatabaseSync(path);
  file.exec(sql);
  file.close();
}

describe("the state of a log", () => {
  test("taken up where it was saved is the state of all entries", async () => {
    await aDay(...EARLIER);
    expect(await aDay(...SINCE)).toBe(snapshotOf(fold([...EARLIER, ...SINCE])));
  });

  test("is made again from the log where what was saved was changed, or is of another form", async () => {
    await aDay(...EARLIER);
    spoil("update leafward_snapshot set bytes = x'00'");
    expect(await aDay()).toBe(snapshotOf(fold(EARLIER)));
    const keep = await open();
    await keep.saveSnapshot("saltmere", 3, new TextEncoder().encode(snapshotOf(fold(EARLIER))));
    await keep.close();
    expect(await aDay()).toBe(snapshotOf(fold(EARLIER)));
  });

  test("is not told where an entry since then is not what was written", async () => {
    await aDay(...EARLIER);
    const keep = await open();
    await keep.append(SINCE);
    await keep.close();
    spoil("update leafward_event set body = replace(body, 'five', 'fine')");
    await expect(aDay()).rejects.toMatchObject({
      problem: { code: "keep-damaged", got: "entry 2 of tablet-2", remedy: expect.any(String) },
    });
  });
});

describe("a packed state", () => {
  const state = fold([
    ...EARLIER,
    deviceCalled("a").write({ payload: { item: "B\t1\n", part: "", text: "Ä\u2028" } }),
  ]);
  const packed = packedState(state);

  test("is the same state, and packed again the same bytes", () => {
    const unpacked = unpackedState(packed);
    if (!unpacked.ok) throw new Error(unpacked.problems[0]?.code);
    expect(packedState(unpacked.value)).toEqual(packed);
    expect(snapshotOf(unpacked.value)).toBe(snapshotOf(state));
    expect(packedState(fold(SINCE, unpacked.value))).toEqual(packedState(fold(SINCE, state)));
  });

  test("is read by any inflate of RFC 1951, here fflate's", () => {
    const [form = "", head = ""] = new TextDecoder().decode(packed).split("\n");
    const { subjects } = JSON.parse(head) as { readonly subjects: readonly [string, ...unknown[], number][] };
    let at = new TextEncoder().encode(`${form}\n${head}\n`).length;
    for (const [subject, ...rest] of subjects) {
      const bytes = Number(rest.at(-1));
      const rows = JSON.parse(strFromU8(inflateSync(packed.subarray(at, at + bytes)))) as unknown[][];
      expect(rows.map(([id]) => id)).toEqual(eventsAbout(state, subject as Subject).map(({ id }) => id));
      at += bytes;
    }
    expect(at).toBe(packed.length);
  });

  test("of another form is refused", () => {
    expect(unpackedState(packed.subarray(1))).toMatchObject({
      ok: false,
      problems: [{ code: "snapshot-unfit" }],
    });
  });
});
