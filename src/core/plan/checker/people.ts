import type { Act, Skill } from "../../items/campaign.ts";
import type { Assignment } from "../plan.ts";
import type { Fault } from "./fault.ts";
import type { PlanOnPaper } from "./plan-on-paper.ts";
import { absenceOf, presentMinutes } from "./presence.ts";
import { roundingOf } from "./rounding.ts";

/** Any one of these skills is enough for an act. Common practice, no source. */
const SKILLS: Readonly<Record<Act, readonly Skill[]>> = {
  survey: ["clean", "lead"],
  admit: ["clean", "lead"],
  release: ["clean", "lead"],
  covers: ["image"],
  wrap: ["box", "clean"],
  clean: ["clean"],
  image: ["image"],
  box: ["box"],
};

/** People who are there, for no longer than they are there, with the skill for the act; sheets numbered 1, 2, 3 … */
export function peopleFaults(paper: PlanOnPaper): Fault[] {
  return [...paper.sheets.values()].flatMap((sheet) => {
    const { person: code, day } = sheet[0] as Assignment;
    const person = paper.people.get(code);
    if (!person)
      return [
        { code: "person-unknown", day, person: code, got: code, limit: "people table", source: "people" },
      ];
    const faults: Fault[] = [];
    const absence = absenceOf(paper.campaign, person, day);
    if (absence)
      faults.push({
        code: "not-present",
        day,
        person: code,
        got: absence,
        limit: "present",
        source: "calendar",
      });
    else faults.push(...hoursFaults(paper, sheet));
    for (const { act, item } of sheet)
      if (!SKILLS[act].some((skill) => person.skills.includes(skill)))
        faults.push({
          code: "skill-missing",
          day,
          person: code,
          item,
          act,
          got: person.skills.join(", "),
          limit: SKILLS[act].join(" or "),
          source: "people",
        });
    return [...faults, ...orderFaults(sheet)];
  });
}

function hoursFaults(paper: PlanOnPaper, sheet: readonly Assignment[]): Fault[] {
  const { person: code, day } = sheet[0] as Assignment;
  const person = paper.people.get(code);
  if (!person) return [];
  const there = presentMinutes(paper.campaign, person, day, paper.typical("s-pdca"));
  const work = sheet.reduce((sum, each) => sum + each.minutes, 0);
  const got = work + (sheet.some((each) => each.exposed) ? changing(paper) + clearing(paper) : 0);
  if (got <= there + roundingOf(sheet.length)) return [];
  return [
    {
      code: "over-hours",
      day,
      person: code,
      got: Math.round(got),
      limit: there,
      source: "people and calendar",
    },
  ];
}

/** Putting protection on and laying out, on an exposed day; clean minutes. */
export const changing = (paper: PlanOnPaper): number => paper.typical("s-don") + paper.typical("s-setup");
/** Taking off, wiping down, washing tools and waste, on an exposed day; mould minutes. */
export const clearing = (paper: PlanOnPaper): number =>
  ["s-doff", "s-decon", "s-tools", "s-waste"].reduce((sum, norm) => sum + paper.typical(norm), 0);

/** Places 1, 2, 3 … each once, and no item boxed on a sheet before it is pictured there. */
function orderFaults(sheet: readonly Assignment[]): Fault[] {
  const { person, day } = sheet[0] as Assignment;
  const faults: Fault[] = [];
  const at = sheet.findIndex((each, n) => each.order !== n + 1);
  if (at >= 0)
    faults.push({
      code: "sheet-order",
      day,
      person,
      item: (sheet[at] as Assignment).item,
      got: (sheet[at] as Assignment).order,
      limit: at + 1,
      source: "the sheet's own numbers",
    });
  const boxed = new Map(sheet.filter(({ act }) => act === "box").map(({ item, order }) => [item, order]));
  for (const { item, act, order } of sheet) {
    const box = boxed.get(item);
    if (act !== "box" && box !== undefined && box < order)
      faults.push({
        code: "boxed-first",
        day,
        person,
        item,
        act,
        got: box,
        limit: order,
        source: "the item's route",
      });
  }
  return faults;
}
