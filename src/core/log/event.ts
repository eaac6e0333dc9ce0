import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";
import { canonicalJson, type Json } from "./canonical-json.ts";
import { type Clock, compareClocks } from "./clock.ts";
import type { Role } from "./roles.ts";

/** Who wrote an event down: a role, and the short code of the papers where it is known. */
export interface Who {
  readonly role: Role;
  readonly person?: string;
}

/** One thing that happened, as it is kept and passed on. Nothing in it is ever changed. */
export interface LogEvent {
  /** ULID; unique in the campaign, rising on each device. */
  readonly id: string;
  readonly campaign: string;
  readonly device: string;
  /** The device's own count: 1, 2, 3 … without gaps. */
  readonly number: number;
  readonly clock: Clock;
  readonly who: Who;
  /** A past tense: `findingRecorded`. */
  readonly kind: string;
  readonly version: number;
  readonly payload: { readonly [key: string]: Json };
  /** Ids of what stood about the same matter before the writer's eyes, and is replaced by this. */
  readonly seen: readonly string[];
  /** Hash of the device's event before; empty for its first. */
  readonly before: string;
  readonly hash: string;
}

/** SHA-256, as 64 hexadecimal digits, of the UTF-8 bytes of the event's canonical JSON with `hash` left out.
 *  Whatever else stands in the event is hashed too, so what a newer version adds is guarded as well. */
export function hashOf({ hash: _, ...rest }: Omit<LogEvent, "hash"> & { readonly hash?: string }): string {
  return bytesToHex(sha256(utf8ToBytes(canonicalJson(rest as unknown as Json)))); // an event is JSON by its reading or writing
}

/** The order of the log: by clock, then by id. */
export const inOrder = (
  a: { readonly clock: Clock; readonly id: string },
  b: { readonly clock: Clock; readonly id: string },
): number => compareClocks(a.clock, b.clock) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
