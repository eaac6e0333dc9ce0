import { createHash } from "node:crypto";
import { inflateRawSync } from "node:zlib";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fold } from "../../../src/core/log/fold.ts";
import { snapshotOf } from "../../../src/core/log/snapshot.ts";
import { readCarry } from "../../../src/edge/carry/carry-file.ts";
import { framed, framesIn } from "../../../src/edge/carry/frames.ts";
import { type Taken, takeBlocks } from "../../../src/edge/carry/take-blocks.ts";
import type { Keep } from "../../../src/edge/keep/keep.ts";
import { notes } from "../../core/log/some-events.ts";
import { eventsOf } from "../keep/keep-claims.ts";
import { memoryKeep } from "./memory-keep.ts";
import { bytesOf, keepOf, newKey, noise, read } from "./some-carries.ts";

const texts = Array.from({ length: 400 }, (_, at) => noise(at));
const events = [...notes("tablet-1", ...texts), ...notes("tablet-2", ...texts.slice(0, 150))];
const key = newKey();
const whole = await bytesOf(await keepOf(...events), key);
const { manifest } = read(whole);

const into = (keep: Keep, bytes: Buffer): Promise<Taken> => takeBlocks(read(bytes), keep, "a.carry");
const idsIn = async (keep: Keep): Promise<string[]> => (await eventsOf(keep)).map(({ id }) => id).sort();

describe("a carry file", () => {
  test("brings a log over as it was, in the same order, and twice is no harm", async () => {
    expect(manifest.blocks.length).toBeGreaterThan(3);
    const keep = memoryKeep();
    expect(await into(keep, whole)).toEqual({ added: 550, known: 0, aside: [], problems: [] });
    expect(await eventsOf(keep)).toEqual(events);
    expect(await into(keep, whole)).toEqual({ added: 0, known: 550, aside: [], problems: [] });
  });

  test("can be read with nothing but SHA-256 (FIPS 180-4), DEFLATE (RFC 1951) and JSON, as docs/carry.md says", () => {
    let at = 0;
    const bodies: Buffer[] = [];
    while (at < whole.length) {
      expect(whole.toString("latin1", at, at + 6)).toBe("\x8bcarry");
      const length = whole.readUInt32BE(at + 8);
      const body = whole.subarray(at + 44, at + 44 + length);
      expect(createHash("sha256").update(body).digest()).toEqual(whole.subarray(at + 12, at + 44));
      bodies.push(body);
      at += 44 + length;
    }
    const lines = bodies.slice(1, -1).flatMap((body) => inflateRawSync(body).toString().split("\n"));
    expect(lines.map((line) => JSON.parse(line))).toEqual(events);
    expect(bodies.at(-1)).toEqual(bodies[0]);
  });

  test("says what it holds: entries by block, and how far each device's chain is there", () => {
    expect(manifest).toMatchObject({ campaign: "saltmere", all: true, key: key.open });
    expect(manifest.blocks.reduce((all, { events }) => all + events, 0)).toBe(550);
    expect(manifest.reach).toEqual([
      { device: "tablet-1", number: 400, hash: events[399]?.hash },
      { device: "tablet-2", number: 150, hash: events[549]?.hash },
    ]);
  });
});

test("a keep that gets full keeps whole blocks, and with more room the same file goes on", async () => {
  const full = memoryKeep(300);
  const { added, problems } = await into(full, whole);
  expect(problems).toMatchObject([{ code: "keep-full" }]);
  expect(added).toBeGreaterThan(100);
  const kept = await eventsOf(full);
  expect(kept).toEqual(events.slice(0, added));
  const roomy = await keepOf(...kept);
  expect(await into(roomy, whole)).toMatchObject({ added: 550 - added, known: added, problems: [] });
  expect(await eventsOf(roomy)).toEqual(events);
});

