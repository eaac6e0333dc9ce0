import type { Care, Forbid } from "../../core/care/care.ts";

/** Bans that speak of people, tools, stations or the whole team, and stand on the day sheet and at the door instead. */
const ELSEWHERE =
  /^(assign_|continue_work|work_alone|start_session|remove_respirator|drop_ppe|eat_drink|bare_device|use_tool|ethanol_on_surface|spray_|store_health|skip_|vacuum_ordinary|quarantine_as|test_)/;
/** Bans about the item, each family once, people's safety first. */
export function printedBans(care: Care, families: ReadonlyMap<string, readonly string[]>): Forbid[] {
  const banned = new Map(care.forbid.map((ban) => [ban.action, ban]));
  const covered = new Set<string>();
  for (const [family, members] of families) {
    const whole = banned.get(family);
    if (whole) for (const member of members) if (sameEnd(whole, banned.get(member))) covered.add(member);
  }
  return care.forbid
    .filter((ban) => !covered.has(ban.action) && !ELSEWHERE.test(ban.action))
    .sort((a, b) => tierOf(a) - tierOf(b));
}

/** A member is told apart when it outlasts its family: for ever where the family is banned for now, or until more has happened. */
const sameEnd = (family: Forbid, member: Forbid | undefined): boolean =>
  member !== undefined &&
  (family.until.includes("never") || member.until.every((until) => family.until.includes(until)));

const tierOf = (ban: Forbid): number => Math.min(...ban.reasons.map((reason) => reason.tier));
