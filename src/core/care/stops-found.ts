import type { ItemCare } from "./item-care.ts";
import type { RuleBook, Test } from "./rule-book.ts";

/** An answer that stops all work on an item until somebody outside the team has answered. */
export interface StopFound {
  /** Empty: the whole item. */
  readonly part: string;
  readonly test: Test;
  readonly unsure: boolean;
}

/** Stop tests answered yes, or unsure, which counts as yes; each once, where it was found first. */
export function stopsFound(book: RuleBook, care: ItemCare): StopFound[] {
  const all = [{ name: "", care: care.whole }, ...care.parts];
  return [...book.tests.values()].flatMap((test): StopFound[] => {
    if (!test.stop) return [];
    const part = all.find((each) => ["yes", "unsure"].includes(String(each.care.facts[`obs.${test.id}`])));
    if (part === undefined) return [];
    return [{ part: part.name, test, unsure: part.care.facts[`obs.${test.id}`] === "unsure" }];
  });
}
