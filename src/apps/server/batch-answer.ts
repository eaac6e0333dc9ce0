import { z } from "zod";
import type { Problem } from "../../core/outcome/problem.ts";
import type { Appended } from "../../edge/keep/keep.ts";
import type { Judged } from "./judge-batch.ts";
import { problemSchema } from "./problem-schema.ts";

const answer = z.object({
  id: z.string().nullable().describe("null: it could not be read"),
  answer: z
    .enum(["kept", "refused", "waits"])
    .describe(
      "kept: it is on the disk, now or before; waits: nothing of this batch was kept, others were refused",
    ),
  problem: problemSchema.exactOptional(),
});
export const batchSchema = z.object({
  answers: z.array(answer),
  place: z
    .number()
    .exactOptional()
    .describe("the last place of all that is kept here; to go on from, take those of the entries"),
  noted: z.array(problemSchema).describe("kept, but to be looked at"),
});

/** What is said of a batch.   @param appended null: some of it was refused before it came to the keep */
export const answerBatch = (
  judged: readonly Judged[],
  appended: Appended | null,
): z.infer<typeof batchSchema> => ({
  answers: judged.map((each) => answerTo(each, appended)),
  ...(appended === null ? {} : { place: appended.place }),
  noted: (appended?.noted ?? []).map(answered),
});

/** What became of one entry, after what the keep said of the batch. */
function answerTo({ event, problem }: Judged, appended: Appended | null): z.infer<typeof answer> {
  const id = event?.id ?? null;
  const why = problem ?? appended?.refused.find((each) => isAbout(each, id)) ?? null;
  if (why !== null) return { id, answer: "refused", problem: answered(why) };
  return { id, answer: appended !== null && appended.refused.length === 0 ? "kept" : "waits" };
}

/** Of two entries with one id the keep names the id; what stands in the way of writing at all stands in the way of each. */
const isAbout = ({ code, got }: Problem, id: string | null): boolean => code !== "event-twice" || got === id;

/** Without line, column and rule: an entry has none. */
const answered = ({
  code,
  severity,
  got,
  expected,
  remedy,
  file,
}: Problem): z.infer<typeof problemSchema> => ({
  ...{ code, severity, remedy },
  ...(got === undefined ? {} : { got }),
  ...(expected === undefined ? {} : { expected }),
  ...(file === undefined ? {} : { file }),
});

/** As HTTP says it. */
export function statusOf(appended: Appended | null): 200 | 409 | 422 | 503 | 507 {
  if (appended === null) return 422;
  const [first] = appended.refused;
  if (first === undefined) return 200;
  if (first.code === "keep-full") return 507;
  return first.code.startsWith("keep-") ? 503 : 409;
}
