import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { stop } from "../../../src/apps/cli/stop.ts";
import { projectFolder } from "../../../src/edge/published.ts";

const saltmere = join(projectFolder(), "demo", "saltmere");
async function run(...args: string[]) {
  const said: string[] = [];
  const complained: string[] = [];
  const status = await stop(
    args,
    (line) => void said.push(line),
    (line) => void complained.push(line),
  );
  return { status, text: said.join("\n"), fault: complained.join(" ").replace(/\s+/g, " ") };
}

describe("leafward stop", () => {
  test("names what cannot be made safe before anything else", async () => {
    const { status, text } = await run(saltmere, "2026-06-19");
    expect(status).toBe(1);
    const flat = text.replace(/\s+/g, " ");
    const at = (words: string): number => flat.indexOf(words);
    expect(at("SR-1429 (this team may not go near")).toBeGreaterThan(0);
    expect(at("cannot be made safe in time")).toBeLessThan(at("Do now"));
    expect(at("apart on clean blotter")).toBeLessThan(at("conditioned gel"));
    expect(at("Begin only")).toBeLessThan(at("Leave"));
    expect(flat).toContain("Follow local rules and licensed practice.");
  });
  test("says it item by item as data", async () => {
    const { text } = await run(saltmere, "2026-06-19", "--json");
    const [answer] = JSON.parse(text).answers;
    expect(answer.items.length).toBe(1480);
    expect(answer.items[0]).toMatchObject({ item: "SR-1429", why: "outside help" });
  });
  test("lists every line by day and person when asked", async () => {
    const { text } = await run(saltmere, "2026-06-02", "--days");
    expect(text).toContain("Tuesday, 2 June 2026\n  ");
    expect(text).toContain("close down, 20 min");
  });
  test.each([
    [[saltmere], "Give a campaign folder and the last day"],
    [[saltmere, "soon"], "<day> soon: expected a day"],
    [[saltmere, "2026-05-01"], "lies before the morning"],
    [[saltmere, "2030-05-01"], "lies after the end"],
    [[saltmere, "2026-06-19", "--today", "x"], "--today x: expected a day"],
  ])("%j is refused in words", async (args, words) => {
    const { status, fault } = await run(...args);
    expect(status).toBe(2);
    expect(fault).toContain(words);
  });
  test("reckons from another morning", async () => {
    const { text } = await run(saltmere, "2026-06-19", "--today", "2026-06-17");
    expect(text.replace(/\s+/g, " ")).toContain("3 working days left");
  });
});
