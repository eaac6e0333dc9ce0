import { readFileSync, statSync } from "node:fs";
import Papa from "papaparse";
import { careOfCampaign } from "../../core/care/item-care.ts";
import { loadNorms } from "../../core/care/norms.ts";
import { routeOf } from "../../core/care/route.ts";
import { CUT_REFUSALS } from "../../core/say/cutting.ts";
import { PART_NAMES } from "../../core/say/housing.ts";
import type { WantedPiece } from "../../core/stores/cutting/sheets/sheet-problem.ts";
import { type HousingKind, housingFor } from "../../core/stores/housing/housing.ts";
import { readPublished } from "../../edge/published.ts";
import { Refusal } from "./damp/given.ts";
import { openFolder } from "./open-folder.ts";

/** What is to be cut, and of how many items no piece is known. */
export interface WantedCut {
  readonly from: string;
  readonly pieces: readonly WantedPiece[];
  readonly unmeasured: number;
  /** Strips: only the heights count. */
  readonly isStrips: boolean;
}

/** Pieces of the wrappers a campaign still wants, or of a list. @throws Refusal when neither can be read */
export async function wantedCut(
  path: string,
  kind: HousingKind,
  complain: (line: string) => void,
): Promise<WantedCut> {
  let isFolder: boolean;
  try {
    isFolder = statSync(path).isDirectory();
  } catch (error) {
    throw new Refusal([CUT_REFUSALS.file(path, error instanceof Error ? error.message : String(error))]);
  }
  return isFolder ? piecesOfFolder(path, kind, complain) : piecesOfList(path);
}

async function piecesOfFolder(
  folder: string,
  kind: HousingKind,
  complain: (line: string) => void,
): Promise<WantedCut> {
  const opened = await openFolder(folder, complain);
  if (!opened) throw new Refusal([]);
  const norms = loadNorms(readPublished("norms.json"));
  const toWrap = careOfCampaign(opened.book, opened.campaign).filter(
    (care) => !care.done.has("wrap") && routeOf(norms, care).steps.some(({ act }) => act === "wrap"),
  );
  const blanks = toWrap.map(({ item: { id, heightMm = 0, widthMm = 0, thicknessMm = 0 } }) => {
    const made = housingFor(kind, { height: heightMm, width: widthMm, thickness: thicknessMm });
    return made.ok ? made.value.blanks.map((blank) => ({ id, blank })) : null;
  });
  const all = blanks.flatMap((each) => each ?? []);
  if (all.length === 0) throw new Refusal([CUT_REFUSALS.none]);
  return {
    from: opened.campaign.name,
    isStrips: false,
    unmeasured: blanks.filter((each) => each === null).length,
    pieces: all.map(({ id, blank: { part, width, height, count } }) => ({
      name: part === kind ? id : `${id} ${PART_NAMES[part]}`,
      width,
      height,
      count,
      mayTurn: false,
    })),
  };
}

function piecesOfList(path: string): WantedCut {
  const { data } = Papa.parse<Record<string, string>>(readFileSync(path, "utf8").replace(/^\uFEFF/, ""), {
    header: true,
    skipEmptyLines: "greedy",
    transformHeader: (name) => name.trim().toLowerCase(),
  });
  const [first = {}] = data;
  const isStrips = "length_mm" in first;
  if (!isStrips && !("width_mm" in first && "height_mm" in first))
    throw new Refusal([CUT_REFUSALS.row(path, 1, CUT_REFUSALS.columns)]);
  const faults: string[] = [];
  const pieces = data.map((row, n): WantedPiece => {
    const number = (column: string, fallback?: number): number => {
      const text = (row[column] ?? "").trim();
      const value = text === "" && fallback !== undefined ? fallback : Number(text);
      if (text === "" && fallback === undefined ? true : !(value > 0))
        faults.push(CUT_REFUSALS.row(path, n + 2, CUT_REFUSALS.number(column, text)));
      return value;
    };
    return {
      name: (row.piece ?? "").trim() || `piece ${n + 1}`,
      width: isStrips ? 1 : number("width_mm"),
      height: number(isStrips ? "length_mm" : "height_mm"),
      count: Math.round(number("count", 1)),
      mayTurn: (row.grain ?? "").trim().toLowerCase() === "free",
    };
  });
  if (faults.length > 0) throw new Refusal(faults.slice(0, 10));
  return { from: path, pieces, unmeasured: 0, isStrips };
}
