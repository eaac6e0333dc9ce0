import { EMPTY_LISTING, type ListingDraft } from "./listed-payload.ts";

const KEY = "leafward last listed";

/** What was listed last on this device; null: nothing yet. */
export interface LastListed {
  readonly id: string;
  readonly draft: ListingDraft;
}

export function lastListed(): LastListed | null {
  const kept = localStorage.getItem(KEY);
  return kept === null ? null : (JSON.parse(kept) as LastListed); // put there below
}

/** Its counts and sizes are its own: they are not remembered. */
export function rememberListed(id: string, draft: ListingDraft): void {
  const { leaves, heightMm, widthMm, thicknessMm, massKg, title } = EMPTY_LISTING;
  const kept = { ...draft, leaves, heightMm, widthMm, thicknessMm, massKg, title };
  localStorage.setItem(KEY, JSON.stringify({ id, draft: kept } satisfies LastListed));
}
