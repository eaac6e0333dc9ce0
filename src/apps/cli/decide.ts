import { type CaseAnswer, decideCase } from "../../core/care/decide-case.ts";
import { publishedRuleBook } from "../../edge/rule-book.ts";

type Out = (line: string) => void;

/** `leafward decide < case.json`: one case, a list, or `{ "cases": [...] }` in; the same shape of answers out. */
export async function decideFromInput(
  input: AsyncIterable<Buffer | string>,
  out: Out,
  complain: Out,
): Promise<number> {
  const chunks: Buffer[] = [];
  for await (const chunk of input) chunks.push(Buffer.from(chunk));
  const text = Buffer.concat(chunks)
    .toString("utf8")
    .replace(/^\uFEFF/, "");
  let given: unknown;
  try {
    given = JSON.parse(text);
  } catch (error) {
    complain(
      `The case is not JSON (${String(error).replace(/^SyntaxError: /, "")}). Give one case, for example:`,
    );
    complain(
      '  echo \'{"item":{"format":"bound_volume"},"obs":{"growth_visible":"yes"}}\' | npx leafward decide',
    );
    return 2;
  }
  const book = publishedRuleBook();
  const one = (each: unknown): CaseAnswer | null =>
    typeof each === "object" && each !== null && !Array.isArray(each)
      ? decideCase(book, each as Record<string, unknown>)
      : null;
  const cases = (given as { cases?: unknown })?.cases;
  const answer = Array.isArray(given)
    ? given.map(one)
    : Array.isArray(cases)
      ? { answers: cases.map(one) }
      : one(given);
  if (answer === null || (Array.isArray(answer) && answer.includes(null))) {
    complain('A case is an object with "item", "obs", "state" and so on; see docs/campaign-folder.md.');
    return 2;
  }
  out(JSON.stringify(answer, null, 2));
  return 0;
}
