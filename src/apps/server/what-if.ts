import { Readable } from "node:stream";
import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import type { DeskLine } from "../../edge/solve/what-if-messages.ts";
import { refusal } from "./answers.ts";
import type { PlanShelf } from "./plan-shelf.ts";

/** A few scenarios in plain words, as `leafward what-if` takes them. */
const Question = z.strictObject({
  scenarios: z.array(z.string().trim().min(1).max(500)).min(1).max(6),
});
const EXPECTED = '{"scenarios": ["one more cleaner from 2026-07-06"]}: 1 to 6 scenarios, 500 letters each';

/**
 * POST /api/what-if: JSON lines (`application/x-ndjson`), one answer a line as soon as it is known: `understood`, `as it is`, `first` and
 * `proved` for each scenario, or `problem` where the work broke off. What cannot be supposed is refused with 422 before the first line.
 */
export function serveWhatIf(server: FastifyInstance, shelf: PlanShelf): void {
  server.addHook("onClose", () => shelf.now()?.whatIf?.close());
  server.post("/api/what-if", { bodyLimit: 8192, errorHandler: refuseMalformed }, async (request, reply) => {
    const question = Question.safeParse(request.body);
    if (!question.success) return reply.code(400).send(badQuestion(JSON.stringify(request.body)));
    const service = shelf.now()?.whatIf;
    if (service === undefined) return reply.code(404).send(NO_PLAN);
    const lines = service.ask(question.data.scenarios);
    const first = await lines.next();
    if (first.done) throw new Error("The what-if service said nothing.");
    if (first.value.step === "refused") return reply.code(422).send(problemsOf(first.value));
    return reply
      .type("application/x-ndjson")
      .header("x-accel-buffering", "no")
      .send(Readable.from(textOf(first.value, lines)));
  });
}

/** Plans made at most to find what would help. */
const MOST_EASED = 12;

/** POST /api/ease: what holds the plan back and what would move it, as JSON lines: `as it is`, `trying` …, `eased`, or `problem`. */
export function serveEase(server: FastifyInstance, shelf: PlanShelf): void {
  server.post("/api/ease", { bodyLimit: 1024 }, async (_, reply) => {
    const service = shelf.now()?.whatIf;
    if (service === undefined) return reply.code(404).send(NO_PLAN);
    const lines = service.ease(MOST_EASED);
    const first = await lines.next();
    if (first.done) throw new Error("The what-if service said nothing.");
    return reply
      .type("application/x-ndjson")
      .header("x-accel-buffering", "no")
      .send(Readable.from(textOf(first.value, lines)));
  });
}

const NO_PLAN = refusal(
  "no-plan",
  "no plan",
  "a plan that can be asked",
  "Make the first plan in the Plan room.",
);
const badQuestion = (got: string | undefined) =>
  refusal("bad-question", got ?? "nothing", EXPECTED, "Ask again in this form, as application/json.");

/** A body that is no JSON, or too long, never reaches the question; anything else is the server's own to answer. */
function refuseMalformed(error: FastifyError, _request: FastifyRequest, reply: FastifyReply): void {
  const status = error.statusCode ?? 500;
  if (status >= 500) throw error;
  reply.code(status).send(badQuestion(error.message));
}

function problemsOf({ refusals }: DeskLine & { step: "refused" }) {
  const all = refusals.map(({ said, sentence }) =>
    refusal("cannot-be-supposed", said, "a change that can be supposed, in plain words", sentence),
  );
  return { ...all[0], problems: all.map(({ problem }) => problem) };
}

/** The answer has begun, so a fault can only be its last line; it never shows its inside. */
async function* textOf(first: DeskLine, lines: AsyncIterable<DeskLine>): AsyncGenerator<string> {
  yield `${JSON.stringify(first)}\n`;
  try {
    for await (const line of lines) yield `${JSON.stringify(line)}\n`;
  } catch (error) {
    console.error("Leafward could not finish a what-if answer:", error);
    const fault = refusal(
      "fault",
      "the rest of the answer",
      "an answer",
      "Ask again; if it stays, start again.",
    );
    yield `${JSON.stringify({ step: "problem", ...fault })}\n`;
  }
}
