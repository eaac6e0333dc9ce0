import type { FastifyInstance } from "fastify";
import { refusal } from "./answers.ts";

/**
 * Answers only requests that name this machine. A page elsewhere can point its own name at this address and read what is
 * served here (DNS rebinding); its requests still carry that foreign name. The very address a request came to is no such name.
 */
export function refuseForeignHosts(server: FastifyInstance, names: readonly string[] = []): void {
  const own = new Set(["127.0.0.1", "localhost", ...names]);
  server.addHook("onRequest", async (request, reply) => {
    const name = nameOf(request.headers.host);
    if (own.has(name) || name === request.socket.localAddress) return;
    await reply
      .code(403)
      .send(
        refusal(
          "foreign-host",
          request.headers.host ?? "",
          ["127.0.0.1 or localhost", ...names].join(", "),
          names.length === 0
            ? "Open the address that Leafward printed, on this machine."
            : "Open the address that Leafward printed.",
        ),
      );
  });
}

/** A form or a script of another page, another port of this machine among them, may change nothing here: a browser says whose page asks. */
export function refuseForeignPages(server: FastifyInstance): void {
  server.addHook("onRequest", async (request, reply) => {
    const { origin, host } = request.headers;
    if (origin === undefined || origin.replace(/^https?:\/\//, "") === host) return;
    await reply
      .code(403)
      .send(
        refusal("foreign-page", origin, "a page of this server", "Open the address that Leafward printed."),
      );
  });
}

const nameOf = (host: string | undefined): string => (host ?? "").toLowerCase().replace(/:\d{1,5}$/, "");