describe("a damaged carry file", () => {
  test("that is torn gives what is whole, names what is missing, and the whole one goes on from there", async () => {
    const keep = memoryKeep();
    const torn = whole.subarray(0, Math.floor(whole.length / 2));
    const { problems } = read(torn);
    expect(problems.map(({ code }) => code)).toEqual(["carry-bytes-changed", "carry-block-lost"]);
    expect(problems[1]?.expected).toMatch(/^\d+ entries: tablet-1 \d+ to 400, tablet-2 1 to 150$/);
    const { added } = await into(keep, torn);
    expect(added).toBeGreaterThan(100);
    expect(await eventsOf(keep)).toEqual(events.slice(0, added));
    expect(await into(keep, whole)).toMatchObject({ added: 550 - added, known: added, problems: [] });
    expect(await eventsOf(keep)).toEqual(events);
  });

  test("that lost its beginning is read from its end", async () => {
    const keep = memoryKeep();
    await into(keep, whole.subarray(Math.floor(whole.length / 2)));
    expect((await eventsOf(keep)).length).toBeGreaterThan(100);
    await into(keep, whole);
    expect(await idsIn(keep)).toEqual(events.map(({ id }) => id).sort());
  });

  test("with one changed byte names the place, and loses one block at most", async () => {
    const changed = Buffer.from(whole);
    const at = Math.floor(whole.length / 2);
    changed[at] = (changed[at] ?? 0) ^ 1;
    const { problems, blocks } = read(changed);
    expect(problems.map(({ code }) => code)).toEqual(["carry-bytes-changed", "carry-block-lost"]);
    const [from = 0, to = 0] = (problems[0]?.got ?? "").replaceAll(",", "").split(" to ").map(Number);
    expect(from - 1 <= at && at < to).toBe(true);
    expect(blocks).toHaveLength(manifest.blocks.length - 1);
  });

  test.each([
    ["nothing", Buffer.alloc(0), "carry-not-ours"],
    ["a letter", Buffer.from("Dear all, the log is on the other stick."), "carry-not-ours"],
    ["blocks alone", blocksAlone(), "carry-manifest-lost"],
  ])("that is %s is refused", (_, bytes, code) => {
    expect(readCarry(bytes, "a.carry")).toMatchObject({ ok: false, problems: [{ code }] });
  });
});

function blocksAlone(): Buffer {
  const head = 44 + whole.readUInt32BE(8);
  return whole.subarray(head, whole.length - head);
}

type Harm = (bytes: Buffer) => Buffer;
const place = fc.nat({ max: whole.length - 1 });
const harms: fc.Arbitrary<{ readonly name: string; readonly harm: Harm }> = fc.oneof(
  place.map((at) => ({ name: `cut at ${at}`, harm: (bytes: Buffer) => bytes.subarray(0, at) })),
  place.map((at) => ({ name: `cut before ${at}`, harm: (bytes: Buffer) => bytes.subarray(at) })),
  fc.tuple(place, fc.integer({ min: 1, max: 255 })).map(([at, bits]) => ({
    name: `byte ${at} ^ ${bits}`,
    harm: (bytes: Buffer) => {
      const changed = Buffer.from(bytes);
      if (at < changed.length) changed[at] = (changed[at] ?? 0) ^ bits;
      return changed;
    },
  })),
  fc.tuple(place, fc.nat({ max: 5000 })).map(([at, length]) => ({
    name: `${length} bytes taken out at ${at}`,
    harm: (bytes: Buffer) => Buffer.concat([bytes.subarray(0, at), bytes.subarray(at + length)]),
  })),
  fc.tuple(place, fc.uint8Array({ maxLength: 200 })).map(([at, more]) => ({
    name: `${more.length} bytes put in at ${at}`,
    harm: (bytes: Buffer) => Buffer.concat([bytes.subarray(0, at), more, bytes.subarray(at)]),
  })),
  fc.tuple(place, place).map(([from, to]) => ({
    name: `${from} copied to ${to}`,
    harm: (bytes: Buffer) => {
      const changed = Buffer.from(bytes);
      bytes.subarray(from, from + 30_000).copy(changed, Math.min(to, changed.length));
      return changed;
    },
  })),
  fc.infiniteStream(fc.nat()).map((draws) => ({
    name: "frames shuffled and doubled",
    harm: (bytes: Buffer) => shuffled(bytes, draws),
  })),
);

function shuffled(bytes: Buffer, draws: Iterator<number>): Buffer {
  const frames: Buffer[] = [];
  for (let at = 0; at + 44 <= bytes.length; ) {
    const end = at + 44 + bytes.readUInt32BE(at + 8);
    const frame = bytes.subarray(at, end);
    frames.splice((draws.next().value ?? 0) % (frames.length + 1), 0, frame);
    if ((draws.next().value ?? 0) % 4 === 0) frames.push(frame);
    at = end;
  }
  return Buffer.concat(frames);
}

