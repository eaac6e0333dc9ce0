import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { whatIf } from "../../../src/apps/cli/what-if.ts";
import { projectFolder } from "../../../src/edge/published.ts";

const lamps = join(projectFolder(), "demo", "nine-lamps");
/** Two months before the end, so that the plans are made in a moment. */
const march = ["--today", "2027-03-01"];
async function asked(...args: string[]) {
  const said: string[] = [];
  const complained: string[] = [];
  const status = await whatIf(
    args,
    (line) => void said.push(line),
    (line) => void complained.push(line),
  );
  return { status, text: said.join("\n"), lines: said, complained: complained.join("\n") };
}

describe("leafward what-if", () => {
  test("puts the plan as it is first, then each scenario, in lines a screen can hold", async () => {
    const { status, text, lines } = await asked(
      lamps,
      "free camera days Mon-Fri",
      "HK unfit from 2027-03-15; masks 21 days late",
      ...march,
    );
    expect(status).toBe(0);
    expect(text).toContain("A  camera there every Monday, Tuesday, Wednesday, Thursday, Friday");
    expect(text).toContain("B  Hoby Kestrane (HK) on clean work from 15 March 2027");
    expect(lines.find((line) => /as it is +A +B$/.test(line))).toBeDefined();
    expect(text.indexOf("A  First answer, not yet proved: ")).toBeGreaterThan(0);
    expect(text.indexOf("First answer")).toBeLessThan(text.indexOf("Boxed by the end"));
    expect(text).toMatch(/A {2}Something is left over at the end either way: \d+ more items boxed by then\./);
    expect(text).toContain("Comes in: ");
    expect(text).not.toMatch(/unfit|undefined|NaN|Infinity/);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(100);
  });
  test("as JSON: nothing else on the output, each plan with its figures and its difference", async () => {
    const { status, text } = await asked(lamps, "end 2027-04-01", "only SW releases", "--json", ...march);
    expect(status).toBe(0);
    const { plans, draws } = JSON.parse(text);
    expect(draws).toBeGreaterThanOrEqual(50);
    expect(plans.map((each: { head: string }) => each.head)).toEqual(["as it is", "A", "B"]);
    expect(plans[0].difference).toBeNull();
    expect(plans[1].changes).toEqual([{ change: "end", day: "2027-04-01" }]);
    expect(plans[1].difference.boxed).toBeLessThan(0);
    expect(plans[1].outlook.finish.boxed.p50).toBeLessThan(plans[0].outlook.finish.boxed.p50);
    expect(plans[2].difference).toBeNull();
    expect(plans[2].releases).toMatchObject({ person: "SW", unreached: 0 });
  });
  test("one scenario that cannot be supposed stops them all, each with its reason and what comes nearest", async () => {
    const { status, text, complained } = await asked(
      lamps,
      "second camera",
      "DO on mould work",
      "HX away",
      "msaks 3 weeks late",
      "240 mould minutes a day",
    );
    expect(status).toBe(2);
    expect(text).toBe("");
    expect(complained).toContain('"DO on mould work": no scenario gives anybody mould work.');
    expect(complained).toMatch(/no person "hx"\. Nearest: HK/);
    expect(complained).toMatch(/no store "msaks"\. Nearest: masks/);
    expect(complained).toContain("the limit is 180 minutes near mould a day, and no scenario loosens");
  });
  test("words that are not understood are answered with what can be said here", async () => {
    const { status, complained } = await asked(lamps, "paint it blue");
    expect(status).toBe(2);
    expect(complained).toContain('"paint it blue" is not understood.');
    expect(complained).toMatch(/SW on clean work from 2026-\d\d-\d\d/);
  });
  test("the examples it gives are understood", async () => {
    const { complained } = await asked(lamps, "paint it blue");
    const examples = complained
      .split("\n")
      .filter((line) => line.startsWith("  "))
      .map((line) => line.trim().replace(/ {3}\(.*$/, ""));
    expect(examples.length).toBeGreaterThan(10);
    const { complained: again } = await asked(lamps, ...examples, "paint it blue");
    expect(again.split("\n")[0]).toBe('"paint it blue" is not understood.');
  });
  test("asked for nothing, it says what it needs", async () => {
    expect(await asked(lamps)).toMatchObject({ status: 2, text: "" });
    expect((await asked("--help")).text).toContain("leafward what-if");
    expect(await asked(lamps, "second camera", "--today", "tomorrow")).toMatchObject({ status: 2 });
    expect((await asked(lamps, "second camera", "--fast")).complained).toContain("--fast");
    expect(await asked(join(lamps, "nowhere"), "second camera")).toMatchObject({ status: 2, text: "" });
  });
});
