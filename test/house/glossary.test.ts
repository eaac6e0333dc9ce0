import ts from "typescript";
import { describe, expect, test } from "vitest";
import { filesUnder, textOf } from "./source-files.ts";

/** Exported types that need no entry, each with why. */
const EXEMPT: Readonly<Record<string, string>> = {
  Both: "two literals for one three-valued truth, explained beside it",
  Check: "a function's shape, no concept of the trade",
  Comparison: "one comparison of a condition, explained where it is read",
  Fault: "a function's shape, no concept of the trade",
  Op: "the comparisons of a condition are listed where they are read",
  Planned: "what the planner hands back, a plan and the use of stores",
  PlanOptions: "settings of one function, explained beside it",
  ProgrammeBuilder: "collects rows and columns, explained beside it",
  RuleTables: "parsed files of whatever shape, before they are checked",
  SolveOptions: "settings of one function, explained beside it",
  Values: "facts in the order a check reads them, explained beside it",
  StoreRow: "the planner's own sum over stores of one use",
};
const FOLDERS = ["items", "care", "ward", "plan", "stores", "log", "units", "outcome"].map(
  (folder) => `src/core/${folder}/`,
);

/** A file of the folder itself; what a folder inside it exports is a part of one subject, explained there. */
const isOwnFile = (folder: string, file: string): boolean =>
  file.startsWith(folder) && !file.slice(folder.length).includes("/");

interface Exported {
  readonly name: string;
  readonly file: string;
  readonly isType: boolean;
  readonly members: readonly string[];
}

const core = filesUnder("src/core")
  .filter((path) => path.endsWith(".ts"))
  .flatMap(exportsOf);
const entries = entriesOf(textOf("docs/glossary.md"));
const symbols = entries.flatMap((entry) => entry.symbols);

describe("the glossary and the code use the same words", () => {
  test("there is something to compare", () => {
    expect(core.length).toBeGreaterThan(100);
    expect(symbols.length).toBeGreaterThan(60);
  });

  test("every symbol of the glossary is exported by the core", () => {
    const lost = symbols.filter((symbol) => {
      const [name, member] = symbol.split(".");
      const found = core.filter((each) => each.name === name);
      return (
        found.length === 0 || (member !== undefined && !found.some((each) => each.members.includes(member)))
      );
    });
    expect(lost).toEqual([]);
  });

  test("every type the core exports about the collection, care, plan and stores has an entry", () => {
    const known = new Set([...symbols.map((symbol) => symbol.split(".")[0]), ...Object.keys(EXEMPT)]);
    const missing = core.filter(
      (each) =>
        each.isType && FOLDERS.some((folder) => isOwnFile(folder, each.file)) && !known.has(each.name),
    );
    expect(missing.map(({ file, name }) => `${name} (${file})`)).toEqual([]);
  });

  test("no exemption outlives its type", () => {
    expect(Object.keys(EXEMPT).filter((name) => !core.some((each) => each.name === name))).toEqual([]);
  });

  test("a term stands once, with its meaning and its source", () => {
    const terms = entries.map(({ term }) => term);
    expect(terms.filter((term, at) => terms.indexOf(term) !== at)).toEqual([]);
    expect(
      entries.filter(({ meaning, source }) => meaning === "" || source === "").map(({ term }) => term),
    ).toEqual([]);
  });
});

function exportsOf(file: string): Exported[] {
  const source = ts.createSourceFile(file, textOf(file), ts.ScriptTarget.ES2023, false, ts.ScriptKind.TS);
  return source.statements.flatMap((statement): Exported[] => {
    if (!ts.canHaveModifiers(statement)) return [];
    if (!ts.getModifiers(statement)?.some((each) => each.kind === ts.SyntaxKind.ExportKeyword)) return [];
    const named = (
      name: ts.Node | undefined,
      isType: boolean,
      members: readonly string[] = [],
    ): Exported[] => (name && ts.isIdentifier(name) ? [{ name: name.text, file, isType, members }] : []);
    if (ts.isInterfaceDeclaration(statement)) return named(statement.name, true, membersOf(statement));
    if (ts.isTypeAliasDeclaration(statement)) return named(statement.name, true);
    if (ts.isClassDeclaration(statement)) return named(statement.name, true);
    if (ts.isFunctionDeclaration(statement)) return named(statement.name, false);
    if (ts.isVariableStatement(statement))
      return statement.declarationList.declarations.flatMap((each) => named(each.name, false));
    return [];
  });
}

/** Names inside an interface, those it takes over with `extends` left out. */
function membersOf(statement: ts.InterfaceDeclaration): string[] {
  return statement.members.flatMap((member) =>
    member.name && ts.isIdentifier(member.name) ? [member.name.text] : [],
  );
}

interface Entry {
  readonly term: string;
  readonly meaning: string;
  readonly symbols: readonly string[];
  readonly source: string;
}

/** Rows of the tables, headings and rules left out. */
function entriesOf(page: string): Entry[] {
  return page.split("\n").flatMap((line): Entry[] => {
    if (!line.startsWith("| ") || line.startsWith("| term |")) return [];
    const [, term = "", meaning = "", , symbol = "", source = ""] = line
      .split("|")
      .map((cell) => cell.trim());
    return [
      { term, meaning, symbols: [...symbol.matchAll(/`([^`]+)`/g)].map(([, name = ""]) => name), source },
    ];
  });
}
