import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { CUT_WORDS } from "../../core/say/cutting.ts";
import { HOUSING_CAUTIONS } from "../../core/say/housing.ts";
import type { LayoutGroup } from "../../core/stores/cutting/layout-groups.ts";
import { sheetDrawing } from "../../core/stores/cutting/sheet-drawing.ts";
import { cutOrder } from "../../core/stores/cutting/sheets/cut-order.ts";
import type { SheetProblem, StockSheet } from "../../core/stores/cutting/sheets/sheet-problem.ts";
import { drawingDxf } from "../../edge/handover/drawing-dxf.ts";
import { drawingSvg } from "../../edge/handover/drawing-svg.ts";
import { cuttingPaper } from "../../edge/papers/cutting-paper.ts";
import { Refusal } from "./damp/given.ts";

/** Writes the plan of cuts and every layout, and names the files. @throws Refusal when the folder cannot be written */
export async function drawCuts(
  groups: readonly LayoutGroup[],
  problem: SheetProblem,
  folder: string,
  paper: "A4" | "Letter",
): Promise<string[]> {
  const layouts = groups.map(({ layout, times }, n) => {
    const stock = problem.stocks[layout.stock] as StockSheet;
    return {
      title: CUT_WORDS.layout(n + 1, times, stock),
      drawing: sheetDrawing(layout.placed, stock, problem.pieces),
      cuts: cutOrder(layout.placed, stock, problem)?.map(CUT_WORDS.cut) ?? null,
    };
  });
  const pdf = await cuttingPaper({ layouts, cautions: HOUSING_CAUTIONS }, paper);
  const files: (readonly [string, string | Uint8Array])[] = [
    ["cuts.pdf", pdf],
    ...layouts.flatMap(({ title, drawing }, n) => [
      [`layout-${n + 1}.svg`, drawingSvg(drawing, title)] as const,
      [`layout-${n + 1}.dxf`, drawingDxf(drawing, title)] as const,
    ]),
  ];
  try {
    await mkdir(folder, { recursive: true });
    for (const [file, content] of files) await writeFile(join(folder, file), content);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    throw new Refusal([
      `The drawings could not be written to ${folder} (${reason}). Choose a folder that can be written.`,
    ]);
  }
  return [join(folder, "cuts.pdf"), join(folder, `layout-1 to ${layouts.length}, .svg and .dxf`)];
}
