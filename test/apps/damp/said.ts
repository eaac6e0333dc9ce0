import { mkdtemp, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { DampCommand } from "../../../src/apps/cli/damp/report.ts";

/** Runs a command as it is typed; quotes hold what has spaces. */
export async function said(command: DampCommand, typed: string) {
  const [lines, complaints]: [string[], string[]] = [[], []];
  const args = [...typed.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain ?? "");
  const code = await command(
    args,
    (line) => lines.push(line),
    (line) => complaints.push(line),
  );
  const flat = (all: string[]): string => all.join("\n").replace(/\s+/g, " ");
  return { code, text: lines.join("\n"), flat: flat(lines), complaints: flat(complaints) };
}

/** The same with --json, parsed; the first answer's fields. */
export async function answer(command: DampCommand, typed: string) {
  const { text } = await said(command, `${typed} --json`);
  return JSON.parse(text).answers[0] as Record<string, unknown>;
}

export const folder = (): Promise<string> => mkdtemp(join(tmpdir(), "leafward-damp-"));

/** A logger file of even steps from 1 June 2026, local time. */
export async function loggerFile(
  name: string,
  air: (hours: number) => { T: number; RH: number } | null,
  { days = 20, stepMinutes = 60, heading = "time,temperature_c,rh_pct" } = {},
): Promise<string> {
  const rows = [heading];
  for (let at = 0; at < days * 1440; at += stepMinutes) {
    const reading = air(at / 60);
    const stamp = new Date(Date.UTC(2026, 5, 1) + at * 60_000).toISOString().slice(0, 16);
    if (reading) rows.push(`${stamp},${reading.T.toFixed(1)},${reading.RH.toFixed(1)}`);
  }
  const path = join(await folder(), name);
  await writeFile(path, `${rows.join("\n")}\n`);
  return path;
}
