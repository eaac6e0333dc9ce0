import {
  createHash,
  createPrivateKey,
  createPublicKey,
  generateKeyPairSync,
  type KeyObject,
  sign,
  verify,
} from "node:crypto";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { type Outcome, type Problem, refused } from "../../core/outcome/problem.ts";
import { diskFailure } from "../keep/backup.ts";
import { syncFolder } from "../keep/sqlite-base.ts";
import { proquints } from "../serve/proquints.ts";

/** The key with which a device signs what it carries out. */
export interface DeviceKey {
  /** The public half: 32 bytes as base64url, as in a JSON Web Key (RFC 8037 section 2). */
  readonly open: string;
  sign(bytes: Uint8Array): Buffer;
}

/** What carrying keeps for itself beside the log; nobody else may look in. */
export function carryFolder(folder: string): string {
  const own = join(folder, "carry");
  if (!existsSync(own)) mkdirSync(own, { mode: 0o700 });
  return own;
}

/** The key of the device this folder is on, made on first use. Only its owner may read the file. */
export function deviceKey(folder: string): Outcome<DeviceKey> {
  const path = keyFile(folder);
  try {
    if (!existsSync(path)) {
      const own = carryFolder(folder);
      const { privateKey } = generateKeyPairSync("ed25519");
      const pem = privateKey.export({ type: "pkcs8", format: "pem" });
      writeFileSync(path, pem, { mode: 0o600, flag: "wx", flush: true });
      syncFolder(own);
    }
    return keyIn(readFileSync(path, "utf8"));
  } catch (error) {
    return refused(diskFailure(path, error));
  }
}

/** Whether this is the key of the device the folder is on. Makes none. */
export function hasKey(folder: string, open: string): boolean {
  const key = existsSync(keyFile(folder)) ? deviceKey(folder) : null;
  return key?.ok === true && key.value.open === open;
}

const keyFile = (folder: string): string => join(folder, "carry", "key.pem");

function keyIn(pem: string): Outcome<DeviceKey> {
  let secret: KeyObject;
  try {
    secret = createPrivateKey(pem);
  } catch {
    return refused(KEY_UNREADABLE);
  }
  const { x } = createPublicKey(secret).export({ format: "jwk" });
  if (secret.asymmetricKeyType !== "ed25519" || x === undefined) return refused(KEY_UNREADABLE);
  return { ok: true, value: { open: x, sign: (bytes) => sign(null, bytes, secret) } };
}

const KEY_UNREADABLE: Problem = {
  code: "carry-key-unreadable",
  severity: "stop",
  file: "carry/key.pem",
  remedy:
    "Move the file away from the folder carry: a new key is made then, and everybody who takes files from here must be told its words.",
};

/** Whether the holder of a key signed these bytes. */
export function isSignedBy(open: string, bytes: Uint8Array, signature: Uint8Array): boolean {
  try {
    const key = createPublicKey({ key: { kty: "OKP", crv: "Ed25519", x: open }, format: "jwk" });
    return verify(null, bytes, key, signature);
  } catch {
    return false; // no such key can be
  }
}

const WORDS_BYTES = 8;

/** A key as four words to read out to each other: the first 64 bits of its SHA-256. */
export const wordsOf = (open: string): string =>
  proquints(createHash("sha256").update(Buffer.from(open, "base64url")).digest().subarray(0, WORDS_BYTES));
