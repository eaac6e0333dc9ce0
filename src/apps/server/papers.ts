import { readdir, stat } from "node:fs/promises";
import { join } from "node:path";
import type { FastifyInstance } from "fastify";
import { refusal } from "./answers.ts";

export interface Paper {
  /** Name of the file, without a folder. */
  readonly file: string;
  readonly bytes: number;
}

/** The PDFs of one folder, not of those inside it, in the order of their names. A folder not made yet has none. */
export async function listPapers(folder: string): Promise<Paper[]> {
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
  const names = entries
    .filter((entry) => entry.isFile() && entry.name.toLowerCase().endsWith(".pdf"))
    .map((entry) => entry.name)
    .sort((a, b) => (a < b ? -1 : 1));
  return Promise.all(names.map(async (file) => ({ file, bytes: (await stat(join(folder, file))).size })));
}

/** Serves a file only when its whole name is on the list, so that no path leads out of the folder. */
export function servePapers(server: FastifyInstance, folderNow: () => string | null): void {
  // the browser's own PDF viewer is a page and would fall under the policy of ours
  const ownPolicy = { helmet: { contentSecurityPolicy: false as const } };
  server.get<{ Params: { file: string } }>("/papers/:file", ownPolicy, async (request, reply) => {
    const { file } = request.params;
    const folder = folderNow();
    const listed = folder === null ? [] : await listPapers(folder);
    if (folder === null || !listed.some((paper) => paper.file === file))
      return reply
        .code(404)
        .send(
          refusal(
            "no-such-paper",
            file,
            "a file that /api/papers lists",
            "Reload the page: the papers may have been written anew.",
          ),
        );
    return reply.sendFile(file, folder);
  });
}
