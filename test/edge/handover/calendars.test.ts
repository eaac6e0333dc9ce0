import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import ICAL from "ical.js";
import { describe, expect, test } from "vitest";
import { addDays, type Day } from "../../../src/core/units/day.ts";
import { calendars } from "../../../src/edge/handover/calendars.ts";
import { icalText } from "../../../src/edge/handover/ical-text.ts";
import { projectFolder } from "../../../src/edge/published.ts";
import { campaign, care, norms, plan, routes } from "../papers/print-source.ts";

/** Entries as a reader that is none of ours finds them (ical.js, the calendar library of a mail program). */
const entriesOf = (text: string): ICAL.Event[] =>
  new ICAL.Component(ICAL.parse(text)).getAllSubcomponents("vevent").map((each) => new ICAL.Event(each));

const files = calendars({ plan, campaign, care, routes, norms });
const [house, ...people] = files;
if (!house) throw new Error("no calendar");
const dayOf = (each: ICAL.Event): string => each.startDate.toString().slice(0, 10);

describe("a calendar file", () => {
  test.each(files)("$name: no line is longer than 75 octets, each ends with CR LF", ({ text }) => {
    const lines = text.split("\r\n"); // RFC 5545 3.1
    expect(text.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
    for (const line of lines) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
  });
  test.each(files)(
    "$name: every entry has a name of its own, a stamp in UTC and an end after its beginning",
    ({ text }) => {
      const entries = entriesOf(text);
      expect(new Set(entries.map(({ uid }) => uid)).size).toBe(entries.length);
      for (const each of entries) {
        expect(each.uid).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/); // RFC 9562, version 8
        expect(each.component.getFirstPropertyValue("dtstamp")?.toString()).toMatch(/Z$/); // RFC 5545 3.8.7.2
        expect(each.endDate.compare(each.startDate)).toBe(1);
      }
    },
  );
  test("of the same plan has the same bytes", () => {
    expect(calendars({ plan, campaign, care, routes, norms })).toEqual(files);
  });
});

describe("entries keep their name when the plan moves", () => {
  test("a camera slot with other items is the same entry", () => {
    const [slot] = plan.assignments.filter(({ act }) => act === "image");
    const fewer = { ...plan, assignments: plan.assignments.filter((each) => each !== slot) };
    const [later] = calendars({ plan: fewer, campaign, care, routes, norms });
    const uids = (text: string): string[] =>
      entriesOf(text).flatMap(({ uid, summary }) => (summary.startsWith("Camera") ? [uid] : []));
    expect(uids(house.text)).toEqual(expect.arrayContaining(uids(later?.text ?? "")));
  });
});

describe("the shifts", () => {
  test("are one for each day a person is in, on the clock of the house and not of a zone", () => {
    for (const { name, text } of people) {
      const code = /shifts-(.+)\.ics/.exec(name)?.[1];
      const days = plan.personDays.filter(
        ({ person, presentMinutes }) => person === code && presentMinutes > 0,
      );
      const entries = entriesOf(text);
      expect(entries.map(dayOf)).toEqual(days.map(({ day }) => day).sort());
      for (const each of entries) expect(each.startDate.zone).toBe(ICAL.Timezone.localTimezone); // floating, RFC 5545 3.3.5 form 1
    }
  });
  test("tell nothing of who works near mould", () => {
    for (const { text } of people) expect(text).not.toMatch(/mould|clean work|exposed/i);
  });
});

describe("the house's calendar", () => {
  const entries = entriesOf(house.text);
  test("has every image at its camera on its day", () => {
    const slots = entries.filter(({ summary }) => summary.startsWith("Camera"));
    for (const { item, day } of plan.assignments.filter(({ act }) => act === "image"))
      expect(
        slots.some((each) => dayOf(each) === day && each.description.includes(item)),
        item,
      ).toBe(true);
  });
  test("looks again at what grew, 14 and 30 days after its box", () => {
    // look-back after 14 days at the least, 30 as a rule: norm d-lookback, common practice
    const looks = entries.filter(({ summary }) => summary.startsWith("Shelf"));
    const boxes = plan.itemDays.flatMap(({ item, days }) => (days.box ? [{ item, box: days.box }] : []));
    expect(looks.length).toBeGreaterThan(0);
    for (const each of looks) {
      const after = Number(/(\d+) days/.exec(each.summary)?.[1]);
      expect([14, 30]).toContain(after);
      const [item = ""] = each.description.split(/[,.]/);
      const box = boxes.find((one) => one.item === item)?.box;
      expect(dayOf(each)).toBe(addDays(box ?? ("2000-01-01" as Day), after));
    }
  });
  test("sends nobody into the Ward on a day when nobody is in", () => {
    const rounds = entries.filter(({ summary }) => summary.startsWith("Ward"));
    const open = new Set(plan.personDays.map(({ day }) => day));
    expect(rounds.length).toBeGreaterThan(0);
    for (const each of rounds) expect(open.has(dayOf(each) as Day), dayOf(each)).toBe(true);
  });
  test("leaves no bag of a drying item unread for more than a week", () => {
    // every third day, sooner where nobody is in then; common practice, no source
    const rounds = entries.filter(({ summary }) => summary.startsWith("Ward"));
    for (const { item, days } of plan.itemDays) {
      const { admit, release } = days;
      if (!admit || !release) continue;
      const reads = rounds
        .filter((each) => each.description.includes(item))
        .map(dayOf)
        .sort();
      const looks = [admit, ...reads, release];
      looks
        .slice(1)
        .forEach((day, at) =>
          expect(
            (Date.parse(day) - Date.parse(looks[at] ?? day)) / 86_400_000,
            `${item} ${day}`,
          ).toBeLessThanOrEqual(7),
        );
    }
  });
});

test("marks, line ends, long words and other scripts come back as they were written", () => {
  const summary = `Ward; bags, "A\\B"\nதமிழ் ஓலைச்சுவடி ${"சுவடி".repeat(40)} 📚 سجل`;
  const text = icalText("C", "C", campaign.planFrom, [
    {
      about: ["x"],
      day: campaign.planFrom,
      clock: { from: 8 * 60 + 5, to: 16 * 60 },
      summary,
      description: "a\u0000b",
    },
  ]);
  const [entry] = entriesOf(text);
  expect(entry?.summary).toBe(summary);
  expect(entry?.description).toBe("a b");
  expect(entry?.startDate.toString()).toBe(`${campaign.planFrom}T08:05:00`);
});

describe("the reader of these claims reads calendars of others too", () => {
  const folder = join(projectFolder(), "..", "shared", "data", "ical");
  const isHere = existsSync(folder);
  if (!isHere)
    console.warn("../shared/data/ical is not here: the claims on calendars of others are skipped.");
  // Files of the tests of the Python library icalendar, with the VEVENT counted in each by hand.
  test.skipIf(!isHere).each([
    ["encoding.ics", 1],
    ["multiple.ics", 3],
    ["recurrence.ics", 2],
    ["time.ics", 0],
    ["timezoned.ics", 1],
  ])("%s has %i entries", (name, count) => {
    const text = readFileSync(join(folder, name), "utf8").replace(/\r?\n(?=\r?\n)/g, ""); // one has empty lines within folds
    const found = text
      .split(/(?<=END:VCALENDAR)/)
      .filter((each) => each.trim() !== "")
      .flatMap(entriesOf);
    expect(found).toHaveLength(count);
  });
});
