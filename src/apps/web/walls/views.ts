import type { Role } from "../../../core/log/roles.ts";
import type { Day } from "../../../core/units/day.ts";
import type { Now } from "../log/now.ts";

/** What stands around every room. */
export interface WallsView {
  readonly campaign: string;
  readonly place: string;
  readonly start: Day;
  readonly end: Day;
  readonly today: Day;
  readonly people: readonly { readonly code: string; readonly name: string; readonly role: Role | string }[];
}

const wallsView = ({ house, today }: Now): WallsView => ({
  campaign: house.name,
  place: house.place.name,
  start: house.start,
  end: house.end,
  today,
  people: house.people.map(({ code, name, role }) => ({ code, name, role })),
});

export const wallsViews = { walls: wallsView } as const;
