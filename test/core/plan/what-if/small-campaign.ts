import { makeCampaign } from "../../../../bench/make-campaign.ts";
import type { Campaign } from "../../../../src/core/items/campaign.ts";
import type { Day } from "../../../../src/core/units/day.ts";

export const day = (text: string): Day => text as Day;

/** Forty invented items, five people (P2 on clean work from 29 June to the end), 1 June to 23 August 2026, masks and boxes on their way. */
export function smallCampaign(more: Partial<Campaign> = {}): Campaign {
  const made = makeCampaign({ items: 40, people: 5, weeks: 12, seed: 3 });
  const people = made.people.map((each, at) => (at === 2 ? { ...each, name: "Pia Ember-Lund" } : each));
  return { ...made, people, ...more };
}
