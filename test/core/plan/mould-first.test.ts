import { afterAll, describe, expect, test } from "vitest";
import { makeCampaign } from "../../../bench/make-campaign.ts";
import type { Campaign, ClimateSeries } from "../../../src/core/items/campaign.ts";
import { addDays, daysBetween } from "../../../src/core/units/day.ts";
import { mouldFactor, mouldOutlooks } from "../../../src/core/ward/mould-outlook.ts";
import { readCampaignFolder } from "../../../src/edge/intake/read-campaign.ts";
import { startSolver } from "../../../src/edge/solve/solver.ts";
import { faultsOf, planOf } from "./checker/good-plan.ts";

const solver = startSolver();
afterAll(() => solver.close());

const made = makeCampaign({ items: 40, people: 3, weeks: 6, seed: 12 });
const reader = (name: string, relHum: number): ClimateSeries => ({
  name,
  readings: Array.from({ length: 28 * 24 }, (_, hour) => ({
    at: `${addDays(made.planFrom, Math.floor(hour / 24) - 28)}T${String(hour % 24).padStart(2, "0")}:00:00`,
    dryBulb: 27 + (hour % 2) / 10,
    relHum,
  })),
});
/** Every second item lies in the cellar, the others in the loft. */
const inTwoPlaces = (climate: readonly ClimateSeries[]): Campaign => ({
  ...made,
  items: made.items.map((item, at) => ({
    ...item,
    foundIn: at % 2 === 0 ? "Cellar shelf 1" : "Loft shelf 1",
  })),
  climate,
});
const cellar = new Set(made.items.filter((_, at) => at % 2 === 0).map(({ id }) => id));

/** Mean day on which the cellar's items are boxed in a plan without fault; one that is left counts as the day after the end. */
async function cellarEmptied(climate: readonly ClimateSeries[]): Promise<number> {
  const campaign = inTwoPlaces(climate);
  const plan = await planOf(campaign, solver.solve);
  expect(faultsOf(campaign, plan)).toEqual([]);
  const days = plan.itemDays
    .filter(({ item }) => cellar.has(item))
    .map(({ days: { box } }) => daysBetween(made.planFrom, box ?? addDays(made.end, 1)));
  return days.reduce((sum, each) => sum + each, 0) / days.length;
}

describe("the plan takes first what would grow mould where it waits", () => {
  test("a damp cellar is emptied before a dry loft, the sooner the damper, and no limit is broken", async () => {
    const days = [];
    for (const relHum of [0.5, 0.84, 0.98])
      days.push(await cellarEmptied([reader("cellar", relHum), reader("loft", 0.5)]));
    const [dry, damp, soaked] = days as [number, number, number];
    expect(damp).toBeLessThan(dry); // unsure: it weighs
    expect(soaked).toBeLessThanOrEqual(damp); // sure: a due day
  });

  test("of the three invented campaigns, two have a damp store and one has none", async () => {
    const factors = async (name: string): Promise<Map<string, number>> => {
      const { campaign } = await readCampaignFolder(
        new URL(`../../../demo/${name}`, import.meta.url).pathname,
      );
      if (!campaign) throw new Error(`${name} cannot be read`);
      return new Map([...mouldOutlooks(campaign)].map(([item, outlook]) => [item, mouldFactor(outlook)]));
    };
    const [saltmere, lamps, marabelle] = [
      await factors("saltmere"),
      await factors("nine-lamps"),
      await factors("marabelle"),
    ];
    expect([saltmere.get("SR-0001"), saltmere.get("SR-0600")]).toEqual([1.75, 1.5]); // a ledger in leather, a file of plain paper
    expect(Math.max(...lamps.values())).toBe(1.75);
    expect(new Set(marabelle.values())).toEqual(new Set([1]));
  });
});
