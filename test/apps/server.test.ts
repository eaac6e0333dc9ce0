import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openInBrowser } from "../../src/apps/server/open.ts";
import { shownOnPage } from "../../src/apps/server/shown-on-page.ts";
import { type RunningServer, startServer } from "../../src/apps/server/start.ts";
import { addDays } from "../../src/core/units/day.ts";
import { buildPageIfMissing } from "../e2e/built-page.ts";
import { samplePicture, samplePlan } from "./sample-plan.ts";

const folder = mkdtempSync(join(tmpdir(), "leafward-server-"));
const papersFolder = join(folder, "papers");
let server: RunningServer;

beforeAll(async () => {
  await buildPageIfMissing();
  mkdirSync(join(papersFolder, "inner"), { recursive: true });
  writeFileSync(join(papersFolder, "day sheet Pico.pdf"), "%PDF-1.7 first");
  writeFileSync(join(papersFolder, "bag-tags.PDF"), "%PDF-1.7");
  writeFileSync(join(papersFolder, "notes.txt"), "not a paper");
  writeFileSync(join(papersFolder, "inner", "deep.pdf"), "%PDF-1.7");
  writeFileSync(join(folder, "outside.pdf"), "%PDF-1.7 of another folder");
  server = await startServer({ plan: samplePlan(), picture: samplePicture, papersFolder, port: 0 });
});
afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: string;
}

/** A request whose path and headers go out exactly as written: `fetch` would tidy the path and refuse a Host header. */
const ask = (
  path: string,
  { host, method = "GET" }: { host?: string; method?: string } = {},
): Promise<Answer> =>
  new Promise((resolve, reject) => {
    const { hostname, port } = new URL(server.address);
    const headers = host === undefined ? {} : { host };
    const asking = request({ hostname, port, path, method, headers, agent: false }, (reply) => {
      const parts: Buffer[] = [];
      reply.on("data", (part: Buffer) => parts.push(part));
      reply.on("end", () =>
        resolve({
          status: reply.statusCode ?? 0,
          headers: reply.headers,
          body: Buffer.concat(parts).toString(),
        }),
      );
    });
    asking.on("error", reject);
    asking.end();
  });

describe("the server gives", () => {
  test("the page at its bare address", async () => {
    const { status, headers, body } = await ask("/");
    expect(status).toBe(200);
    expect(headers["content-type"]).toContain("text/html");
    expect(body).toContain('<div id="page">');
  });

  test("the whole plan as JSON", async () => {
    const { status, headers, body } = await ask("/api/plan");
    expect(status).toBe(200);
    expect(headers["content-type"]).toContain("application/json");
    expect(JSON.parse(body)).toEqual(samplePlan());
  });

  test("the part of the plan that the page shows", async () => {
    expect(JSON.parse((await ask("/api/page")).body)).toEqual(shownOnPage(samplePlan()));
  });

  test("the plan's picture as an image", async () => {
    const { status, headers, body } = await ask("/picture.svg");
    expect(status).toBe(200);
    expect(headers["content-type"]).toContain("image/svg+xml");
    expect(body).toBe(samplePicture);
  });

  test("the PDFs of the papers folder with their sizes, in order of name, and nothing else of it", async () => {
    expect(JSON.parse((await ask("/api/papers")).body)).toEqual([
      { file: "bag-tags.PDF", bytes: 8 },
      { file: "day sheet Pico.pdf", bytes: 14 },
    ]);
  });

  test("a listed paper as PDF, for the browser's own viewer", async () => {
    const { status, headers, body } = await ask("/papers/day%20sheet%20Pico.pdf");
    expect(status).toBe(200);
    expect(headers["content-type"]).toContain("application/pdf");
    expect(headers["content-security-policy"]).toBeUndefined();
    expect(headers["x-content-type-options"]).toBe("nosniff");
    expect(body).toBe("%PDF-1.7 first");
  });

  test("an empty list when no papers were printed yet", async () => {
    const other = await startServer({
      plan: samplePlan(),
      picture: samplePicture,
      papersFolder: join(folder, "none"),
      port: 0,
    });
    expect(await (await fetch(`${other.address}/api/papers`)).json()).toEqual([]);
    await other.close();
  });
});

