import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { campaignOf } from "../../../src/core/log/campaign-of.ts";
import type { LogEvent } from "../../../src/core/log/event.ts";
import { fold } from "../../../src/core/log/fold.ts";
import { KINDS, type Kind } from "../../../src/core/log/kinds.ts";
import { readEvent } from "../../../src/core/log/read-event.ts";
import { eventsAbout, namesOn } from "../../../src/core/log/state.ts";
import { verifyChain } from "../../../src/core/log/verify-chain.ts";
import { day, EXAMPLES } from "./examples.ts";
import { deviceCalled } from "./some-events.ts";

/** Logs as they were once written. These files are never written again: a kind that changes gets a new version and a new example. */
const folder = join(dirname(fileURLToPath(import.meta.url)), "..", "..", "golden", "log");
const files = readdirSync(folder).filter((name) => name.endsWith(".jsonl"));
const lines = files.flatMap((file) =>
  readFileSync(join(folder, file), "utf8")
    .split("\n")
    .filter((line) => line !== "")
    .map((line, at) => ({ file, line: at + 1, given: JSON.parse(line) as unknown })),
);
const events = lines.flatMap(({ file, line, given }): LogEvent[] => {
  const read = readEvent(given, file, line);
  return read.ok ? [read.value] : [];
});

describe("old logs stay readable", () => {
  test("every line of every file is an entry as it was written", () => {
    expect(events).toHaveLength(lines.length);
    expect(verifyChain(events)).toEqual([]);
  });

  test("every one is understood", () => {
    expect(namesOn(fold(events), "strange")).toEqual([]);
  });

  test("they still tell the same campaign", () => {
    const told = campaignOf(fold(events), day("2026-06-19"));
    expect(told).toEqual(JSON.parse(readFileSync(join(folder, "v1-campaign.json"), "utf8")));
  });

  test.each(Object.keys(KINDS) as Kind[])("%s has an example in its version", (kind) => {
    const { version } = KINDS[kind];
    const found = events.some((event) => event.kind === kind && event.version === version);
    const missing = deviceCalled("golden-2").write({
      kind,
      version,
      payload: JSON.parse(JSON.stringify(EXAMPLES[kind])),
    });
    expect(found, `Add it to a new file v${version}-….jsonl: ${JSON.stringify(missing)}`).toBe(true);
  });

  test("every example lies where it is looked for", () => {
    const state = fold(events);
    const filed = namesOn(state, "item").flatMap((name) => eventsAbout(state, `item:${name}`));
    expect(new Set(filed.map(({ kind }) => kind)).size).toBeGreaterThan(20);
  });
});
