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
          "GET / , /api/plan , /api/page , /api/papers or /papers/<file>, or POST /api/what-if; of a server with a log what GET /api/description lists",
          "Open the address without anything after the port.",
        ),
      ),
  );
}

const MENDED: Readonly<Record<number, readonly [code: string, expected: string, remedy: string]>> = {
  400: ["bad-request", "what was sent, whole", "On the page, reload it; from a device, send it again."],
  413: ["too-large", "less at once", "Send it in smaller parts; a picture in a smaller file."],
  415: ["wrong-kind-of-body", "application/json, or a picture as a form", "Send it as docs/server.md says."],
  429: ["too-many-requests", "fewer requests a minute", "Wait a minute, then go on."],
};
const OTHERWISE = ["bad-request", "a plain GET request", "Reload the page."] as const;

/** A fault of ours never shows its inside; a request that is wrong keeps its own status. */
export function answerFaults(server: FastifyInstance): void {
  server.setErrorHandler((error, request, reply) => {
    const status = (error as { statusCode?: number }).statusCode ?? 500;
    const asked = `${request.method} ${request.url}`;
    const [code, expected, remedy] = MENDED[status] ?? OTHERWISE;
    if (status < 500) return reply.code(status).send(refusal(code, asked, expected, remedy));
    console.error(`Leafward could not answer ${request.method} ${request.routeOptions.url}:`, error);
    return reply
      .code(500)
      .send(
        refusal("fault", asked, "an answer", "Look at the window Leafward runs in; start it again there."),
      );
  });
}
