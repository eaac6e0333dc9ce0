import type { SheetRow } from "./plan.ts";

/** Until when somebody must stay for the person to whom the rows belong, when all others are gone sooner (P13); null: company is there. */
export function companyNeededUntil(
  rows: readonly SheetRow[],
  everybodys: readonly SheetRow[],
): number | null {
  const near = rows.findLast((row) => row.exposed || row.kind === "change out");
  const others = everybodys.filter((row) => row.day === near?.day && row.person !== near.person);
  return near && others.every(({ to }) => to < near.to) ? near.to : null;
}
