import { createHash } from "node:crypto";

const MARK = Buffer.from("\x8bcarry", "latin1");
const KINDS = { manifest: "m\n", block: "b\n" } as const;
const SUM_BYTES = 32;
const HEAD_BYTES = MARK.length + 2 + 4 + SUM_BYTES;
const MOST_BYTES = 64 * 1024 * 1024;

/** A piece of a carry file that can be found, and held against its sum, whatever happened to the rest. */
export interface Frame {
  readonly kind: keyof typeof KINDS;
  /** SHA-256 of the body, 64 hexadecimal digits. */
  readonly sum: string;
  readonly body: Buffer;
}

/** Bytes that belong to no whole frame; `to` is the first byte after them. */
export interface Spoiled {
  readonly from: number;
  readonly to: number;
}

export const sumOfBody = (body: Uint8Array): string => createHash("sha256").update(body).digest("hex");

/** Mark and kind (8 bytes), length (4 bytes, the high one first), SHA-256 (32 bytes), body. */
export function framed(kind: Frame["kind"], body: Uint8Array): Buffer {
  const length = Buffer.alloc(4);
  length.writeUInt32BE(body.length);
  return Buffer.concat([MARK, Buffer.from(KINDS[kind]), length, Buffer.from(sumOfBody(body), "hex"), body]);
}

/** How many times its own length a file may be summed up: once when it is whole, little more when it is damaged. One that is made of marks,
 *  each promising a long body, would keep the machine busy for days before anybody knows whose it is. */
const MOST_SUMS = 4;

/** Every whole frame, in the order of the file, and the bytes around them. */
export function framesIn(bytes: Buffer): { readonly frames: Frame[]; readonly spoiled: Spoiled[] } {
  const frames: Frame[] = [];
  const spoiled: Spoiled[] = [];
  let sound = 0;
  let left = MOST_SUMS * bytes.length;
  for (let at = bytes.indexOf(MARK); at >= 0; ) {
    const head = headAt(bytes, at);
    if (head !== null) left -= head.length;
    const frame = head !== null && left >= 0 ? frameAt(bytes, at, head) : null;
    if (frame !== null) {
      if (at > sound) spoiled.push({ from: sound, to: at });
      frames.push(frame);
      sound = at + HEAD_BYTES + frame.body.length;
    }
    at = bytes.indexOf(MARK, frame === null ? at + 1 : sound);
  }
  if (sound < bytes.length) spoiled.push({ from: sound, to: bytes.length });
  return { frames, spoiled };
}

interface Head {
  readonly kind: Frame["kind"];
  readonly length: number;
}

/** What a mark promises; null: nothing that could be. */
function headAt(bytes: Buffer, at: number): Head | null {
  const body = at + HEAD_BYTES;
  if (body > bytes.length) return null;
  const letters = bytes.toString("latin1", at + MARK.length, at + MARK.length + 2);
  const kind = letters === KINDS.manifest ? "manifest" : letters === KINDS.block ? "block" : null;
  const length = bytes.readUInt32BE(at + MARK.length + 2);
  return kind === null || length > MOST_BYTES || body + length > bytes.length ? null : { kind, length };
}

function frameAt(bytes: Buffer, at: number, { kind, length }: Head): Frame | null {
  const body = at + HEAD_BYTES;
  const frame = bytes.subarray(body, body + length);
  const sum = bytes.toString("hex", body - SUM_BYTES, body);
  return sum === sumOfBody(frame) ? { kind, sum, body: frame } : null;
}
