import type { Act, Campaign, Station, StationKind } from "../items/campaign.ts";
import type { Day } from "../units/day.ts";
import { isStationOpen } from "./station-open.ts";

/** Work that wants a place: whose, when, at what kind of station (null: none), how long. */
interface Wanted {
  readonly day: Day;
  readonly person: string;
  readonly act: Act;
  readonly kind: StationKind | null;
  readonly minutes: number;
}

/**
 * Gives work its place, one piece after the other. Of several stations of a kind: one with room where the person is already, else one
 * with a place to spare, else one with room, else the one with most room left.
 */
export function stationPlaces(campaign: Campaign): (wanted: Wanted) => string {
  const left = new Map<string, number>();
  const people = new Map<string, Set<string>>();
  return ({ day, person, act, kind, minutes }) => {
    const key = ({ id }: Station): string => `${day}|${id}`;
    const room = (station: Station): number => left.get(key(station)) ?? station.places * station.minutesADay;
    const rank = (station: Station): number => {
      const there = people.get(key(station));
      if (room(station) < minutes) return 3;
      return there?.has(person) ? 0 : (there?.size ?? 0) < station.places ? 1 : 2;
    };
    const ofKind = campaign.stations.filter((station) => station.kind === kind);
    const open = ofKind.filter((station) => isStationOpen(campaign, station, day));
    const chosen =
      open.sort((a, b) => rank(a) - rank(b) || (rank(a) === 3 ? room(b) - room(a) : 0))[0] ?? ofKind[0];
    if (!chosen) return act === "admit" || act === "release" ? "Ward" : "";
    left.set(key(chosen), room(chosen) - minutes);
    people.set(key(chosen), (people.get(key(chosen)) ?? new Set()).add(person));
    return chosen.id;
  };
}
