import { loadNorms } from "../../core/care/norms.ts";
import { type Proof, prove, type Verdict } from "../../core/care/proof/prove.ts";
import { proveRoutes } from "../../core/care/proof/routes.ts";
import type { RuleBook } from "../../core/care/rule-book.ts";
import { sayFact } from "../../core/say/facts.ts";
import { sayProblem } from "../../core/say/problems.ts";
import { readPublished } from "../../edge/published.ts";
import { publishedRuleBook, ruleBookOf } from "../../edge/rule-book.ts";
import { startSat } from "../../edge/solve/sat.ts";
import { wrapped } from "./wrapped.ts";

type Out = (line: string) => void;

/** `leafward prove`: the safety claims over every set of facts, for the published rules or with a campaign's own. @returns 0 all hold · 1 one is broken · 2 the rules cannot be read */
export async function proveRules(folder: string | undefined, out: Out, complain: Out): Promise<number> {
  const book = folder ? ruleBookOf(folder) : ({ ok: true, value: publishedRuleBook() } as const);
  if (!book.ok) {
    for (const problem of book.problems) complain(sayProblem(problem));
    return 2;
  }
  const local = book.value.rules.filter((rule) => rule.local).length;
  out(
    `${book.value.rules.length} rules${local > 0 ? `, ${local} of them of this campaign` : ""}, ${book.value.derivations.length} conditions.`,
  );
  const started = performance.now();
  const sat = await startSat();
  const proof = prove(book.value, sat);
  sat.close();
  for (const verdict of proof.verdicts) for (const line of verdictLines(book.value, verdict)) out(line);
  const routes = await startSat();
  const walked = proveRoutes(book.value, loadNorms(readPublished("norms.json")), routes);
  routes.close();
  for (const line of verdictLines(book.value, walked)) out(line);
  const verdicts = [...proof.verdicts, walked];
  for (const line of closing(proof, verdicts, (performance.now() - started) / 1000)) out(line);
  return verdicts.every((verdict) => verdict.holds) ? 0 : 1;
}

/** One claim as lines; a broken one with the item that breaks it. */
export function verdictLines(book: RuleBook, verdict: Verdict): string[] {
  const { holds, says, questions, counterExample, about } = verdict;
  const count =
    questions === 0
      ? "by their form alone"
      : `${questions.toLocaleString("en-GB")} ${questions === 1 ? "question" : "questions"}`;
  const head = wrapped(`${holds ? "holds  " : "BROKEN "} ${says} (${count})`, "", "        ");
  if (holds) return head;
  return [
    ...head,
    ...(about ? wrapped(about, "        ") : []),
    ...(counterExample ? ["        For example this item:"] : []),
    ...Object.entries(counterExample ?? {}).flatMap(([fact, value]) =>
      wrapped(sayFact(book.facts, fact, value), "          - ", "            "),
    ),
  ];
}

function closing(proof: Proof, verdicts: readonly Verdict[], seconds: number): string[] {
  const broken = verdicts.filter((verdict) => !verdict.holds).length;
  return [
    "",
    `The space: ${proof.facts} facts, about 10^${Math.floor(proof.spaceDigits)} different items, people, places and moments; ${proof.variables.toLocaleString("en-GB")} variables.`,
    "Every claim but the last is proved by a satisfiability solver over the whole of it. The last walks the route of one item for each",
    "pattern of conditions and bans a route can meet; items of several parts follow from it, since no command lifts a ban (above).",
    broken === 0
      ? `All ${verdicts.length} claims hold. ${seconds.toFixed(1)} s.`
      : `${broken} of ${verdicts.length} claims are broken. ${seconds.toFixed(1)} s.`,
  ];
}
