import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { sample } from "../../../src/apps/cli/sample.ts";
import { projectFolder } from "../../../src/edge/published.ts";

async function run(...args: string[]) {
  const said: string[] = [];
  const complained: string[] = [];
  const status = await sample(
    args,
    (line) => void said.push(line),
    (line) => void complained.push(line),
  );
  return { status, text: said.join("\n"), fault: complained.join("\n") };
}

describe("leafward sample", () => {
  test("90 looked at of 6,000, 14 mouldy: 9 to 25 %, and how many more", async () => {
    const { status, text } = await run("90", "14", "6000");
    expect(status).toBe(0);
    expect(text).toContain("8.8 to 25 % of them have it: 530 to 1,479 of 6,000 items, 95 % sure");
    expect(text).toMatch(/Look at \d+ more \(\d+ in all\) to know it to ± 5 points/);
    expect(text).toContain("were chosen");
  });
  test("says it as data too", async () => {
    const { text } = await run("90", "14", "6000", "--sure", "90", "--json");
    expect(JSON.parse(text).answers[0]).toMatchObject({
      looked: 90,
      sureness: 0.9,
      lot: { lowItems: 582, highItems: 1391 },
    });
  });
  test("of a folder: by format and by shelf", async () => {
    const { status, text } = await run(join(projectFolder(), "demo", "saltmere"));
    expect(status).toBe(0);
    expect(text).toContain("under the roof hole");
    expect(text).toContain("red rot by format");
  });
  test.each([
    [["90", "14", "60"], "there are only 60 in all"],
    [["14", "90", "6000"], "only 14 were looked at"],
    [["6,000", "14", "90"], "is no whole number"],
    [["90", "14"], "Give three numbers"],
    [[], "Give three numbers"],
    [["90", "14", "6000", "--sure", "120"], "50 to 99.9"],
    [["90", "14", "6000", "--odds"], "--help"],
  ])("%j is refused in words", async (args, words) => {
    const { status, fault } = await run(...args);
    expect(status).toBe(2);
    expect(fault.replace(/\s+/g, " ")).toContain(words);
  });
});
