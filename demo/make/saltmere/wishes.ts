import type { Draft } from "../draft.ts";
import type { Chance } from "../seeded.ts";

const DUE = ["2026-08-28", "2026-10-16", "2026-12-18", "2027-02-05"] as const;

/** What the harbour office wants first, what it wants by a day, and what still lies in the customs shed. */
export function wish(chance: Chance, drafts: readonly Draft[]): void {
  for (const draft of drafts) draft.row.priority = chance.happens(shareOfMusts(draft)) ? "must" : "want";
  const early = drafts.filter((draft) => draft.row.arrives === undefined && draft.row.priority === "must");
  for (const draft of chance.some(early, 64)) draft.row.due = chance.pick(DUE);
}

const shareOfMusts = (draft: Draft): number =>
  draft.lot === "chart" ? 0.4 : draft.lot === "ledger" ? 0.3 : 0.17;

/** Three consignments from the customs shed, and the newspapers from the reading room. */
export function consign(drafts: readonly Draft[]): void {
  const files = drafts.filter((draft) => draft.lot === "file");
  const send = (from: number, to: number, arrives: string): void => {
    for (const draft of files.slice(from, to)) draft.row.arrives = arrives;
  };
  send(640, 740, "2026-07-20");
  send(740, 840, "2026-09-14");
  send(840, 940, "2026-11-02");
  for (const draft of drafts) if (draft.lot === "newspaper") draft.row.arrives = "2026-08-10";
}
