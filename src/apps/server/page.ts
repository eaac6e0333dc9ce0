import { existsSync } from "node:fs";
import { join } from "node:path";
import fastifyStatic from "@fastify/static";
import type { FastifyInstance, FastifyReply } from "fastify";
import { projectFolder } from "../../edge/published.ts";
import { refusal } from "./answers.ts";
import { listPapers, servePapers } from "./papers.ts";
import type { PlanShelf, PlanTexts } from "./plan-shelf.ts";
import { serveEase, serveWhatIf } from "./what-if.ts";

export type { PageOptions } from "./plan-shelf.ts";

/** The page itself: files that hold no data. */
export async function servePageFiles(server: FastifyInstance): Promise<void> {
  await server.register(fastifyStatic, { root: pageFolder(), cacheControl: false, dotfiles: "deny" });
}

/** What is shown of the plan on the shelf; that there is none yet is an answer too (204). */
export function servePlan(server: FastifyInstance, shelf: PlanShelf): void {
  const sent = (form: keyof PlanTexts) => (_: unknown, reply: FastifyReply) => {
    const texts = shelf.texts();
    return texts === null ? reply.code(204).send() : reply.type("application/json").send(texts[form]);
  };
  server.get("/api/plan", sent("plan"));
  server.get("/api/page", sent("page"));
  server.get("/api/roster", sent("roster"));
  server.get("/picture.svg", (_, reply) => {
    const page = shelf.now();
    return page === null ? sayNoPlan(reply) : reply.type("image/svg+xml").send(page.picture);
  });
  const papersFolder = (): string | null => shelf.now()?.papersFolder ?? null;
  server.get("/api/papers", async () => {
    const folder = papersFolder();
    return folder === null ? [] : listPapers(folder);
  });
  servePapers(server, papersFolder);
  serveWhatIf(server, shelf);
  serveEase(server, shelf);
}

const sayNoPlan = (reply: FastifyReply) =>
  reply
    .code(404)
    .send(
      refusal(
        "no-plan",
        "no plan",
        "a plan",
        "Make the first one in the Plan room, or: npx leafward plan <folder>.",
      ),
    );

function pageFolder(): string {
  const folder = join(projectFolder(), "dist", "web");
  if (existsSync(join(folder, "index.html"))) return folder;
  throw new Error(
    `The page is not built: ${folder} has no index.html. Run \`npm run build\`, then start again.`,
  );
}
