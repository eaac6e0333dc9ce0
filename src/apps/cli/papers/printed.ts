import type { Route } from "../../../core/care/care.ts";
import type { ItemCare } from "../../../core/care/item-care.ts";
import type { Norms } from "../../../core/care/norms.ts";
import type { RuleBook } from "../../../core/care/rule-book.ts";
import type { Campaign } from "../../../core/items/campaign.ts";
import type { CampaignState } from "../../../core/log/state.ts";
import type { Day } from "../../../core/units/day.ts";

/** A file to be written; its name may lead into a folder. */
export interface Printed {
  readonly name: string;
  readonly bytes: Uint8Array | string;
}

/** What papers are printed from when no plan is needed. */
export interface PaperSource {
  readonly folder: string;
  readonly campaign: Campaign;
  readonly book: RuleBook;
  readonly norms: Norms;
  readonly care: readonly ItemCare[];
  readonly routes: readonly Route[];
  /** What the log holds; null: there is none. */
  readonly state: CampaignState | null;
  readonly sheet: "A4" | "Letter";
  /** The one item asked for. */
  readonly item: string | null;
  /** Last day of work of the stop sheet. */
  readonly stop: Day;
  readonly complain: (line: string) => void;
}

/** One file, or none where there is nothing in it. */
export const oneFile = async (
  name: string,
  views: readonly unknown[],
  bytes: () => Promise<Uint8Array>,
): Promise<Printed[]> => (views.length === 0 ? [] : [{ name, bytes: await bytes() }]);

/** `bench-cards.pdf`, or `bench-cards-01.pdf` and on where one file would be too long. */
export const numbered = (name: string, files: readonly Uint8Array[]): Printed[] =>
  files.map((bytes, at) => ({
    name: files.length === 1 ? `${name}.pdf` : `${name}-${String(at + 1).padStart(2, "0")}.pdf`,
    bytes,
  }));
