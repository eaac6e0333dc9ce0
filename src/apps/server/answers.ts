import type { FastifyInstance } from "fastify";
import type { Problem } from "../../core/outcome/problem.ts";

/** What a refused request gets back, always as JSON. */
export interface Refusal {
  readonly problem: Problem;
}

export const refusal = (code: string, got: string, expected: string, remedy: string): Refusal => ({
  problem: { code, severity: "stop", got: got.slice(0, 200), expected, remedy },
});

export function answerUnknownAddress(server: FastifyInstance): void {
  server.setNotFoundHandler((request, reply) =>
    reply
      .code(404)
      .send(
        refusal(
          "no-such-address",
          `${request.method} ${request.url}`,
          "GET / , /api/plan , /api/page , /api/papers or /papers/<file>, or POST /api/what-if",
          "Open the address without anything after the port.",
        ),
      ),
  );
}

/** A fault of ours never shows its inside; a request that is wrong keeps its own status. */
export function answerFaults(server: FastifyInstance): void {
  server.setErrorHandler((error, request, reply) => {
    const status = (error as { statusCode?: number }).statusCode ?? 500;
    const asked = `${request.method} ${request.url}`;
    if (status < 500)
      return reply
        .code(status)
        .send(refusal("bad-request", asked, "a plain GET request", "Reload the page."));
    console.error(`Leafward could not answer ${asked}:`, error);
    return reply
      .code(500)
      .send(
        refusal("fault", asked, "an answer", "Look at the window Leafward runs in; start it again there."),
      );
  });
}
