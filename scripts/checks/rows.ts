import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Inputs } from "./model.ts";

/** One published value: what a model must give for these inputs. */
export interface Row {
  /** File name and place in its list, counted from 1. */
  readonly at: string;
  readonly model: string;
  readonly inputs: Inputs;
  readonly expected: Readonly<Record<string, unknown>>;
  readonly tolerance: unknown;
  readonly source: string;
}

/** Every row of every `*.json` of the folder, and what could not be read, each with what to do.
 *  A file is a list of rows, or `{ "checks": [rows], … }`.   @throws Error when the folder is absent or holds no JSON file */
export function rowsOfFolder(folder: string): { rows: Row[]; problems: string[] } {
  const rows: Row[] = [];
  const problems: string[] = [];
  for (const file of jsonFiles(folder)) {
    const list = listOf(join(folder, file));
    if (typeof list === "string") problems.push(`${file}: ${list}`);
    else
      list.forEach((value, i) => {
        const row = rowFrom(value, `${file} row ${i + 1}`);
        if (typeof row === "string") problems.push(`${file} row ${i + 1}: ${row}`);
        else rows.push(row);
      });
  }
  return { rows, problems };
}

function jsonFiles(folder: string): string[] {
  let names: string[];
  try {
    names = readdirSync(folder);
  } catch (error) {
    throw new Error(`Cannot read the folder ${folder}: ${reasonOf(error)}. Give a folder of check files.`);
  }
  const files = names.filter((name) => name.endsWith(".json")).sort();
  if (files.length === 0)
    throw new Error(`No *.json file in ${folder}. Give the folder that holds the check files.`);
  return files;
}

function listOf(path: string): unknown[] | string {
  let parsed: unknown;
  try {
    parsed = JSON.parse(readFileSync(path, "utf8"));
  } catch (error) {
    return `cannot be read as JSON: ${reasonOf(error)}. Mend the file.`;
  }
  const list = isWords(parsed) ? parsed.checks : parsed;
  return Array.isArray(list) ? list : `holds no rows. Expected a list, or {"checks": [rows]}.`;
}

function rowFrom(value: unknown, at: string): Row | string {
  if (!isWords(value)) return `is ${JSON.stringify(value)}. Expected {model, inputs, expected, tolerance}.`;
  const { model, inputs, expected, tolerance, source } = value;
  if (typeof model !== "string" || model === "")
    return `has no model. Name the model that the row tries, e.g. "model": "psychro.satPressure".`;
  if (!isWords(expected)) return `(${model}) has no "expected" group. Write the published values there.`;
  if (inputs !== undefined && !isWords(inputs)) return `(${model}) has inputs that are no group.`;
  return {
    at,
    model,
    inputs: inputs ?? {},
    expected,
    tolerance,
    source: String(source ?? "no source given"),
  };
}

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
const isWords = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);
