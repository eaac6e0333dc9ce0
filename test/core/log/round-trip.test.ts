import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { careOfCampaign } from "../../../src/core/care/item-care.ts";
import type { Campaign } from "../../../src/core/items/campaign.ts";
import { campaignOf, disagreementsOf } from "../../../src/core/log/campaign-of.ts";
import { eventsFrom } from "../../../src/core/log/events-from.ts";
import { fold } from "../../../src/core/log/fold.ts";
import { newPen } from "../../../src/core/log/pen.ts";
import { verifyChain } from "../../../src/core/log/verify-chain.ts";
import { readCampaignFolder } from "../../../src/edge/intake/read-campaign.ts";
import { projectFolder } from "../../../src/edge/published.ts";
import { publishedRuleBook } from "../../../src/edge/rule-book.ts";
import { day, EXAMPLES } from "./examples.ts";
import { NOON } from "./some-events.ts";

const book = publishedRuleBook();
const written = (campaign: Campaign) =>
  eventsFrom(
    campaign,
    newPen(campaign.name, "office"),
    { role: "lead" },
    { now: NOON, random: new Uint8Array(10).fill(9) },
    book.tests,
  );
const thereAndBack = (campaign: Campaign): Campaign | null =>
  campaignOf(fold(written(campaign).events), campaign.planFrom);

/** What the log adds is left out, as is what it does not keep: a note beside a person's days. */
const compared = (campaign: Campaign): Campaign => {
  const codes = new Set(campaign.people.map(({ code }) => code));
  return {
    ...campaign,
    items: campaign.items.map(({ state: _, ...item }) => item),
    calendar: campaign.calendar.map(({ note, ...entry }) =>
      note === undefined || codes.has(entry.who) ? entry : { ...entry, note },
    ),
  };
};

describe.each(["saltmere", "nine-lamps", "marabelle"])("the folder %s", (demo) => {
  test("written into the log tells the same campaign", async () => {
    const { campaign } = await readCampaignFolder(join(projectFolder(), "demo", demo));
    if (campaign === null) throw new Error(`The demo ${demo} could not be read.`);
    const { events, problems } = written(campaign);
    expect(problems).toEqual([]);
    expect(verifyChain(events)).toEqual([]);
    const state = fold(events);
    const told = campaignOf(state, campaign.planFrom);
    if (told === null) throw new Error("It was founded.");
    expect(compared(told)).toEqual(compared(campaign));
    expect(disagreementsOf(state)).toEqual([]);
    const conditions = (of: Campaign) =>
      careOfCampaign(book, of).map(({ item, whole }) => [item.id, whole.rest, whole.hold]);
    expect(conditions(told)).toEqual(conditions(campaign));
  });
});

describe("a campaign written into the log", () => {
  const { person: code, ...person } = EXAMPLES.personListed;
  const finding = (answer: string, on?: string) => ({
    ...{ item: "SR-0031", part: "", test: "growth_visible", answer },
    ...(on === undefined ? {} : { day: day(on) }),
  });
  const { item: id, ...item } = EXAMPLES.itemListed;
  const { place, limits, stations, ...settings } = EXAMPLES.campaignFounded;
  const small: Campaign = {
    ...{ ...settings, place, limits, stations, planFrom: settings.start },
    items: [{ id, ...item, parts: [] }],
    findings: [],
    people: [{ code, ...person }],
    calendar: [],
    stores: [],
    deliveries: [],
    sessions: [],
    ward: [],
    climate: [],
  };

  test("keeps a later day's answer in place of an earlier one's, whatever their order in the table", () => {
    const findings = [finding("no", "2026-06-05"), finding("yes", "2026-06-02")];
    const state = fold(written({ ...small, findings }).events);
    expect(disagreementsOf(state)).toEqual([]);
    expect(campaignOf(state, settings.start)?.findings).toEqual([...findings].reverse());
  });

  test("keeps two answers of one day as a disagreement", () => {
    const findings = [finding("no", "2026-06-05"), finding("yes", "2026-06-05")];
    const state = fold(written({ ...small, findings }).events);
    expect(disagreementsOf(state)).toHaveLength(1);
    expect(thereAndBack({ ...small, findings })?.findings).toEqual(findings);
  });

  test("leaves out words about health, says so, and takes the rest", () => {
    const people = [{ code, ...person, name: "Mara Quelm asthma" }];
    const calendar = [
      { from: settings.start, to: settings.start, who: "everyone", what: "closed", note: "All ill" },
    ] as const;
    const { problems, events } = written({ ...small, people, calendar });
    expect(problems).toMatchObject([
      { code: "text-not-kept", got: "personListed MQ" },
      { code: "text-not-kept", got: "calendarChanged everyone" },
    ]);
    expect(JSON.stringify(events)).not.toMatch(/asthma|ill"/);
    expect(campaignOf(fold(events), settings.start)).toMatchObject({
      people: [{ code: "MQ", name: "MQ" }],
      calendar: [{ who: "everyone", what: "closed" }],
    });
  });
});
