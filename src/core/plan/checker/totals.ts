import { ACTS, type Act } from "../../items/campaign.ts";
import type { Day } from "../../units/day.ts";
import type { Assignment, PersonDay } from "../plan.ts";
import type { Fault } from "./fault.ts";
import { changing, clearing } from "./people.ts";
import type { PlanOnPaper } from "./plan-on-paper.ts";
import { presentMinutes } from "./presence.ts";
import { roundingOf } from "./rounding.ts";

/** Every total on the plan's pages, counted again from its work. */
export function totalFaults(paper: PlanOnPaper): Fault[] {
  return [...itemDayFaults(paper), ...personDayFaults(paper), ...figureFaults(paper), ...finishFaults(paper)];
}

/** The days an item passes each act are those on which its work ends. */
function itemDayFaults(paper: PlanOnPaper): Fault[] {
  const faults: Fault[] = [];
  const add = (item: string, act: Act, got: string, limit: string): void => {
    faults.push({ code: "item-days", item, act, got, limit, source: "the plan's own work" });
  };
  for (const { item, days } of paper.plan.itemDays)
    for (const act of ACTS) {
      const says = days[act];
      if (!says) continue;
      const does = paper.passings.get(item)?.find((each) => each.act === act)?.last;
      if (does !== says) add(item, act, says, does ?? "no work");
    }
  for (const [item, passings] of paper.passings)
    if (paper.items.has(item) && !paper.itemDays.has(item))
      add(item, (passings[0] as { act: Act }).act, "no line", "a line");
  return faults;
}

function personDayFaults(paper: PlanOnPaper): Fault[] {
  const faults: Fault[] = [];
  const seen = new Set<string>();
  for (const line of paper.plan.personDays) {
    const key = `${line.person}|${line.day}`;
    if (seen.has(key)) faults.push(personDayFault(line, "lines", 2, 1));
    seen.add(key);
    const lines = paper.sheets.get(key)?.length ?? 0;
    const counted = countedDay(paper, line.person, line.day);
    for (const [figure, limit] of Object.entries(counted)) {
      const got = line[figure as keyof typeof counted];
      if (Math.abs(got - limit) > roundingOf(lines))
        faults.push(personDayFault(line, figure, got, Math.round(limit)));
    }
  }
  for (const [key, sheet] of paper.sheets)
    if (!seen.has(key)) faults.push(personDayFault(sheet[0] as Assignment, "lines", 0, 1));
  return faults;
}

const personDayFault = (
  { person, day }: Pick<PersonDay, "person" | "day">,
  figure: string,
  got: number,
  limit: number,
): Fault => ({ code: "person-day", day, person, figure, got, limit, source: "the plan's own work" });

function countedDay(paper: PlanOnPaper, code: string, day: Day) {
  const sheet = paper.sheets.get(`${code}|${day}`) ?? [];
  const sum = (pieces: readonly Assignment[]): number => pieces.reduce((all, each) => all + each.minutes, 0);
  const near = sheet.filter((each) => each.exposed);
  const person = paper.people.get(code);
  return {
    presentMinutes: person ? presentMinutes(paper.campaign, person, day, paper.typical("s-pdca")) : 0,
    workMinutes: sum(sheet),
    exposedMinutes: near.length > 0 ? sum(near) + clearing(paper) : 0,
    overheadMinutes: near.length > 0 ? changing(paper) + clearing(paper) : 0,
  };
}

/** Counts, days and names the plan repeats from the campaign. */
function figureFaults({ campaign, plan, care, people, stations }: PlanOnPaper): Fault[] {
  const faults: Fault[] = [];
  const same = (figure: string, got: number | string, limit: number | string): void => {
    if (got !== limit)
      faults.push({ code: "figure", figure, got, limit, source: "the campaign and the plan's own work" });
  };
  const boxed = [...care.values()].filter(({ done }) => done.has("box")).length;
  same("campaign", plan.campaign, campaign.name);
  same("start", plan.start, campaign.start);
  same("end", plan.end, campaign.end);
  same("planFrom", plan.planFrom, campaign.planFrom);
  same("itemCount", plan.itemCount, campaign.items.length);
  same("routed", plan.routed, plan.itemDays.length);
  same("doneBefore", plan.doneBefore, boxed);
  const notYet = campaign.items.filter(({ arrives }) => arrives !== undefined && arrives > campaign.planFrom);
  const inRooms = plan.rooms.reduce((sum, room) => sum + room.now, 0);
  same("rooms.now", inRooms, campaign.items.length - notYet.length);
  same("people", plan.people.length, people.size);
  for (const { code, mouldLimit } of plan.people) {
    const person = people.get(code);
    const { exposedMinutesADay, exposedDaysAWeek } = campaign.limits;
    const own = person?.mouldWork ? `${exposedMinutesADay.value} × ${exposedDaysAWeek.value}` : "clean work";
    const says = mouldLimit ? `${mouldLimit.minutesADay} × ${mouldLimit.daysAWeek}` : "clean work";
    if (says !== own)
      faults.push({
        code: "figure",
        person: code,
        figure: "mouldLimit",
        got: says,
        limit: own,
        source: "people and limits",
      });
  }
  same("stations", plan.stations.length, stations.size);
  return faults;
}

/** One in ten before half before nine in ten, inside the plan's days; a finish by a day means everything is boxed in that share. */
function finishFaults({ plan }: PlanOnPaper): Fault[] {
  const { p10, p50, p90, boxed, draws } = plan.finish;
  const faults: Fault[] = [];
  const wrong = (figure: string, got: number | string, limit: number | string): void => {
    faults.push({ code: "finish", figure, got, limit, source: "the simulated campaigns" });
  };
  const dated: readonly (readonly [string, Day | null, number])[] = [
    ["p10", p10, boxed.p90],
    ["p50", p50, boxed.p50],
    ["p90", p90, boxed.p10],
  ];
  let before: Day | null = plan.planFrom;
  for (const [figure, day, share] of dated) {
    if (day && (before === null || day < before)) wrong(figure, day, before ?? "after the end");
    if (day && day > plan.end) wrong(figure, day, plan.end);
    if (day && share !== plan.routed) wrong(`boxed beside ${figure}`, share, plan.routed);
    before = day;
  }
  if (!(boxed.p10 <= boxed.p50 && boxed.p50 <= boxed.p90 && boxed.p90 <= plan.routed))
    wrong("boxed", `${boxed.p10}, ${boxed.p50}, ${boxed.p90}`, `rising, at most ${plan.routed}`);
  if (!(draws > 0)) wrong("draws", draws, "more than 0");
  return faults;
}
