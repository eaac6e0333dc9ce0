/** Words around the reasons of an item's care. */
export const why = {
  title: "Why",
  because: (what: string) => `because ${what}`,
  unsure: "An unsure counts as the safer side.",
  source: (rule: string, source: string, trust: string) =>
    `Rule ${rule}. Source: ${source}${source.includes(trust) ? "" : ` (${trust})`}.`,
} as const;
