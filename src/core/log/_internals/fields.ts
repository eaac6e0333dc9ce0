import { z } from "zod";
import { ACTS } from "../../items/campaign.ts";
import type { Day } from "../../units/day.ts";
import { ROLES } from "../roles.ts";

const LENGTHS = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const DAY = /^\d{4}-\d{2}-\d{2}$/;

function isDay(value: unknown): boolean {
  if (typeof value !== "string" || !DAY.test(value)) return false;
  const [year, month, day] = [+value.slice(0, 4), +value.slice(5, 7), +value.slice(8)];
  const isLeap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  return day >= 1 && day <= (month === 2 && !isLeap ? 28 : (LENGTHS[month - 1] ?? 0));
}

export const day = z.custom<Day>(isDay, "a day written yyyy-mm-dd");
/** Minutes after midnight. */
export const minute = z.number().int().min(0).max(1439);
export const minutes = z.number().min(0).max(1440);
export const grams = z.number().min(0).max(100_000);
export const relHum = z.number().min(0).max(1);
export const dryBulb = z.number().min(-60).max(80);
export const hash = z.string().regex(/^[0-9a-f]{64}$/);
export const yesNo = z.enum(["yes", "no", "unsure"]);

/** A number on a tag, a person's code, a station, a store, a bag: short, and for finding a thing again. */
export const code = z.string().min(1).max(80);
/** Empty: the whole item. */
export const part = z.string().max(80);
/** A name of ours or of the vocabulary: `growth_visible`. */
export const word = z.string().regex(/^[a-z][a-z0-9_]{0,59}$/);
export const role = z.enum(ROLES);
export const act = z.enum(ACTS);
/** Whoever set a number of days. */
export const stretch = { from: day, to: day } as const;

/** Words that stand on a thing or come with it: a title, a shelf, a handling rule. They are about the thing, and not searched. */
export const label = (most: number) => z.string().max(most);
/** What somebody writes in their own words. Every kind with one says so, and it is searched for health words before it is written. */
export const freeText = z.string().min(1).max(2000);

const factValue = z.union([label(2000), z.number(), z.boolean(), z.array(label(200)).max(100).readonly()]);
export const facts = z.record(z.string().min(1).max(60), factValue);
