import type { Campaign } from "../items/campaign.ts";
import type { Answer, AsItIs } from "../plan/what-if/answers.ts";
import type { Scenario } from "../plan/what-if/read-scenario.ts";
import {
  sayBindMoved,
  sayChange,
  sayChangeCaution,
  sayDifference,
  sayFreezerQueue,
  sayReleaseQueue,
} from "./what-if.ts";

/** What a scenario supposes, a line for each change. */
export function saySupposed(scenario: Scenario, base: Campaign, locale = "en-GB"): string[] {
  const alone = base.people.find((each) => each.code === scenario.releasesAlone);
  const { freezer } = scenario;
  return [
    ...scenario.changes.map((each) => sayChange(each, base, locale)),
    ...(alone ? [`${alone.name} (${alone.code}) alone releases from the Ward`] : []),
    ...(freezer ? [`a freezer of ${freezer.items} items, ${freezer.cycleDays} days a batch`] : []),
  ];
}

/** An answer in sentences, the verdict first. */
export function sayAnswer(base: AsItIs, answer: Answer, locale = "en-GB"): string[] {
  if (answer.step === "first") return sayDifference(base.first, answer.outlook, answer.difference, locale);
  const { outlook, difference, releases, freezer } = answer;
  return [
    ...(difference ? sayDifference(base.outlook, outlook, difference, locale) : []),
    ...(difference ? sayBindMoved(base.outlook, outlook) : []),
    ...(releases ? sayReleaseQueue(releases, locale) : []),
    ...(freezer ? sayFreezerQueue(freezer, locale) : []),
  ];
}

/** What to mind with a scenario, each once. */
export const sayCautions = ({ changes }: Scenario): string[] => [
  ...new Set(changes.flatMap((each) => sayChangeCaution(each) ?? [])),
];
