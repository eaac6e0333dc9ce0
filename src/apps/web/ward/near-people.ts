import { minutesNearMould } from "../../../core/log/minutes-near-mould.ts";
import { mayWorkNearMould, mouldAccount, type NearStop } from "../../../core/log/mould-account.ts";
import { recentItems } from "../../../core/log/recent-items.ts";
import type { Role } from "../../../core/log/roles.ts";
import type { Now } from "../log/now.ts";

/** Who works here, what of the day's minutes near mould each has left, and what stands against more. */
export interface NearPerson {
  readonly code: string;
  readonly name: string;
  readonly role: Role;
  readonly leftToday: number;
  readonly stop: NearStop | null;
}

/** Longer than any limit looks back. */
const LOOK_BACK_MS = 15 * 86_400_000;

export function nearPeople({ house, state, today, minute }: Now): readonly NearPerson[] {
  const since = Date.parse(today) - LOOK_BACK_MS;
  const accounts = minutesNearMould(state, house.stations, recentItems(state, since));
  return house.people.map((person) => {
    const mayMould = mayWorkNearMould(person, house.calendar, today);
    const near = accounts.get(person.code);
    const { leftToday, stop } = mouldAccount({
      ...{ near, limits: house.limits, day: today, minute, runsSince: null, mayMould },
    });
    return { code: person.code, name: person.name, role: person.role as Role, leftToday, stop }; // a person is listed under one of the roles
  });
}
