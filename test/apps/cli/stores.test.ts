import { describe, expect, test } from "vitest";
import { makeCampaign } from "../../../bench/make-campaign.ts";
import { storeTable } from "../../../src/apps/cli/store-table.ts";
import { stores } from "../../../src/apps/cli/stores.ts";
import { storeOutlooks } from "../../../src/core/stores/projection/store-outlook.ts";
import { folderWith } from "../../edge/intake/campaign-folder.ts";
import { said } from "../damp/said.ts";

const made = makeCampaign({ items: 10, people: 2, weeks: 20, seed: 1 });
const USES = [
  "k-mask",
  "k-gloves",
  "k-apron",
  "k-hair",
  "k-cloth",
  "k-eth",
  "k-cover",
  "k-gel",
  "k-bag",
  "k-label",
];
/** A room of stores of which all but one run out, each later than the one before. */
const outlooks = storeOutlooks(
  {
    ...made,
    deliveries: [],
    stores: USES.map((use, at) => ({
      ...{ id: use.slice(2), name: `Store ${at + 1}`, use, unit: "pc", onHand: 30 + 20 * at },
      ...{ pack: 20, leadDays: 14, route: "air" },
    })),
  },
  new Map(USES.map((use) => [use, new Float64Array(140).fill(use === "k-label" ? 0 : 2)])),
);

describe("the screen of the store room", () => {
  test("what runs out first stands first, with what to send for", () => {
    const [head, first, second] = storeTable(outlooks, made.planFrom, 20);
    expect(head).toMatch(/^Store +On hand +A week +Runs out .*Order by +Packs$/);
    expect(first).toMatch(/^Store 1 +30 pc +14 .*today by air +14 × 20$/); // 250 short and a tenth: 275
    expect(second).toMatch(/^Store 2 +50 pc/);
  });
  test("there is never more than there is room for, and what is left out is counted", () => {
    for (const room of [8, 10, 12, 14])
      expect(storeTable(outlooks, made.planFrom, room).length).toBeLessThanOrEqual(room);
    expect(storeTable(outlooks, made.planFrom, 8).join("\n")).toContain(
      "… and 6 more that run out later: --all",
    );
  });
  test("what the plan takes nothing of is named, and with --all has a line", () => {
    expect(storeTable(outlooks, made.planFrom, 20).join("\n")).toContain(
      "The plan takes none of: Store 10 210 pc.",
    );
    expect(storeTable(outlooks, made.planFrom, Number.POSITIVE_INFINITY)).toHaveLength(12);
  });
});

test("an empty store room is said with what to write down, and nothing is planned", async () => {
  const head = "store,name,use,unit,on_hand,pack,lead_days,route,expires,order_by\n";
  const folder = await folderWith({ "stores.csv": head, "deliveries.csv": "store,date,quantity,note\n" });
  const { flat, code } = await said(stores, folder);
  expect(flat).toContain("No store is listed");
  expect(flat).toContain("stores.csv");
  expect(code).toBe(0);
});

test("one folder is asked for, and a day that is one", async () => {
  expect((await said(stores, "")).code).toBe(2);
  expect((await said(stores, "demo/saltmere --today tomorrow")).complaints).toContain(
    "expected a day such as",
  );
});
