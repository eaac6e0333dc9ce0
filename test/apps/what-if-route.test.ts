import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type RunningServer, startServer } from "../../src/apps/server/start.ts";
import type { Day } from "../../src/core/units/day.ts";
import { projectFolder } from "../../src/edge/published.ts";
import { whatIfService } from "../../src/edge/solve/what-if-service.ts";
import { buildPageIfMissing } from "../e2e/built-page.ts";
import { samplePlan } from "./sample-plan.ts";

let server: RunningServer;
beforeAll(async () => {
  await buildPageIfMissing();
  server = await startServer({
    plan: samplePlan(),
    picture: "<svg/>",
    papersFolder: "none",
    port: 0,
    // Two months before the end, so that the plans are made in a moment.
    whatIf: whatIfService(join(projectFolder(), "demo", "nine-lamps"), "2027-03-01" as Day),
  });
});
afterAll(() => server.close());

const ask = (body: string, type = "application/json"): Promise<Response> =>
  fetch(`${server.address}/api/what-if`, { method: "POST", headers: { "content-type": type }, body });
const about = (...scenarios: string[]): Promise<Response> => ask(JSON.stringify({ scenarios }));

interface Line {
  readonly step: string;
  readonly at?: number;
  readonly said?: readonly string[];
  readonly supposed?: readonly (readonly string[])[];
}
const linesOf = async (answer: Response): Promise<Line[]> =>
  (await answer.text())
    .trim()
    .split("\n")
    .map((line) => JSON.parse(line) as Line);

describe("POST /api/what-if", () => {
  test("streams first answers, then proved ones; the page is answered meanwhile", async () => {
    const answer = await about("second camera", "end 2027-04-01");
    expect(answer.status).toBe(200);
    expect(answer.headers.get("content-type")).toContain("application/x-ndjson");
    // The headers are here and the work is not done: the server is not held up by it.
    const page = await fetch(`${server.address}/api/plan`);
    expect(page.status).toBe(200);
    const lines = await linesOf(answer);
    expect(lines.map((each) => [each.step, each.at])).toEqual([
      ["understood", undefined],
      ["as it is", undefined],
      ["first", 0],
      ["first", 1],
      ["proved", 0],
      ["proved", 1],
    ]);
    expect(lines[0]?.supposed?.[0]?.[0]).toContain("1 more camera");
    expect(lines[4]?.said?.[0]).toMatch(/\.$/);
  });

  test("answers several askers one after the other, each with its own answer", async () => {
    const [one, two] = await Promise.all([about("second camera"), about("only SW releases")]);
    expect((await linesOf(one)).at(-1)).toMatchObject({ step: "proved", difference: { fallOut: [] } });
    expect((await linesOf(two)).at(-1)).toMatchObject({ step: "proved", releases: { person: "SW" } });
  });

  test("says of each scenario that cannot be supposed why, as problems, before anything is worked out", async () => {
    const answer = await about("DO on mould work", "msaks 3 weeks late", "second camera");
    expect(answer.status).toBe(422);
    const { problems } = (await answer.json()) as {
      problems: { code: string; got: string; remedy: string }[];
    };
    expect(problems.map((each) => each.code)).toEqual(["cannot-be-supposed", "cannot-be-supposed"]);
    expect(problems[1]?.remedy).toContain("Nearest: masks");
  });

  test.each([
    ["no JSON", "{", "application/json", 400],
    ["another form", '{"scenario": "second camera"}', "application/json", 400],
    ["a field that is not known", '{"scenarios": ["second camera"], "plan": 1}', "application/json", 400],
    ["nothing asked", '{"scenarios": []}', "application/json", 400],
    [
      "too many scenarios",
      JSON.stringify({ scenarios: Array(7).fill("second camera") }),
      "application/json",
      400,
    ],
    ["plain text, as another site's page could send", '{"scenarios": ["second camera"]}', "text/plain", 400],
    ["a body far too long", JSON.stringify({ scenarios: ["x".repeat(9000)] }), "application/json", 413],
  ])("refuses %s with what was expected", async (_, body, type, status) => {
    const answer = await ask(body, type);
    expect(answer.status).toBe(status);
    expect(await answer.json()).toMatchObject({ problem: { code: "bad-question" } });
  });
});