/** Whether a block's lost entries are told of: every device's span lies in what a problem says. */
function isTold(taken: readonly string[], problems: ReturnType<typeof read>["problems"]): boolean {
  const told = problems.flatMap(({ code, expected = "" }) =>
    code === "carry-block-lost"
      ? [...expected.matchAll(/(tablet-\d) (\d+)(?: to (\d+))?/g)].map(([, device, from, to = from]) => ({
          device,
          from: Number(from),
          to: Number(to),
        }))
      : [],
  );
  const here = new Set(taken);
  return events.every(
    ({ id, device, number }) =>
      here.has(id) || told.some((span) => span.device === device && span.from <= number && number <= span.to),
  );
}

describe("whatever happens to a carry file on its way", () => {
  test("no block is taken by halves, what is not taken is told of, and the whole file makes it good", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(harms, { minLength: 1, maxLength: 3 }), async (all) => {
        const bytes = all.reduce((now, { harm }) => harm(now), whole);
        const file = readCarry(bytes, "a.carry");
        const keep = memoryKeep();
        if (file.ok) {
          const taken = await takeBlocks(file.value, keep, "a.carry");
          const ids = await idsIn(keep);
          expect(taken).toMatchObject({ added: ids.length, known: 0, aside: [], problems: [] });
          expect(isTold(ids, file.value.problems)).toBe(true);
          const lost = manifest.blocks.length - file.value.blocks.length;
          expect(ids.length + sizeOf(file.value.manifest.blocks, file.value.blocks, false)).toBe(550);
          expect(file.value.problems.some(({ code }) => code === "carry-block-lost")).toBe(lost > 0);
        } else expect(file.problems[0]?.code).toMatch(/^carry-(not-ours|manifest-lost)$/);
        await takeBlocks(read(whole), keep, "a.carry");
        expect(await idsIn(keep)).toEqual(events.map(({ id }) => id).sort());
      }),
      { numRuns: 20, seed: 11 },
    );
  });

  test("marks that each promise all the rest are summed up four times the file and no more", () => {
    const promising = (marks: number): Buffer => {
      const bytes = Buffer.concat([Buffer.alloc(marks * 44), framed("block", Buffer.from("whole"))]);
      for (let at = 0; at < marks * 44; at += 44) {
        bytes.write("\x8bcarryb\n", at, "latin1");
        bytes.writeUInt32BE(bytes.length - at - 44, at + 8);
      }
      return bytes;
    };
    expect(framesIn(promising(4)).frames, "a few are tried, and what follows is found").toHaveLength(1);
    const many = promising(2000);
    expect(framesIn(many)).toEqual({ frames: [], spoiled: [{ from: 0, to: many.length }] });
  });

  test("bytes of any kind are read to their end", () => {
    const pieces = fc.oneof(
      fc.uint8Array({ maxLength: 60 }).map((bytes) => Buffer.from(bytes)),
      fc.constantFrom(Buffer.from("\x8bcarry", "latin1"), whole.subarray(0, 300), whole.subarray(0, 44)),
    );
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 8 }), (all) => {
        const bytes = Buffer.concat(all);
        const { frames, spoiled } = framesIn(bytes);
        const bad = spoiled.reduce((sum, { from, to }) => sum + to - from, 0);
        const good = frames.reduce((sum, { body }) => sum + 44 + body.length, 0);
        expect(bad + good).toBe(bytes.length);
        readCarry(bytes, "a.carry");
      }),
      { numRuns: 300, seed: 5 },
    );
  });
});

/** Entries of the blocks that came in, or of those that did not. */
function sizeOf(
  rows: readonly { readonly sum: string; readonly events: number }[],
  bodies: readonly Buffer[],
  isHere: boolean,
): number {
  const here = new Set(bodies.map((body) => createHash("sha256").update(body).digest("hex")));
  return rows.filter(({ sum }) => here.has(sum) === isHere).reduce((all, { events }) => all + events, 0);
}

test("a log that came by damaged files folds like the log it came from", async () => {
  const keep = memoryKeep();
  await into(keep, whole.subarray(Math.floor(whole.length / 3)));
  await into(keep, whole.subarray(0, Math.floor(whole.length / 2)));
  expect(snapshotOf(fold(await eventsOf(keep)))).toBe(snapshotOf(fold(events)));
});
