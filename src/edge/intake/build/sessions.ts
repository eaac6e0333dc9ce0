import type { Session } from "../../../core/items/campaign.ts";
import type { Problem } from "../../../core/outcome/problem.ts";
import type { Built, CampaignTables } from "../campaign-tables.ts";
import { problem } from "../problem.ts";
import { type Register, Waiting } from "../register.ts";
import { unknownItem } from "./items.ts";

interface Names {
  readonly items: Register;
  readonly people: Register;
  readonly planFrom: string;
}

/** Work done already, by known people on known items. */
export function buildSessions(
  sessions: CampaignTables["sessions"],
  { items, people, planFrom }: Names,
): Built<Session> {
  const problems: Problem[] = [];
  const waiting = new Waiting();
  const values = sessions.rows.flatMap(({ file, line, cells }): Session[] => {
    const at = (column: string) => ({ file, line, column });
    const item = items.meant(cells.item);
    const person = people.meant(cells.person);
    if (item.kind === "unknown") problems.push(unknownItem(cells.item, items, at("item")));
    if (person.kind === "unknown")
      problems.push(
        problem("unknown-person", "stop", at("person"), {
          got: cells.person,
          remedy: people.remedy(cells.person),
        }),
      );
    if (item.kind === "aside" && person.kind !== "unknown") waiting.add(item.waitsFor, at("item"));
    else if (person.kind === "aside" && item.kind !== "unknown") waiting.add(person.waitsFor, at("person"));
    if (item.kind !== "known" || person.kind !== "known") return [];
    if (cells.date >= planFrom)
      problems.push(
        problem("session-later", "note", at("date"), {
          got: cells.date,
          expected: planFrom,
          remedy: 'Look at the date, or set "planFrom" in campaign.json to a later morning.',
        }),
      );
    const { date: day, act, minutes, exposed } = cells;
    return [{ day, item: item.name, act, person: person.name, minutes, exposed }];
  });
  return { values, used: values.length, problems: [...problems, ...waiting.problems()] };
}
