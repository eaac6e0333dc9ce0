import type { Disagreement } from "../../core/log/findings-now.ts";
import { HOW_TO_SETTLE, sayDisagreement, sayDisagreements } from "../../core/say/disagreement.ts";
import { ruleBookOf } from "../../edge/rule-book.ts";
import { wrapped } from "./wrapped.ts";

const SHOWN = 20;

/** Contradicting answers in the log, who gave them and when, and how they are settled; none: nothing. */
export function disagreementLines(folder: string, found: readonly Disagreement[]): string[] {
  if (found.length === 0) return [];
  const book = ruleBookOf(folder);
  const facts = book.ok ? book.value.facts : new Map();
  const more = found.length - SHOWN;
  return [
    ...wrapped(sayDisagreements(found.length), "", ""),
    ...found.slice(0, SHOWN).flatMap((each) => wrapped(sayDisagreement(facts, each), "  ", "    ")),
    ...(more > 0 ? [`  … and ${more.toLocaleString("en-GB")} more.`] : []),
    ...wrapped(HOW_TO_SETTLE, "", ""),
  ];
}
