import { type RoleTable, roleTable } from "../../core/log/may-do.ts";
import { readPublished } from "../published.ts";

/** `data/roles.json`; a fault in it is ours. */
export const publishedRoles = (): RoleTable => roleTable.parse(readPublished("roles.json"));
