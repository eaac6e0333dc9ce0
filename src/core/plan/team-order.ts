import { ACTS, type Station } from "../items/campaign.ts";
import { type DayPiece, dayOrder, WIPE_FROM } from "./day-order.ts";

/**
 * Each person's order of one day, as places in that person's list: exact from clean to dirty, protection last and put on once. A station wanted by
 * more people than it has places goes first to who works near mould later that day, so as not to be the last in the building, then to who
 * has least other clean work; the others do that work before they come to it. So does,
 * with a box, whoever closes it over an item another pictures on the same day.
 */
export function teamOrder(
  team: readonly (readonly DayPiece[])[],
  stations: readonly Pick<Station, "id" | "places">[],
): number[][] {
  const waits = team.map(() => new Set<string>());
  for (const { id, places } of stations) {
    const there = team.flatMap((pieces, at) => (pieces.some((each) => each.station === id) ? [at] : []));
    const spare = (at: number): number =>
      (team[at] ?? [])
        .filter((each) => isClean(each) && each.station !== id)
        .reduce((sum, each) => sum + each.minutes, 0);
    const turns = there.sort(
      (a, b) => nearMouldFirst(team[a] ?? [], team[b] ?? []) || spare(a) - spare(b) || a - b,
    );
    for (const at of turns.slice(places)) waits[at]?.add(id);
  }
  const pictures = new Map<string, number>();
  team.forEach((pieces, at) => {
    for (const { item, act } of pieces) if (act === "image") pictures.set(item, at);
  });
  return team.map((pieces, at) => {
    const isLate = (piece: DayPiece): boolean =>
      (waits[at]?.has(piece.station) ?? false) ||
      (piece.act === "box" && (pictures.get(piece.item) ?? at) !== at);
    return [...dayOrder(pieces, { mustFollow: [...cleanFirst(pieces), ...lateLast(pieces, isLate)] }).order];
  });
}

/** Order of two people at a shared station: who works near mould that day goes home in time. */
export const nearMouldFirst = (one: readonly DayPiece[], other: readonly DayPiece[]): number =>
  Number(other.some(({ exposed }) => exposed)) - Number(one.some(({ exposed }) => exposed));

/** Work that may stand anywhere before the dirty work of a day. */
const isClean = (piece: DayPiece): boolean => !piece.exposed && piece.dirt < WIPE_FROM;
const earlierAct = (one: DayPiece, other: DayPiece): boolean =>
  one.item === other.item && ACTS.indexOf(one.act) < ACTS.indexOf(other.act);

type Pair = readonly [number, number];

/** Clean work, then dirty, then work in protection; the order of an item's own acts is stronger. */
function cleanFirst(pieces: readonly DayPiece[]): Pair[] {
  const stage = (piece: DayPiece): number => (piece.exposed ? 2 : isClean(piece) ? 0 : 1);
  const isFree = (piece: DayPiece): boolean =>
    !pieces.some((other) => stage(other) > stage(piece) && earlierAct(other, piece));
  return [0, 1].flatMap((now) =>
    pairs(
      pieces,
      (piece) => stage(piece) === now && isFree(piece),
      (piece) => stage(piece) > now,
    ),
  );
}

/** Clean work that must wait for others after all clean work that need not; what follows it on an item is late with it. */
function lateLast(pieces: readonly DayPiece[], isLate: (piece: DayPiece) => boolean): Pair[] {
  const late = new Set(
    pieces.filter(
      (piece) => isLate(piece) || pieces.some((other) => isLate(other) && earlierAct(other, piece)),
    ),
  );
  return pairs(
    pieces,
    (piece) => isClean(piece) && !late.has(piece),
    (piece) => isClean(piece) && late.has(piece),
  );
}

function pairs(
  pieces: readonly DayPiece[],
  isFirst: (piece: DayPiece) => boolean,
  isThen: (piece: DayPiece) => boolean,
): Pair[] {
  const places = (fits: (piece: DayPiece) => boolean): number[] =>
    pieces.flatMap((piece, at) => (fits(piece) ? [at] : []));
  const then = places(isThen);
  return places(isFirst).flatMap((first) => then.map((at) => [first, at] as const));
}
