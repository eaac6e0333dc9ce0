import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { BrokenCell } from "./raw-table.ts";

/** Unpacked size above which a workbook is refused; a sheet of 50,000 rows and 20 columns unpacks to about 60 MB. */
export const MOST_UNPACKED = 250_000_000;

export interface Merge {
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
  readonly ref: string;
}

/** What a reader of values does not tell about a sheet. Rows and columns count from 0. */
export interface SheetMarks {
  readonly broken: ReadonlyMap<string, BrokenCell>;
  readonly merges: readonly Merge[];
}

export interface PreparedWorkbook {
  /** The same workbook without the cells that have no usable value. */
  readonly bytes: Uint8Array;
  /** By sheet name. */
  readonly marks: ReadonlyMap<string, SheetMarks>;
}

export class TooLarge extends Error {}

/** Takes out formulas without a stored result and error cells, which would stop the whole workbook, and notes where they were. */
export function prepareWorkbook(packed: Uint8Array): PreparedWorkbook {
  const parts = unpack(packed);
  const marks = new Map<string, SheetMarks>();
  for (const [name, path] of sheetPaths(parts)) {
    const sheet = parts[path];
    if (sheet === undefined) continue;
    const broken = new Map<string, BrokenCell>();
    const xml = strFromU8(sheet);
    const mended = withoutBroken(xml, broken);
    if (broken.size > 0) parts[path] = strToU8(mended);
    marks.set(name, { broken, merges: mergesOf(xml) });
  }
  return { bytes: zipSync(parts, { level: 0 }), marks };
}

function unpack(packed: Uint8Array): Record<string, Uint8Array> {
  let size = 0;
  return unzipSync(packed, {
    filter: ({ name, originalSize }) => {
      if (!/\.(xml|rels)$/i.test(name)) return false;
      size += originalSize;
      if (size > MOST_UNPACKED) throw new TooLarge();
      return true;
    },
  });
}

function sheetPaths(parts: Record<string, Uint8Array>): [string, string][] {
  const book = strFromU8(parts["xl/workbook.xml"] ?? new Uint8Array());
  const links = strFromU8(parts["xl/_rels/workbook.xml.rels"] ?? new Uint8Array());
  const targets = new Map<string, string>();
  for (const [link] of links.matchAll(/<(?:\w+:)?Relationship\s[^>]*>/g))
    targets.set(attribute(link, "Id"), attribute(link, "Target"));
  return [...book.matchAll(/<(?:\w+:)?sheet\s[^>]*>/g)].map(([sheet]) => {
    const target = targets.get(attribute(sheet, "r:id")) ?? "";
    return [attribute(sheet, "name"), target.startsWith("/") ? target.slice(1) : `xl/${target}`];
  });
}

const attribute = (tag: string, name: string): string =>
  unescaped(new RegExp(`\\s${name}="([^"]*)"`).exec(tag)?.[1] ?? "");

const ENTITIES: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };
const unescaped = (text: string): string =>
  text.replace(/&(amp|lt|gt|quot|apos);/g, (_, name: string) => ENTITIES[name] ?? "");

function withoutBroken(xml: string, broken: Map<string, BrokenCell>): string {
  return xml.replace(/<c\s([^>]*?)(?:\/>|>([\s\S]*?)<\/c>)/g, (cell, attributes: string, inside = "") => {
    const found = brokenCell(attributes, inside);
    if (found === null) return cell;
    const at = addressOf(attribute(` ${attributes}`, "r"));
    if (at !== null) broken.set(`${at[0]},${at[1]}`, found);
    return "";
  });
}

function brokenCell(attributes: string, inside: string): BrokenCell | null {
  const value = /<v(?:\s[^>]*)?>([\s\S]*?)<\/v>/.exec(inside);
  if (/\bt="e"/.test(attributes)) return new BrokenCell("error", unescaped(value?.[1] ?? "#ERROR"));
  const formula = /<f[\s>/]/.test(inside);
  const hasResult = value !== null && (value[1] !== "" || /\bt="str"/.test(attributes));
  if (!formula || hasResult) return null;
  return new BrokenCell("formula", `=${unescaped(/<f(?:\s[^>]*)?>([\s\S]*?)<\/f>/.exec(inside)?.[1] ?? "")}`);
}

function mergesOf(xml: string): Merge[] {
  return [...xml.matchAll(/<mergeCell\s[^>]*?ref="([A-Z]+\d+):([A-Z]+\d+)"/g)].flatMap(
    ([, from = "", to = ""]) => {
      const [a, b] = [addressOf(from), addressOf(to)];
      return a === null || b === null
        ? []
        : [{ top: a[0], left: a[1], bottom: b[0], right: b[1], ref: `${from}:${to}` }];
    },
  );
}

/** `C5` → [4, 2]. */
function addressOf(ref: string): [number, number] | null {
  const match = /^([A-Z]{1,3})(\d+)$/.exec(ref);
  if (!match) return null;
  const column = [...(match[1] ?? "")].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
  return [Number(match[2]) - 1, column - 1];
}
