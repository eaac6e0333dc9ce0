import { type Outcome, type Problem, refused } from "../../core/outcome/problem.ts";
import { spansOf } from "./blocks.ts";
import { type Frame, framed, framesIn, type Spoiled } from "./frames.ts";
import { type BlockRow, type Manifest, readManifest } from "./manifest.ts";

/** A carry file as far as it is whole. */
export interface CarryFile {
  readonly manifest: Manifest;
  /** SHA-256 of the signed manifest: the name of the file's content. */
  readonly sum: string;
  /** The blocks that are whole, in the order of the manifest. */
  readonly blocks: readonly Buffer[];
  /** Of the file itself: bytes that changed, blocks that are gone. */
  readonly problems: readonly Problem[];
}

/** The manifest stands at both ends, so that a file torn at either still says what it held. */
export const carryBytes = (manifest: Buffer, blocks: readonly Buffer[]): Buffer =>
  Buffer.concat([
    framed("manifest", manifest),
    ...blocks.map((body) => framed("block", body)),
    framed("manifest", manifest),
  ]);

/** Reads what is whole and names what is not. Nothing of a file without a whole, rightly signed manifest can be used. */
export function readCarry(bytes: Buffer, file: string): Outcome<CarryFile> {
  const { frames, spoiled } = framesIn(bytes);
  const found = manifestAmong(frames, file);
  if (!found.ok) return found;
  const { manifest } = found.value;
  const bodies = new Map(
    frames.filter(({ kind }) => kind === "block").map(({ sum, body }) => [sum, body] as const),
  );
  const named = new Set(manifest.blocks.map((row) => row.sum));
  const lost = lostRuns(manifest, (row) => !bodies.has(row.sum)).map((run) =>
    blocksLost(run, manifest, file),
  );
  const strange = [...bodies.keys()].filter((each) => !named.has(each)).length;
  return {
    ok: true,
    value: {
      manifest,
      sum: found.value.sum,
      blocks: manifest.blocks.flatMap((row) => bodies.get(row.sum) ?? []),
      problems: [
        ...spoiled.map((stretch) => bytesSpoiled(stretch, lost.length > 0, file)),
        ...lost,
        ...(strange > 0 ? [blocksStrange(strange, file)] : []),
      ],
    },
  };
}

function manifestAmong(
  frames: readonly Frame[],
  file: string,
): Outcome<{ readonly manifest: Manifest; readonly sum: string }> {
  let first: Outcome<never> | null = null;
  for (const { kind, sum, body } of frames) {
    if (kind !== "manifest") continue;
    const read = readManifest(body, file);
    if (read.ok) return { ok: true, value: { manifest: read.value, sum } };
    first ??= read;
  }
  return first ?? refused(frames.length > 0 ? headLost(file) : notOurs(file));
}

/** Blocks beside each other that are gone; `first` counts from 1. */
interface Run {
  readonly first: number;
  readonly rows: BlockRow[];
}

function lostRuns({ blocks }: Manifest, isLost: (row: BlockRow) => boolean): Run[] {
  const runs: Run[] = [];
  for (const [at, row] of blocks.entries()) {
    if (!isLost(row)) continue;
    const run = runs.at(-1);
    if (run && run.first + run.rows.length === at + 1) run.rows.push(row);
    else runs.push({ first: at + 1, rows: [row] });
  }
  return runs;
}

const count = (n: number): string => n.toLocaleString("en-GB");

const bytesSpoiled = ({ from, to }: Spoiled, anyLost: boolean, file: string): Problem => ({
  code: "carry-bytes-changed",
  severity: anyLost ? "ask" : "note",
  file,
  got: `${count(from + 1)} to ${count(to)}`,
  remedy: anyLost
    ? "What they held is named below."
    : "Everything the file was to hold came in all the same. The stick may be failing: use another.",
});

const blocksLost = ({ first, rows }: Run, { blocks }: Manifest, file: string): Problem => {
  const events = rows.reduce((all, row) => all + row.events, 0);
  const spans = spansOf(rows.flatMap(({ holds }) => holds));
  const held = spans.map(({ device, from, to }) => `${device} ${from === to ? from : `${from} to ${to}`}`);
  return {
    code: "carry-block-lost",
    severity: "ask",
    file,
    got: `${first}${rows.length > 1 ? ` to ${first + rows.length - 1}` : ""} of ${blocks.length}`,
    expected: `${count(events)} ${events === 1 ? "entry" : "entries"}: ${held.join(", ")}`,
    remedy: "Copy the file again from where it was made and carry it in again: it goes on from here.",
  };
};

const blocksStrange = (n: number, file: string): Problem => ({
  code: "carry-block-strange",
  severity: "note",
  file,
  got: String(n),
  remedy: "They were left out. If two files were joined into one, carry each in by itself.",
});

const headLost = (file: string): Problem => ({
  code: "carry-manifest-lost",
  severity: "stop",
  file,
  remedy: "Nothing was taken. Copy the file again from where it was made.",
});

const notOurs = (file: string): Problem => ({
  code: "carry-not-ours",
  severity: "stop",
  file,
  remedy: "Nothing was taken. Name a file that npx leafward carry out has made, or copy it again.",
});
