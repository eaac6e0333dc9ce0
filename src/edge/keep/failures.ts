import type { Problem } from "../../core/outcome/problem.ts";

const NOT_WRITTEN = "Nothing of this was written down; what was acknowledged before is safe.";

export const diskFull = (where: string): Problem => ({
  code: "keep-full",
  severity: "stop",
  file: where,
  remedy: `${NOT_WRITTEN} Make room on that disk, then do it again.`,
});

export const readOnly = (where: string): Problem => ({
  code: "keep-read-only",
  severity: "stop",
  file: where,
  remedy: `It can be read. To write, copy the folder to a disk that can be written, or allow writing there.`,
});

export const damaged = (where: string, how: string): Problem => ({
  code: "keep-damaged",
  severity: "stop",
  file: where,
  got: how,
  remedy:
    "Nothing more is written to it. Leave the file as it is; npx leafward verify tells what is whole, npx leafward restore <backup> <folder> puts the last good copy in its place and keeps this one beside it.",
});

export const notALog = (where: string): Problem => ({
  code: "keep-not-ours",
  severity: "stop",
  file: where,
  remedy:
    "It was not touched. If it was the log once, put the last backup in its place: npx leafward restore <backup> <folder>.",
});

export const tooNew = (where: string, got: number, known: number): Problem => ({
  code: "keep-newer",
  severity: "stop",
  file: where,
  got: String(got),
  expected: String(known),
  remedy: "It was not touched. Take the newer Leafward, on every machine that writes to it.",
});

export const inUse = (where: string): Problem => ({
  code: "keep-in-use",
  severity: "stop",
  file: where,
  remedy: `${NOT_WRITTEN} Close the other program that writes to it, or wait and do it again.`,
});

export const unopened = (where: string, why: string): Problem => ({
  code: "keep-unopened",
  severity: "stop",
  file: where,
  expected: why,
  remedy:
    "Look whether the folder is there and may be read; a log copied in the middle of work needs a disk that can be written.",
});

export const unreachable = (where: string, why: string): Problem => ({
  code: "keep-unreachable",
  severity: "stop",
  file: where,
  expected: why,
  remedy:
    "What was under way may or may not be written down; doing it again does no harm. Look whether the database runs and LEAFWARD_DATABASE_URL is right.",
});

export const notDurable = (where: string): Problem => ({
  code: "keep-not-durable",
  severity: "stop",
  file: where,
  remedy: "Nothing is written there. Set fsync = on in the settings of that database and start it again.",
});
