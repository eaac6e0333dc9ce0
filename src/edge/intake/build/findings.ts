import type { Finding } from "../../../core/items/campaign.ts";
import type { Problem } from "../../../core/outcome/problem.ts";
import { type AnswerKind, answerFrom, answersOf, sayAnswers } from "../answers.ts";
import type { Built, CampaignTables } from "../campaign-tables.ts";
import type { NumberStyle } from "../numbers.ts";
import { problem } from "../problem.ts";
import { type Register, Waiting } from "../register.ts";
import { vocabulary } from "../vocabulary.ts";
import { nearestWord, wordMeant } from "../words.ts";
import { type BuiltItems, given, partKey, unknownItem } from "./items.ts";

type Row = CampaignTables["findings"]["rows"][number];
const TESTS = Object.keys(vocabulary.tests);

/** Findings whose item, part, test and answer are known. Two that contradict are both kept, and said. */
export function buildFindings(findings: CampaignTables["findings"], names: BuiltItems): Built<Finding> {
  const reader = new FindingReader(names, findings.numbers);
  for (const row of findings.rows) reader.see(row);
  return {
    values: reader.values,
    used: reader.used,
    problems: [...reader.problems, ...reader.waiting.problems()],
  };
}

class FindingReader {
  readonly values: Finding[] = [];
  readonly problems: Problem[] = [];
  readonly waiting = new Waiting();
  /** A row that says "not tested" is used too: it gives no finding. */
  used = 0;
  private readonly first = new Map<string, { answer: unknown; row: Row }>();
  private readonly kinds = new Map<string, { test: string; kind: AnswerKind } | null>();

  constructor(
    private readonly names: BuiltItems,
    private readonly numbers: NumberStyle,
  ) {}

  see(row: Row): void {
    const item = this.known(this.names.itemNames, row.cells.item, row, "item");
    if (item === null) return;
    const part = row.cells.part === undefined ? "" : this.partOf(item, row.cells.part, row);
    const test = this.testOf(row);
    if (part === null || test === null) return;
    const answer = this.answerOf(row, test.kind);
    if (answer === null) return;
    this.used++;
    if (answer === undefined) return;
    this.compare(item, part, test.test, answer, row);
    this.values.push({
      item,
      part,
      test: test.test,
      answer,
      ...given("day", row.cells.date),
      ...given("by", row.cells.by),
    });
  }

  private where = (row: Row, column: string) => ({ file: row.file, line: row.line, column });

  private known(
    register: Register,
    written: string,
    row: Row,
    column: "item" | "part",
    key = written,
  ): string | null {
    const meant = register.meant(key);
    if (meant.kind === "known") return meant.name;
    const where = this.where(row, column);
    if (meant.kind === "aside") this.waiting.add(meant.waitsFor, where);
    else if (column === "item") this.problems.push(unknownItem(written, register, where));
    else
      this.problems.push(
        problem("unknown-part", "stop", where, {
          got: written,
          expected: "a part of this item",
          remedy: "Add it to parts, mend the name, or leave the cell empty for the whole item.",
        }),
      );
    return null;
  }

  private partOf(item: string, part: string, row: Row): string | null {
    const key = this.known(this.names.partNames, part, row, "part", partKey(item, part));
    return key === null ? null : (key.split("\u0000")[1] ?? "");
  }

  private testOf(row: Row): { test: string; kind: AnswerKind } | null {
    const written = row.cells.test;
    let found = this.kinds.get(written);
    if (found === undefined) {
      const test = wordMeant(written, TESTS);
      const kind = test === null ? null : answersOf(test);
      found = test === null || kind === null ? null : { test, kind };
      if (this.kinds.size < 10_000) this.kinds.set(written, found);
    }
    if (found === null) {
      const near = nearestWord(written, TESTS);
      const remedy =
        near === null ? "The tests are listed in data/vocabulary.json." : `Did you mean "${near}"?`;
      this.problems.push(
        problem("unknown-test", "stop", this.where(row, "test"), {
          got: written,
          expected: "a test of the vocabulary",
          remedy,
        }),
      );
    }
    return found;
  }

  /** The answer; undefined: not tested; null: a problem. */
  private answerOf(row: Row, kind: AnswerKind): string | number | null | undefined {
    const written = row.cells.answer;
    if (written === undefined) return undefined;
    const where = this.where(row, "answer");
    const reading = answerFrom(written, kind, this.numbers);
    const said = { got: String(written), expected: sayAnswers(kind) };
    if (reading.kind === "not tested") return undefined;
    if (reading.kind === "answer") {
      if (reading.readAsUnsure)
        this.problems.push(
          problem("taken-as-unsure", "note", where, {
            ...said,
            remedy: "Nothing needs to be done if that is meant.",
          }),
        );
      return reading.answer;
    }
    if (reading.kind === "two ways")
      this.problems.push(
        problem("ambiguous-number", "ask", where, {
          ...said,
          expected: "thousands or a decimal",
          remedy: "Write it with a decimal point and no separator for thousands.",
        }),
      );
    else if (reading.kind === "out of range")
      this.problems.push(
        problem("number-out-of-range", "stop", where, {
          ...said,
          remedy: "Look at the number and its unit.",
        }),
      );
    else
      this.problems.push(
        problem("not-an-answer", "stop", where, {
          ...said,
          remedy: "Write one of these; leave the cell empty when it was not tested.",
        }),
      );
    return null;
  }

  private compare(item: string, part: string, test: string, answer: string | number, row: Row): void {
    const key = `${partKey(item, part)}\u0000${test}`;
    const before = this.first.get(key);
    if (before === undefined) this.first.set(key, { answer, row });
    else if (before.answer !== answer)
      this.problems.push(
        problem("disagreement", "note", this.where(row, "answer"), {
          got: String(answer),
          expected: `${String(before.answer)} in line ${before.row.line} (${[item, part, test].filter(Boolean).join(", ")})`,
          remedy: "Look again together and correct the one that is wrong.",
        }),
      );
  }
}
