import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";

/** The project's folder. */
export const HOUSE = join(dirname(fileURLToPath(import.meta.url)), "..", "..");

const PASSED_OVER = new Set(["node_modules", "dist", "out"]);

/** Every file under a folder of the project, as a path from the project with forward slashes; what is built or hidden is left out. */
export function filesUnder(folder: string): string[] {
  const from = join(HOUSE, folder);
  return readdirSync(from, { withFileTypes: true })
    .filter((entry) => !PASSED_OVER.has(entry.name) && !entry.name.startsWith("."))
    .sort((a, b) => a.name.localeCompare(b.name, "en"))
    .flatMap((entry) => {
      const path = folder === "" ? entry.name : `${folder}/${entry.name}`;
      return entry.isDirectory() ? filesUnder(path) : [path];
    });
}

export const isThere = (folder: string): boolean => readdirSync(HOUSE).includes(folder.split("/")[0] ?? "");

export const textOf = (path: string): string => readFileSync(join(HOUSE, path), "utf8");

export interface Arrow {
  /** The module as it is written: `../units/day.ts`, `node:fs`, `zod`. */
  readonly to: string;
  /** Gone after compiling: `import type`, or nothing but `type` names. */
  readonly typeOnly: boolean;
}

/** What a source file imports: import and export-from statements, `import()` and `import("…").Type`. */
export function arrowsOf(path: string): Arrow[] {
  return arrowsIn(textOf(path), path);
}

export function arrowsIn(text: string, name: string): Arrow[] {
  const kind = name.endsWith("x") ? ts.ScriptKind.TSX : ts.ScriptKind.TS;
  const file = ts.createSourceFile(name, text, ts.ScriptTarget.ES2023, false, kind);
  const arrows: Arrow[] = [];
  const add = (module: ts.Node | undefined, typeOnly: boolean): void => {
    if (module && ts.isStringLiteralLike(module)) arrows.push({ to: module.text, typeOnly });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) add(node.moduleSpecifier, importsTypesOnly(node.importClause));
    else if (ts.isExportDeclaration(node)) add(node.moduleSpecifier, node.isTypeOnly);
    else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword)
      add(node.arguments[0], false);
    else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument))
      add(node.argument.literal, true);
    ts.forEachChild(node, visit);
  };
  visit(file);
  return arrows;
}

function importsTypesOnly(clause: ts.ImportClause | undefined): boolean {
  if (!clause) return false;
  if (clause.phaseModifier === ts.SyntaxKind.TypeKeyword) return true;
  const names = clause.namedBindings;
  return (
    clause.name === undefined &&
    names !== undefined &&
    ts.isNamedImports(names) &&
    names.elements.length > 0 &&
    names.elements.every((each) => each.isTypeOnly)
  );
}

/** The file a relative import means, as a path from the project. */
export const fileMeant = (from: string, to: string): string =>
  relative(HOUSE, join(HOUSE, dirname(from), to))
    .split("\\")
    .join("/");
