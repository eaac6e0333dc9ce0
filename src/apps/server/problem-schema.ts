import { z } from "zod";

/** `Problem`, as an answer holds it. */
export const problemSchema = z.object({
  code: z.string(),
  severity: z.enum(["stop", "ask", "note"]),
  got: z.string().exactOptional(),
  expected: z.string().exactOptional(),
  remedy: z.string(),
  file: z.string().exactOptional(),
});
export const refusalSchema = z.object({ problem: problemSchema });
