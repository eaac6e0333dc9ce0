import { join } from "node:path";
import { decide } from "../src/core/care/decide.ts";
import { evaluate } from "../src/core/care/evaluate.ts";
import { careOfCampaign, type ItemCare } from "../src/core/care/item-care.ts";
import { loadRuleBook } from "../src/core/care/load-rules.ts";
import { loadNorms } from "../src/core/care/norms.ts";
import { prove } from "../src/core/care/proof/prove.ts";
import { proveRoutes } from "../src/core/care/proof/routes.ts";
import { nextQuestion, soundAnswer } from "../src/core/care/questions.ts";
import { routeOf } from "../src/core/care/route.ts";
import type { RuleBook } from "../src/core/care/rule-book.ts";
import type { Facts, FactValue } from "../src/core/items/facts.ts";
import { readCampaignFolder } from "../src/edge/intake/read-campaign.ts";
import { projectFolder, readPublished } from "../src/edge/published.ts";
import { publishedRuleBook, publishedTables } from "../src/edge/rule-book.ts";
import { startSat } from "../src/edge/solve/sat.ts";
import { generalEngine } from "./general-rules.ts";
import { makeCampaign } from "./make-campaign.ts";
import { firedNaively } from "./naive-rules.ts";

const ms = (from: number): string => `${(performance.now() - from).toFixed(0).padStart(7)} ms`;

/** Care: our evaluator, a naive one and a general-purpose library over the same items; local rules; proofs; questions. */
export async function benchCare(): Promise<void> {
  const book = publishedRuleBook();
  const campaign = makeCampaign({ items: 20000, people: 6, weeks: 40, seed: 1 });
  console.log("Care (limits: 20,000 items under 1 s; a local rule file under 100 ms; proofs under 60 s)");
  let from = performance.now();
  const cares = careOfCampaign(book, campaign);
  console.log(`  20,000 items decided                ${ms(from)}`);
  from = performance.now();
  const norms = loadNorms(readPublished("norms.json"));
  const routes = cares.map((each) => routeOf(norms, each));
  const going = routes.filter((each) => each.destiny === "route").length;
  console.log(`  and their routes walked             ${ms(from)}   ${going} on a route`);

  const facts = cares.map((each) => each.whole.facts);
  from = performance.now();
  for (const each of facts) evaluate(book, each);
  console.log(`  rules run on each, nothing shared   ${ms(from)}`);
  from = performance.now();
  for (const each of facts) decide(book, each);
  console.log(`  and conflicts settled               ${ms(from)}`);
  from = performance.now();
  let differ = 0;
  for (const each of facts) {
    const theirs = firedNaively(book, each).join();
    if (
      theirs !==
      evaluate(book, each)
        .fired.map(({ rule }) => rule.id)
        .join()
    )
      differ += 1;
  }
  console.log(`  a naive evaluator, ours beside it   ${ms(from)}   ${differ} items differ`);
  const run = generalEngine(book);
  const few = 200;
  from = performance.now();
  for (const each of facts.slice(0, few)) await run(each);
  const scaled = ((performance.now() - from) * facts.length) / few;
  console.log(
    `  json-rules-engine, ${few} items scaled  ${scaled.toFixed(0).padStart(7)} ms   yes and no only, conditions written out`,
  );

  const local = { file: "rules.json", rules: [LOCAL] };
  from = performance.now();
  loadRuleBook(publishedTables(), local);
  console.log(`  all rules read with a local file    ${ms(from)}   cold`);
  const tables = publishedTables();
  from = performance.now();
  for (let turn = 0; turn < 10; turn += 1) loadRuleBook(tables, local);
  console.log(
    `  read again                          ${((performance.now() - from) / 10).toFixed(1).padStart(7)} ms`,
  );

  from = performance.now();
  const sat = await startSat();
  const proof = prove(book, sat);
  sat.close();
  console.log(
    `  ${proof.verdicts.length} claims over 10^${Math.floor(proof.spaceDigits)} cases          ${ms(from)}   ${proof.verdicts.filter((each) => each.holds).length} hold`,
  );
  from = performance.now();
  const routesSat = await startSat();
  const walked = proveRoutes(book, norms, routesSat);
  routesSat.close();
  console.log(
    `  ${walked.questions.toLocaleString("en-GB")} patterns of routes walked    ${ms(from)}   ${walked.holds ? "no" : "a"} fault`,
  );
  await benchQuestions(book);
}

