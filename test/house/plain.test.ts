import { dirname, join, normalize } from "node:path";
import { describe, expect, test } from "vitest";
import { filesUnder, textOf } from "./source-files.ts";

const READABLE = /\.(ts|tsx|mts|mjs|js|json|md|typ|css|html|svg|csv|yml|yaml|sh)$/;
const files = filesUnder("");
const readable = files.filter((path) => READABLE.test(path));

/** Lines of readable files on which a pattern stands, as `file:line`. */
function linesWith(pattern: RegExp, among = readable): string[] {
  return among.flatMap((path) =>
    textOf(path)
      .split("\n")
      .flatMap((line, at) => (pattern.test(line) ? [`${path}:${at + 1}`] : [])),
  );
}

/** The words looked for are put together here, so that this file does not find itself. */
const anyOf = (...parts: readonly string[]): string => parts.join("|");

describe("every file can be read anywhere", () => {
  test("no file names a path of one machine", () => {
    const roots = anyOf("home", "Users", "work", "tmp", "root", "mnt", "opt", "private", "var");
    expect(linesWith(new RegExp(`(?:^|[\\s"'\`(=,])/(?:${roots})(?:/|["'\`\\s)]|$)`))).toEqual([]);
    expect(linesWith(/(?:^|[\s"'`(=])[A-Z]:\\{1,2}(?:Users|work)/)).toEqual([]);
  });

  test("no file names the host of a package registry", () => {
    const hosts = anyOf(
      "registry\\.npm",
      "registry\\.yarn",
      "pkg\\.github\\.c",
      "py" + "pi\\.org",
      "art" + "ifactory",
    );
    expect(linesWith(new RegExp(hosts.replaceAll("registry", "regis" + "try")))).toEqual([]);
  });

  test("nothing is left for later in a comment", () => {
    const marks = anyOf("TO" + "DO", "FIX" + "ME", "XX" + "X");
    expect(linesWith(new RegExp(`\\b(?:${marks})\\b`))).toEqual([]);
  });
});

describe("the pages lead somewhere", () => {
  const pages = files.filter((path) => path.endsWith(".md"));
  const known = new Set(files);
  const folders = new Set(files.flatMap(foldersAbove));

  test.each(pages)("every relative link of %s leads to a file, a folder or a heading", (page) => {
    const lost = linksOf(textOf(page)).filter((link) => {
      if (/^[a-z]+:/i.test(link)) return false;
      const [path = "", heading = ""] = link.split("#");
      const target = path === "" ? page : normalize(join(dirname(page), decodeURI(path))).replace(/\/$/, "");
      if (!known.has(target)) return !folders.has(target);
      return heading !== "" && target.endsWith(".md") && !headingsOf(textOf(target)).includes(heading);
    });
    expect(lost).toEqual([]);
  });
});

describe("the published tables", () => {
  const tables = filesUnder("data").filter((path) => path.endsWith(".json"));
  const sources = JSON.parse(textOf("data/sources.json")) as Record<string, { what: string; status: string }>;

  test.each(tables)("%s is JSON", (path) => {
    expect(() => JSON.parse(textOf(path))).not.toThrow();
  });

  test("every rule and every condition names a source that is listed", () => {
    const rules = tables.filter((path) => path.startsWith("data/rules/")).flatMap(entriesOf);
    const derivations = entriesOf("data/derivations.json");
    expect(rules.length).toBeGreaterThan(100);
    const lost = [...rules, ...derivations].filter(({ source }) => sources[source] === undefined);
    expect(lost.map(({ id, source }) => `${id}: ${source}`)).toEqual([]);
  });

  test("every norm says where its figures come from", () => {
    const norms = JSON.parse(textOf("data/norms.json")) as Record<
      string,
      { id: string; source?: string }[] | string
    >;
    const silent = Object.values(norms).flatMap((group) =>
      typeof group === "string" ? [] : group.filter((each) => !each.source?.trim()).map((each) => each.id),
    );
    expect(silent).toEqual([]);
  });

  test("every source says how far it is trusted", () => {
    const trust = ["seen", "seen in part", "from memory", "common practice"];
    expect(Object.entries(sources).filter(([, { status }]) => !trust.includes(status))).toEqual([]);
  });
});

function entriesOf(path: string): { id: string; source: string }[] {
  return JSON.parse(textOf(path)) as { id: string; source: string }[];
}

function foldersAbove(path: string): string[] {
  const folder = dirname(path);
  return folder === "." ? ["."] : [folder, ...foldersAbove(folder)];
}

/** Targets of links and pictures outside code. */
function linksOf(text: string): string[] {
  const prose = text.replace(/```[\s\S]*?```/g, "").replace(/`[^`\n]*`/g, "");
  return [...prose.matchAll(/\]\(<?([^)\s>]+)>?(?:\s+"[^"]*")?\)/g)].map(([, link = ""]) => link);
}

/** Headings as a page of Markdown is commonly shown: lower case, hyphens for spaces. */
function headingsOf(text: string): string[] {
  return text
    .split("\n")
    .filter((line) => /^#{1,6} /.test(line))
    .map((line) =>
      line
        .replace(/^#+ /, "")
        .toLowerCase()
        .replace(/[^\p{L}\p{N} _-]/gu, "")
        .trim()
        .replace(/ /g, "-"),
    );
}
