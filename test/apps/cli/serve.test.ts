import { spawn } from "node:child_process";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { serve } from "../../../src/apps/cli/serve.ts";
import { openFileKeep } from "../../../src/edge/keep/open-keep.ts";
import { projectFolder } from "../../../src/edge/published.ts";
import { notes } from "../../core/log/some-events.ts";

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
    const main = join(projectFolder(), "src", "apps", "cli", "main.ts");
    const running = spawn(process.execPath, ["--import", "tsx", main, "serve", folder, "--port", "0"], {
      stdio: ["ignore", "pipe", "inherit"],
    });
    let text = "";
    await new Promise<void>((ready, fail) => {
      running.on("exit", () => fail(new Error(`It ended early: ${text}`)));
      running.stdout.on("data", (part: Buffer) => {
        text += part.toString();
        if (text.includes("as lead")) ready();
      });
    });
    expect(text).toContain("on this machine alone");
    const [address = ""] = /http:\/\/127\.0\.0\.1:\d+/.exec(text) ?? [];
    const [, code] = /as lead: ([A-Z]{4}-[A-Z]{4})/.exec(text) ?? [];
    const paired = await fetch(`${address}/api/pair`, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify({ code }),
    });
    expect(await paired.json()).toMatchObject({ role: "lead", campaign: "saltmere" });
    const ended = new Promise((resolve) => running.on("exit", resolve));
    running.kill("SIGTERM");
    if (process.platform !== "win32") expect(await ended).toBe(0);
  });
});
