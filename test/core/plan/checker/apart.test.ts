import { expect, test } from "vitest";
import { arrowsOf, fileMeant, filesUnder } from "../../../house/source-files.ts";

const FOLDER = "src/core/plan/checker/";
/** Rules of care, quantities, what a campaign is and the readings of its bags and stores: the ground that planner and checker both stand on. */
const SHARED = [
  "src/core/care/item-care.ts",
  "src/core/items/campaign.ts",
  "src/core/units/day.ts",
  "src/core/ward/forecast.ts",
  "src/core/ward/item-in-ward.ts",
  "src/core/ward/mould-outlook.ts",
];

test("the checker uses no code of the planner or of route making, only what a plan looks like", () => {
  const files = filesUnder("src/core/plan/checker");
  expect(files.length).toBeGreaterThan(10);
  const used = files.flatMap((file) =>
    arrowsOf(file)
      .filter(({ typeOnly }) => !typeOnly)
      .map(({ to }) => fileMeant(file, to) ?? to),
  );
  const strangers = new Set(used.filter((file) => !file.startsWith(FOLDER) && !SHARED.includes(file)));
  expect([...strangers]).toEqual([]);
});
