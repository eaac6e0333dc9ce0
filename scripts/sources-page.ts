/** One entry of `data/sources.json`. */
export interface Source {
  readonly what: string;
  readonly status: string;
  readonly detail: string;
}

export interface SourceTables {
  readonly sources: Readonly<Record<string, Source>>;
  readonly rules: readonly { readonly id: string; readonly source: string; readonly sourceStatus: string }[];
  readonly derivations: readonly {
    readonly id: string;
    readonly condition: string;
    readonly source: string;
  }[];
  readonly norms: readonly { readonly id: string; readonly source: string }[];
}

const BEGINNING = `# Sources

Every rule, condition and working figure of \`data/\` names where it comes from and how far that is trusted.
**Seen**: the supporting text was read in the named source. **Seen in part**: only a part of it was read (an abstract, an opening
part, a second-hand quotation); the column "how far" says which. **From memory**: recalled, still to be checked against the source.
**Common practice**: the trade does it so, and no source is claimed; a conservator should look at these first.
Advice to people follows these sources; follow local rules and licensed practice.

This page is written by \`npx tsx scripts/write-sources.ts\` from \`data/\`. Change the tables, not the page.
`;

/** The page `docs/sources.md`. */
export function sourcesPage({ sources, rules, derivations, norms }: SourceTables): string {
  const listed = Object.entries(sources);
  const status = (name: string): string => {
    const among = listed.filter(([, source]) => source.status === name);
    const resting = rules.filter((rule) => rule.sourceStatus === name);
    return row(name, String(among.length), String(resting.length));
  };
  return [
    BEGINNING,
    "## How much rests on what\n",
    row("status", "sources", "rules"),
    "|---|---|---|",
    ...["seen", "seen in part", "from memory", "common practice"].map(status),
    "\n## Sources of rules and conditions\n",
    "A source without rules or conditions is background: it was read or remembered when the tables were made, and no entry rests on it alone.\n",
    row("id", "source", "status", "how far", "rules", "conditions"),
    "|---|---|---|---|---|---|",
    ...listed.map(([id, source]) =>
      row(
        id,
        source.what,
        source.status,
        source.detail === source.status ? "" : source.detail,
        idsOf(rules.filter((rule) => rule.source === id).map((rule) => rule.id)),
        idsOf(derivations.filter((each) => each.source === id).map((each) => each.condition)),
      ),
    ),
    "\n## Sources of working figures\n",
    "Minutes, waits, limits of people and consumables in `data/norms.json`, what keeps how long and how it travels in `data/goods.json`, what may stand in for it in `data/substitutes.json`, by the words of their source.\n",
    row("source", "norms"),
    "|---|---|",
    ...[...grouped(norms)].map(([source, ids]) => row(source, idsOf(ids))),
    "",
  ].join("\n");
}

const row = (...cells: readonly string[]): string =>
  `| ${cells.map((cell) => cell.replaceAll("|", "\\|")).join(" | ")} |`;

const idsOf = (ids: readonly string[]): string => ids.join(", ");

/** Norms by source, the longest list first. */
function grouped(norms: SourceTables["norms"]): Map<string, string[]> {
  const groups = new Map<string, string[]>();
  for (const { id, source } of norms) groups.set(source, [...(groups.get(source) ?? []), id]);
  return new Map([...groups].sort((a, b) => b[1].length - a[1].length || (a[0] < b[0] ? -1 : 1)));
}
