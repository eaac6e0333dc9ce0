import type { Derivation, Rule, RuleBook, RuleExample } from "../src/core/care/rule-book.ts";
import { sayCondition } from "../src/core/say/conditions.ts";
import { sayConsequence, TIER_WORDS } from "../src/core/say/explain.ts";
import { sayFact, sayWhen } from "../src/core/say/facts.ts";

/** `docs/rules.md`: every rule in plain words, by tier and theme, for a conservator to read and correct. */
export function rulesPage(book: RuleBook): string {
  const tiers = ([1, 2, 3, 4] as const).map((tier) => ({
    tier,
    rules: book.rules.filter((rule) => rule.reason.tier === tier),
  }));
  return [
    "# The rules",
    "",
    "Written from `data/rules/`, `data/derivations.json` and `data/resting.json` by `npx tsx scripts/write-rules.ts`; correct them there.",
    "The lower tier wins; in one tier a ban wins over a command; any ban wins over what is only better. *Unsure* counts as the safer side.",
    "`seen`: the supporting text was read in the source; `seen in part`: only part of it, or a report of it; `from memory`: recalled, to be",
    "checked; `common practice`: the trade does it so, no source. Advice to people: follow local rules and licensed practice.",
    "",
    `${book.rules.length} rules: ${tiers.map(({ tier, rules }) => `${rules.length} ${TIER_WORDS[tier].toLowerCase()}`).join(", ")}. ${book.derivations.length} conditions.`,
    "",
    ...tiers.flatMap(({ tier, rules }) => [
      `## ${tier}. ${TIER_WORDS[tier]}`,
      "",
      ...[...new Set(rules.map((rule) => rule.theme))]
        .sort()
        .flatMap((theme) => [
          `### ${theme.replaceAll("-", " ")}`,
          "",
          ...rules.filter((rule) => rule.theme === theme).flatMap((rule) => ruleLines(book, rule)),
        ]),
    ]),
    "## Conditions",
    "",
    "What follows from findings, in the order in which it is worked out.",
    "",
    ...book.derivations.flatMap((each) => derivationLines(book, each)),
    "## Where an item may rest",
    "",
    "The first that applies, and of which nothing is forbidden.",
    "",
    ...book.rests.map((rest) => `1. ${capital(rest.says)}: when ${sayWhen(book.facts, rest.when)}.`),
    "",
  ].join("\n");
}

function ruleLines(book: RuleBook, rule: Rule): string[] {
  const { text, why, source, sourceStatus } = rule.reason;
  return [
    `**${rule.id}** ${text}`,
    "",
    `- When: ${sayWhen(book.facts, rule.when)}`,
    ...rule.consequences.map((each) => `- ${sayConsequence(book, each)}${detailsOf(each.details)}`),
    `- Why: ${why}`,
    `- Source: ${source}${source.includes(sourceStatus) ? "" : ` (${sourceStatus})`}.${rule.unsure === "hold" ? " Waits while an answer is unsure." : ""}`,
    `- Tried on: ${rule.examples.map((each) => exampleWords(book, each)).join("; ")}`,
    "",
  ];
}

/** Figures and words a rule adds: `days 14`. */
function detailsOf(details: Readonly<Record<string, unknown>>): string {
  const words = Object.entries(details)
    .filter(([name]) => name !== "passes")
    .map(
      ([name, value]) =>
        `${name.replace(/([A-Z])/g, " $1").toLowerCase()}: ${[value].flat().join(", ").replaceAll("_", " ")}`,
    );
  return words.length > 0 ? ` (${words.join("; ")})` : "";
}

const exampleWords = (book: RuleBook, { given, expect }: RuleExample): string => {
  const facts = Object.entries(given).map(([fact, value]) => sayFact(book.facts, fact, value));
  return `*${facts.length > 0 ? facts.join(", ") : "anything"}* → ${expect}`;
};

const derivationLines = (book: RuleBook, each: Derivation): string[] => [
  `**${each.id}** ${sayCondition(each.condition)}: when ${sayWhen(book.facts, each.when)}.${each.note ? ` ${each.note}.` : ""} [${each.source}]`,
  "",
];

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
