import { spawnSync } from "node:child_process";
import { generateKeyPairSync } from "node:crypto";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import type { LogEvent } from "../../../src/core/log/event.ts";
import { carryIn } from "../../../src/edge/carry/carry-in.ts";
import { packed, putCarry } from "../../../src/edge/carry/carry-out.ts";
import { type DeviceKey, deviceKey, isSignedBy, wordsOf } from "../../../src/edge/carry/device-key.ts";
import { framed, framesIn } from "../../../src/edge/carry/frames.ts";
import { knownDevices } from "../../../src/edge/carry/known-devices.ts";
import type { Keep } from "../../../src/edge/keep/keep.ts";
import { openFileKeep } from "../../../src/edge/keep/open-keep.ts";
import { NOON, notes, sealed } from "../../core/log/some-events.ts";
import { bytesOf, keepOf, newKey } from "./some-carries.ts";

const home = mkdtempSync(join(tmpdir(), "leafward-carry-"));
afterAll(() => rmSync(home, { recursive: true, force: true }));

let count = 0;
function newFolder(): string {
  const folder = join(home, `folder-${++count}`);
  mkdirSync(folder);
  return folder;
}

function keyOf(folder: string): DeviceKey {
  const key = deviceKey(folder);
  if (!key.ok) throw new Error(JSON.stringify(key.problems));
  return key.value;
}

async function logOf(folder: string, ...events: readonly LogEvent[]): Promise<Keep> {
  const keep = await openFileKeep(join(folder, "log.leafward.db"));
  if (!keep.ok) throw new Error(JSON.stringify(keep.problems));
  await keep.value.append(events);
  return keep.value;
}

/** A folder with a log, and the file it carries out. */
async function office(...events: readonly LogEvent[]) {
  const folder = newFolder();
  const keep = await logOf(folder, ...events);
  const key = keyOf(folder);
  const carried = await packed(keep, "saltmere", key, NOON);
  await keep.close();
  const path = await putCarry(carried, folder, home, key, `${count}`);
  if (!path.ok) throw new Error(JSON.stringify(path.problems));
  return { folder, path: path.value, words: wordsOf(key.open) };
}

function written(bytes: Buffer): string {
  const path = join(home, `${++count}.carry`);
  writeFileSync(path, bytes);
  return path;
}

const events = notes("tablet-1", "one", "two", "three");

describe("whose file is taken", () => {
  test("one of a device nobody has vouched for is not; its words are not said; with its words it is, from then on", async () => {
    const { path, words } = await office(...events);
    const folder = newFolder();
    const refused = await carryIn(folder, path);
    expect(refused).toMatchObject({ ok: false, problems: [{ code: "carry-unknown-device" }] });
    expect(JSON.stringify(refused)).not.toContain(words);
    expect(await carryIn(folder, path, "lusab babad gutih tugad")).toMatchObject({
      problems: [{ code: "carry-words-differ" }],
    });
    expect(existsSync(join(folder, "log.leafward.db"))).toBe(false);
    expect(await carryIn(folder, path, words.toUpperCase().replaceAll("-", " "))).toMatchObject({
      value: { added: 3, newlyKnown: words, problems: [] },
    });
    expect(await carryIn(folder, path)).toMatchObject({ value: { added: 0, known: 3, newlyKnown: null } });
    expect(knownDevices(folder)).toMatchObject({
      value: [{ reach: [{ device: "tablet-1", number: 3, hash: events[2]?.hash }] }],
    });
  });

  test("this device's own is, after the log was lost", async () => {
    const { folder, path } = await office(...events);
    rmSync(join(folder, "log.leafward.db"));
    expect(await carryIn(folder, path)).toMatchObject({ value: { added: 3, newlyKnown: null } });
  });

  test("one of another campaign is refused, and the log stays as it was", async () => {
    const { folder } = await office(...events);
    const other = await keepOf();
    const bytes = (await packed(other, "marabelle", newKey(), NOON)).bytes;
    const before = readFileSync(join(folder, "log.leafward.db"));
    expect(await carryIn(folder, written(bytes))).toMatchObject({
      problems: [{ code: "carry-of-another", got: "marabelle", expected: "saltmere" }],
    });
    expect(readFileSync(join(folder, "log.leafward.db")).equals(before)).toBe(true);
  });

  test("a list of contents that somebody else wrote over is refused, also with right sums", async () => {
    const bytes = await bytesOf(await keepOf(...events));
    const [manifest, block] = framesIn(bytes).frames;
    if (!manifest || !block) throw new Error("A file has both.");
    const forged = Buffer.from(
      manifest.body.toString("latin1").replace(`"all":true`, `"all":null`),
      "latin1",
    );
    for (const body of [
      forged,
      Buffer.from(manifest.body.toString("latin1").replace(/"made":\d/, `"made":9`), "latin1"),
    ])
      expect(
        await carryIn(
          newFolder(),
          written(Buffer.concat([framed("manifest", body), framed("block", block.body)])),
        ),
      ).toMatchObject({ ok: false, problems: [{ code: "carry-signature" }] });
  });

  test("a newer layout is refused, with what to do", async () => {
    const body = Buffer.concat([
      Buffer.alloc(64),
      Buffer.from(JSON.stringify({ format: 2, other: "things" })),
    ]);
    expect(await carryIn(newFolder(), written(framed("manifest", body)))).toMatchObject({
      problems: [{ code: "carry-newer", got: "2" }],
    });
  });

  test("a file that is not there, or a folder, is said so", async () => {
    expect(await carryIn(newFolder(), join(home, "none.carry"))).toMatchObject({
      problems: [{ code: "carry-unread" }],
    });
    expect(await carryIn(newFolder(), home)).toMatchObject({ problems: [{ code: "carry-unread" }] });
  });
});

