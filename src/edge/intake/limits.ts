import type { Limit, Limits } from "../../core/items/campaign.ts";
import type { Problem } from "../../core/outcome/problem.ts";
import { problem } from "./problem.ts";
import { peopleNorm } from "./vocabulary.ts";

type Given = { readonly [K in keyof Limits]?: Limit | undefined };

/** The limits a new campaign starts with, from `data/norms.json`; two exposed days in a row has no entry there. */
export function startingLimits(): Limits {
  const [wear = 0, recovery = 0] = Object(peopleNorm("p-ffp-novalve").value) as number[];
  const mask = peopleNorm("p-ffp-novalve").source;
  const from = (id: string): Limit => ({
    value: Number(peopleNorm(id).value),
    source: peopleNorm(id).source,
  });
  return {
    exposedMinutesADay: from("p-day-plan"),
    exposedDaysAWeek: from("p-week-days"),
    exposedDaysInARow: { value: 2, source: "common practice, no source" },
    maskMinutes: { value: wear, source: mask },
    maskBreakMinutes: { value: recovery, source: mask },
  };
}

/** The limits given, each missing one filled in and said. */
export function defaultLimits(given: Given): {
  readonly value: Limits;
  readonly problems: readonly Problem[];
} {
  const limits = { ...startingLimits() };
  const problems: Problem[] = [];
  for (const name of Object.keys(limits) as (keyof Limits)[]) {
    const own = given[name];
    if (own !== undefined) limits[name] = own;
    else problems.push(limitFilled(name, limits[name]));
  }
  return { value: limits, problems };
}

const limitFilled = (name: string, { value, source }: Limit): Problem =>
  problem(
    "limits-default",
    "note",
    { file: "campaign.json", column: `limits.${name}` },
    {
      expected: `${value} (${source})`,
      remedy: "Write your own limit with its source; follow local rules and licensed practice.",
    },
  );
