import { describe, expect, test } from "vitest";
import { loadNorms } from "../../../src/core/care/norms.ts";
import { seeded } from "../../../src/core/plan/chance.ts";
import { companyNeededUntil } from "../../../src/core/plan/company.ts";
import type { ClockRow, DayFrame } from "../../../src/core/plan/day-clock.ts";
import { costOfOrder, type DayPiece, dayOrder } from "../../../src/core/plan/day-order.ts";
import type { SheetRow } from "../../../src/core/plan/plan.ts";
import { sheetRows } from "../../../src/core/plan/sheet-rows.ts";
import { layTeam } from "../../../src/core/plan/team-clock.ts";
import { teamOrder } from "../../../src/core/plan/team-order.ts";
import { readPublished } from "../../../src/edge/published.ts";
import { keptCampaign, keptPlan } from "./checker/good-plan.ts";

/** 75 min on and 30 off: DGUV 112-190; changing and washing: norms `s-…`, common practice, no source. Two hours: Armour-Jones 1997. */
const FRAME: DayFrame = {
  opens: 480,
  briefing: 30,
  lunch: { from: 720, by: 780, minutes: 45 },
  changeIn: 20,
  endOfSession: 53,
  changeOut: 10,
  wipeDown: 20,
  maskMinutes: { value: 75, source: "DGUV 112-190" },
  maskBreakMinutes: { value: 30, source: "DGUV 112-190" },
  stretchMinutes: { value: 120, source: "Armour-Jones 1997" },
};
const STATIONS = [
  { id: "camera", places: 1 },
  { id: "clean bench", places: 3 },
  { id: "table", places: 2 },
];
const piece = (given: Partial<DayPiece>): DayPiece => ({
  item: "A",
  act: "clean",
  station: "clean bench",
  dirt: 1,
  exposed: false,
  minutes: 30,
  changeOver: 0,
  due: null,
  ...given,
});
const image = (item: string, minutes = 60): DayPiece =>
  piece({ item, act: "image", station: "camera", dirt: 0, minutes });
const box = (item: string): DayPiece => piece({ item, act: "box", station: "table", dirt: 0, minutes: 5 });
const ordered = (team: readonly (readonly DayPiece[])[]): DayPiece[][] =>
  teamOrder(team, STATIONS).map((order, at) => order.map((place) => team[at]?.[place] as DayPiece));
const told = (pieces: readonly DayPiece[] | undefined): string[] =>
  (pieces ?? []).map(({ act, item }) => `${act} ${item}`);

describe("the orders of a team's day", () => {
  test("at a camera for one, who has other clean work does that first", () => {
    const [anouk, sela] = ordered([
      [image("A"), image("B")],
      [image("C"), piece({ item: "D", minutes: 90 })],
    ]);
    expect(told(anouk)).toEqual(["image A", "image B"]);
    expect(told(sela)).toEqual(["clean D", "image C"]);
  });

  test("at a camera for one, who works near mould later goes first, and home in time", () => {
    const mouldy = piece({ item: "M", station: "bench", dirt: 3, exposed: true });
    const team = [
      [image("A"), image("B")],
      [image("C"), piece({ item: "D" }), mouldy],
    ];
    const rows = layTeam(ordered(team), FRAME, STATIONS);
    expect(rows.map((own) => own[0]?.from)).toEqual([540, 480]);
  });

  test("a box over an item that somebody else pictures is closed after all other clean work", () => {
    const [, hoby] = ordered([[image("A")], [box("A"), piece({ item: "D" })]]);
    expect(told(hoby)).toEqual(["clean D", "box A"]);
  });

  test("poison comes after all clean work and protection after poison", () => {
    const [one] = ordered([
      [
        piece({ item: "M", dirt: 3, exposed: true }),
        piece({ item: "P", dirt: 4 }),
        image("C"),
        piece({ item: "D" }),
      ],
    ]);
    expect(told(one)).toEqual(["image C", "clean D", "clean P", "clean M"]);
  });

  test("on 200 invented days nobody has one wipe-down more than alone", () => {
    for (let seed = 1; seed <= 200; seed++) {
      const team = inventedTeam(seed);
      ordered(team).forEach((pieces, at) => {
        const alone = dayOrder(team[at] ?? []).wipeDowns;
        expect(costOfOrder(pieces).wipeDowns, `seed ${seed}`).toBe(alone);
      });
    }
  });
});

describe("a team's day in the clock", () => {
  test("the second at a camera for one comes later instead of waiting", () => {
    const rows = layTeam([[image("A", 120)], [image("B", 60)]], FRAME, STATIONS);
    expect(rows[0]?.[0]?.from).toBe(480);
    expect(rows[0]?.find(({ kind }) => kind === "work")).toMatchObject({ from: 510, to: 630 });
    expect(rows[1]?.map(({ from, to, kind }) => [from, to, kind])).toEqual([
      [600, 630, "briefing"],
      [630, 690, "work"],
    ]);
  });

  test("on 300 invented days no station is over its places, no box is closed before its picture, no minute is lost", () => {
    for (let seed = 1; seed <= 300; seed++) {
      const team = ordered(inventedTeam(seed));
      const rows = layTeam(team, FRAME, STATIONS);
      expect(brokenRules(team, rows), `seed ${seed}`).toEqual([]);
    }
  });
});

