import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { carry } from "../../../src/apps/cli/carry.ts";
import type { LogEvent } from "../../../src/core/log/event.ts";
import { openFileKeep } from "../../../src/edge/keep/open-keep.ts";
import { deviceCalled, notes } from "../../core/log/some-events.ts";
import { noise } from "../../edge/carry/some-carries.ts";

const home = mkdtempSync(join(tmpdir(), "leafward-carry-command-"));
afterAll(() => rmSync(home, { recursive: true, force: true }));
const [office, field, stick] = ["office", "field", "stick"].map((name) => join(home, name)) as [
  string,
  string,
  string,
];

async function run(...args: string[]) {
  const said: string[] = [];
  const complained: string[] = [];
  const status = await carry(
    args,
    (line) => void said.push(line),
    (line) => void complained.push(line),
  );
  return { status, text: said.join("\n"), fault: complained.join("\n") };
}

async function write(folder: string, events: readonly LogEvent[]): Promise<void> {
  const keep = await openFileKeep(join(folder, "log.leafward.db"));
  if (!keep.ok) throw new Error(JSON.stringify(keep.problems));
  await keep.value.append(events);
  await keep.value.close();
}

const onStick = (): string[] => readdirSync(stick).map((name) => join(stick, name));

describe("leafward carry", () => {
  test("brings two places to one log: by words once, torn, whole, and only what is lacked", async () => {
    for (const folder of [office, stick]) mkdirSync(folder);
    expect(await run("out", office, stick)).toMatchObject({ status: 2, text: "" });
    const camera = deviceCalled("camera");
    const picture = camera.write({
      kind: "pictureTaken",
      payload: { item: "B-001", part: "", day: "2026-06-01", shot: "cover", picture: "a".repeat(64) },
    });
    await write(office, [
      ...notes("tablet-1", ...Array.from({ length: 300 }, (_, at) => noise(at))),
      picture,
    ]);
    const out = await run("out", office, stick);
    expect(out).toMatchObject({ status: 0, fault: "" });
    expect(out.text).toContain("301 entries of saltmere in 3 blocks");
    expect(out.text).toContain("1 picture is named in it and not in it");
    const words = /(?:[a-z]{5}-){3}[a-z]{5}/.exec((await run("words", office)).text)?.[0] ?? "";
    expect(out.text).toContain(words);

    const [whole = ""] = onStick();
    const torn = join(home, "torn.carry");
    const bytes = readFileSync(whole);
    writeFileSync(torn, bytes.subarray(0, bytes.length / 2));
    const unknown = await run("in", field, torn);
    expect(unknown).toMatchObject({ status: 2 });
    expect(unknown.fault).not.toContain(words);
    const first = await run("in", field, torn, "--trust", words);
    expect(first.status).toBe(1);
    expect(first.text).toContain("torn.carry: blocks 2 to 3 of 3 are changed or missing");
    const second = await run("in", field, whole, whole);
    expect(second).toMatchObject({ status: 0, fault: "" });
    expect(second.text).toMatch(/0 new entries, 301 here already\.$/);

    expect((await run("out", field, stick, "--for", words)).text).toContain("They have everything");
    await write(field, notes("tablet-2", "one", "two"));
    const back = await run("out", field, stick, "--for", words.slice(0, 5));
    expect(back.text).toContain(`2 entries of saltmere in 1 block`);
    const theirs = /(?:[a-z]{5}-){3}[a-z]{5}/.exec((await run("words", field)).text)?.[0] ?? "";
    const reply = onStick().find((path) => path !== whole) ?? "";
    expect(await run("in", office, reply, "--trust", theirs)).toMatchObject({ status: 0 });
    expect((await run("in", field, reply)).text).toContain("2 here already");
  });

  test("says how it is used when it is not understood, and makes no folder that is not there", async () => {
    expect((await run("away")).fault).toContain("npx leafward carry out");
    expect((await run("--help")).text).toContain("npx leafward carry in");
    const nowhere = await run("words", join(home, "nowhere"));
    expect(nowhere.status).toBe(2);
    expect(readdirSync(home)).not.toContain("nowhere");
  });
});
