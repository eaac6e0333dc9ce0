import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { loadNorms } from "../../../../src/core/care/norms.ts";
import type { Campaign } from "../../../../src/core/items/campaign.ts";
import { campaignRoutes } from "../../../../src/core/plan/campaign-routes.ts";
import { planStop } from "../../../../src/core/plan/stop/plan-stop.ts";
import { RESTING_WORK } from "../../../../src/core/plan/stop/resting-work.ts";
import type { StopPlan } from "../../../../src/core/plan/stop/stop-plan.ts";
import { addDays, type Day, mondayOf, weekdayOf } from "../../../../src/core/units/day.ts";
import { readCampaignFolder } from "../../../../src/edge/intake/read-campaign.ts";
import { projectFolder, readPublished } from "../../../../src/edge/published.ts";
import { publishedRuleBook } from "../../../../src/edge/rule-book.ts";

const book = publishedRuleBook();
const norms = loadNorms(readPublished("norms.json"));
const read = async (name: string): Promise<Campaign> =>
  (await readCampaignFolder(join(projectFolder(), "demo", name))).campaign as Campaign;
const stopOf = (campaign: Campaign, day: string): StopPlan => {
  const { care, routes } = campaignRoutes(book, norms, campaign);
  return planStop({ campaign, book, norms, care, routes }, day as Day);
};
const saltmere = await read("saltmere");
const campaigns = { saltmere, "nine-lamps": await read("nine-lamps"), marabelle: await read("marabelle") };
const cases = (
  [
    ["saltmere", "2026-06-01"],
    ["saltmere", "2026-06-19"],
    ["saltmere", "2026-09-30"],
    ["nine-lamps", "2026-10-16"],
    ["marabelle", "2026-09-02"],
    ["marabelle", "2026-09-25"],
  ] as const
).map(([name, day]) => [name, day, stopOf(campaigns[name], day)] as const);

const by = <T>(list: readonly T[], key: (each: T) => string): Map<string, T[]> => {
  const groups = new Map<string, T[]>();
  for (const each of list) groups.set(key(each), [...(groups.get(key(each)) ?? []), each]);
  return groups;
};

describe.each(cases)("%s stopped on %s", (name, day, plan) => {
  const campaign = campaigns[name];

  test("every item has one verdict and a resting state that the rules know", () => {
    expect(plan.items.map(({ item }) => item).sort()).toEqual(campaign.items.map(({ id }) => id).sort());
    const known = new Set(book.rests.map(({ id }) => id));
    expect(plan.items.filter(({ rest }) => !known.has(rest.id))).toEqual([]);
  });
  test("what is begun is boxed by the stop, and nothing is worked on after it", () => {
    for (const { verdict, boxedOn, item } of plan.items)
      if (verdict === "start" || verdict === "finish") expect(boxedOn && boxedOn <= day, item).toBe(true);
    expect(plan.lines.filter((line) => line.day > day || line.day < campaign.planFrom)).toEqual([]);
  });
  test("what is left was not worked on; what was taken in hand lies in a box or was put to rest", () => {
    const worked = new Set(plan.lines.filter(({ what }) => what !== "look").map(({ item }) => item));
    const untouched = plan.items.filter(({ verdict }) => verdict === "leave" || verdict === "comes later");
    expect(untouched.filter(({ item }) => worked.has(item))).toEqual([]);
    const halfDone = plan.lines.filter(({ item, what }) => {
      const own = plan.items.find((each) => each.item === item);
      return !/make safe|put back|look|close down/.test(what) && !own?.boxedOn;
    });
    expect(halfDone).toEqual([]);
  });
  test("nobody works longer than present, nor near mould longer than the limit, changing counted", () => {
    const changing = ["s-doff", "s-decon", "s-tools", "s-waste"].reduce(
      (all, id) => all + norms.band(id).typical,
      0,
    );
    for (const [key, lines] of by(plan.lines, (line) => `${line.day} ${line.person}`)) {
      const person = campaign.people.find(({ code }) => code === key.split(" ")[1]);
      const minutes = lines.reduce((all, line) => all + line.minutes, 0);
      expect(minutes, key).toBeLessThanOrEqual((person?.hoursADay ?? 0) * 60);
      const near = lines.filter(({ exposed }) => exposed).reduce((all, line) => all + line.minutes, 0);
      if (near > 0)
        expect(near + changing, key).toBeLessThanOrEqual(campaign.limits.exposedMinutesADay.value + 0.5);
    }
  });
  test("exposed days stay within the week and the row, only for who does mould work, never alone", () => {
    const { exposedDaysAWeek, exposedDaysInARow } = campaign.limits;
    const days = new Map(
      [
        ...by(
          plan.lines.filter(({ exposed }) => exposed),
          ({ person }) => person,
        ),
      ].map(([person, lines]) => [person, new Set(lines.map((line) => line.day))]),
    );
    for (const [person, worn] of days) {
      expect(campaign.people.find(({ code }) => code === person)?.mouldWork, person).toBe(true);
      for (const week of by([...worn], mondayOf).values())
        expect(week.length, person).toBeLessThanOrEqual(exposedDaysAWeek.value);
      for (const first of worn) {
        let row = 1;
        while (worn.has(addDays(first, row))) row++;
        expect(row, `${person} from ${first}`).toBeLessThanOrEqual(exposedDaysInARow.value);
      }
    }
  });
  test("what the works take is there, or an order sent today would be here", () => {
    const late = plan.stores.filter(({ use, needed, there }) => {
      const leads = campaign.stores.filter((store) => store.use === use).map(({ leadDays }) => leadDays);
      const comes = addDays(campaign.planFrom, Math.min(...leads)) <= day;
      return needed > there + 1e-6 && !comes;
    });
    const lacking = new Set(
      plan.items.filter(({ why }) => why === "no store").flatMap(({ uses }) => Object.keys(uses)),
    );
    expect(late.filter(({ use }) => !lacking.has(use))).toEqual([]);
  });
  test("where hours are missing to make an item safe, none goes to the box", () => {
    if (!plan.items.some(({ why }) => why === "no hours")) return;
    expect(plan.items.filter(({ boxedOn }) => boxedOn)).toEqual([]);
  });
  test("nobody is asked to work on a day off", () => {
    for (const { person, day: on } of plan.lines)
      expect(campaign.people.find(({ code }) => code === person)?.weekdays, `${person} ${on}`).toContain(
        weekdayOf(on),
      );
  });
});

