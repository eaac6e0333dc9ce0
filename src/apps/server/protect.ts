import helmet from "@fastify/helmet";
import type { FastifyInstance } from "fastify";

/** Headers on every answer: everything the page uses comes from this server, nothing is inline, nobody frames it. */
export async function protect(server: FastifyInstance): Promise<void> {
  await server.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false, // the defaults upgrade to https, which a server on 127.0.0.1 does not speak
      directives: {
        defaultSrc: ["'none'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'"],
        imgSrc: ["'self'", "blob:"], // a picture just taken, before the server has it
        workerSrc: ["'self'"],
        manifestSrc: ["'self'"],
        fontSrc: ["'self'"],
        connectSrc: ["'self'"],
        baseUri: ["'none'"],
        formAction: ["'none'"],
        frameAncestors: ["'none'"],
      },
    },
    strictTransportSecurity: false, // would bind every other server on localhost
    referrerPolicy: { policy: "no-referrer" },
    xFrameOptions: { action: "deny" },
  });
  server.addHook("onSend", async (_request, reply) => {
    reply.header("cache-control", "no-store"); // a plan shows people's days; a device keeps what it needs itself, by its role
  });
}