const LOCAL = {
  id: "X1",
  tier: 3,
  unsure: "fire",
  text: "Bundles are untied in the presence of the family.",
  when: { f: "item.format", op: "eq", v: "palm_leaf_bundle" },
  then: [{ verb: "require", action: "follow_custodian_rule" }],
  why: "Asked for by the family",
  source: "the family",
  examples: [
    { given: { "item.format": "palm_leaf_bundle" }, expect: "yes" },
    { given: { "item.format": "newspaper" }, expect: "no" },
    { given: { "item.format": "unsure" }, expect: "unsure" },
  ],
};

/** How many questions each way of asking needs until the care is settled. What a survey left out is answered as a sound item would. */
async function benchQuestions(book: RuleBook): Promise<void> {
  console.log(
    "\nQuestions at the Door until nothing left to find would change the care, mean of every item and part",
  );
  console.log(
    "  campaign     parts   ours   most   a form for the format   every test   items whose care differs",
  );
  for (const name of ["saltmere", "nine-lamps", "marabelle"]) {
    const { campaign } = await readCampaignFolder(join(projectFolder(), "demo", name));
    if (!campaign) continue;
    const parts = careOfCampaign(book, campaign).flatMap(factsOfParts);
    const known = new Map<string, Count>();
    const counts = parts.map((facts) => {
      const key = JSON.stringify(facts);
      const count = known.get(key) ?? countOf(book, facts);
      known.set(key, count);
      return count;
    });
    const mean = (of: (count: Count) => number): string =>
      (counts.reduce((sum, each) => sum + of(each), 0) / counts.length).toFixed(1);
    const most = Math.max(...counts.map((each) => each.ours));
    console.log(
      `  ${name.padEnd(11)} ${String(counts.length).padStart(6)} ${mean((each) => each.ours).padStart(6)} ${String(most).padStart(6)} ${mean((each) => each.form).padStart(23)} ${String(book.tests.size).padStart(12)} ${String(counts.filter((each) => each.differs).length).padStart(26)}`,
    );
  }
}

interface Count {
  readonly ours: number;
  readonly form: number;
  readonly differs: boolean;
}

const factsOfParts = (care: ItemCare): Facts[] =>
  [care.whole, ...care.parts.map((part) => part.care)].map((each) => each.facts);

/** A form asks every must-ask test of the format and every follow-up it may need, the glance as one; ours stops when settled. */
function countOf(book: RuleBook, truth: Facts): Count {
  const item: Record<string, FactValue> = {};
  for (const [fact, value] of Object.entries(truth)) if (!fact.startsWith("obs.")) item[fact] = value;
  const answer = (test: string): FactValue => {
    const found = book.tests.get(test);
    return truth[`obs.${test}`] ?? (found ? soundAnswer(found) : "no");
  };
  const facts = { ...item };
  const forbidden = new Set<string>();
  let ours = 0;
  for (;;) {
    const next = nextQuestion(book, facts);
    for (const { test } of next.forbidden) forbidden.add(test.id);
    if (next.settled) break;
    ours += 1;
    for (const test of next.tests) facts[`obs.${test.id}`] = answer(test.id);
  }
  const format = String(item["item.format"]);
  const fits = [...book.tests.values()].filter(
    (test) =>
      (test.formats.length === 0 || test.formats.includes(format)) &&
      test.waitHours === 0 &&
      !test.who.startsWith("conservator"),
  );
  const must = new Set([...(book.requiredTests["*"] ?? []), ...(book.requiredTests[format] ?? [])]);
  const onForm = fits.filter((test) => must.has(test.id) || !["look", "notice"].includes(test.by));
  const may = fits.filter((test) => !forbidden.has(test.id));
  const all = { ...item, ...Object.fromEntries(may.map((test) => [`obs.${test.id}`, answer(test.id)])) };
  return { ours, form: onForm.length + 1, differs: outcome(book, all) !== outcome(book, facts) };
}

/** Route-making rulings of a care, must-ask tests taken as answered. */
function outcome(book: RuleBook, facts: Facts): string {
  const care = decide(book, { ...facts, "state.required_tests_missing": "no" });
  const names = (list: readonly { action: string }[]): string =>
    list
      .map((each) => each.action)
      .sort()
      .join();
  const stopped =
    care.banned.get("image")?.reasons.some((each) => each.tier === 1) && care.banned.has("clean_any");
  return stopped
    ? "stopped"
    : [names(care.forbid), names(care.require), names(care.escalate), care.hold].join("|");
}
