import type { Draft } from "./draft.ts";
import type { FindingRow, Tables } from "./rows.ts";

/** All tables of a campaign: items and parts from the drafts, the rest as given. */
export const tablesOf = (
  drafts: readonly Draft[],
  findings: readonly FindingRow[],
  house: Omit<Tables, "items" | "parts" | "findings">,
): Tables => ({
  items: drafts.map((draft) => draft.row),
  parts: drafts.flatMap((draft) => draft.parts.map((part) => ({ item: draft.row.item, ...part.row }))),
  findings,
  ...house,
});
