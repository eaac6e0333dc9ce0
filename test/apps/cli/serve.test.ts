import { spawn } from "node:child_process";
import { chmodSync, copyFileSync, existsSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { serve } from "../../../src/apps/cli/serve.ts";
import { openFileKeep } from "../../../src/edge/keep/open-keep.ts";
import { projectFolder } from "../../../src/edge/published.ts";
import { notes, sealed } from "../../core/log/some-events.ts";

const folder = mkdtempSync(join(tmpdir(), "leafward-serve-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function said(...args: string[]): Promise<{ code: number; out: string; complained: string }> {
  const [out, complained]: [string[], string[]] = [[], []];
  const code = await serve(
    args,
    (line) => out.push(line),
    (line) => complained.push(line),
  );
  return { code, out: out.join("\n"), complained: complained.join("\n") };
}

/** As root the folder is served by somebody without rights: "nobody" on most systems. */
const SOMEBODY_ELSE = process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : {};

/** A server in a process of its own, once it has printed its code. */
async function running(folder: string, as: { readonly uid?: number; readonly gid?: number } = {}) {
  const main = join(projectFolder(), "src", "apps", "cli", "main.ts");
  const child = spawn(process.execPath, ["--import", "tsx", main, "serve", folder, "--port", "0"], {
    stdio: ["ignore", "pipe", "pipe"],
    ...as,
  });
  let [text, complained] = ["", ""];
  child.stdout.on("data", (part: Buffer) => {
    text += part.toString();
  });
  child.stderr.on("data", (part: Buffer) => {
    complained += part.toString();
  });
  const ending = new Promise<number | null>((resolve) => child.on("exit", resolve));
  const until = (words: string): Promise<string> =>
    new Promise((ready, fail) => {
      const look = (): void => (text.includes(words) ? ready(text) : undefined);
      child.on("exit", () => fail(new Error(`It ended early: ${text}${complained}`)));
      child.stdout.on("data", look);
      look();
    });
  await until("as lead");
  const [address = ""] = /http:\/\/127\.0\.0\.1:\d+/.exec(text) ?? [];
  const [, code] = /as lead: ([A-Z]{4}-[A-Z]{4})/.exec(text) ?? [];
  const post = { method: "POST", headers: { "content-type": "application/json" } };
  return {
    ...{ text, address, until, complained: () => complained },
    pair: () => fetch(`${address}/api/pair`, { ...post, body: JSON.stringify({ code }) }),
    ended: async () => {
      child.kill("SIGTERM");
      const code = await ending;
      return process.platform === "win32" ? 0 : code; // there it is ended from outside
    },
  };
}

describe("leafward serve", () => {
  test("says how the log begins where there is none, and makes none", async () => {
    const { code, complained } = await said(folder);
    expect(code).toBe(2);
    expect(complained).toContain("npx leafward keep");
    expect(existsSync(join(folder, "log.leafward.db"))).toBe(false);
  });

  test("says what it takes", async () => {
    expect(await said("--help")).toMatchObject({ code: 0, out: expect.stringContaining("--local-network") });
    expect(await said()).toMatchObject({ code: 2, complained: expect.stringContaining("<folder>") });
    expect(await said(folder, "--port", "many")).toMatchObject({
      code: 2,
      complained: expect.stringContaining("--port many"),
    });
    expect((await said(folder, "--everywhere")).code).toBe(2);
  });

  test("serves on this machine alone, prints a code that lets the lead in, and ends when it is told to", async () => {
    const keep = await openFileKeep(join(folder, "log.leafward.db"));
    if (!keep.ok) throw new Error("A new folder has no log.");
    await keep.value.append(notes("tablet-1", "one"));
    await keep.value.close();
    const { text, pair, ended } = await running(folder);
    expect(text).toContain("on this machine alone");
    const paired = await pair();
    expect(await paired.json()).toMatchObject({ role: "lead", campaign: "saltmere" });
    expect(await ended()).toBe(0);
  });

  test("makes the backup of the day while it stands", async () => {
    const { until, ended } = await running(folder);
    const text = await until("Backup of the day");
    expect(text).toMatch(/Backup of the day: \S+backups\S+\.leafward\.db/);
    expect(await ended()).toBe(0);
    expect(readdirSync(join(folder, "backups")).filter((name) => name.endsWith(".part"))).toEqual([]);
  });

  test.skipIf(process.platform === "win32")(
    "in a folder that cannot be written serves to be read, and says of what is entered why it is refused",
    async () => {
      const fixed = mkdtempSync(join(tmpdir(), "leafward-fixed-"));
      copyFileSync(join(folder, "log.leafward.db"), join(fixed, "log.leafward.db"));
      chmodSync(join(fixed, "log.leafward.db"), 0o444);
      chmodSync(fixed, 0o555);
      const { address, pair, complained, ended } = await running(fixed, SOMEBODY_ELSE);
      const paired = await pair();
      const { device } = (await paired.json()) as { readonly device: string };
      const [cookie = ""] = paired.headers.getSetCookie().map((each) => each.split(";")[0] ?? "");
      const ask = (init: RequestInit = {}) =>
        fetch(`${address}/api/events`, {
          ...init,
          headers: { cookie, "content-type": "application/json" },
        });
      expect(await (await ask()).json()).toMatchObject({ events: [{ event: { campaign: "saltmere" } }] });
      const [note] = notes(device, "two");
      if (!note) throw new Error("A note was written.");
      const entry = sealed({ ...note, who: { role: "lead" } });
      const refused = await ask({ method: "POST", body: JSON.stringify({ events: [entry] }) });
      expect(refused.status).toBe(503);
      expect(await refused.json()).toMatchObject({
        answers: [{ answer: "refused", problem: { code: "keep-read-only", remedy: expect.any(String) } }],
      });
      expect(complained()).toContain("cannot be written");
      expect(await ended()).toBe(0);
      expect(readdirSync(fixed)).toEqual(["log.leafward.db"]);
      chmodSync(fixed, 0o755);
      rmSync(fixed, { recursive: true });
    },
  );
});
