/** What a person must know beside a figure about silica gel. */
export type GelCaution =
  | "no-more-gel-than-the-item-bears"
  | "gel-dries-the-outside-first"
  | "packet-larger-than-the-item-bears"
  | "gel-is-full"
  | "leak-outruns-gel"
  | "more-exchanges-than-sense"
  | "units-ignore-damp-items"
  | "gel-dry-only-by-weight"
  | "colour-gel-not-above-120"
  | "blue-gel-is-poisonous"
  | "case-rule-from-memory";
