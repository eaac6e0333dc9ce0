import type { Campaign } from "../../items/campaign.ts";
import { type Day, daysBetween, mondayOf } from "../../units/day.ts";
import type { Assignment } from "../plan.ts";
import { conditionsOf, isNearMould } from "./contamination.ts";
import type { Fault } from "./fault.ts";
import { changing, clearing } from "./people.ts";
import type { PlanOnPaper } from "./plan-on-paper.ts";
import { mayBeNearMould, presentMinutes } from "./presence.ts";
import { roundingOf } from "./rounding.ts";

/** Each person's time near mould: booked, allowed, not too long, not too often, never alone, with breaks from the mask. */
export function mouldFaults(paper: PlanOnPaper): Fault[] {
  const days = new Map<string, Day[]>();
  const faults: Fault[] = [];
  for (const sheet of paper.sheets.values()) {
    const near = sheet.filter((each) => each.exposed);
    if (near.length === 0) continue;
    const { person, day } = sheet[0] as Assignment;
    days.set(person, [...(days.get(person) ?? []), day]);
    faults.push(...dayFaults(paper, near), ...changeFaults(sheet));
  }
  for (const [person, planned] of days) faults.push(...spellFaults(paper.campaign, person, planned));
  return [...bookingFaults(paper), ...faults];
}

/** Work with growth that is not on anybody's account. */
function bookingFaults(paper: PlanOnPaper): Fault[] {
  const faults: Fault[] = [];
  for (const [item, passings] of paper.passings) {
    const care = paper.care.get(item);
    if (!care) continue;
    const done = new Set(care.done);
    const conditions = conditionsOf(care);
    for (const { act, pieces } of passings) {
      if (isNearMould(conditions, act, done))
        for (const { exposed, person, day } of pieces)
          if (!exposed)
            faults.push({
              code: "not-booked",
              day,
              person,
              item,
              act,
              got: "clean work",
              limit: "near mould",
              source: "P01",
            });
      done.add(act);
    }
  }
  return faults;
}

/** One person's exposed work of one day. */
function dayFaults(paper: PlanOnPaper, near: readonly Assignment[]): Fault[] {
  const { campaign } = paper;
  const { person: code, day } = near[0] as Assignment;
  const person = paper.people.get(code);
  if (!person) return [];
  const { exposedMinutesADay, maskMinutes, maskBreakMinutes } = campaign.limits;
  const briefing = paper.typical("s-pdca");
  const faults: Fault[] = [];
  const add = (code: Fault["code"], got: number | string, limit: number | string, source: string): void => {
    faults.push({ code, day, person: person.code, got, limit, source });
  };
  if (!mayBeNearMould(campaign, person, day)) add("clean-work", "near mould", "clean work", "P04");
  const rounding = roundingOf(near.length);
  const minutes = near.reduce((sum, each) => sum + each.minutes, clearing(paper));
  if (minutes > exposedMinutesADay.value + rounding)
    add("mould-minutes", Math.round(minutes), exposedMinutesADay.value, exposedMinutesADay.source);
  const company = campaign.people
    .filter((other) => other.code !== code)
    .reduce((sum, other) => sum + presentMinutes(campaign, other, day, briefing), 0);
  if (company < minutes - rounding) add("alone", Math.round(company), Math.round(minutes), "P13");
  const breaks = (Math.ceil((minutes - rounding) / maskMinutes.value) - 1) * maskBreakMinutes.value;
  const clean = (paper.sheets.get(`${code}|${day}`) ?? []).filter((each) => !each.exposed);
  const work = clean.reduce((sum, each) => sum + each.minutes, minutes + changing(paper));
  const off = presentMinutes(campaign, person, day, briefing) - work;
  if (breaks > 0 && off < breaks - rounding - roundingOf(clean.length))
    add("mask-breaks", Math.max(0, Math.round(off)), breaks, maskMinutes.source);
  return faults;
}

/** Protection is put on once: no clean work after work near mould on one sheet. */
function changeFaults(sheet: readonly Assignment[]): Fault[] {
  const first = sheet.findIndex((each) => each.exposed);
  const after = sheet.find((each, at) => at > first && !each.exposed);
  if (!after) return [];
  const { day, person, item, act, order } = after;
  return [{ code: "clean-after-mould", day, person, item, act, got: order, limit: first + 1, source: "S09" }];
}

/** Exposed days in a week and in a row, those worked before the plan's first morning among them. */
function spellFaults(campaign: Campaign, person: string, planned: readonly Day[]): Fault[] {
  const { exposedDaysAWeek, exposedDaysInARow } = campaign.limits;
  const before = campaign.sessions
    .filter((each) => each.person === person && each.exposed && each.day < campaign.planFrom)
    .map(({ day }) => day);
  const all = [...new Set([...before, ...planned])].sort();
  const faults: Fault[] = [];
  const week = new Map<Day, number>();
  let row = 0;
  all.forEach((day, at) => {
    const monday = mondayOf(day);
    const count = (week.get(monday) ?? 0) + 1;
    week.set(monday, count);
    const yesterday = all[at - 1];
    row = yesterday && daysBetween(yesterday, day) === 1 ? row + 1 : 1;
    if (day < campaign.planFrom) return;
    const add = (code: Fault["code"], got: number, { value, source }: typeof exposedDaysAWeek): void => {
      if (got > value) faults.push({ code, day, person, got, limit: value, source });
    };
    add("mould-week", count, exposedDaysAWeek);
    add("mould-row", row, exposedDaysInARow);
  });
  return faults;
}