describe("the server refuses", () => {
  test.each([
    "/papers/../outside.pdf",
    "/papers/..%2foutside.pdf",
    "/papers/%2e%2e%2foutside.pdf",
    "/papers/..%5coutside.pdf",
    "/papers/inner%2fdeep.pdf",
    "/papers/inner/deep.pdf",
    "/papers/notes.txt",
    "/papers/missing.pdf",
    "/papers/",
    "/../package.json",
    "/..%2f..%2fpackage.json",
    "/%2e%2e/%2e%2e/package.json",
    "/api/plan/more",
  ])("%s: not listed, with a problem that says what to do", async (path) => {
    const { status, body } = await ask(path);
    expect(status).toBeGreaterThanOrEqual(400);
    expect(status).toBeLessThan(500);
    expect(body).not.toContain("another folder");
    const { problem } = JSON.parse(body) as { problem: { code: string; remedy: string } };
    expect(problem.code).toMatch(/^[a-z-]+$/);
    expect(problem.remedy).not.toBe("");
  });

  test.each([
    "rebound.example",
    "rebound.example:8620",
    "127.0.0.1.rebound.example",
    "localhost.rebound.example:80",
  ])("a request that names the host %s, whatever it asks for", async (host) => {
    for (const path of ["/", "/api/plan", "/papers/bag-tags.PDF"]) {
      const { status, body } = await ask(path, { host });
      expect(status).toBe(403);
      expect(JSON.parse(body)).toMatchObject({ problem: { code: "foreign-host", got: host } });
      expect(body).not.toContain("Saltmere");
    }
  });

  test.each(["localhost:8620", "127.0.0.1", "LOCALHOST"])(
    "not a request that names this machine as %s",
    async (host) => {
      expect((await ask("/api/plan", { host })).status).toBe(200);
    },
  );

  test.each(["POST", "PUT", "DELETE"])("%s: nothing here can be changed from outside", async (method) => {
    expect((await ask("/api/plan", { method })).status).toBe(404);
  });

  test("an address longer than any real one", async () => {
    expect((await ask(`/papers/${"a".repeat(4000)}.pdf`)).status).toBeGreaterThanOrEqual(400);
    expect((await ask(`/${"a".repeat(20_000)}`)).status).toBe(431);
  });
});

describe("every answer", () => {
  test.each(["/", "/api/plan", "/api/papers", "/nowhere"])(
    "%s has a strict policy and is kept nowhere",
    async (path) => {
      const { headers } = await ask(path);
      const policy = String(headers["content-security-policy"]);
      expect(policy).toContain("default-src 'none'");
      expect(policy).toContain("script-src 'self'");
      expect(policy).toContain("style-src 'self'");
      expect(policy).toContain("frame-ancestors 'none'");
      expect(policy).not.toMatch(/unsafe|\*|https?:/);
      expect(headers["x-content-type-options"]).toBe("nosniff");
      expect(headers["referrer-policy"]).toBe("no-referrer");
      expect(headers["cache-control"]).toBe("no-store");
      expect(headers["strict-transport-security"]).toBeUndefined();
      expect(headers["access-control-allow-origin"]).toBeUndefined();
    },
  );
});

describe("the server's address", () => {
  test("is on this machine only, and tells its port", () => {
    expect(server.address).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/);
  });

  test("moves on when the usual port is taken", async () => {
    const holder = createServer();
    await new Promise<void>((resolve) => {
      holder.once("error", () => resolve()); // taken by someone else: just as well
      holder.listen(8620, "127.0.0.1", resolve);
    });
    const other = await startServer({ plan: samplePlan(), picture: samplePicture, papersFolder });
    expect(other.address).not.toBe("http://127.0.0.1:8620");
    await other.close();
    holder.close();
  });

  test("closes although a browser still holds a connection", async () => {
    const other = await startServer({ plan: samplePlan(), picture: samplePicture, papersFolder, port: 0 });
    await (await fetch(`${other.address}/api/plan`, { headers: { connection: "keep-alive" } })).text();
    const started = performance.now();
    await other.close();
    expect(performance.now() - started).toBeLessThan(2000);
  });
});

describe("what the page is given", () => {
  test("keeps each person's first day with work and the coming fourteen days, and drops the rest", () => {
    const plan = samplePlan();
    const later = plan.assignments.map((each) => ({ ...each, day: addDays(each.day, 3) }));
    const far = plan.personDays.map((each) => ({ ...each, day: addDays(each.day, 14) }));
    const long = {
      ...plan,
      assignments: [...later, ...plan.assignments],
      personDays: [...plan.personDays, ...far],
    };
    const shown = shownOnPage(long);
    expect(shown.assignments).toEqual(plan.assignments);
    expect(shown.personDays).toEqual(plan.personDays);
    expect(shown.left).toEqual(plan.left);
  });
});

describe("opening the browser", () => {
  test.each([
    ["in continuous integration", { CI: "true", DISPLAY: ":0" }],
    ["when told not to", { LEAFWARD_NO_OPEN: "1", DISPLAY: ":0" }],
  ])("is left alone %s", (_when, environment) => {
    expect(openInBrowser("http://127.0.0.1:8620", environment)).toBe(false);
  });

  test("is left alone without a display", () => {
    if (process.platform === "win32" || process.platform === "darwin") return;
    expect(openInBrowser("http://127.0.0.1:8620", {})).toBe(false);
  });
});
