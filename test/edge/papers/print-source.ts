import type { Campaign } from "../../../src/core/items/campaign.ts";
import { campaignRoutes } from "../../../src/core/plan/campaign-routes.ts";
import { addDays } from "../../../src/core/units/day.ts";
import { book, keptCampaign, keptPlan, norms } from "../../core/plan/checker/good-plan.ts";

const day = (n: number) => addDays(keptCampaign().planFrom, n);

/** The kept campaign with a week of work behind it and a bag that lies in its Ward. */
export function worked(): Campaign {
  const campaign = keptCampaign();
  const [first, second] = campaign.items;
  const [person, other] = campaign.people;
  if (!first || !second || !person || !other) throw new Error("The kept campaign is empty.");
  return {
    ...campaign,
    sessions: [
      { day: day(-3), item: first.id, act: "clean", person: person.code, minutes: 141, exposed: true },
      { day: day(-3), item: second.id, act: "wrap", person: person.code, minutes: 52, exposed: true },
      { day: day(-2), item: second.id, act: "survey", person: other.code, minutes: 9, exposed: false },
    ],
  };
}

export const campaign = keptCampaign();
export const plan = keptPlan();
export { book, norms };
export const { care, routes } = campaignRoutes(book, norms, campaign);
