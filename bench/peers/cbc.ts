import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Programme } from "../../src/core/plan/programme.ts";
import { mpsOf } from "./mps.ts";

/** What the optimiser of Debian's package coinor-cbc made of a programme. */
export interface CbcAnswer {
  /** NaN: none within the time. */
  readonly objective: number;
  readonly seconds: number;
}

/** Gives a programme to `cbc`, its whole numbers with it; null where cbc is not installed. */
export function solveWithCbc(programme: Programme, gap: number, mostSeconds: number): CbcAnswer | null {
  const folder = mkdtempSync(join(tmpdir(), "leafward-cbc-"));
  try {
    const file = join(folder, "programme.mps");
    writeFileSync(file, mpsOf(programme));
    const from = performance.now();
    const args = [
      file,
      "-ratio",
      String(gap),
      "-timeMode",
      "elapsed",
      "-sec",
      String(mostSeconds),
      "-solve",
      "-quit",
    ];
    const { stdout, error } = spawnSync("cbc", args, { encoding: "utf8", maxBuffer: 2 ** 26 });
    if (error) return null;
    const found = /^Objective value:\s+(\S+)/m.exec(stdout);
    return { objective: found ? Number(found[1]) : Number.NaN, seconds: (performance.now() - from) / 1000 };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
