import type { Person, Skill } from "../../../core/items/campaign.ts";
import type { Role } from "../../../core/log/roles.ts";
import type { Problem } from "../../../core/outcome/problem.ts";
import type { Built, CampaignTables } from "../campaign-tables.ts";
import { problem } from "../problem.ts";
import { isThere, Register, withoutDuplicates } from "../register.ts";
import { WEEKDAYS } from "../tables/people.ts";
import { given } from "./items.ts";

type Row = CampaignTables["people"]["rows"][number];

/** What a person of each role does unless the table says otherwise; common practice, no source. */
const SKILLS_OF: Readonly<Record<Role, readonly Skill[]>> = {
  lead: ["lead", "clean", "box", "write"],
  cleaner: ["clean", "box"],
  photographer: ["image"],
  scribe: ["write", "box"],
  boxer: ["box", "write"],
  "store keeper": ["box", "write"],
  conservator: [],
  "custodian's person": [],
};
const HOURS = 7;
const MONDAY_TO_FRIDAY = [0, 1, 2, 3, 4];

export function buildPeople(
  people: CampaignTables["people"],
  start: string,
  end: string,
): Built<Person> & { readonly names: Register } {
  const own = withoutDuplicates(people, (row) => row.cells.person, "person");
  const sound = own.rows.filter((row) => inOrder(row, own.problems));
  const values = sound.map(personFrom);
  const notes = sound.flatMap((row, i) => notesOn(row, values[i], start, end));
  const aside = own.rows
    .filter((row) => !sound.includes(row))
    .map(({ file, line, cells }) => ({ file, line, key: cells.person }));
  const names = new Register(
    "people",
    values.map(({ code }) => code),
    [...people.aside, ...aside],
    isThere(people),
  );
  return { values, used: values.length, problems: [...own.problems, ...notes], names };
}

function inOrder({ file, line, cells }: Row, problems: Problem[]): boolean {
  if (cells.from === undefined || cells.until === undefined || cells.from <= cells.until) return true;
  problems.push(
    problem(
      "first-after-last",
      "stop",
      { file, line, column: "from" },
      { got: cells.from, expected: `until ${cells.until}`, remedy: "Put the dates right." },
    ),
  );
  return false;
}

function personFrom({ cells }: Row): Person {
  return {
    code: cells.person,
    name: cells.name,
    role: cells.role,
    skills: cells.skills ?? SKILLS_OF[cells.role],
    mouldWork: cells.mould_work === true,
    weekdays: cells.workdays?.map((name) => WEEKDAYS.indexOf(name)).sort() ?? MONDAY_TO_FRIDAY,
    hoursADay: cells.hours ?? HOURS,
    ...given("from", cells.from),
    ...given("until", cells.until),
  };
}

function notesOn(
  { file, line, cells }: Row,
  person: Person | undefined,
  start: string,
  end: string,
): Problem[] {
  const notes: Problem[] = [];
  if (person?.skills.length === 0 && person.role !== "conservator" && person.role !== "custodian's person")
    notes.push(
      problem(
        "no-skills",
        "note",
        { file, line, column: "skills" },
        { got: cells.name, remedy: "Write skills, or leave the cell empty for those of the role." },
      ),
    );
  if ((cells.until !== undefined && cells.until < start) || (cells.from !== undefined && cells.from > end))
    notes.push(
      problem(
        "never-present",
        "note",
        { file, line },
        { got: cells.name, expected: `${start} to ${end}`, remedy: "Look at from and until." },
      ),
    );
  return notes;
}
