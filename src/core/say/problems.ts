import type { Problem } from "../outcome/problem.ts";
import { CARRY_SENTENCES } from "./carry.ts";
import { HOUSING_SENTENCES } from "./housing.ts";
import { KEEP_SENTENCES } from "./keep.ts";
import { LOG_SENTENCES } from "./log.ts";
import { LOGGER_SENTENCES } from "./logger-problems.ts";
import { expected, got, plain, type Sentence } from "./sentence.ts";
import { SERVER_SENTENCES } from "./server.ts";

/** One sentence for each code. Where it is comes before, what to do comes after. */
const SENTENCES = {
  // Rules
  "claim-broken": (p) =>
    `with these rules a safety claim no longer holds (${plain(p)}): ${expected(p).replace(/[.]$/, "")}.`,
  "rule-fault": (p) => `${plain(p)} stands there; expected ${expected(p)}.`,

  // The folder and campaign.json
  "no-folder": (p) => `there is no folder ${got(p)}.`,
  "not-a-folder": (p) => `${got(p)} is a file, not a folder.`,
  "empty-folder": (p) => `the folder ${got(p)} is empty.`,
  "no-campaign-file": () => "campaign.json is missing.",
  "campaign-not-json": (p) => `this is not valid JSON (${expected(p)}).`,
  "campaign-version": (p) =>
    `this campaign is of version ${got(p)}; this Leafward reads version ${expected(p)}.`,
  "campaign-field": (p) =>
    p.got ? `it is ${plain(p)}; expected ${expected(p)}.` : `it is missing; expected ${expected(p)}.`,
  "campaign-unknown-field": (p) => `${got(p)} is not a setting of a campaign; it was not read.`,
  "limits-default": (p) => `no limit is given; ${expected(p)} is used.`,
  "end-before-start": (p) => `the campaign ends on ${got(p)}, before it starts on ${expected(p)}.`,
  "plan-outside": (p) => `the plan is wanted from ${got(p)}, outside the campaign (${expected(p)}).`,
  "station-twice": (p) => `two stations are called ${got(p)}.`,
  "no-camera": () => "the campaign has no camera station; nothing can be imaged.",
  "camera-no-days": (p) => `camera ${got(p)} has no open day between ${expected(p)}.`,
  "no-station-of-kind": (p) => `no station is a ${expected(p)}; work that needs one cannot be planned.`,

  // Files and tables
  "missing-table": (p) => `the table ${got(p)} is missing.`,
  "table-twice": (p) => `the table ${expected(p)} is there twice; this one was not read.`,
  "unread-file": (p) => `${got(p)} is none of the tables; it was not read.`,
  "wrong-kind-of-file": (p) => `this is not a text table (${expected(p)}).`,
  "file-unreadable": (p) => `the file cannot be opened (${expected(p)}).`,
  "file-too-large": (p) => `the file has ${plain(p)}; at most ${expected(p)} is read.`,
  "not-utf8": () => "the letters are not UTF-8; they were read as Windows-1252 (Latin-1).",
  "no-headings": (p) => `no row of headings was found; expected ${expected(p)}.`,
  "missing-column": (p) => `the column ${got(p)} is missing; without it no row can be used.`,
  "column-twice": (p) => `the heading ${got(p)} is there twice; only the first column was read.`,
  "unknown-column": (p) => `the column ${got(p)} is not part of this table; it was not read.`,
  "heading-repeated": () => "the headings are repeated here; the row was passed over.",
  "no-rows": () => "there is no item that can be used.",
  "too-many-rows": (p) => `the table has more than ${expected(p)} rows; the rows from here on were not read.`,
  "too-many-problems": (p) => `${expected(p)} rows cannot be used; the rows from here on were not read.`,
  "unclosed-quote": () => "a quotation mark opens here and is never closed; nothing after it could be read.",
  "broken-quotes": () => "the quotation marks in this row do not match.",
  "cell-too-long": (p) => `a cell has ${plain(p)} letters; most likely a quotation mark is missing.`,
  "extra-cells": (p) => `the row has more cells than headings (${got(p)}).`,
  "health-reason-not-kept": () =>
    "this may say why someone is not to do mould work; the entry was not kept and is shown nowhere.",

  // Workbooks
  "workbook-unreadable": (p) => `the workbook cannot be read (${expected(p)}).`,
  "formula-without-value": (p) => `the formula ${got(p)} has no stored result.`,
  "cell-error": (p) => `the cell shows the error ${got(p)}.`,
  "merged-filled": (p) => `merged cells (${plain(p)}) were read as if each row had the value.`,
  "merged-across": (p) => `cells are merged across columns in this row (${got(p)}).`,
  "date-cell-in-text": (p) => `the cell holds a date (${got(p)}); expected ${expected(p)}.`,

  // Cells
  "required-empty": () => "the cell is empty, and it is needed.",
  "not-a-number": (p) => `${got(p)} is not a number.`,
  "not-packs": (p) => `${got(p)} is not a list of packs and prices.`,
  "not-whole": (p) => `${got(p)} is not a whole number.`,
  "number-out-of-range": (p) => `${got(p)} is out of range; expected ${expected(p)}.`,
  "ambiguous-number": (p) => `${got(p)} can be read in two ways (${expected(p)}).`,
  "unknown-word": (p) =>
    p.remedy.startsWith("Did you mean")
      ? `${got(p)} is not known here.`
      : `${got(p)} is not known here; expected ${expected(p)}.`,
  "not-yes-or-no": (p) => `${got(p)} is neither yes nor no.`,
  "not-a-date": (p) => `${got(p)} is not a date.`,
  "short-year": (p) => `${got(p)} has a year of two digits.`,
  "ambiguous-date": (p) => `${got(p)} can be read in two ways (${expected(p)}).`,
  "contradictory-dates": (p) => `${got(p)}: this column has dates in two orders (${expected(p)}).`,
  "not-an-answer": (p) => `${got(p)} is not an answer to this test; expected ${expected(p)}.`,
  "taken-as-unsure": (p) => `${got(p)} was taken as unsure.`,
  "clean-work-assumed": () =>
    "this is not a clear yes, so it counts as no: clean work only. The entry was not kept.",

  // Between tables
  duplicate: (p) => `${got(p)} is there already (${expected(p)}).`,
  "unknown-item": (p) => `there is no item ${got(p)} in the items table.`,
  "unknown-part": (p) => `the item has no part ${got(p)} in the parts table.`,
  "unknown-test": (p) => `there is no test ${got(p)}.`,
  "unknown-person": (p) => `there is no person ${got(p)} in the people table.`,
  "unknown-store": (p) => `there is no store ${got(p)} in the stores table.`,
  "unknown-who": (p) => `${got(p)} is neither a person's code, nor a station, nor "everyone".`,
  "waits-for": (p) => `${plain(p)} must wait: what is named here was itself set aside (${expected(p)}).`,
  disagreement: (p) => `${got(p)} disagrees with ${expected(p)}; both are kept.`,
  "day-outside": (p) => `${got(p)} is outside the campaign (${expected(p)}).`,
  "first-after-last": (p) => `${got(p)} comes after ${expected(p)}.`,
  "hours-missing": () => "the row says hours, but not how many.",
  "session-later": (p) => `work done on ${got(p)}, after the plan begins (${expected(p)}).`,
  "no-people": () => "there is nobody to do the work.",
  "nobody-mould-work": () => "nobody may do mould work; nothing mouldy can be cleaned.",
  "nobody-can": (p) => `nobody can ${expected(p)}.`,
  "no-skills": (p) => `${got(p)} has no skills, so no work is planned for them.`,
  "never-present": (p) => `${got(p)} is never there during the campaign (${expected(p)}).`,
  "no-findings": () => "nothing has been tested yet; every item waits at the Door.",

  // Files of readings
  ...LOGGER_SENTENCES,
  "too-many-readings": (p) => `the file has ${plain(p)} readings; only the first ${expected(p)} were taken.`,
  "reading-gap": (p) => `no reading ${expected(p)}.`,
  "reader-silent": (p) => `the reader gave no values ${expected(p)}.`,
  "reader-stuck": (p) => `the same values stand still ${expected(p)}.`,

  // The log
  ...LOG_SENTENCES,
  ...KEEP_SENTENCES,
  ...CARRY_SENTENCES,
  ...SERVER_SENTENCES,

  // Wrappers and boxes
  ...HOUSING_SENTENCES,
} satisfies Record<string, Sentence>;

/** Every code with a sentence here. */
export type ProblemCode = keyof typeof SENTENCES;
export const problemCodes = (): readonly string[] => Object.keys(SENTENCES);

/** The problem as a sentence: where, what, what to do. A code without a sentence is said plainly rather than not at all. */
export function sayProblem(problem: Problem): string {
  const sentence: Sentence = (SENTENCES as Record<string, Sentence>)[problem.code] ?? unnamed;
  const where = placeOf(problem);
  const said = sentence(problem);
  return `${where === "" ? capital(said) : `${where}: ${said}`} ${problem.remedy}`.trim();
}

const unnamed: Sentence = (p) => `${p.code.replaceAll("-", " ")}: ${got(p)}; expected ${expected(p)}.`;
const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

function placeOf({ file, line, column, rule }: Problem): string {
  const parts = [
    file,
    rule === undefined ? undefined : `rule ${rule}`,
    line === undefined ? undefined : `line ${line}`,
    column === undefined ? undefined : `column ${column}`,
  ];
  const named = parts.filter((part) => part !== undefined).join(", ");
  return file?.endsWith(".json") ? named.replace(", column ", ", ") : named;
}
