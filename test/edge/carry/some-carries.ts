import { generateKeyPairSync, sign } from "node:crypto";
import type { LogEvent } from "../../../src/core/log/event.ts";
import { type CarryFile, readCarry } from "../../../src/edge/carry/carry-file.ts";
import { packed } from "../../../src/edge/carry/carry-out.ts";
import type { DeviceKey } from "../../../src/edge/carry/device-key.ts";
import type { KnownDevice } from "../../../src/edge/carry/known-devices.ts";
import type { Keep } from "../../../src/edge/keep/keep.ts";
import { NOON } from "../../core/log/some-events.ts";
import { memoryKeep } from "./memory-keep.ts";

export function newKey(): DeviceKey {
  const { privateKey, publicKey } = generateKeyPairSync("ed25519");
  const open = publicKey.export({ format: "jwk" }).x ?? "";
  return { open, sign: (bytes) => sign(null, bytes, privateKey) };
}

export async function keepOf(...events: readonly LogEvent[]): Promise<Keep> {
  const keep = memoryKeep();
  const { refused } = await keep.append(events);
  if (refused.length > 0) throw new Error(JSON.stringify(refused));
  return keep;
}

export const bytesOf = async (keep: Keep, key = newKey(), receiver?: KnownDevice): Promise<Buffer> =>
  (await packed(keep, "saltmere", key, NOON, receiver)).bytes;

export function read(bytes: Buffer): CarryFile {
  const file = readCarry(bytes, "a.carry");
  if (!file.ok) throw new Error(JSON.stringify(file.problems));
  return file.value;
}

/** What whoever made this file is known to have, as the receiver remembers it. */
export const knownBy = (bytes: Buffer): KnownDevice => read(bytes).manifest;

/** Long notes that do not shrink, so that few of them fill a block; without vowels, so that chance spells no word. */
export const noise = (seed: number, length = 2000): string => {
  let state = seed + 1;
  let text = "";
  while (text.length < length) {
    state = (state * 48271) % 2147483647;
    text += state.toString(36).replace(/[aeiou]/g, "-");
  }
  return text.slice(0, length);
};
