import type { Campaign, Person, Skill } from "../../../items/campaign.ts";
import type { AddableRole, Change } from "../change.ts";

/** What a new person of each role does. Common practice, no source. */
const SKILLS: Readonly<Record<AddableRole, readonly Skill[]>> = {
  lead: ["lead", "clean", "box", "write"],
  cleaner: ["clean", "box"],
  photographer: ["image"],
  boxer: ["box", "write"],
  scribe: ["write", "box"],
};
const MONDAY_TO_FRIDAY = [0, 1, 2, 3, 4];
const HOURS = 7;

/** New people with the weekdays and hours of the first here of their role. */
export function withPeople(campaign: Campaign, change: Change & { change: "more people" }): Campaign {
  const people = [...campaign.people];
  const like = people.find((each) => each.role === change.role);
  for (let n = 0; n < change.count; n++) people.push(newPerson(people, like, change));
  return { ...campaign, people };
}

function newPerson(
  people: readonly Person[],
  like: Person | undefined,
  { role, mouldWork, from, to }: Change & { change: "more people" },
): Person {
  let n = 1;
  while (people.some((each) => each.code === `new-${n}`)) n++;
  return {
    code: `new-${n}`,
    name: `new ${role} ${n}`,
    role,
    skills: SKILLS[role],
    mouldWork,
    weekdays: like?.weekdays ?? MONDAY_TO_FRIDAY,
    hoursADay: like?.hoursADay ?? HOURS,
    from,
    until: to,
  };
}
