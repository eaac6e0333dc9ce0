import type { Norms } from "../care/norms.ts";
import type { Campaign, Station } from "../items/campaign.ts";
import { type ClockRow, type DayFrame, type Held, layDay } from "./day-clock.ts";
import type { DayPiece } from "./day-order.ts";
import { nearMouldFirst } from "./team-order.ts";

/** When work begins and when lunch may be, in minutes after midnight. Assumed: a campaign folder has no hours. */
export const ASSUMED_HOURS = { opens: 8 * 60, lunch: { from: 12 * 60, by: 13 * 60, minutes: 45 } } as const;
/** Who starts later eats this long after the start, at the soonest and at the latest. Common practice, no source. */
const LUNCH_AFTER = { from: 3 * 60, by: 5 * 60 };

/** People come on the quarter hour. */
const QUARTER = 15;

/** The times of a day as the planner counts them, limits from the campaign. */
export function dayFrame(campaign: Pick<Campaign, "limits">, norms: Norms): DayFrame {
  const minutes = (...ids: readonly string[]): number =>
    ids.reduce((sum, id) => sum + norms.band(id).typical, 0);
  return {
    ...ASSUMED_HOURS,
    briefing: minutes("s-pdca"),
    changeIn: minutes("s-don", "s-setup"),
    endOfSession: minutes("s-decon", "s-tools", "s-waste"),
    changeOut: minutes("s-doff"),
    wipeDown: minutes("s-decon"),
    maskMinutes: campaign.limits.maskMinutes,
    maskBreakMinutes: campaign.limits.maskBreakMinutes,
    stretchMinutes: norms.limit("p-block"),
  };
}

/**
 * Everybody's day in the clock, no station over its places, no box closed before its item is pictured. Laid one person after the other,
 * who works near mould and who comes to a shared station soonest first; who then boxes too soon is laid again around the others. Who would wait comes later instead,
 * where that makes the day no longer. Exact for each person beside those already laid, not for all together.
 */
export function layTeam(
  team: readonly (readonly DayPiece[])[],
  frame: DayFrame,
  stations: readonly Pick<Station, "id" | "places">[],
): (readonly ClockRow[])[] {
  const places = new Map(
    stations
      .filter(
        ({ id, places }) =>
          team.filter((pieces) => pieces.some((each) => each.station === id)).length > places,
      )
      .map((station) => [station.id, station.places]),
  );
  const laid = new Map<number, readonly ClockRow[]>();
  const lay = (at: number): void => {
    laid.delete(at);
    const others = [...laid].flatMap(([other, rows]) => worked(team[other] ?? [], rows));
    const pieces = team[at] ?? [];
    const held = pieces.map((piece) => holdsFor(piece, others, places));
    laid.set(at, withoutWaits(pieces, frame, held));
  };
  const order = turns(team, places);
  for (const at of order) lay(at);
  // Laying one anew can make the picture another waits for later: each pass follows such a chain one step further.
  for (const _ of team) for (const at of order) if (boxesTooSoon(at, team, laid)) lay(at);
  return team.map((_, at) => laid.get(at) ?? []);
}

/** The same day begun as late as it can be without ending later, when something is waited for in it. */
function withoutWaits(
  pieces: readonly DayPiece[],
  frame: DayFrame,
  held: readonly (readonly Held[])[],
): readonly ClockRow[] {
  const rows = layDay(pieces, frame, held);
  const waited = rows.reduce((sum, { kind, from, to }) => (kind === "wait" ? sum + to - from : sum), 0);
  for (let shift = Math.floor(waited / QUARTER) * QUARTER; shift > 0; shift -= QUARTER) {
    const later = layDay(pieces, startingAt(frame, frame.opens + shift), held);
    if ((later.at(-1)?.to ?? 0) <= (rows.at(-1)?.to ?? 0)) return later;
  }
  return rows;
}

const startingAt = (frame: DayFrame, opens: number): DayFrame => ({
  ...frame,
  opens,
  lunch: frame.lunch && {
    ...frame.lunch,
    from: Math.max(frame.lunch.from, opens + LUNCH_AFTER.from),
    by: Math.max(frame.lunch.by, opens + LUNCH_AFTER.by),
  },
});

/** Who works near mould first, then who comes to a shared station soonest; ties in the order given. */
function turns(team: readonly (readonly DayPiece[])[], places: ReadonlyMap<string, number>): number[] {
  const before = team.map((pieces) => {
    const first = pieces.findIndex((piece) => places.has(piece.station));
    return pieces.slice(0, first < 0 ? pieces.length : first).reduce((sum, { minutes }) => sum + minutes, 0);
  });
  return [...team.keys()].sort(
    (a, b) => nearMouldFirst(team[a] ?? [], team[b] ?? []) || (before[a] ?? 0) - (before[b] ?? 0) || a - b,
  );
}

/** A piece from its first minute to its last, wipe-down and pauses among them: it stays where it is. */
interface Worked extends Held {
  readonly piece: DayPiece;
}

function worked(pieces: readonly DayPiece[], rows: readonly ClockRow[]): Worked[] {
  const times = new Map<number, Held>();
  for (const { piece, kind, from, to } of rows)
    if (piece !== null && kind !== "wait") times.set(piece, { from: times.get(piece)?.from ?? from, to });
  return [...times].map(([at, time]) => ({ piece: pieces[at] as DayPiece, ...time }));
}

function holdsFor(piece: DayPiece, others: readonly Worked[], places: ReadonlyMap<string, number>): Held[] {
  const most = places.get(piece.station);
  const taken =
    most === undefined
      ? []
      : fullTimes(
          others.filter((each) => each.piece.station === piece.station),
          most,
        );
  const pictured = picturedBy(piece, others);
  return [...(pictured > 0 ? [{ from: 0, to: pictured }] : []), ...taken.filter(({ to }) => to > pictured)];
}

/** When the others have pictured the item of a box; 0: there is nothing to wait for. */
const picturedBy = ({ act, item }: DayPiece, others: readonly Worked[]): number =>
  act === "box"
    ? Math.max(
        0,
        ...others.filter(({ piece }) => piece.item === item && piece.act === "image").map(({ to }) => to),
      )
    : 0;

/** Times at which so many are at work that there is no place left. */
function fullTimes(work: readonly Worked[], places: number): Held[] {
  const moments = [...new Set(work.flatMap(({ from, to }) => [from, to]))].sort((a, b) => a - b);
  const full: Held[] = [];
  moments.slice(1).forEach((to, at) => {
    const from = moments[at] as number;
    if (work.filter((each) => each.from <= from && each.to >= to).length < places) return;
    const last = full.at(-1);
    if (last?.to === from) full[full.length - 1] = { from: last.from, to };
    else full.push({ from, to });
  });
  return full;
}

function boxesTooSoon(
  at: number,
  team: readonly (readonly DayPiece[])[],
  laid: ReadonlyMap<number, readonly ClockRow[]>,
): boolean {
  const others = [...laid].flatMap(([other, rows]) => (other === at ? [] : worked(team[other] ?? [], rows)));
  return worked(team[at] ?? [], laid.get(at) ?? []).some(
    ({ piece, from }) => picturedBy(piece, others) > from,
  );
}
