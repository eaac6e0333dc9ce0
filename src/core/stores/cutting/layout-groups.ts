import type { SheetLayout, WantedPiece } from "./sheets/sheet-problem.ts";

/** Sheets that are cut alike. */
export interface LayoutGroup {
  readonly layout: SheetLayout;
  readonly times: number;
}

/** Alike is the same sheet with pieces of the same sizes and names in the same places. */
export function layoutGroups(layouts: readonly SheetLayout[], pieces: readonly WantedPiece[]): LayoutGroup[] {
  const groups = new Map<string, LayoutGroup>();
  for (const layout of layouts) {
    const places = layout.placed
      .map(({ piece, x, y, width, height }) => `${pieces[piece]?.name}:${x}:${y}:${width}:${height}`)
      .sort();
    const key = `${layout.stock}|${places.join("|")}`;
    groups.set(key, { layout, times: (groups.get(key)?.times ?? 0) + 1 });
  }
  return [...groups.values()].sort((a, b) => b.times - a.times);
}