describe("the rows of the first days' sheets", () => {
  const norms = loadNorms(readPublished("norms.json"));
  const [campaign, plan] = [keptCampaign(), keptPlan()];
  const rows = sheetRows(plan.assignments, campaign, norms);
  const days = plan.personDays.filter(({ day, person }) =>
    rows.some((row) => row.day === day && row.person === person),
  );
  const sumOf = (of: { day: string; person: string }, fits: (row: SheetRow) => boolean): number =>
    rows
      .filter((row) => row.day === of.day && row.person === of.person && fits(row))
      .reduce((sum, { from, to }) => sum + to - from, 0);
  const isWork = ({ kind }: SheetRow): boolean => kind === "work" || kind === "change-over";
  const isClearing = ({ kind }: SheetRow): boolean => kind === "end of session" || kind === "change out";

  test("add up to what the plan says of each person's day, to the minute", () => {
    expect(days.length).toBeGreaterThan(6);
    for (const each of days) {
      const where = `${each.person} on ${each.day}`;
      expect(Math.abs(sumOf(each, isWork) - each.workMinutes), where).toBeLessThanOrEqual(1);
      const changing = sumOf(each, (row) => row.kind === "change in" || isClearing(row));
      expect(changing, where).toBe(each.overheadMinutes);
      const near = sumOf(each, (row) => (row.exposed && isWork(row)) || isClearing(row));
      expect(Math.abs(near - each.exposedMinutes), where).toBeLessThanOrEqual(1);
    }
  });

  test("ask somebody to stay with whoever is near mould last, and only then", () => {
    const day = rows[0]?.day;
    const ofDay = rows.filter((row) => row.day === day);
    const [near] = ofDay.filter((row) => row.kind === "change out");
    const own = ofDay.filter((row) => row.person === near?.person);
    expect(companyNeededUntil(own, own)).toBe(near?.to);
    const other = { ...(own.at(-1) as SheetRow), person: "somebody else" };
    expect(companyNeededUntil(own, [...own, other])).toBeNull();
    const gone = { ...other, to: other.to - 1 };
    expect(companyNeededUntil(own, [...own, gone])).toBe(near?.to);
  });

  test("name every piece of work of their days", () => {
    const named = new Set(
      rows.flatMap(({ day, person, items, act }) => items.map((item) => `${day} ${person} ${act} ${item}`)),
    );
    const asked = plan.assignments.filter((each) =>
      days.some(({ day, person }) => day === each.day && person === each.person),
    );
    for (const { day, person, act, item } of asked)
      expect(named).toContain(`${day} ${person} ${act} ${item}`);
  });

  test("put short pieces alike into one row, and leave a long one to itself", () => {
    const lines = Array.from({ length: 12 }, (_, n) => ({
      ...piece({ item: `I${n + 10}`, minutes: n === 11 ? 40 : 2 }),
      day: campaign.planFrom,
      person: campaign.people[0]?.code ?? "",
      order: n + 1,
      wipeAfter: false,
    }));
    const work = sheetRows(lines, campaign, norms).filter(isWork);
    expect(work.map(({ from, to, items }) => [to - from, items.length])).toEqual([
      [22, 11],
      [40, 1],
    ]);
  });
});

function inventedTeam(seed: number): DayPiece[][] {
  const draw = seeded(seed);
  const between = (low: number, high: number): number => low + Math.floor(draw() * (high - low + 1));
  const pictured: string[] = [];
  return Array.from({ length: 2 + (seed % 3) }, (_, at) =>
    Array.from({ length: between(2, 6) }, (__, n) => {
      const item = `P${at}-${n}`;
      const kind = between(0, 4);
      if (kind === 0)
        return piece({ item, dirt: 3, exposed: true, station: "bench", minutes: between(5, 40) });
      if (kind === 1) return piece({ item, dirt: 2, minutes: between(5, 40) });
      if (kind === 2) return piece({ item, minutes: between(2, 60) });
      const other = kind === 3 ? pictured.shift() : undefined;
      if (other) return box(other);
      pictured.push(item);
      return image(item, between(10, 90));
    }),
  );
}

/** What a team's day breaks, told again minute by minute. */
function brokenRules(
  team: readonly (readonly DayPiece[])[],
  days: readonly (readonly ClockRow[])[],
): string[] {
  const broken: string[] = [];
  const used = new Map<string, number>();
  const ends = new Map<string, number>();
  const begins = new Map<string, number>();
  days.forEach((rows, at) => {
    rows.forEach((row, n) => {
      if (n > 0 && row.from !== rows[n - 1]?.to) broken.push(`a hole in the day of ${at}`);
      const own = row.piece === null || row.kind === "wait" ? undefined : team[at]?.[row.piece];
      if (!own) return;
      for (let minute = row.from; minute < row.to; minute++) {
        const key = `${own.station} ${minute}`;
        used.set(key, (used.get(key) ?? 0) + 1);
      }
      const act = `${own.act} ${own.item}`;
      ends.set(act, row.to);
      begins.set(act, begins.get(act) ?? row.from);
    });
    const done = rows.reduce(
      (sum, { kind, from, to }) => (kind === "work" || kind === "change-over" ? sum + to - from : sum),
      0,
    );
    const given = (team[at] ?? []).reduce((sum, { minutes }) => sum + minutes, 0);
    if (done !== given) broken.push(`${done} of ${given} min by ${at}`);
  });
  for (const { id, places } of STATIONS)
    for (let minute = 0; minute < 1800; minute++)
      if ((used.get(`${id} ${minute}`) ?? 0) > places) broken.push(`${id} at ${minute}`);
  for (const [act, from] of begins)
    if (act.startsWith("box ") && (ends.get(act.replace("box", "image")) ?? 0) > from)
      broken.push(`${act} before its picture`);
  return broken;
}
