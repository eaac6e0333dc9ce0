import type { Campaign } from "../items/campaign.ts";
import type { Ask } from "../plan/what-if/ease/asks.ts";
import type { Ease, Eased, MustLeft } from "../plan/what-if/ease/ease.ts";
import { sayDay, sayNumber } from "./dates.ts";
import { NOISE_DAYS, sayChange, sayResource } from "./what-if.ts";

const EFFORT: Readonly<Record<Ask["effort"], string>> = {
  1: "a word",
  2: "a purchase or two hired days",
  3: "a hire",
  4: "a person",
  5: "a promised date",
};
const NAMED = 8;

const items = (n: number, locale: string): string => `${sayNumber(n, locale)} item${n === 1 ? "" : "s"}`;

export const sayAsk = ({ changes }: Pick<Ask, "changes">, campaign: Campaign, locale = "en-GB"): string =>
  changes.map((each) => sayChange(each, campaign, locale)).join("; ");

/** What binds, the strongest first; from the programme's prices. */
export function sayEaseBinds({ binds }: Ease, locale = "en-GB"): string[] {
  if (binds.length === 0) return ["Nothing holds the plan back: every shared resource has room."];
  return binds.map(({ resource, weight, load }, at) => {
    const used = load > 0 ? `; ${sayNumber(100 * load, locale)} % used` : "";
    return `${at + 1}. ${sayResource(resource)}: one per cent more would save about ${weight.toPrecision(1)} % of all waiting${used}.`;
  });
}

/** What an ask that helps would save, and for what. */
export function sayEased(eased: Eased, campaign: Campaign, locale = "en-GB"): string {
  const { effort, savedDays, outlook, difference, mustIn, mustOut } = eased;
  const { p50 } = difference.days;
  const boxed = difference.boxed;
  const said = [
    savedDays > 0
      ? `${sayNumber(savedDays, locale, 1)} days less waiting an item`
      : "no less waiting in all, but other items",
    p50 !== null && p50 < -NOISE_DAYS ? `finish ${sayNumber(-p50, locale)} days earlier` : "",
    p50 === null && difference.days.p90 === null && outlook.finish.p50 && boxed > 0
      ? `finished by ${sayDay(outlook.finish.p50, locale)}`
      : "",
    boxed > 0 ? `${items(boxed, locale)} more boxed` : "",
    mustIn.length > 0 ? `${sayNumber(mustIn.length, locale)} must-do in` : "",
    mustOut.length > 0 ? `${sayNumber(mustOut.length, locale)} must-do out` : "",
  ].filter((each) => each !== "");
  return `${sayAsk(eased, campaign, locale)} (${EFFORT[effort]}): ${said.join(", ")}.`;
}

/** What was tried and does not help, and how little it would do. */
export function sayNoHelp(eased: Eased, campaign: Campaign, locale = "en-GB"): string {
  const { savedAtBest, savedDays } = eased;
  const why =
    savedAtBest !== null && savedAtBest < 0.05
      ? "saves none: even the best possible plan would not be better for it"
      : savedDays < 0.05
        ? "saves none in the plan made with it"
        : `saves ${sayNumber(savedDays, locale, 1)} days an item, within the noise of making plans`;
  return `${sayAsk(eased, campaign, locale)}: ${why}.`;
}

/** Must-do items left out, by name, grouped by what brings them in. */
export function sayMustLeft(must: readonly MustLeft[], campaign: Campaign, locale = "en-GB"): string[] {
  if (must.length === 0) return ["Every must-do item on a route fits."];
  const groups = new Map<string, MustLeft[]>();
  const easiest = [...must].sort((a, b) => (a.by?.effort ?? 9) - (b.by?.effort ?? 9));
  for (const each of easiest) {
    const by = each.tooLate
      ? "Their waits alone run past the end, whatever is added. Only a later end or an earlier start helps:"
      : each.by
        ? `Brought in by this: ${sayAsk(each.by, campaign, locale)}. Then fit`
        : "Not brought in by anything tried here:";
    groups.set(by, [...(groups.get(by) ?? []), each]);
  }
  return [...groups].map(([by, all]) => {
    const names = all.slice(0, NAMED).map(({ left, soonest, tooLate }) => {
      const when = tooLate ? ` (not before ${sayDay(soonest, locale)})` : "";
      return `${left.item} ${left.title}${when}`;
    });
    const more = all.length > NAMED ? `; and ${sayNumber(all.length - NAMED, locale)} more` : "";
    return `${by} ${names.join("; ")}${more}.`;
  });
}

export const sayEaseMethod = (draws: number, plans: number, locale = "en-GB"): string =>
  `Each line is a plan of its own (${sayNumber(plans, locale)} of them), with the same ${sayNumber(draws, locale)} simulated campaigns as the plan as it is. Ranked by days saved for the effort of asking: a word 1, a purchase or two hired days 2, a hire 3, a person 4, a promised date 5 (common practice, no source). What brings a must-do item in is the easiest of what was tried, not proved to be the least there is. Sizes asked for are examples: try your own with leafward what-if. A new person near mould needs training, two watched sessions and a clear yes first. Nothing here changes the plan or the folder.`;