describe("stopping", () => {
  const plan = cases[1]?.[2] as StopPlan;

  test("film in decay is for the fire service, wet is next, and damp comes before dormant", () => {
    const inOrder = plan.items.filter(({ place }) => place !== null);
    const [film, ...wet] = inOrder.slice(0, 10);
    expect(film).toMatchObject({ why: "outside help" });
    expect(wet.map(({ rest }) => rest.id)).toEqual(Array(9).fill("wet"));
    const at = (rest: string): number => inOrder.findIndex((each) => each.rest.id === rest);
    expect(at("gel_bag")).toBeLessThan(at("bag"));
    expect(at("bag")).toBeLessThan(at("wrapped"));
  });
  test("wet items that can outlast the stop are laid out, and named all the same", () => {
    const wet = plan.items.filter(({ why }) => why === "still drying");
    expect(wet.length).toBe(9);
    expect(wet.every(({ people, needsReader }) => people.length > 0 && needsReader)).toBe(true);
    const late = stopOf(saltmere, "2026-07-31").items.filter(({ why }) => why === "still drying");
    expect(late).toEqual([]);
  });
  test("wrapper paper for sixty: the others are named with the store they lack", () => {
    const lacking = plan.items.filter(({ why }) => why === "no store");
    expect(lacking.length).toBe(8);
    expect(plan.stores.find(({ use }) => use === "k-wrap-paper")).toMatchObject({ needed: 34, there: 30 });
  });
  test("without anyone who does mould work, what needs it is named", () => {
    const clean = { ...saltmere, people: saltmere.people.map((each) => ({ ...each, mouldWork: false })) };
    const alone = stopOf(clean, "2026-06-19");
    expect(alone.items.some(({ why }) => why === "no person")).toBe(true);
    expect(alone.lines.filter(({ exposed }) => exposed)).toEqual([]);
  });
  test("one person alone does no mould work", () => {
    const one = { ...saltmere, people: saltmere.people.filter(({ code }) => code === "PA") };
    expect(stopOf(one, "2026-06-19").lines.filter(({ exposed }) => exposed)).toEqual([]);
  });
  test("a bag that lies closed is not closed again", () => {
    const bagged = new Set(saltmere.ward.filter(({ what }) => what === "closed").map(({ item }) => item));
    const again = plan.lines.filter(
      ({ item, what }) => bagged.has(item) && (what === "make safe" || what === "admit"),
    );
    expect(again).toEqual([]);
  });
  test("more days never leave more unsafe for want of hours", () => {
    const short = ["2026-06-01", "2026-06-02", "2026-06-03", "2026-06-05"].map(
      (day) => stopOf(saltmere, day).items.filter(({ why }) => why === "no hours").length,
    );
    expect(short).toEqual([...short].sort((a, b) => b - a));
    expect(short.at(-1)).toBe(0);
  });
  test("the same question has the same answer", () => {
    expect(JSON.stringify(stopOf(saltmere, "2026-06-19"))).toBe(JSON.stringify(plan));
  });
});

test("every act of a resting state has its work", () => {
  const acts = new Set(book.rests.flatMap((rest) => rest.acts));
  expect([...acts].filter((act) => !(act in RESTING_WORK))).toEqual([]);
});
