import type { Norms } from "../care/norms.ts";
import type { Campaign, Person, Station } from "../items/campaign.ts";
import type { Day } from "../units/day.ts";
import type { ClockRow } from "./day-clock.ts";
import { type DayPiece, WIPE_FROM } from "./day-order.ts";
import type { Assignment, SheetRow } from "./plan.ts";
import { dayFrame, layTeam } from "./team-clock.ts";

/** Working days laid in the clock ahead: a plan is made anew before they are over. */
export const DAYS_LAID = 3;
/** Pieces of up to so many minutes stand together when they are alike. From sheets of the demos. */
const SHORT = 15;

interface TeamAndStations {
  readonly people: readonly Pick<Person, "code">[];
  readonly stations: readonly Pick<Station, "id" | "places">[];
}

/** The rows of the first working days, and of the day on which each person begins. */
export function sheetRows(
  assignments: readonly Assignment[],
  campaign: Pick<Campaign, "limits"> & TeamAndStations,
  norms: Norms,
): SheetRow[] {
  const frame = dayFrame(campaign, norms);
  const changeOver = norms.band("s-change").typical;
  return daysToLay(assignments).flatMap((day) => {
    const sheets = campaign.people
      .map(({ code }) =>
        assignments
          .filter((each) => each.day === day && each.person === code)
          .sort((a, b) => a.order - b.order)
          .map((line) => pieceOf(line, changeOver)),
      )
      .filter((pieces) => pieces.length > 0);
    return layTeam(sheets, frame, campaign.stations).flatMap((rows, at) =>
      joined(sheets[at] ?? [], rows).map((row) => ({ day, person: sheets[at]?.[0]?.person ?? "", ...row })),
    );
  });
}

function daysToLay(assignments: readonly Assignment[]): Day[] {
  const first = new Map<string, Day>();
  const days = [...new Set(assignments.map(({ day }) => day))].sort();
  for (const { person, day } of assignments) {
    const known = first.get(person);
    if (known === undefined || day < known) first.set(person, day);
  }
  return [...new Set([...days.slice(0, DAYS_LAID), ...first.values()])].sort();
}

type SheetPiece = DayPiece & { readonly person: string };

/** The minutes of cleaning and of picturing covers hold the change-over after it (`s-change`). */
const pieceOf = (line: Assignment, changeOver: number): SheetPiece => ({
  person: line.person,
  item: line.item,
  act: line.act,
  station: line.station,
  dirt: line.dirt,
  exposed: line.exposed,
  minutes: line.minutes,
  changeOver: line.dirt >= WIPE_FROM && (line.act === "clean" || line.act === "covers") ? changeOver : 0,
  due: null,
});

type Row = Omit<SheetRow, "day" | "person">;

/** The rows as they are printed: a change-over with its piece, short pieces alike together, a wait once. */
function joined(pieces: readonly DayPiece[], rows: readonly ClockRow[]): Row[] {
  const out: Row[] = [];
  /** Whether another short piece may stand with the last row. */
  let isOpen = false;
  for (const { piece: at, ...row } of rows) {
    const last = out.at(-1);
    const piece = at === null ? null : (pieces[at] as DayPiece);
    const isOwn = piece !== null && last?.items.at(-1) === piece.item && last.act === piece.act;
    const isEnd = row.kind === "change-over" && last?.kind === "work" && isOwn;
    const isSame = row.kind === "wait" && last?.kind === "wait" && isOwn;
    const isShort = row.kind === "work" && !row.goesOn && piece !== null && piece.minutes <= SHORT;
    if (last && (isEnd || isSame)) out[out.length - 1] = { ...last, to: row.to, goesOn: row.goesOn };
    else if (last && piece && isShort && isOpen && isAlike(last, piece))
      out[out.length - 1] = { ...last, to: row.to, items: [...last.items, piece.item] };
    else out.push({ ...row, ...aboutPiece(piece) });
    isOpen = isShort || (isEnd && isOpen && !row.goesOn);
  }
  return out;
}

const aboutPiece = (piece: DayPiece | null) => ({
  items: piece ? [piece.item] : [],
  act: piece?.act ?? null,
  station: piece?.station ?? "",
  dirt: piece?.dirt ?? (0 as const),
  exposed: piece?.exposed ?? false,
});

const isAlike = (row: Row, piece: DayPiece): boolean =>
  row.act === piece.act &&
  row.station === piece.station &&
  row.dirt === piece.dirt &&
  row.exposed === piece.exposed;
