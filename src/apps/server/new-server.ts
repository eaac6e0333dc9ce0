import type { AddressInfo } from "node:net";
import fastify, { type FastifyInstance } from "fastify";
import { answerFaults, answerUnknownAddress } from "./answers.ts";
import { refuseForeignHosts, refuseForeignPages } from "./own-host.ts";
import { protect } from "./protect.ts";

const FIRST_PORT = 8620;
const PORTS_TRIED = 20;

export interface ServerSettings {
  /** Longest body where a route says nothing else. */
  readonly bodyLimit: number;
  /** How long a request may take to arrive. */
  readonly requestTimeoutMs: number;
  /** Names by which this machine is called besides 127.0.0.1 and localhost. */
  readonly names?: readonly string[];
  /** Certificate and key as PEM; left out: plain HTTP. */
  readonly tls?: { readonly key: string; readonly cert: string };
}

export interface RunningServer {
  /** `http://127.0.0.1:8620` */
  readonly address: string;
  close(): Promise<void>;
}

/** A server with what every server of ours has: limits, headers, and refusals that say what to do. */
export async function newServer({
  bodyLimit,
  requestTimeoutMs,
  names = [],
  tls,
}: ServerSettings): Promise<FastifyInstance> {
  const server = fastify({
    forceCloseConnections: true,
    bodyLimit,
    requestTimeout: requestTimeoutMs,
    routerOptions: { maxParamLength: 200 },
    ...(tls ? { https: { ...tls, maxHeaderSize: 8192 } } : { http: { maxHeaderSize: 8192 } }),
  }) as unknown as FastifyInstance; // its type tells HTTP from HTTPS; nothing that is used here does
  refuseForeignHosts(server, names);
  refuseForeignPages(server);
  await protect(server);
  answerFaults(server);
  answerUnknownAddress(server);
  return server;
}

/** @param port 0 takes any free one; undefined: 8620, else the next free one   @returns the port */
export async function listen(
  server: FastifyInstance,
  port: number | undefined,
  host = "127.0.0.1",
): Promise<number> {
  await listenSomewhere(server, port, host);
  return (server.server.address() as AddressInfo).port; // listening on TCP, so never a pipe's name
}

async function listenSomewhere(server: FastifyInstance, wanted: number | undefined, host: string) {
  if (wanted !== undefined) {
    await server.listen({ host, port: wanted });
    return;
  }
  for (let port = FIRST_PORT; port < FIRST_PORT + PORTS_TRIED; port++) {
    try {
      await server.listen({ host, port });
      return;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== "EADDRINUSE") throw error;
    }
  }
  await server.listen({ host, port: 0 });
}
