import { careOfCampaign, type ItemCare } from "../../core/care/item-care.ts";
import { type NextQuestion, nextQuestion } from "../../core/care/questions.ts";
import type { RuleBook, Test } from "../../core/care/rule-book.ts";
import { openFolder } from "./open-folder.ts";
import { wrapped } from "./wrapped.ts";

type Out = (line: string) => void;

interface Ask {
  readonly folder: string;
  readonly item: string | undefined;
  readonly all: boolean;
  readonly out: Out;
  readonly complain: Out;
}

interface Asked {
  readonly item: string;
  readonly part: string;
  readonly next: NextQuestion;
  /** Must-ask tests without an answer. */
  readonly missing: readonly Test[];
}

/** Items named under one question; `--all` names every one. */
const NAMED = 8;

/** `leafward ask`: what to look at next, question by question, with the items it is asked of. @returns 0 said · 2 no such folder or item */
export async function askFolder({ folder, item, all, out, complain }: Ask): Promise<number> {
  const opened = await openFolder(folder, complain);
  if (!opened) return 2;
  const { campaign, book } = opened;
  const items = campaign.items.filter((each) => !item || each.id.toLowerCase() === item.toLowerCase());
  if (items.length === 0) {
    complain(`There is no item "${item}" in ${folder}.`);
    return 2;
  }
  const cares = careOfCampaign(book, { ...campaign, items }).filter((care) => !care.done.has("box"));
  const asked = cares.flatMap((care) => questionsOf(book, care, item !== undefined));
  const open = asked.filter(({ next }) => !next.settled);
  for (const line of questionLines(open, all || item !== undefined)) out(line);
  for (const line of item ? asked.flatMap(sideLines) : []) out(line);
  const settled = cares.length - new Set(open.map((each) => each.item)).size;
  out(
    item && open.length === 0
      ? "Nothing you could still find at the Door would change this."
      : `${settled} of ${cares.length} ${cares.length === 1 ? "item is" : "items are"} settled: nothing you could still find at the Door would change ${cares.length === 1 ? "it" : "them"}.`,
  );
  return 0;
}

/** Of an item that waits at the Door every part is asked; of one on its way only when it was named. */
function questionsOf(book: RuleBook, care: ItemCare, named: boolean): Asked[] {
  const parts = [{ name: "", care: care.whole }, ...care.parts];
  return parts
    .filter((part) => named || part.care.missingTests.length > 0)
    .map((part) => ({
      item: care.item.id,
      part: part.name,
      next: nextQuestion(book, part.care.facts),
      missing: part.care.missingTests.flatMap((test) => book.tests.get(test) ?? []),
    }));
}

function questionLines(asked: readonly Asked[], all: boolean): string[] {
  const groups = new Map<string, Asked[]>();
  for (const each of asked) {
    const key = each.next.tests.map(({ id }) => id).join();
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  return [...groups.values()].flatMap((group) => {
    const { next } = group[0] as Asked;
    const shown = all ? group : group.slice(0, NAMED);
    const more = group.length - shown.length;
    return [
      ...askLines(next.tests),
      ...shown.flatMap((each) => wrapped(itemLine(each), "    for ", "        ")),
      ...(more > 0 ? [`    and ${more} more; --all names them`] : []),
      `    ${next.waiting.length} rules hang on the answer.`,
      "",
    ];
  });
}

function itemLine({ item, part, next, missing }: Asked): string {
  const asked = new Set(next.tests.map(({ id }) => id));
  const after = missing.filter(({ id }) => !asked.has(id)).map(({ short }) => short);
  return `${item}${part ? ` (${part})` : ""}${after.length > 0 ? `; must-ask after it: ${after.join("; ")}` : ""}`;
}

function askLines(tests: readonly Test[]): string[] {
  const [first] = tests;
  if (!first) return [];
  if (tests.length === 1)
    return [
      ...wrapped(`${first.question} (${first.answers})`, first.stop ? "STOP  " : "ASK   ", "      "),
      ...wrapped(`${first.how}. ${first.note}`.trim(), "    "),
    ];
  return [
    "LOOK  One glance: is any of these there?",
    ...tests.flatMap((test) => wrapped(`${test.short}${test.stop ? " (stop)" : ""}`, "    - ", "      ")),
  ];
}

function sideLines({ next }: Asked): string[] {
  return [
    ...next.forbidden.map(
      ({ test, rule }) => `Not to be tried: ${test.question} Rule ${rule} forbids the test.`,
    ),
    ...next.later.map(
      (test) =>
        `Later: ${test.question} ${test.waitHours > 0 ? `It takes ${hours(test.waitHours)}.` : `By a ${test.who}.`}`,
    ),
  ];
}

const hours = (count: number): string => (count >= 48 ? `${Math.round(count / 24)} days` : `${count} hours`);
