import type { Problem } from "../../../core/outcome/problem.ts";

type Sentence = (p: Problem) => string;

const quoted = (p: Problem): string => `"${(p.got ?? "").slice(0, 80)}"`;
const got = (p: Problem): string => p.got ?? "something";
const expected = (p: Problem): string => p.expected ?? "something else";

/** One sentence for each code of a logger or weather file. Where it is comes before, what to do comes after. */
const SENTENCES = {
  "logger-unreadable": (p) => `the file cannot be opened (${expected(p)}).`,
  "logger-not-text": (p) => `this is no text file of a logger (${expected(p)}).`,
  "logger-empty": () => "the file is empty.",
  "logger-no-rows": (p) => `no row with a time and a number was found; it begins with ${quoted(p)}.`,
  "logger-no-date": (p) => `the rows have a time of day, ${quoted(p)}, but no date.`,
  "logger-no-values": (p) => `no column of temperature or humidity was recognised among ${got(p)}.`,
  "logger-no-readings": (p) => `no row could be used (${got(p)}).`,
  "logger-column-unknown": (p) => `there is no column ${quoted(p)}; there are ${expected(p)}.`,
  "logger-cut-short": (p) => `the packed file ends too early (${expected(p)}); what came before was read.`,
  "logger-date-order": (p) => `the dates can be read in two ways, ${got(p)}; they were read ${expected(p)}.`,
  "logger-dates-mixed": (p) => `most dates are ${expected(p)}, but ${got(p)} cannot be; they were left out.`,
  "logger-date-order-steps": (p) => `no day is above 12; the dates were read ${expected(p)}.`,
  "logger-no-year": (p) => `the dates have no year; they were put into ${expected(p)}.`,
  "logger-clock-twelve": () => "the hours run from 1 to 12 twice a day without AM or PM.",
  "logger-unit-temperature": (p) =>
    `the unit of temperature is not written; ${expected(p)} was taken (${got(p)}).`,
  "logger-unit-humidity": (p) => `humidity runs from ${got(p)}, so it was read as ${expected(p)}.`,
  "logger-no-headings": (p) => `there are no headings; ${expected(p)}.`,
  "logger-several-sensors": (p) => `there are several sensors (${got(p)}); ${expected(p)} was read.`,
  "logger-several-times": (p) => `there are several columns of time (${got(p)}); ${expected(p)} was read.`,
  "logger-claim-samples": (p) =>
    `the lines above the headings say ${got(p)} samples; there are ${expected(p)}.`,
  "logger-claim-step": (p) =>
    `the lines above the headings say one reading every ${got(p)}; it is ${expected(p)}.`,
  "logger-rows-shifted": (p) => `the rows have ${got(p)} than there are headings; ${expected(p)}.`,
  "logger-decimal-split": () =>
    "the comma parts both the cells and the decimals; two cells were put together for each value.",
  "logger-numbers-mixed": (p) => `some numbers have a decimal comma and some a point (${got(p)}).`,
  "logger-values-left-out": (p) => `${got(p)} cannot be ${expected(p)} and were left empty.`,
  "logger-damp-above-hundred": (p) => `${got(p)} readings are slightly above 100 %; they were set to 100 %.`,
  "logger-dew-point": () => "there is no humidity; it was worked out from temperature and dew point.",
  "logger-summer-time": (p) => `the clock jumps by an hour (${got(p)}); ${expected(p)}.`,
  "logger-order": (p) => `${got(p)} rows were earlier than the row before them; they were put in order.`,
  "logger-duplicates": (p) =>
    `${got(p)} rows have a time that was there already; the first of each was kept.`,
  "logger-gaps": (p) => `readings are missing: ${got(p)}.`,
  "logger-rows-left-out": (p) => `${got(p)} rows were left out: ${expected(p)}.`,
  "logger-quote-open": (p) =>
    `in ${got(p)} rows a quotation mark opens and is not closed; it was read as a letter.`,
  "logger-zones-in-cells": (p) =>
    `the times change their offset (${got(p)}); all were put to ${expected(p)}.`,
} satisfies Record<string, Sentence>;

export type LoggerCode = keyof typeof SENTENCES;
export const loggerCodes = (): readonly LoggerCode[] => Object.keys(SENTENCES) as LoggerCode[];

type Facts = Omit<Problem, "code" | "severity">;

/** A problem of a logger file whose code has its sentence here. */
export const loggerProblem = (code: LoggerCode, severity: Problem["severity"], facts: Facts): Problem => ({
  code,
  severity,
  ...facts,
});

/** `store.csv, line 3, column RH: humidity runs from ... Look at ...` */
export function sayLoggerProblem(problem: Problem): string {
  const { code, file, line, column, remedy } = problem;
  const place = [file, line === undefined ? "" : `line ${line}`, column ? `column ${column}` : ""].filter(
    Boolean,
  );
  const sentence =
    (SENTENCES as Readonly<Record<string, Sentence>>)[code]?.(problem) ?? `${code} (${got(problem)}).`;
  return place.length > 0
    ? `${place.join(", ")}: ${sentence} ${remedy}`
    : `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)} ${remedy}`;
}
