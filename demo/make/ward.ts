import { dryingCourse } from "../../src/core/physics/drying/drying.ts";
import { addDays, type Day } from "../../src/core/units/day.ts";
import { dryingBodyOf, surroundingsOf } from "../../src/core/ward/item-in-ward.ts";
import type { Draft } from "./draft.ts";
import type { SessionRow, WardRow } from "./rows.ts";
import type { Chance } from "./seeded.ts";

const ROOM = { relHum: 0.52, dryBulb: 26 };
const GEL_SHARE = 0.4; // kg of gel for a kg of damp paper

/** Bags that lie in the Ward on a morning: closed one to three weeks before, read every two or three days, some with their gel out again. */
export function bagsInWard(
  chance: Chance,
  drafts: readonly Draft[],
  { today, by }: { readonly today: string; readonly by: readonly string[] },
): { sessions: SessionRow[]; notes: WardRow[] } {
  const bags = drafts.map((draft, at) => bagOf(chance, draft, at, today as Day, by));
  const inOrder = <T extends { date: string }>(rows: T[]): T[] =>
    rows
      .map((row, at) => ({ row, at }))
      .sort((a, b) => (a.row.date < b.row.date ? -1 : a.row.date > b.row.date ? 1 : a.at - b.at))
      .map(({ row }) => row);
  return {
    sessions: inOrder(bags.map((bag) => bag.session)),
    notes: inOrder(bags.flatMap((bag) => bag.notes)),
  };
}

function bagOf(chance: Chance, draft: Draft, at: number, today: Day, by: readonly string[]) {
  const { item, mass_kg = 1 } = draft.row;
  const days = 6 + 3 * at;
  const closed = addDays(today, -days);
  const start = Number(draft.answers.erh) / 100;
  const gel = Math.max(0.1, Math.round(GEL_SHARE * mass_kg * 10) / 10); // kg
  const litres = 12;
  const body = bodyOf(draft);
  const own = { ...body, permeability: body.permeability * (0.6 + 0.9 * chance.next()) };
  const looks = Array.from({ length: Math.floor(days / 3) }, (_, look) => 3 * (look + 1)).filter(
    (day) => day < days,
  );
  const course = dryingCourse(
    own,
    ROOM.dryBulb,
    start,
    surroundingsOf(litres, gel, ROOM),
    looks.map((day) => day * 24),
  );
  const row = (day: number, time: string, what: WardRow["what"], value?: number): WardRow => ({
    date: addDays(closed, day),
    time,
    item,
    what,
    ...(value === undefined ? {} : { value }),
    ...(what === "read" ? { temperature_c: ROOM.dryBulb } : {}),
  });
  const notes: WardRow[] = [
    row(0, "09:10", "closed", litres),
    row(0, "09:30", "read", Math.round(start * 100)),
    row(0, "09:40", "weighed", Math.round(mass_kg * 1000)),
    row(0, "09:50", "gel in", Math.round(gel * 1000)),
  ];
  const first = body.dryMass * (1 + body.isotherm.moistureContentFromRelHum(start, ROOM.dryBulb));
  for (const [look, day] of looks.entries()) {
    const point = course.points[look];
    if (!point) continue;
    const share = (body.dryMass * (1 + point.moistureContent)) / first;
    notes.push(row(day, "10:15", "read", Math.round(100 * point.airRelHum) + chance.whole(-1, 1)));
    notes.push(row(day, "10:25", "weighed", Math.round(mass_kg * 1000 * share)));
  }
  const last = looks.at(-1);
  if (at >= 4 && last !== undefined) {
    const rest = Math.round(100 * (course.points.at(-1)?.equilibriumRelHum ?? 0.6));
    notes.push(
      row(last, "10:40", "gel out"),
      row(last, "10:45", "closed", litres),
      row(last, "14:00", "read", rest - 1),
    );
    if (days - last > 2) notes.push(row(last + 2, "15:00", "read", rest));
  }
  const session: SessionRow = {
    date: closed,
    item,
    act: "admit",
    person: chance.pick(by),
    minutes: 7,
    exposed: "yes",
  };
  return { session, notes };
}

const bodyOf = ({ row }: Draft) =>
  dryingBodyOf(
    {
      id: row.item,
      title: row.title,
      facts: { format: row.format },
      parts: [],
      priority: "want",
      ...(row.height_mm ? { heightMm: row.height_mm } : {}),
      ...(row.width_mm ? { widthMm: row.width_mm } : {}),
      ...(row.thickness_mm ? { thicknessMm: row.thickness_mm } : {}),
    },
    ROOM.dryBulb,
  );
