import { execFileSync, spawnSync } from "node:child_process";
import { X509Certificate } from "node:crypto";
import { mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { request } from "node:https";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type LogServer, startLogServer } from "../../../src/apps/server/serve-log.ts";
import { openFileKeep } from "../../../src/edge/keep/open-keep.ts";
import { fingerprintOf, makeCertificate, ownCertificate } from "../../../src/edge/serve/certificate.ts";
import { proquints } from "../../../src/edge/serve/proquints.ts";
import { NOON } from "../../core/log/some-events.ts";
import { buildPageIfMissing } from "../../e2e/built-page.ts";
import { samplePicture, samplePlan } from "../sample-plan.ts";

const folder = mkdtempSync(join(tmpdir(), "leafward-network-"));
const NAMES = ["127.0.0.1", "shed.local"];
const DAY = 86_400_000;
let server: LogServer;
let tls: { key: string; cert: string };

beforeAll(async () => {
  await buildPageIfMissing();
  const keep = await openFileKeep(join(folder, "log.leafward.db"));
  if (!keep.ok) throw new Error("A new folder has no log.");
  tls = ownCertificate(folder, NAMES, Date.now());
  const page = { plan: samplePlan(), picture: samplePicture, papersFolder: "none" };
  server = await startLogServer({
    folder,
    keep: keep.value,
    campaign: "saltmere",
    page,
    port: 0,
    network: { tls, names: NAMES },
  });
  return async () => {
    await server.close();
    await keep.value.close();
  };
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Asked {
  readonly method?: string;
  readonly headers?: Record<string, string>;
  readonly body?: string;
}

/** Asks as a device that trusts this one certificate and no other. */
const ask = (path: string, { method = "GET", headers = {}, body }: Asked = {}) =>
  new Promise<{ status: number; cookie: string; text: string }>((resolve, reject) => {
    const asking = request(
      {
        host: "127.0.0.1",
        port: server.port,
        path,
        method,
        headers,
        ca: tls.cert,
        checkServerIdentity: () => undefined,
        agent: false,
      },
      (answered) => {
        let text = "";
        answered.on("data", (part: Buffer) => (text += part.toString()));
        answered.on("end", () =>
          resolve({
            status: answered.statusCode ?? 0,
            cookie: answered.headers["set-cookie"]?.[0] ?? "",
            text,
          }),
        );
      },
    );
    asking.on("error", reject);
    asking.end(body);
  });

const JSON_BODY = { "content-type": "application/json" };

describe("on the local network", () => {
  test("the page's files come to anyone; a plan, papers and the log only to who was let in", async () => {
    expect((await ask("/")).status).toBe(200);
    const inside = [
      "/api/plan",
      "/api/page",
      "/picture.svg",
      "/api/papers",
      "/papers/a.pdf",
      "/api/state",
      "/api/events",
    ];
    for (const path of inside) {
      const { status, text } = await ask(path);
      expect([path, status]).toEqual([path, 401]);
      expect(text).not.toContain("Saltmere");
    }
    const { code } = server.leadCode("laptop");
    const { cookie } = await ask("/api/pair", {
      method: "POST",
      headers: JSON_BODY,
      body: JSON.stringify({ code }),
    });
    expect(cookie).toContain("; Secure");
    const headers = { cookie: cookie.slice(0, cookie.indexOf(";")) };
    for (const path of inside) expect((await ask(path, { headers })).status, path).not.toBe(401);
    expect((await ask("/api/plan", { headers })).status).toBe(200);
  });

  test("it answers to its own names and the address that was asked, and to no other", async () => {
    const status = async (host: string) => (await ask("/", { headers: { host } })).status;
    expect([await status("shed.local:8620"), await status("127.0.0.1"), await status("localhost")]).toEqual([
      200, 200, 200,
    ]);
    expect([await status("rebound.example"), await status("10.9.8.7")]).toEqual([403, 403]);
  });

  test("a page of another origin may change nothing, of another port neither", async () => {
    const status = async (origin: string) =>
      (await ask("/api/pair", { method: "POST", headers: { ...JSON_BODY, origin }, body: "{}" })).status;
    const own = `127.0.0.1:${server.port}`;
    expect(await status("https://elsewhere.example")).toBe(403);
    expect(await status("https://127.0.0.1:9")).toBe(403);
    expect(await status("null")).toBe(403);
    expect(await status(`https://${own}`)).toBe(400);
  });

  test("a hundred requests a second from one address end in a word, not in a fault", async () => {
    const answers = await Promise.all(
      Array.from({ length: 40 }, () =>
        ask("/api/pair", { method: "POST", headers: JSON_BODY, body: '{"code":"AAAAAAAA"}' }),
      ),
    );
    expect(answers.some(({ status }) => status === 429)).toBe(true);
    const refused = answers.findLast(({ status }) => status === 429);
    expect(JSON.parse(refused?.text ?? "")).toMatchObject({ problem: { code: "too-many-requests" } });
  });
});

describe("the certificate", () => {
  test("is read by OpenSSL, is signed by itself, names this machine, and is no authority", () => {
    const read = new X509Certificate(tls.cert); // Node's reader is OpenSSL's
    expect(read.verify(read.publicKey)).toBe(true);
    expect(read.ca).toBe(false);
    expect(read.checkHost("shed.local")).toBe("shed.local");
    expect(read.checkIP("127.0.0.1")).toBe("127.0.0.1");
    expect(read.checkHost("elsewhere.local")).toBeUndefined();
    expect(Date.parse(read.validTo) - Date.parse(read.validFrom)).toBe(801 * DAY);
  });

  test("passes OpenSSL's strict check of RFC 5280 as a server's", ({ skip }) => {
    if (spawnSync("openssl", ["version"]).status !== 0) skip("there is no openssl here");
    const path = join(folder, "read.pem");
    writeFileSync(path, tls.cert);
    const said = execFileSync("openssl", [
      "verify",
      "-x509_strict",
      "-purpose",
      "sslserver",
      "-partial_chain",
      "-trusted",
      path,
      path,
    ]);
    expect(said.toString()).toContain(": OK");
  });

  test("stays the same until a month before its end, and only its owner can read it", () => {
    const now = Date.now();
    expect(ownCertificate(folder, ["other.local"], now)).toEqual(tls);
    expect(ownCertificate(folder, NAMES, now + 769 * DAY)).toEqual(tls);
    expect(ownCertificate(folder, NAMES, now + 771 * DAY)).not.toEqual(tls);
    if (process.platform !== "win32")
      expect(statSync(join(folder, "server", "certificate.pem")).mode & 0o077).toBe(0);
  });

  test("is compared by eight words, or by what a browser shows", () => {
    const { words, digits } = fingerprintOf(tls);
    expect(words.split("-")).toHaveLength(8);
    expect(digits).toBe(new X509Certificate(tls.cert).fingerprint256);
    expect(fingerprintOf(makeCertificate(NAMES, NOON)).words).not.toBe(words);
  });

  // Source: Wilkerson, A Proposal for Proquints (2009), the table of addresses; from memory.
  test.each([
    [[127, 0, 0, 1], "lusab-babad"],
    [[63, 84, 220, 193], "gutih-tugad"],
    [[140, 98, 193, 141], "mudof-sakat"],
    [[147, 67, 119, 2], "natag-lisaf"],
  ])("%j is said %s", (bytes, words) => {
    expect(proquints(Uint8Array.from(bytes))).toBe(words);
  });
});
