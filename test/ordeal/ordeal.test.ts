import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { Account } from "../../scripts/ordeal/account.ts";
import { SHORT, TRIALS } from "../../scripts/ordeal/trials.ts";
import { newWriter, noteOn } from "../../scripts/ordeal/writer.ts";

describe("the short ordeal", () => {
  test.each(TRIALS.map((trial) => [trial.name, trial] as const))("%s", async (name, trial) => {
    const folder = mkdtempSync(join(tmpdir(), "leafward-ordeal-"));
    const { line, faults, skipped } = await trial.run({ folder, size: SHORT, seed: 7 });
    if (skipped) console.warn(`Skipped: ${name}: ${line}.`);
    rmSync(folder, { recursive: true, force: true });
    expect(faults).toEqual([]);
  });
});

describe("the account of an ordeal", () => {
  const writer = newWriter("tablet-1");
  const [one, two, three] = [1, 2, 3].map((at) => writer.write(noteOn(`B-${at}`))) as [
    ReturnType<typeof writer.write>,
    ReturnType<typeof writer.write>,
    ReturnType<typeof writer.write>,
  ];

  test("finds what was acknowledged and is not there", () => {
    const account = new Account();
    account.sending([one]);
    account.taken([one]);
    expect(account.lost()).toHaveLength(1);
    account.look([{ place: 1, event: one }], "now");
    expect([...account.lost(), ...account.faults]).toEqual([]);
  });

  test("finds half a batch, a place left out, and an event that is there twice", () => {
    const account = new Account();
    account.sending([one, two]);
    account.look([{ place: 1, event: one }], "first");
    account.look([{ place: 3, event: three }], "second");
    account.look([{ place: 4, event: one }], "third");
    expect(account.faults).toEqual([
      "first: half of a batch of 2 is there",
      "second: place 3 follows on 1",
      `third: ${one.id} is there twice`,
      "third: half of a batch of 2 is there",
    ]);
  });
});
