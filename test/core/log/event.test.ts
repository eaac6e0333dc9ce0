import { createHash } from "node:crypto";
import { describe, expect, test } from "vitest";
import { canonicalJson, type Json } from "../../../src/core/log/canonical-json.ts";
import { hashOf, type LogEvent } from "../../../src/core/log/event.ts";
import { readEvent } from "../../../src/core/log/read-event.ts";
import { notes } from "./some-events.ts";

const [event] = notes("tablet-1", "Lower board loose") as [LogEvent];

describe("an event", () => {
  test("is hashed by SHA-256 over its canonical JSON without the hash, as another library computes it", () => {
    const { hash, ...rest } = event;
    const text = canonicalJson(rest as unknown as Json);
    expect(createHash("sha256").update(text, "utf8").digest("hex")).toBe(hash); // Node's OpenSSL
    expect(hashOf(event)).toBe(hash);
  });

  test("is read back from its own text", () => {
    expect(readEvent(JSON.parse(JSON.stringify(event)))).toEqual({ ok: true, value: event });
  });

  test("with one letter changed is named, with the device that wrote it", () => {
    const changed = { ...event, payload: { ...event.payload, text: "Lower board lost" } };
    expect(readEvent(changed, "day.jsonl", 3)).toMatchObject({
      ok: false,
      problems: [{ code: "event-altered", file: "day.jsonl", line: 3, got: event.id, expected: "tablet-1" }],
    });
  });

  test.each([
    ["a role that is no role", { ...event, who: { role: "cleaner, resting" } }],
    ["no number", { ...event, number: undefined }],
    ["a number that is no number", { ...event, payload: { x: Number.NaN } }],
    // what the PostgreSQL documentation ("Numeric Types", "Character Types") says an integer and a text cannot hold
    ["a number no database holds", { ...event, number: 2 ** 31 }],
    ["a device whose name no database holds", { ...event, device: "tablet\0" }],
    // the ULID specification: 48 bits of milliseconds
    ["a time after the last that an id can hold", { ...event, clock: { wall: 2 ** 48, counter: 0 } }],
    ["a count from which nobody could count on", { ...event, clock: { ...event.clock, counter: 2 ** 32 } }],
    ["half a letter", { ...event, payload: { text: "\ud800" } }],
    ["nothing", null],
  ])("with %s is no entry of a log", (_, given) => {
    expect(readEvent(given)).toMatchObject({ ok: false, problems: [{ code: "not-an-event" }] });
  });

  test("of a known kind must say what that kind says; of an unknown one it may say anything", () => {
    const mood = { ...event, payload: { ...event.payload, mood: "blue" } };
    const unfit = { ...mood, hash: hashOf(mood) };
    expect(readEvent(unfit)).toMatchObject({
      ok: false,
      problems: [{ code: "event-unfit", got: "noteWritten" }],
    });
    const strange = { ...mood, version: 2 };
    expect(readEvent({ ...strange, hash: hashOf(strange) }).ok).toBe(true);
  });

  test("keeps what a newer version wrote beside it, under the hash", () => {
    const newer = { ...event, tint: "blue" };
    const whole = { ...newer, hash: hashOf(newer) };
    expect(readEvent(whole)).toEqual({ ok: true, value: whole });
    expect(readEvent({ ...whole, tint: "red" }).ok).toBe(false);
  });
});
