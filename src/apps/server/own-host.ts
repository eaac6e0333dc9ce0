import type { FastifyInstance } from "fastify";
import { refusal } from "./answers.ts";

const OWN_NAMES = new Set(["127.0.0.1", "localhost"]);

/**
 * Answers only requests that name this machine. A page elsewhere can point its own name at 127.0.0.1 and read what is
 * served here (DNS rebinding); its requests still carry that foreign name.
 */
export function refuseForeignHosts(server: FastifyInstance): void {
  server.addHook("onRequest", async (request, reply) => {
    if (OWN_NAMES.has(nameOf(request.headers.host))) return;
    await reply
      .code(403)
      .send(
        refusal(
          "foreign-host",
          request.headers.host ?? "",
          "127.0.0.1 or localhost",
          "Open the address that Leafward printed, on this machine.",
        ),
      );
  });
}

const nameOf = (host: string | undefined): string => (host ?? "").toLowerCase().replace(/:\d{1,5}$/, "");
