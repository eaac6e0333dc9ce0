import { z } from "zod";
import { type Outcome, type Problem, refused } from "../../core/outcome/problem.ts";
import { type DeviceKey, isSignedBy } from "./device-key.ts";

/** The layout of carry files that is written here. */
const FORMAT = 1;

const hash = z.string().regex(/^[0-9a-f]{64}$/);
const whole = z.number().int().min(0);
const name = z.string().min(1).max(80);
const reached = z.looseObject({ device: name, number: whole.min(1), hash });
const block = z.looseObject({
  sum: hash,
  events: whole.min(1),
  /** From the least number of a device to the greatest. */
  holds: z.array(z.looseObject({ device: name, from: whole, to: whole })),
});

/** What a newer version adds beside these is passed over. */
const contents = z.looseObject({
  format: z.literal(FORMAT),
  campaign: name,
  /** Public key of the device that signed. */
  key: z.string().regex(/^[\w-]{43}$/),
  /** Milliseconds since 1970. */
  made: whole,
  /** Whether everything is in it; else it was made for somebody who has the rest. */
  all: z.boolean(),
  /** How far the writer holds each device's events without a break. */
  reach: z.array(reached),
  blocks: z.array(block),
});

/** What a carry file holds, as its writer signed it. */
export type Manifest = z.infer<typeof contents>;
export type BlockRow = z.infer<typeof block>;

/** So that no signature made for something else can be taken for one of these. */
const signed = (text: Uint8Array): Buffer => Buffer.concat([Buffer.from("leafward carry\n"), text]);
const SIGNATURE_BYTES = 64;

/** Signature, then the manifest as JSON. */
export function sealManifest(rest: Omit<Manifest, "format" | "key">, key: DeviceKey): Buffer {
  const text = Buffer.from(JSON.stringify({ format: FORMAT, key: key.open, ...rest }));
  return Buffer.concat([key.sign(signed(text)), text]);
}

/** Reads a manifest and holds it against its signature; whether the signer is known is another matter. */
export function readManifest(body: Buffer, file: string): Outcome<Manifest> {
  const text = body.subarray(SIGNATURE_BYTES);
  const given = jsonIn(text);
  const format = z.looseObject({ format: z.number().int().gt(FORMAT) }).safeParse(given);
  if (format.success) return refused(tooNew(file, format.data.format));
  const read = contents.safeParse(given);
  if (!read.success || !isSignedBy(read.data.key, signed(text), body.subarray(0, SIGNATURE_BYTES)))
    return refused(wronglySigned(file));
  return { ok: true, value: read.data };
}

function jsonIn(text: Buffer): unknown {
  try {
    return JSON.parse(text.toString("utf8"));
  } catch {
    return null;
  }
}

const wronglySigned = (file: string): Problem => ({
  code: "carry-signature",
  severity: "stop",
  file,
  remedy: "Nothing was taken. Have the file made again on the device it comes from.",
});

const tooNew = (file: string, format: number): Problem => ({
  code: "carry-newer",
  severity: "stop",
  file,
  got: String(format),
  expected: String(FORMAT),
  remedy: "Nothing was taken. Take the newer Leafward here as well, then carry it in.",
});
