import { expected, got, plain, type Sentence } from "./sentence.ts";

/** One sentence for each code about a file of readings: a logger's export, or a weather file. */
export const LOGGER_SENTENCES = {
  // The file as a whole
  "logger-unreadable": (p) => `the file cannot be opened (${expected(p)}).`,
  "logger-not-text": (p) => `this is no text file of a logger (${expected(p)}).`,
  "logger-empty": () => "the file is empty.",
  "logger-cut-short": (p) => `the packed file ends too early (${expected(p)}); what came before was read.`,
  "logger-no-rows": (p) => `no row with a time and a number was found; it begins with ${got(p)}.`,
  "logger-no-date": (p) => `the rows have a time of day, ${got(p)}, but no date.`,
  "logger-no-values": (p) => `no column of temperature or humidity was recognised among ${plain(p)}.`,
  "logger-no-readings": (p) => `no row could be used (${plain(p)}).`,
  "logger-claim-samples": (p) =>
    `the lines above the headings say ${plain(p)} samples; there are ${expected(p)}.`,
  "logger-claim-step": (p) =>
    `the lines above the headings say one reading every ${plain(p)}; it is ${expected(p)}.`,

  // Columns
  "logger-column-unknown": (p) => `there is no column ${got(p)}; there are ${expected(p)}.`,
  "logger-no-headings": (p) => `there are no headings; ${expected(p)}.`,
  "logger-several-sensors": (p) => `there are several sensors (${plain(p)}); ${expected(p)} was read.`,
  "logger-several-times": (p) => `there are several columns of time (${plain(p)}); ${expected(p)} was read.`,
  "logger-rows-shifted": (p) => `the rows have ${plain(p)} than there are headings; ${expected(p)}.`,

  // Times
  "logger-date-order": (p) =>
    `the dates can be read in two ways, e.g. ${plain(p)}; they were read ${expected(p)}.`,
  "logger-date-order-steps": (p) => `no day is above 12; the dates were read ${expected(p)}.`,
  "logger-dates-mixed": (p) =>
    `most dates are ${expected(p)}, but ${plain(p)} cannot be; they were left out.`,
  "logger-no-year": (p) => `the dates have no year; they were put into ${expected(p)}.`,
  "logger-clock-twelve": () => "the hours run from 1 to 12 twice a day without AM or PM.",
  "logger-zones-in-cells": (p) =>
    `the times change their offset (${plain(p)}); all were put to ${expected(p)}.`,
  "logger-summer-time": (p) => `the clock jumps by an hour (${plain(p)}); ${expected(p)}.`,
  "logger-order": (p) => `${plain(p)} not in the order of time; all were put in order.`,
  "logger-duplicates": (p) =>
    `${plain(p)} with a time that was there already; the first of each time was kept.`,
  "logger-gaps": (p) => `readings are missing: ${plain(p)}.`,
  "logger-silent": (p) => `${plain(p)} without any value, ${expected(p)}.`,

  // Values
  "logger-unit-temperature": (p) =>
    `the unit of temperature is not written; ${expected(p)} was taken (${plain(p)}).`,
  "logger-unit-humidity": (p) => `humidity runs from ${plain(p)}, so it was read as ${expected(p)}.`,
  "logger-dew-point": () => "there is no humidity; it was worked out from temperature and dew point.",
  "logger-decimal-split": () =>
    "the comma parts both the cells and the decimals; two cells were put together for each value.",
  "logger-numbers-mixed": (p) => `some numbers have a decimal comma and some a point (${plain(p)}).`,
  "logger-values-left-out": (p) => `${plain(p)} cannot be ${expected(p)} and stayed empty.`,
  "logger-damp-above-hundred": (p) => `${plain(p)} slightly above 100 %, taken as 100 %.`,
  "logger-rows-left-out": (p) => `${plain(p)} left out: ${expected(p)}.`,
  "logger-quote-open": (p) =>
    `a quotation mark opens and is not closed in ${plain(p)}; it was read as a letter.`,
} satisfies Record<string, Sentence>;