test("what is set aside lies beside the log, as it was", async () => {
  const [one, two] = events as [LogEvent, LogEvent];
  const { folder, path } = await office(one, two);
  rmSync(join(folder, "log.leafward.db"));
  const other = sealed({ ...two, payload: { item: "B-001", part: "", text: "other" } });
  const log = await logOf(folder, other);
  await log.close();
  const done = await carryIn(folder, path);
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  expect(done.value).toMatchObject({ added: 1, aside: [{ problem: { code: "event-twice", got: two.id } }] });
  expect(JSON.parse(readFileSync(done.value.asideFile ?? "", "utf8"))).toEqual(two);
});

describe("the key of a device", () => {
  test("is made once, and only its owner may read it", () => {
    const folder = newFolder();
    const { open } = keyOf(folder);
    expect(keyOf(folder).open).toBe(open);
    if (process.platform !== "win32")
      expect(statSync(join(folder, "carry", "key.pem")).mode & 0o777).toBe(0o600);
    expect(wordsOf(open)).toMatch(
      /^([bdfghjklmnprstvz][aiou][bdfghjklmnprstvz][aiou][bdfghjklmnprstvz]-?){4}$/,
    );
  });

  test("that cannot be read is not written over", () => {
    const folder = newFolder();
    keyOf(folder);
    const { privateKey } = generateKeyPairSync("x25519");
    for (const text of ["", privateKey.export({ type: "pkcs8", format: "pem" }).toString()]) {
      writeFileSync(join(folder, "carry", "key.pem"), text);
      expect(deviceKey(folder)).toMatchObject({ problems: [{ code: "carry-key-unreadable" }] });
      expect(readFileSync(join(folder, "carry", "key.pem"), "utf8")).toBe(text);
    }
  });

  test("signs as Ed25519 does: RFC 8032 section 7.1, test 1, from memory", () => {
    const hex = (text: string): Buffer => Buffer.from(text, "hex");
    const open = hex("d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a").toString(
      "base64url",
    );
    const signature = hex(
      "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b",
    );
    expect(isSignedBy(open, Buffer.alloc(0), signature)).toBe(true);
    expect(isSignedBy(open, Buffer.from("x"), signature)).toBe(false);
    expect(isSignedBy("A".repeat(43), Buffer.alloc(0), Buffer.alloc(3))).toBe(false);
  });

  const hasOpenSsl = spawnSync("openssl", ["version"]).status === 0;
  if (!hasOpenSsl)
    console.warn("Skipped: openssl is not here to read a key and make a signature of its own.");
  test.skipIf(!hasOpenSsl)("is read by OpenSSL, and OpenSSL's signature is the same", () => {
    const folder = newFolder();
    const key = keyOf(folder);
    const said = join(folder, "said");
    writeFileSync(said, "what was carried");
    const made = spawnSync("openssl", [
      ...["pkeyutl", "-sign", "-rawin", "-inkey", join(folder, "carry", "key.pem"), "-in", said],
    ]);
    expect(made.stdout.equals(key.sign(readFileSync(said)))).toBe(true);
    expect(isSignedBy(key.open, readFileSync(said), made.stdout)).toBe(true);
  });
});
