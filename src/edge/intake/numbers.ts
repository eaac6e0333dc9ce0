import { plainDigits } from "./digits.ts";

/** How a file writes decimals. `mixed`: both ways were seen; `unknown`: neither. */
export type NumberStyle = "point" | "comma" | "mixed" | "unknown";
export type NumberReading = number | "two ways" | null;

const SPACES = /[\s\u00a0\u2007\u2009\u202f'’]/g;
const SIGNED = /^[+-]?[\d.,]+$/;

/** What one cell shows about the style of its file; null: nothing. */
export function styleShownBy(text: string): "point" | "comma" | null {
  const bare = bareNumber(text);
  if (!SIGNED.test(bare)) return null;
  const last = Math.max(bare.lastIndexOf("."), bare.lastIndexOf(","));
  if (last < 0 || isGrouped(bare)) return null;
  return bare[last] === "," ? "comma" : "point";
}

/** Reads digits with decimal point or comma, thousands in groups of three, and the unit if it is the one of the column. */
export function numberFrom(text: string, style: NumberStyle, whole: boolean, unit = ""): NumberReading {
  const bare = bareNumber(withoutUnit(text, unit));
  if (!SIGNED.test(bare) || !/\d/.test(bare)) return null;
  if (isOneGroup(bare)) return oneGroup(bare, style, whole);
  if (isGrouped(bare)) return Number(bare.replace(/[.,]/g, ""));
  return decimal(bare);
}

const bareNumber = (text: string): string => plainDigits(text).trim().replace("−", "-").replace(SPACES, "");

function withoutUnit(text: string, unit: string): string {
  const trimmed = text.trim();
  const known = unit.startsWith("%") ? ["%"] : [unit];
  const suffix = known.find((each) => each !== "" && trimmed.toLowerCase().endsWith(each.toLowerCase()));
  return suffix === undefined ? trimmed : trimmed.slice(0, -suffix.length);
}

/** `1,500` or `1.500`: a thousand and a half, or one and a half. */
const isOneGroup = (bare: string): boolean => /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/.test(bare);
const isGrouped = (bare: string): boolean => /^[+-]?[1-9]\d{0,2}(?:(?:,\d{3})+|(?:\.\d{3})+)$/.test(bare);

function oneGroup(bare: string, style: NumberStyle, whole: boolean): NumberReading {
  const thousands = Number(bare.replace(/[.,]/, ""));
  if (whole) return thousands;
  if (style === "mixed" || style === "unknown") return "two ways";
  const isDecimal = bare.includes(",") === (style === "comma");
  return isDecimal ? Number(bare.replace(",", ".")) : thousands;
}

function decimal(bare: string): NumberReading {
  const last = Math.max(bare.lastIndexOf("."), bare.lastIndexOf(","));
  if (last < 0) return Number(bare);
  const left = bare.slice(0, last);
  const separator = bare[last] === "," ? "." : ",";
  const groups = left.replace(/^[+-]/, "").split(separator);
  const grouped = groups.length === 1 || groups.slice(1).every((group) => group.length === 3);
  const right = bare.slice(last + 1);
  if (!grouped || !groups.every((group) => /^\d*$/.test(group))) return null;
  return Number(`${left.replaceAll(separator, "") || "0"}.${right || "0"}`);
}
