import { z } from "zod";
import { KINDS, type Kind } from "./kinds.ts";
import { ROLES, type Role } from "./roles.ts";
import type { CampaignState, Shelf } from "./state.ts";

const roles = z.array(z.enum(ROLES)).readonly();
const SHELVES = ["campaign", "item", "bag", "person", "station", "store", "reader", "question"] as const;

/** Who may do what, as `data/roles.json` says it. What has no row nobody may do. */
export const roleTable = z.strictObject({
  source: z.string(),
  /** Kind of event → roles that may write it. */
  writes: z.record(z.enum(Object.keys(KINDS) as [Kind, ...Kind[]]), roles), // there are kinds
  /** Roles that may correct what another device wrote; every other corrects its own device's alone. */
  correctsOthers: roles,
  /** Route → roles it opens to; `everyone` who was let in, or `anyone` at all. */
  opens: z.record(z.string(), z.union([z.literal(["everyone", "anyone"]), roles])),
  /** Role → the shelves of the state it is shown. What this Leafward does not know is shown only to who sees everything. */
  sees: z.record(z.enum(ROLES), z.union([z.literal("everything"), z.array(z.enum(SHELVES)).readonly()])),
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
  const shelves = sees[role];
  if (shelves === "everything") return state;
  const isShown = (subject: string): boolean => (shelves as readonly Shelf[]).includes(shelfOf(subject));
  return { ...state, filed: new Map([...state.filed].filter(([subject]) => isShown(subject))) };
}

const shelfOf = (subject: string): Shelf => subject.slice(0, subject.indexOf(":")) as Shelf; // every subject begins with one
