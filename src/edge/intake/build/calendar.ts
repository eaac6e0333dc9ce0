import type { CalendarEntry, Station } from "../../../core/items/campaign.ts";
import type { Problem } from "../../../core/outcome/problem.ts";
import type { Built, CampaignTables } from "../campaign-tables.ts";
import { mayTellOfHealth } from "../privacy.ts";
import { problem } from "../problem.ts";
import { type Register, Waiting } from "../register.ts";
import { comparable } from "../words.ts";
import { given } from "./items.ts";
import { isOutside, outside } from "./outside.ts";

type Row = CampaignTables["calendar"]["rows"][number];
interface Whom {
  readonly people: Register;
  readonly stations: readonly Station[];
  readonly start: string;
  readonly end: string;
}

/** Entries of the calendar. A note that may say why someone is on clean work goes no further than this function. */
export function buildCalendar(calendar: CampaignTables["calendar"], whom: Whom): Built<CalendarEntry> {
  const problems: Problem[] = [];
  const waiting = new Waiting();
  const values = calendar.rows.flatMap((row) => {
    const who = whoMeant(row, whom, problems, waiting);
    return who === null || !isSound(row, problems) ? [] : [entryFrom(row, who, whom, problems)];
  });
  return { values, used: values.length, problems: [...problems, ...waiting.problems()] };
}

function whoMeant(
  row: Row,
  { people, stations }: Whom,
  problems: Problem[],
  waiting: Waiting,
): string | null {
  const written = row.cells.who;
  const plain = comparable(written);
  if (plain === "everyone") return "everyone";
  const station = stations.find(({ id }) => id === written || comparable(id) === plain);
  if (station) return station.id;
  const meant = people.meant(written);
  if (meant.kind === "known") return meant.name;
  const where = { file: row.file, line: row.line, column: "who" };
  if (meant.kind === "aside") waiting.add(meant.waitsFor, where);
  else
    problems.push(
      problem("unknown-who", "stop", where, {
        got: mayTellOfHealth(written) ? "not shown" : written,
        expected: "a person's code, a station's id, or everyone",
        remedy: people.remedy(written),
      }),
    );
  return null;
}

function isSound({ file, line, cells }: Row, problems: Problem[]): boolean {
  const before = problems.length;
  if (cells.to !== undefined && cells.to < cells.from)
    problems.push(
      problem(
        "first-after-last",
        "stop",
        { file, line, column: "from" },
        { got: cells.from, expected: `to ${cells.to}`, remedy: "Put the dates right." },
      ),
    );
  if (cells.what === "hours" && cells.hours === undefined)
    problems.push(
      problem(
        "hours-missing",
        "stop",
        { file, line, column: "hours" },
        { got: "", remedy: "Write how many hours a day." },
      ),
    );
  return problems.length === before;
}

function entryFrom({ file, line, cells }: Row, who: string, whom: Whom, problems: Problem[]): CalendarEntry {
  const to = cells.to ?? cells.from;
  if (to < whom.start || cells.from > whom.end)
    problems.push(outside({ file, line, column: "from" }, cells.from, whom));
  else if (isOutside(to, whom) && cells.what === "open")
    problems.push(outside({ file, line, column: "to" }, to, whom));
  const isPrivate = cells.note !== undefined && (cells.what === "clean work" || mayTellOfHealth(cells.note));
  if (isPrivate)
    problems.push(
      problem(
        "health-reason-not-kept",
        "note",
        { file, line, column: "note" },
        { remedy: "Take it out of the file; the days are all that is needed." },
      ),
    );
  return {
    from: cells.from,
    to,
    who,
    what: cells.what,
    ...given("hours", cells.hours),
    ...given("note", isPrivate ? undefined : cells.note),
  };
}
