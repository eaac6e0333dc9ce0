import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { easeCommand } from "../../../src/apps/cli/ease.ts";
import { readyItems } from "../../../src/apps/cli/ready.ts";
import { projectFolder } from "../../../src/edge/published.ts";

const lamps = join(projectFolder(), "demo", "nine-lamps");

async function said(
  command: (out: (line: string) => void, complain: (line: string) => void) => Promise<number>,
) {
  const lines: string[] = [];
  const complained: string[] = [];
  const status = await command(
    (line) => void lines.push(line),
    (line) => void complained.push(line),
  );
  return { status, lines, text: lines.join("\n"), complained: complained.join("\n") };
}
const ease = (...args: string[]) => said((out, complain) => easeCommand(args, out, complain));
const ready = (kind?: string) => said((out, complain) => readyItems(lamps, kind, out, complain));

describe("leafward ease", () => {
  test("says what binds, what helps, what does not and what brings must-do items in, and shows where it is", async () => {
    const { status, text, lines, complained } = await ease(lamps, "--most", "2", "--today", "2027-04-01");
    expect(status).toBe(0);
    expect(text).toMatch(/WHAT HOLDS THE PLAN BACK\n {2}1\. camera: /);
    for (const head of ["WHAT WOULD HELP", "WHAT WOULD NOT", "MUST-DO ITEMS THAT DO NOT FIT"])
      expect(text).toContain(head);
    expect(complained).toMatch(/1 of \d: /);
    expect(text).not.toMatch(/undefined|NaN|Infinity/);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(100);
  });
  test("asked for nothing or too much, it says what it needs", async () => {
    expect((await ease("--help")).text).toContain("leafward ease");
    expect(await ease()).toMatchObject({ status: 2, text: "" });
    expect((await ease(lamps, "--most", "0")).complained).toContain("from 2 to 40");
    expect((await ease(lamps, "--today", "soon")).complained).toContain("--today soon");
  });
});

describe("leafward ready", () => {
  test("names what stands before mouldy bundles that are not in the Ward yet", async () => {
    const { status, text } = await ready("mouldy");
    expect(status).toBe(0);
    expect(text).toMatch(/^None of \d+ may go before the camera now\.\nFirst: bag, label and log/);
  });
  test("a kind that nothing here is, is answered with what there is", async () => {
    const { status, complained } = await ready("gondola");
    expect(status).toBe(2);
    expect(complained).toContain("palm_leaf_bundle");
  });
});
