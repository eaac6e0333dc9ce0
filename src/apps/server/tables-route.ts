import { createHash } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";
import { readPublished } from "../../edge/published.ts";
import { LOCAL_RULES, publishedTables, ruleBookOf } from "../../edge/rule-book.ts";
import type { Api, House } from "./house.ts";

/** GET /api/tables: rules, words and norms, so that a device decides without the server. The campaign's own rules are among them where they can be used. */
export function serveTables(api: Api, { folder }: House): void {
  api.get(
    "/api/tables",
    {
      schema: {
        summary: "The rules, words and norms that this campaign decides by",
        response: {
          200: z.string().describe("JSON: rules, local, norms"),
          304: z.null().describe("they are still what if-none-match says"),
        },
      },
    },
    async (request, reply) => {
      const text = JSON.stringify({
        rules: publishedTables(),
        local: localRules(folder),
        norms: readPublished("norms.json"),
      });
      const tag = `"${createHash("sha256").update(text).digest("hex")}"`;
      reply.header("etag", tag).type("application/json; charset=utf-8");
      if (request.headers["if-none-match"] === tag) return reply.code(304).send(null);
      return reply.serializer((whole: string) => whole).send(text);
    },
  );
}

function localRules(folder: string): { readonly file: string; readonly rules: unknown } | null {
  const path = join(folder, LOCAL_RULES);
  if (!existsSync(path) || !ruleBookOf(folder).ok) return null;
  return { file: LOCAL_RULES, rules: JSON.parse(readFileSync(path, "utf8").replace(/^\uFEFF/, "")) };
}
