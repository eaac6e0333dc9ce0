import {
  createHash,
  generateKeyPairSync,
  type KeyObject,
  randomBytes,
  sign,
  X509Certificate,
} from "node:crypto";
import { existsSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { isIPv4 } from "node:net";
import { join } from "node:path";
import {
  bits,
  inContext,
  objectId,
  octets,
  plainInContext,
  sequence,
  setOf,
  utcTime,
  utf8,
  whole,
  yes,
} from "./der.ts";
import { proquints } from "./proquints.ts";
import { cannotBeWritten, serverFolder } from "./server-file.ts";

const DAY_MS = 86_400_000;
/** Some browsers take no certificate that lasts longer than 825 days. Common practice, no source. */
const LASTS_DAYS = 800;
const RENEWED_BEFORE_DAYS = 30;

/** A server's own certificate, as PEM. */
export interface OwnCertificate {
  readonly key: string;
  readonly cert: string;
}

/** The certificate of a campaign's server, made on first use and when it is about to end; only its owner can read the key.
 *  Where the folder cannot be written it lasts as long as the server stands. */
export function ownCertificate(folder: string, names: readonly string[], now: number): OwnCertificate {
  const kept = keptCertificate(pathIn(join(folder, "server")));
  if (
    kept !== null &&
    Date.parse(new X509Certificate(kept.cert).validTo) > now + RENEWED_BEFORE_DAYS * DAY_MS
  )
    return kept;
  const made = makeCertificate(names, now);
  try {
    const path = pathIn(serverFolder(folder));
    writeFileSync(`${path}.new`, made.key + made.cert, { mode: 0o600, flush: true });
    renameSync(`${path}.new`, path);
  } catch (error) {
    if (!cannotBeWritten(error)) throw error;
  }
  return made;
}

const pathIn = (own: string): string => join(own, "certificate.pem");

function keptCertificate(path: string): OwnCertificate | null {
  if (!existsSync(path)) return null;
  const pem = readFileSync(path, "utf8");
  const end = pem.indexOf("-----BEGIN CERTIFICATE-----");
  return { key: pem.slice(0, end), cert: pem.slice(end) };
}

/** SHA-256 of the certificate: as words to read out, and as browsers show it. */
export function fingerprintOf({ cert }: OwnCertificate): { readonly words: string; readonly digits: string } {
  const digest = createHash("sha256").update(new X509Certificate(cert).raw).digest();
  const digits = (digest.toString("hex").toUpperCase().match(/../g) ?? []).join(":");
  return { words: proquints(digest.subarray(0, 16)), digits };
}

const ECDSA_WITH_SHA256 = sequence(objectId("1.2.840.10045.4.3.2"));
const COMMON_NAME = objectId("2.5.4.3");

/** A certificate that signs itself. Source: RFC 5280 sections 4.1 and 4.2.1; the algorithm, RFC 5758 section 3.2. From memory; held against OpenSSL. */
export function makeCertificate(names: readonly string[], now: number): OwnCertificate {
  const { privateKey, publicKey } = generateKeyPairSync("ec", { namedCurve: "P-256" });
  const self = sequence(setOf(sequence(COMMON_NAME, utf8("Leafward on this network"))));
  const serial = randomBytes(16);
  serial[0] = 0x40 | ((serial[0] ?? 0) & 0x3f); // positive, and no leading zeros
  const signed = sequence(
    inContext(0, whole(Buffer.of(2))),
    whole(serial),
    ECDSA_WITH_SHA256,
    self,
    sequence(utcTime(now - DAY_MS), utcTime(now + LASTS_DAYS * DAY_MS)), // a day for clocks that are behind
    self,
    publicKey.export({ type: "spki", format: "der" }),
    inContext(3, sequence(...extensions(names))),
  );
  const signature = sign("sha256", signed, privateKey);
  return {
    key: pemOf(privateKey),
    cert: pem("CERTIFICATE", sequence(signed, ECDSA_WITH_SHA256, bits(signature))),
  };
}

function extensions(names: readonly string[]): Buffer[] {
  const alternatives = names.map((name) =>
    isIPv4(name)
      ? plainInContext(7, Buffer.from(name.split(".").map(Number)))
      : plainInContext(2, Buffer.from(name)),
  );
  return [
    sequence(objectId("2.5.29.19"), yes(), octets(sequence())), // basic constraints: no authority
    sequence(objectId("2.5.29.15"), yes(), octets(bits(Buffer.of(0x80), 7))), // key usage: digital signature
    sequence(objectId("2.5.29.37"), octets(sequence(objectId("1.3.6.1.5.5.7.3.1")))), // extended: a server's
    sequence(objectId("2.5.29.17"), octets(sequence(...alternatives))), // alternative names
  ];
}

const pemOf = (key: KeyObject): string => key.export({ type: "pkcs8", format: "pem" }).toString();

const pem = (label: string, der: Buffer): string =>
  `-----BEGIN ${label}-----\n${(der.toString("base64").match(/.{1,64}/g) ?? []).join("\n")}\n-----END ${label}-----\n`;
