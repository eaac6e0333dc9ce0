/** What a person is here for; the words of the people table. Fixed words, so that no reason can stand in them. */
export const ROLES = [
  "lead",
  "cleaner",
  "photographer",
  "scribe",
  "boxer",
  "store keeper",
  "conservator",
  "custodian's person",
] as const;
export type Role = (typeof ROLES)[number];
