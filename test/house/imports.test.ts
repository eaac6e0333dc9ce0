import { describe, expect, test } from "vitest";
import { type Arrow, arrowsIn, arrowsOf, fileMeant, filesUnder, isThere, textOf } from "./source-files.ts";

/** The order inside the core: each folder imports only itself and those before it. */
const CORE = ["outcome", "units", "physics", "items", "care", "ward", "plan", "stores", "log", "say"];
/** Packages that only compute: schemas and SHA-256; the log alone may use them. */
const PURE = /^(?:zod|@noble\/hashes\/.+)$/;
const isCode = (path: string): boolean => /\.(ts|tsx|mts)$/.test(path) && !path.endsWith(".d.ts");

/** Floors of the house, the lowest first; what stands on one floor may lean on the floors below it. */
function floorOf(path: string): number {
  const core = /^src\/core\/([^/]+)\//.exec(path)?.[1];
  if (core !== undefined) return CORE.indexOf(core);
  if (path.startsWith("src/edge/")) return 100;
  if (path.startsWith("src/apps/")) return 101;
  return 200;
}

interface Import extends Arrow {
  readonly from: string;
  /** The project's file, when the import is relative. */
  readonly file: string | null;
}

const files = ["src", "bench", "demo"].filter(isThere).flatMap(filesUnder).filter(isCode);
const imports: Import[] = files.flatMap((from) =>
  arrowsOf(from).map((arrow) => ({
    ...arrow,
    from,
    file: arrow.to.startsWith(".") ? fileMeant(from, arrow.to) : null,
  })),
);
const said = ({ from, file, to }: Import): string => `${from} imports ${file ?? to}`;
const inCore = ({ from }: { from: string }): boolean => from.startsWith("src/core/");

describe("imports point one way", () => {
  test("there is something to walk", () => {
    expect(files.length).toBeGreaterThan(50);
    expect(imports.filter((each) => each.file !== null).length).toBeGreaterThan(100);
  });

  test("apps lean on the edge, the edge on the core; no arrow points upward", () => {
    expect(upward(imports).map(said)).toEqual([]);
  });

  test(`inside the core the order is ${CORE.join(", ")}`, () => {
    const strangers = files.filter((path) => path.startsWith("src/core/") && floorOf(path) < 0);
    expect(strangers, "folders of the core without a place in the order").toEqual([]);
    expect(upward(imports.filter(inCore)).map(said)).toEqual([]);
  });

  test("apps are imported by nobody outside apps, but for what measures them", () => {
    const outside = imports.filter(
      ({ file, from }) => file?.startsWith("src/apps/") && !/^(?:src\/apps|bench)\//.test(from),
    );
    expect(outside.map(said)).toEqual([]);
  });

  test("the core touches no file, clock, network or package but the log's two pure ones: type imports alone leave it", () => {
    expect(
      imports
        .filter(inCore)
        .filter((each) => each.file === null && !each.typeOnly)
        .filter(({ from, to }) => !(from.startsWith("src/core/log/") && PURE.test(to)))
        .map(said),
    ).toEqual([]);
    const reaching = imports
      .filter(inCore)
      .filter((each) => each.file !== null && !each.file.startsWith("src/core/"));
    expect(reaching.map(said)).toEqual([]);
  });

  test("nor does it ask the clock, the dice or the machine by a global name", () => {
    const asks =
      /\bDate\.now\(|\bnew Date\(\)|\bMath\.random\(|\bperformance\.now\(|\bprocess\.|\bfetch\(|\blocalStorage\b/;
    expect(files.filter((path) => path.startsWith("src/core/") && asks.test(textOf(path)))).toEqual([]);
  });

  test("no circle closes, types among the arrows", () => {
    expect(circleIn(imports)).toBeNull();
  });

  test("every relative import names a file that is there", () => {
    const known = new Set(["src", "bench", "demo", "test", "scripts"].filter(isThere).flatMap(filesUnder));
    const lost = imports.filter((each) => each.file !== null && isCode(each.file) && !known.has(each.file));
    expect(lost.map(said)).toEqual([]);
  });

  test("no folder or file is a drawer for what nobody placed", () => {
    const drawers = files.filter((path) =>
      path.split("/").some((part) => /^(utils?|helpers?|common|misc)(\.|$)/i.test(part)),
    );
    expect(drawers).toEqual([]);
  });
});

describe("the walker sees what it should", () => {
  const arrow = (from: string, file: string): Import => ({ from, file, to: file, typeOnly: false });

  test("an arrow upward is named with both files", () => {
    const wrong = [
      arrow("src/core/care/decide.ts", "src/core/plan/plan.ts"),
      arrow("src/edge/worker.ts", "src/apps/cli/main.ts"),
    ];
    const right = [
      arrow("src/core/plan/plan.ts", "src/core/care/care.ts"),
      arrow("src/apps/cli/main.ts", "src/edge/worker.ts"),
    ];
    expect(upward([...wrong, ...right]).map(said)).toEqual([
      "src/core/care/decide.ts imports src/core/plan/plan.ts",
      "src/edge/worker.ts imports src/apps/cli/main.ts",
    ]);
  });

  test("a circle is named from file to file", () => {
    expect(circleIn([arrow("a.ts", "b.ts"), arrow("b.ts", "c.ts"), arrow("c.ts", "b.ts")])).toBe(
      "b.ts -> c.ts -> b.ts",
    );
  });

  test.each<[string, Arrow[]]>([
    ['import type { A } from "../a.ts"', [{ to: "../a.ts", typeOnly: true }]],
    ['import { type A, type B } from "b"', [{ to: "b", typeOnly: true }]],
    ['import { type A, b } from "b"', [{ to: "b", typeOnly: false }]],
    ['import "node:fs"', [{ to: "node:fs", typeOnly: false }]],
    ['export * from "./c.ts"', [{ to: "./c.ts", typeOnly: false }]],
    ['const d = await import("./d.ts")', [{ to: "./d.ts", typeOnly: false }]],
    ['type E = import("./e.ts").E', [{ to: "./e.ts", typeOnly: true }]],
    ['// import "./f.ts"\nconst g = "from \'./g.ts\'"', []],
  ])("%s", (text, arrows) => {
    expect(arrowsIn(text, "sample.ts")).toEqual(arrows);
  });
});

function upward(all: readonly Import[]): Import[] {
  return all.filter(({ from, file }) => file !== null && isCode(file) && floorOf(file) > floorOf(from));
}

/** The first circle found, written out, or null. */
function circleIn(all: readonly Import[]): string | null {
  const next = new Map<string, string[]>();
  for (const { from, file } of all) if (file !== null) next.set(from, [...(next.get(from) ?? []), file]);
  const state = new Map<string, "open" | "done">();
  const walk = (file: string, path: readonly string[]): string | null => {
    if (state.get(file) === "open") return [...path.slice(path.indexOf(file)), file].join(" -> ");
    if (state.get(file) === "done") return null;
    state.set(file, "open");
    for (const other of next.get(file) ?? []) {
      const circle = walk(other, [...path, file]);
      if (circle !== null) return circle;
    }
    state.set(file, "done");
    return null;
  };
  for (const file of next.keys()) {
    const circle = walk(file, []);
    if (circle !== null) return circle;
  }
  return null;
}
