import type { Act, StationKind } from "../../items/campaign.ts";
import type { Assignment } from "../plan.ts";
import { conditionsOf, leavesDirt } from "./contamination.ts";
import type { Fault } from "./fault.ts";
import { groupedBy, type PlanOnPaper } from "./plan-on-paper.ts";
import { openMinutes } from "./presence.ts";
import { roundingOf } from "./rounding.ts";

/** Kinds of station an act may be done at; near mould, the second list as well. Acts without one need no place. */
const KINDS: Readonly<Partial<Record<Act, { clean: readonly StationKind[]; near: readonly StationKind[] }>>> =
  {
    covers: { clean: ["cover stand"], near: ["cover stand"] },
    wrap: { clean: ["boxing table"], near: ["boxing table", "mould bench", "cover stand"] },
    clean: { clean: ["clean bench"], near: ["mould bench"] },
    image: { clean: ["camera"], near: [] },
    box: { clean: ["boxing table"], near: ["boxing table", "mould bench", "cover stand"] },
  };

/** Work only at stations that are there, of the right kind, open, with room; wiped down after what is contaminated. */
export function stationFaults(paper: PlanOnPaper): Fault[] {
  const faults = paper.plan.assignments.flatMap((each) => placeFaults(paper, each));
  const byStation = groupedBy(paper.plan.assignments, ({ station, day }) => `${station}|${day}`);
  for (const work of byStation.values()) faults.push(...roomFaults(paper, work));
  return [...faults, ...wipeFaults(paper)];
}

function placeFaults(paper: PlanOnPaper, { day, person, item, act, station, exposed }: Assignment): Fault[] {
  const kinds = KINDS[act];
  if (!kinds) return [];
  const fitting = exposed ? kinds.near : kinds.clean;
  const where = { day, person, item, act, station };
  const found = paper.stations.get(station);
  if (found)
    return fitting.includes(found.kind)
      ? []
      : [
          {
            code: "station-kind",
            ...where,
            got: found.kind,
            limit: fitting.join(" or "),
            source: "stations",
          },
        ];
  // A kind of station that the campaign does not list is no limit, but for the camera.
  const listed = paper.campaign.stations.some(({ kind }) => fitting.includes(kind));
  if (station === "" && !listed && act !== "image") return [];
  return [
    { code: "station-unknown", ...where, got: station, limit: fitting.join(" or "), source: "stations" },
  ];
}

/** One station on one day. */
function roomFaults(paper: PlanOnPaper, work: readonly Assignment[]): Fault[] {
  const { station: id, day } = work[0] as Assignment;
  const station = paper.stations.get(id);
  if (!station) return [];
  const open = openMinutes(paper.campaign, station, day);
  const where = { day, station: id, source: "stations and calendar" };
  if (open === 0) return [{ code: "station-closed", ...where, got: "work", limit: "closed" }];
  const minutes = (pieces: readonly Assignment[]): number =>
    pieces.reduce((sum, each) => sum + each.minutes, 0);
  const used = minutes(work);
  const faults: Fault[] = [];
  if (used > open * station.places + roundingOf(work.length))
    faults.push({ code: "station-minutes", ...where, got: Math.round(used), limit: open * station.places });
  for (const [person, pieces] of groupedBy(work, (each) => each.person))
    if (station.places > 1 && minutes(pieces) > open + roundingOf(pieces.length))
      faults.push({ code: "station-hours", ...where, person, got: Math.round(minutes(pieces)), limit: open });
  return faults;
}

function wipeFaults(paper: PlanOnPaper): Fault[] {
  const faults: Fault[] = [];
  for (const [item, passings] of paper.passings) {
    const care = paper.care.get(item);
    if (!care) continue;
    const conditions = conditionsOf(care);
    const done = new Set(care.done);
    for (const { act, pieces } of passings) {
      if (leavesDirt(conditions, act, done))
        for (const { wipeAfter, day, person, station } of pieces)
          if (!wipeAfter)
            faults.push({
              code: "not-wiped",
              day,
              person,
              item,
              act,
              station,
              got: "no",
              limit: "wipe-down",
              source: "S01",
            });
      done.add(act);
    }
  }
  return faults;
}
