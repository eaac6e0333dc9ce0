/** Reading a logger export of two million rows: ours, a plain read of the same bytes, and a parser of tables, each in a process of its own. */
import { fork } from "node:child_process";
import { once } from "node:events";
import { createReadStream, createWriteStream } from "node:fs";
import { mkdtemp, rm, stat } from "node:fs/promises";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import Papa from "papaparse";
import { readLogger } from "../src/edge/intake/loggers/read-logger.ts";

const ROWS = 2_000_000;
const START = Date.UTC(2020, 0, 1);
/** Reading in pieces, without holding the text. */
const PIECE = 1 << 20;

interface Measured {
  readonly seconds: number;
  readonly rows: number;
  readonly megabytes: number;
}

/** Ways of writing the same readings. */
const DRESSES: Readonly<Record<string, (i: number) => string>> = {
  "ISO, comma": (i) =>
    `${new Date(START + i * 60_000).toISOString().slice(0, 19).replace("T", " ")},${warm(i)},${damp(i)}\n`,
  "day first, semicolon, decimal comma, two columns": (i) => {
    const at = new Date(START + i * 60_000).toISOString();
    const day = `${at.slice(8, 10)}.${at.slice(5, 7)}.${at.slice(0, 4)}`;
    return `${day};${at.slice(11, 16)};${warm(i).replace(".", ",")};${damp(i).replace(".", ",")}\r\n`;
  },
};
const HEADINGS: Readonly<Record<string, string>> = {
  "ISO, comma": "time,temperature (°C),relative humidity (%)\n",
  "day first, semicolon, decimal comma, two columns": "Datum;Uhrzeit;Temperatur [°C];rel. Feuchte [%]\r\n",
};
const warm = (i: number): string => (21 + 4 * Math.sin(i / 229) + (i % 7) / 50).toFixed(2);
const damp = (i: number): string => (55 + 9 * Math.cos(i / 313) + (i % 11) / 40).toFixed(2);

const WAYS: Readonly<Record<string, (path: string) => Promise<number>>> = {
  "plain read": async (path) => {
    let bytes = 0;
    for await (const piece of createReadStream(path, { highWaterMark: PIECE }))
      bytes += (piece as Buffer).length;
    return bytes > 0 ? ROWS : 0;
  },
  "this reader": async (path) => {
    const read = await readLogger(path);
    return read.ok ? read.value.reading.rowsRead : 0;
  },
  "papaparse, cells only": (path) => papa(path, () => {}),
  "papaparse and numbers": (path) => {
    const [minutes, dryBulb, relHum] = [
      new Float64Array(ROWS),
      new Float64Array(ROWS),
      new Float64Array(ROWS),
    ];
    return papa(path, (cells, i) => {
      const [last, beforeLast] = [cells.length - 1, cells.length - 2];
      minutes[i] =
        cells.length === 3
          ? Date.parse(`${cells[0] ?? ""}Z`) / 60_000
          : dayFirst(cells[0] ?? "", cells[1] ?? "");
      dryBulb[i] = Number((cells[beforeLast] ?? "").replace(",", "."));
      relHum[i] = Number((cells[last] ?? "").replace(",", ".")) / 100;
    });
  },
};

const dayFirst = (day: string, clock: string): number =>
  Date.parse(`${day.slice(6)}-${day.slice(3, 5)}-${day.slice(0, 2)}T${clock}Z`) / 60_000;

function papa(path: string, use: (cells: readonly string[], i: number) => void): Promise<number> {
  return new Promise((resolve, reject) => {
    let rows = -1; // the headings
    Papa.parse<string[]>(createReadStream(path, { highWaterMark: PIECE }), {
      skipEmptyLines: true,
      chunk: ({ data }) => {
        for (const cells of data) if (rows++ >= 0) use(cells, rows - 1);
      },
      complete: () => resolve(rows),
      error: reject,
    });
  });
}

async function write(path: string, dress: string): Promise<void> {
  const out = createWriteStream(path);
  out.write(HEADINGS[dress]);
  const line = DRESSES[dress] as (i: number) => string; // a name of the table above
  for (let i = 0; i < ROWS; i += 50_000) {
    const text = Array.from({ length: 50_000 }, (_, k) => line(i + k)).join("");
    if (!out.write(text)) await once(out, "drain");
  }
  out.end();
  await once(out, "close");
}

async function measuredApart(way: string, path: string): Promise<Measured> {
  const child = fork(fileURLToPath(import.meta.url), [way, path]);
  const [answer] = (await once(child, "message")) as [Measured];
  return answer;
}

async function measureHere(way: string, path: string): Promise<void> {
  const from = performance.now();
  const rows = (await WAYS[way]?.(path)) ?? 0;
  const seconds = (performance.now() - from) / 1000;
  process.send?.({ seconds, rows, megabytes: process.resourceUsage().maxRSS / 1024 } satisfies Measured);
}

async function compare(): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), "leafward-loggers-"));
  console.log(`Machine: ${cpus()[0]?.model ?? "unknown"}, ${cpus().length} cores, Node ${process.version}`);
  try {
    for (const dress of Object.keys(DRESSES)) {
      const path = join(folder, "readings.csv");
      await write(path, dress);
      console.log(
        `\n${dress}: ${ROWS.toLocaleString("en-GB")} rows, ${((await stat(path)).size / 1e6).toFixed(0)} MB`,
      );
      console.log("  way                      best of 3   million rows/s   memory at most");
      for (const way of Object.keys(WAYS)) {
        const runs: Measured[] = [];
        for (let n = 0; n < 3; n++) runs.push(await measuredApart(way, path));
        const best = runs.reduce((a, b) => (b.seconds < a.seconds ? b : a));
        const wrong = runs.find(({ rows }) => rows !== ROWS);
        console.log(
          `  ${way.padEnd(24)} ${best.seconds.toFixed(2).padStart(7)} s ${(ROWS / best.seconds / 1e6).toFixed(2).padStart(16)} ${best.megabytes.toFixed(0).padStart(13)} MB${wrong === undefined ? "" : `  (${wrong.rows} rows!)`}`,
        );
      }
    }
  } finally {
    await rm(folder, { recursive: true });
  }
}

const [way, path] = process.argv.slice(2);
if (way !== undefined && path !== undefined && process.send !== undefined) await measureHere(way, path);
else await compare();
