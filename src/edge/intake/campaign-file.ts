import { z } from "zod";
import type { Limits, Place, Station } from "../../core/items/campaign.ts";
import type { Problem } from "../../core/outcome/problem.ts";
import { type Day, dayFrom } from "../../core/units/day.ts";
import type { DateOrder } from "./dates.ts";
import { decodeText } from "./decode.ts";
import { defaultLimits } from "./limits.ts";
import { problem } from "./problem.ts";
import { unknownKeys } from "./unknown-keys.ts";
import { nearestWord } from "./words.ts";

export const CAMPAIGN_FILE = "campaign.json";
export const CAMPAIGN_VERSION = 1;
export const CLIMATES = ["hot_humid", "warm_wet_season", "hot_dry", "temperate"] as const;
export const STATION_KINDS = ["mould bench", "clean bench", "cover stand", "camera", "boxing table"] as const;
const DATE_ORDERS = ["day first", "month first", "year first"] as const;

const day = z
  .string()
  .refine((written) => dayFrom(written) !== null, "a day written yyyy-mm-dd")
  .transform((written) => written as Day); // dayFrom has just said so
const limit = (most: number) => z.object({ value: z.number().min(0).max(most), source: z.string().min(1) });

const shape = z.object({
  leafward: z.literal(CAMPAIGN_VERSION),
  name: z.string().min(1),
  place: z.object({
    name: z.string().min(1),
    climate: z.enum(CLIMATES),
    freezer: z.boolean(),
    fineFilterVacuum: z.boolean(),
  }),
  start: day,
  end: day,
  planFrom: day.optional(),
  dates: z.enum(DATE_ORDERS).optional(),
  rooms: z.object({ wardLitres: z.number().min(0) }),
  stations: z.array(
    z.object({
      id: z.string().min(1),
      kind: z.enum(STATION_KINDS),
      places: z.number().int().min(1).max(100),
      minutesADay: z.number().min(1).max(1440),
    }),
  ),
  limits: z
    .object({
      exposedMinutesADay: limit(1440).optional(),
      exposedDaysAWeek: limit(7).optional(),
      exposedDaysInARow: limit(7).optional(),
      maskMinutes: limit(1440).optional(),
      maskBreakMinutes: limit(1440).optional(),
    })
    .optional(),
});

/** What campaign.json says, with every figure filled in. */
export interface CampaignFile {
  readonly name: string;
  readonly place: Place;
  readonly start: Day;
  readonly end: Day;
  readonly planFrom: Day;
  readonly order: DateOrder | null;
  readonly wardLitres: number;
  readonly stations: readonly Station[];
  readonly limits: Limits;
}

/** Reads campaign.json; `value` is null when it cannot be used. */
export function campaignFileFrom(bytes: Uint8Array): {
  readonly value: CampaignFile | null;
  readonly problems: readonly Problem[];
} {
  const { text } = decodeText(bytes);
  let given: unknown;
  try {
    given = JSON.parse(text);
  } catch (error) {
    return { value: null, problems: [notJson(text, error)] };
  }
  const parsed = shape.safeParse(given);
  if (!parsed.success)
    return { value: null, problems: parsed.error.issues.map((issue) => fieldProblem(issue, given)) };
  const file = parsed.data;
  const limits = defaultLimits(file.limits ?? {});
  const order = file.dates === "day first" || file.dates === "month first" ? file.dates : null;
  const problems = [...unknownSettings(given), ...limits.problems, ...inconsistent(file)];
  if (file.end < file.start) return { value: null, problems };
  const { name, place, start, end, stations } = file;
  const planFrom = file.planFrom ?? start;
  const value = {
    name,
    place,
    start,
    end,
    planFrom,
    order,
    wardLitres: file.rooms.wardLitres,
    stations,
    limits: limits.value,
  };
  return { value, problems };
}

const at = (column?: string) => (column ? { file: CAMPAIGN_FILE, column } : { file: CAMPAIGN_FILE });

function notJson(text: string, error: unknown): Problem {
  const message = error instanceof Error ? error.message : "";
  const position = /position (\d+)/.exec(message)?.[1];
  const before = text.slice(0, position === undefined ? text.length : Number(position));
  return problem(
    "campaign-not-json",
    "stop",
    { file: CAMPAIGN_FILE, line: before.split("\n").length },
    {
      got: text.slice(before.length, before.length + 20),
      expected: message.replace(/\s*(?:in JSON)?\s*at position \d+.*$/s, "") || "it cannot be read",
      remedy: "Look for a missing comma, quotation mark or bracket on this line or the one before.",
    },
  );
}

function fieldProblem(issue: z.core.$ZodIssue, given: unknown): Problem {
  const path = issue.path.map(String);
  const value = path.reduce<unknown>(
    (inside, key) => (inside as Record<string, unknown> | undefined)?.[key],
    given,
  );
  const got = value === undefined ? "" : JSON.stringify(value).slice(0, 80);
  if (path.join(".") === "leafward" && value !== undefined)
    return problem("campaign-version", "stop", at("leafward"), {
      got,
      expected: String(CAMPAIGN_VERSION),
      remedy: "Use the Leafward that wrote it, or a newer one.",
    });
  return problem("campaign-field", "stop", at(path.join(".")), {
    got,
    expected: sayIssue(issue),
    remedy: value === undefined ? "Add it." : "Mend it.",
  });
}

function sayIssue(issue: z.core.$ZodIssue): string {
  if (issue.code === "invalid_value") return issue.values.map(String).join(", ");
  if (issue.code === "invalid_type")
    return issue.expected === "object" ? "a group of settings in { }" : `a ${issue.expected}`;
  if (issue.code === "too_small") return issue.origin === "string" ? "some text" : `${issue.minimum} or more`;
  if (issue.code === "too_big") return `${issue.maximum} or less`;
  return issue.message;
}

const unknownSettings = (given: unknown): Problem[] =>
  unknownKeys(shape, given).map(({ path, known }) => {
    const near = nearestWord(path.split(".").at(-1) ?? "", known);
    const remedy =
      near === null ? "Nothing needs to be done if that is meant." : `If "${near}" is meant, change it.`;
    return problem("campaign-unknown-field", "note", at(), { got: path, remedy });
  });

function inconsistent({ start, end, planFrom, stations }: z.infer<typeof shape>): Problem[] {
  const problems: Problem[] = [];
  if (end < start)
    problems.push(
      problem("end-before-start", "stop", at("end"), {
        got: end,
        expected: start,
        remedy: "Put the dates right.",
      }),
    );
  else if (planFrom !== undefined && (planFrom < start || planFrom > end))
    problems.push(
      problem("plan-outside", "stop", at("planFrom"), {
        got: planFrom,
        expected: `${start} to ${end}`,
        remedy: "Put the date right.",
      }),
    );
  const seen = new Set<string>();
  for (const { id } of stations) {
    if (seen.has(id))
      problems.push(
        problem("station-twice", "stop", at("stations"), {
          got: id,
          remedy: "Give each station its own id.",
        }),
      );
    seen.add(id);
  }
  return problems;
}
