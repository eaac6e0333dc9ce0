import { existsSync } from "node:fs";
import { join } from "node:path";
import fastifyStatic from "@fastify/static";
import type { FastifyInstance } from "fastify";
import type { Plan } from "../../core/plan/plan.ts";
import { projectFolder } from "../../edge/published.ts";
import type { WhatIfService } from "../../edge/solve/what-if-service.ts";
import { listPapers, servePapers } from "./papers.ts";
import { shownOnPage } from "./shown-on-page.ts";
import { serveWhatIf } from "./what-if.ts";

export interface PageOptions {
  readonly plan: Plan;
  /** The plan drawn, as SVG. */
  readonly picture: string;
  /** Folder whose PDFs the page offers; it may not exist yet. */
  readonly papersFolder: string;
  /** Answers what-if questions; left out: the page has none. Closed with the server. */
  readonly whatIf?: WhatIfService;
}

/** The page itself: files that hold no data. */
export async function servePageFiles(server: FastifyInstance): Promise<void> {
  await server.register(fastifyStatic, { root: pageFolder(), cacheControl: false, dotfiles: "deny" });
}

/** What the page shows of a plan. */
export function servePlan(server: FastifyInstance, options: PageOptions): void {
  const { plan, picture, papersFolder, whatIf } = options;
  const whole = JSON.stringify(plan);
  const shown = JSON.stringify(shownOnPage(plan));
  server.get("/api/plan", (_request, reply) => reply.type("application/json").send(whole));
  server.get("/api/page", (_request, reply) => reply.type("application/json").send(shown));
  server.get("/picture.svg", (_request, reply) => reply.type("image/svg+xml").send(picture));
  server.get("/api/papers", () => listPapers(papersFolder));
  servePapers(server, papersFolder);
  if (whatIf) serveWhatIf(server, whatIf);
}

function pageFolder(): string {
  const folder = join(projectFolder(), "dist", "web");
  if (existsSync(join(folder, "index.html"))) return folder;
  throw new Error(
    `The page is not built: ${folder} has no index.html. Run \`npm run build\`, then start again.`,
  );
}
