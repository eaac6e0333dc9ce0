import type { Column, Table } from "./columns.ts";
import { sayRange } from "./read-cell.ts";

type Json = Readonly<Record<string, unknown>>;

/** The table's description as a Frictionless Table Schema, made from the same columns that the reader uses. */
export function tableSchemaOf(table: Table): Json {
  const links = Object.entries(table.links).map(([column, resource]) => ({
    fields: column,
    reference: { resource, fields: resource === "people" ? "person" : resource.replace(/s$/, "") },
  }));
  return {
    title: table.title,
    description: table.help,
    fields: Object.entries(table.columns).map(([name, column]) => fieldOf(name, column, table.key)),
    missingValues: [""],
    ...(table.key.length === 0 ? {} : { primaryKey: table.key }),
    ...(links.length === 0 ? {} : { foreignKeys: links }),
  };
}

const TYPES: Readonly<Record<Column["kind"], string>> = {
  text: "string",
  word: "string",
  words: "string",
  answer: "string",
  number: "number",
  "whole number": "integer",
  year: "year",
  day: "date",
  "yes or no": "boolean",
};

function fieldOf(name: string, column: Column, key: readonly string[]): Json {
  const constraints = constraintsOf(name, column, key);
  return {
    name,
    type: TYPES[column.kind],
    description: describe(column),
    ...(column.kind === "yes or no" ? { trueValues: ["yes"], falseValues: ["no"] } : {}),
    ...(Object.keys(constraints).length === 0 ? {} : { constraints }),
  };
}

function constraintsOf(name: string, column: Column, key: readonly string[]): Json {
  const isNumber = TYPES[column.kind] === "number" || TYPES[column.kind] === "integer";
  return {
    ...(column.required ? { required: true } : {}),
    ...(key.length === 1 && key[0] === name ? { unique: true } : {}),
    ...(column.kind === "word" ? { enum: column.allowed } : {}),
    ...(column.kind === "words" ? { pattern: listPattern(column.allowed ?? []) } : {}),
    ...(isNumber && column.min !== undefined ? { minimum: column.min } : {}),
    ...(isNumber && column.max !== undefined ? { maximum: column.max } : {}),
  };
}

/** A list with "|" between has no type of its own in the schema, so it is a pattern; an XML Schema expression, anchored by itself. */
function listPattern(allowed: readonly string[]): string {
  const one = `(${allowed.join("|")})`;
  return `${one}(\\|${one})*`;
}

function describe(column: Column): string {
  const parts = [column.help];
  if (column.kind === "words") parts.push('A list with "|" between.');
  if (column.unit !== undefined) parts.push(`Unit: ${column.unit}.`);
  if (column.min !== undefined || column.max !== undefined) parts.push(`Range: ${sayRange(column)}.`);
  if (column.fallback !== undefined) parts.push(`Empty: ${column.fallback}.`);
  return parts.join(" ");
}
