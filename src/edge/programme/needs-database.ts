import { type Outcome, refused } from "../../core/outcome/problem.ts";
import { databaseUrl } from "../keep/open-keep.ts";

/** The address of the database that many campaigns share. */
export function programmeUrl(): Outcome<string> {
  const url = databaseUrl();
  if (url !== undefined) return { ok: true, value: url };
  return refused({
    code: "programme-no-database",
    severity: "stop",
    expected: "LEAFWARD_DATABASE_URL",
    remedy:
      "A programme is many campaigns in one PostgreSQL. Set LEAFWARD_DATABASE_URL to its address; a single campaign needs none.",
  });
}
