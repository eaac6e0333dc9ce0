import { existsSync } from "node:fs";
import type { AddressInfo } from "node:net";
import { join } from "node:path";
import fastifyStatic from "@fastify/static";
import fastify, { type FastifyInstance } from "fastify";
import type { Plan } from "../../core/plan/plan.ts";
import { projectFolder } from "../../edge/published.ts";
import type { WhatIfService } from "../../edge/solve/what-if-service.ts";
import { answerFaults, answerUnknownAddress } from "./answers.ts";
import { refuseForeignHosts } from "./own-host.ts";
import { listPapers, servePapers } from "./papers.ts";
import { protect } from "./protect.ts";
import { shownOnPage } from "./shown-on-page.ts";
import { serveWhatIf } from "./what-if.ts";

const FIRST_PORT = 8620;
const PORTS_TRIED = 20;

export interface ServerOptions {
  readonly plan: Plan;
  /** The plan drawn, as SVG. */
  readonly picture: string;
  /** Folder whose PDFs the page offers; it may not exist yet. */
  readonly papersFolder: string;
  /** Answers what-if questions; left out: the page has none. Closed with the server. */
  readonly whatIf?: WhatIfService;
  /** 0 takes any free port; left out: 8620, else the next free one. */
  readonly port?: number;
}

export interface RunningServer {
  /** `http://127.0.0.1:8620` */
  readonly address: string;
  close(): Promise<void>;
}

/** The campaign's page and its data, for this machine only. */
export async function startServer(options: ServerOptions): Promise<RunningServer> {
  const server = await withRoutes(options);
  await listen(server, options.port);
  const { port } = server.server.address() as AddressInfo; // listening on TCP, so never a pipe's name
  return { address: `http://127.0.0.1:${port}`, close: () => server.close() };
}

async function withRoutes({ plan, picture, papersFolder, whatIf }: ServerOptions): Promise<FastifyInstance> {
  const server = fastify({
    forceCloseConnections: true,
    bodyLimit: 1024, // nothing is ever sent to it
    requestTimeout: 10_000,
    routerOptions: { maxParamLength: 200 },
    http: { maxHeaderSize: 8192 },
  });
  refuseForeignHosts(server);
  await protect(server);
  answerFaults(server);
  answerUnknownAddress(server);
  await server.register(fastifyStatic, { root: pageFolder(), cacheControl: false, dotfiles: "deny" });
  const whole = JSON.stringify(plan);
  const shown = JSON.stringify(shownOnPage(plan));
  server.get("/api/plan", (_request, reply) => reply.type("application/json").send(whole));
  server.get("/api/page", (_request, reply) => reply.type("application/json").send(shown));
  server.get("/picture.svg", (_request, reply) => reply.type("image/svg+xml").send(picture));
  server.get("/api/papers", () => listPapers(papersFolder));
  servePapers(server, papersFolder);
  if (whatIf) serveWhatIf(server, whatIf);
  return server;
}

function pageFolder(): string {
  const folder = join(projectFolder(), "dist", "web");
  if (existsSync(join(folder, "index.html"))) return folder;
  throw new Error(
    `The page is not built: ${folder} has no index.html. Run \`npm run build\`, then start again.`,
  );
}

async function listen(server: FastifyInstance, wanted: number | undefined): Promise<void> {
  if (wanted !== undefined) {
    await server.listen({ host: "127.0.0.1", port: wanted });
    return;
  }
  for (let port = FIRST_PORT; port < FIRST_PORT + PORTS_TRIED; port++) {
    try {
      await server.listen({ host: "127.0.0.1", port });
      return;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== "EADDRINUSE") throw error;
    }
  }
  await server.listen({ host: "127.0.0.1", port: 0 });
}
