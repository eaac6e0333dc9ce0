import type { FastifyError, FastifyInstance } from "fastify";
import { readOnly } from "../../edge/keep/failures.ts";
import { KeepFault } from "../../edge/keep/keep.ts";
import { cannotBeWritten } from "../../edge/serve/server-file.ts";
import { refusal } from "./answers.ts";

/** What does not fit its schema is named by its place; what was sent is not repeated. Anything else the server as a whole answers. */
export function answerApiFaults(server: FastifyInstance): void {
  server.setErrorHandler((error: FastifyError, _request, reply) => {
    if (error instanceof KeepFault) return reply.code(503).send({ problem: error.problem });
    if (cannotBeWritten(error)) return reply.code(503).send({ problem: readOnly("pictures") });
    if (error.code === "ENOSPC" || error.code === "EDQUOT")
      return reply
        .code(507)
        .send(refusal("disk-full", "no room", "room on the disk", "Make room, then do it again."));
    const [first] = error.validation ?? [];
    if (first === undefined) throw error;
    const where = [error.validationContext, ...first.instancePath.split("/").filter(Boolean)].join(".");
    return reply
      .code(400)
      .send(
        refusal("does-not-fit", where, first.message ?? "its schema", "Send it as /api/description says."),
      );
  });
}
