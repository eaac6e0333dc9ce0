import { describe, expect, test } from "vitest";
import type { Plan } from "../../../src/core/plan/plan.ts";
import { sayDrivers, sayFinish, sayMust, sayUnfinished, sayWatch } from "../../../src/core/say/risk.ts";
import type { Day } from "../../../src/core/units/day.ts";
import { emptyPlan, samplePlan } from "../../apps/sample-plan.ts";

const plan = samplePlan();
const say = (day: Day): string => day;
const withFinish = (finish: Partial<Plan["finish"]>): Plan => ({
  ...plan,
  finish: { ...plan.finish, ...finish },
});

describe("the finish in words", () => {
  test("a finish that nine campaigns in ten reach is three days, and what is boxed", () =>
    expect(sayFinish(plan, say)).toBe(
      "2027-02-09 (half of 400 simulated campaigns); 1 in 10 by 2027-01-22; 9 in 10 by 2027-03-05. Boxed by the end: 1286 of 1299 (1 in 10: 1274 or fewer; 1 in 10: 1290 or more).",
    ));
  test("where too many run over, how many of ten leave something stands in place of the day", () => {
    const late = withFinish({ p90: null, unfinished: 96 });
    expect(sayFinish(late, say)).toContain(
      "; in 2 of 10 simulated campaigns something is left over on 2027-03-12.",
    );
    const later = withFinish({ p50: null, p90: null, unfinished: 240 });
    expect(sayFinish(later, say)).toMatch(
      /^in 6 of 10 simulated campaigns something is left over on 2027-03-12; 1 in 10 by 2027-01-22\. /,
    );
    const never = withFinish({ p10: null, p50: null, p90: null, unfinished: 400 });
    expect(sayFinish(never, say)).toMatch(/^in all 400 simulated campaigns something is left over/);
  });
  test("a few are not none and nearly all are not all", () => {
    expect(sayUnfinished({ ...plan.finish, unfinished: 3 })).toContain("fewer than 1 of 10");
    expect(sayUnfinished({ ...plan.finish, unfinished: 399 })).toContain("nearly all");
  });
});

describe("what makes it uncertain, in words", () => {
  test("the two widest kinds of luck, short spans in days and long ones in weeks", () => {
    expect(sayDrivers(plan)).toBe("mostly late deliveries (3 weeks), then the team's own pace (3 weeks)");
    const short = plan.risk.drivers.slice(2);
    expect(sayDrivers({ ...plan, risk: { ...plan.risk, drivers: short } })).toBe(
      "mostly drying and watching (5 days), then minutes from item to item (4 days)",
    );
  });
  test("in items where more than half of the campaigns leave something", () =>
    expect(sayDrivers(withFinish({ p50: null }))).toBe(
      "mostly late deliveries (6 items), then the team's own pace (5 items)",
    ));
  test("items often late are named with their own chance; where none is, those boxed last", () => {
    expect(sayWatch(plan)).toBe("most often late: SR-0412 (14 %), SR-0077 (8 %)");
    const items = plan.risk.items.map((each) => ({ ...each, late: 0 }));
    expect(sayWatch({ risk: { ...plan.risk, items } })).toBe(
      "most often boxed last: SR-0077 (31 %), SR-0412 (2 %)",
    );
  });
  test("must-do items that are not sure are counted", () => {
    expect(sayMust(plan)).toContain("1 of 1 must-do item on a route is not sure");
    const items = plan.risk.items.map((each) => ({ ...each, boxed: 1 }));
    expect(sayMust({ risk: { ...plan.risk, items } })).toContain("is boxed in 9 of 10 or more");
  });
  test("a campaign with nothing on a route says nothing wrong", () => {
    expect(sayDrivers(emptyPlan())).toBe("chance hardly moves it");
    expect(sayWatch(emptyPlan())).toBe("no item is ever late");
    expect(sayMust(emptyPlan())).toBe("");
  });
});
