import { z } from "zod";
import type { Filed, Kind } from "./kinds.ts";
import { KINDS } from "./kinds.ts";
import { ROLES, type Role } from "./roles.ts";
import { isOf } from "./standing.ts";
import { type CampaignState, eventsAbout, type Subject } from "./state.ts";

const roles = z.array(z.enum(ROLES)).readonly();
const kind = z.enum(Object.keys(KINDS) as [Kind, ...Kind[]]); // there are kinds

/** Who may do what, as `data/roles.json` says it. What has no row nobody may do. */
export const roleTable = z.strictObject({
  source: z.string(),
  /** Kind of event → roles that may write it. */
  writes: z.record(kind, roles),
  /** Roles that may correct what another device wrote; every other corrects its own device's alone. */
  correctsOthers: roles,
  /** Route → roles it opens to; `everyone` who was let in, or `anyone` at all. */
  opens: z.record(z.string(), z.union([z.literal(["everyone", "anyone"]), roles])),
  /** Role → the kinds of entry it is shown, without the people in them. What this Leafward does not know is shown only to who sees everything. */
  sees: z.record(z.enum(ROLES), z.union([z.literal("everything"), z.array(kind).readonly()])),
});
export type RoleTable = z.infer<typeof roleTable>;

/** Whether a role may write a kind of event. A kind that is not known here nobody may: nobody can say what it would hold. */
export const mayDo = ({ writes }: RoleTable, role: Role, kind: string): boolean =>
  Object.hasOwn(writes, kind) && writes[kind as Kind].includes(role); // just looked up

/** Whether a role may correct an event, of its own device or of another. */
export const mayCorrect = (table: RoleTable, role: Role, own: boolean): boolean =>
  mayDo(table, role, "eventCorrected") && (own || table.correctsOthers.includes(role));

/** Whether a route opens to a role; null: to somebody who was not let in. */
export function mayOpen({ opens }: RoleTable, role: Role | null, route: string): boolean {
  const row = Object.hasOwn(opens, route) ? opens[route] : undefined;
  if (row === "anyone") return true;
  return role !== null && row !== undefined && (row === "everyone" || row.includes(role));
}

/** The part of the state that a role is shown. How far each device has written stays: it names no one. */
export function shownTo({ sees }: RoleTable, role: Role, state: CampaignState): CampaignState {
  const kinds = sees[role];
  if (kinds === "everything") return state;
  const filed = new Map<Subject, readonly Filed[]>();
  for (const subject of state.filed.keys()) {
    const shown = shownOf(eventsAbout(state, subject), kinds);
    if (shown.length > 0)
      filed.set(
        subject,
        shown.map((event) => withoutPeople(event, subject)),
      );
  }
  return { ...state, filed };
}

/** Events of these kinds, and what corrects them. */
function shownOf(events: readonly Filed[], kinds: readonly Kind[]): Filed[] {
  const shown = new Set(events.filter((event) => kinds.includes(event.kind)).map(({ id }) => id));
  for (let size = -1; size < shown.size; ) {
    size = shown.size;
    for (const event of events)
      if (isOf(event, "eventCorrected") && shown.has(event.payload.event)) shown.add(event.id);
  }
  return events.filter(({ id }) => shown.has(id));
}

/** Fields that name people. */
const PEOPLE = ["person", "by", "signed"];

function withoutPeople(event: Filed, subject: Subject): Filed {
  const kept = Object.entries(event.payload).filter(([name]) => !PEOPLE.includes(name));
  const payload = {
    ...Object.fromEntries(kept),
    ...(isOf(event, "eventCorrected") ? { about: [subject] } : {}),
  };
  return { ...event, who: { role: event.who.role }, payload } as Filed; // of its kind, but for who did it
}
