import type { Route } from "../care/care.ts";
import type { Act } from "../items/campaign.ts";
import { sayAct } from "./conditions.ts";
import { sayNumber } from "./dates.ts";

const NAMED = 40;

/** Which of the items may go before the camera now by every rule, and what stands before the others, the nearest first. */
export function sayReady(routes: readonly Route[], locale = "en-GB"): string[] {
  const named = (all: readonly Route[]): string => {
    const ids = all.slice(0, NAMED).map((each) => each.item);
    return `${ids.join(", ")}${all.length > NAMED ? ` and ${sayNumber(all.length - NAMED, locale)} more` : ""}`;
  };
  const line = (words: string, all: readonly Route[]): string[] =>
    all.length === 0 ? [] : [`${words} (${sayNumber(all.length, locale)}): ${named(all)}.`];
  const onRoute = routes.filter((each) => each.destiny === "route");
  const nextIs = (act: Act): Route[] => onRoute.filter(({ steps }) => steps[0]?.act === act);
  const ready = nextIs("image");
  const pictured = onRoute.filter(({ steps }) => steps.every(({ act }) => act !== "image"));
  const before = (["clean", "wrap", "covers", "release", "admit", "survey"] as const).flatMap((act) =>
    line(`First: ${sayAct(act).toLowerCase()}`, nextIs(act)),
  );
  const stopped = routes.filter((each) => each.destiny === "set aside");
  const stops = new Map<string, Route[]>();
  for (const each of stopped) {
    const why = each.stoppedBy[0]?.text ?? "A rule stops the work.";
    stops.set(why, [...(stops.get(why) ?? []), each]);
  }
  return [
    ready.length === 0
      ? `None of ${sayNumber(routes.length, locale)} may go before the camera now.`
      : `May go before the camera now (${sayNumber(ready.length, locale)} of ${sayNumber(routes.length, locale)}): ${named(ready)}.`,
    ...before,
    ...[...stops].flatMap(([why, all]) => line(`Set aside: ${why.replace(/\.$/, "")}`, all)),
    ...line(
      "At the Door: a must-ask test has no answer, which is never a no",
      routes.filter((each) => each.destiny === "at the Door"),
    ),
    ...line("Pictured or boxed already", [...pictured, ...routes.filter((each) => each.destiny === "done")]),
    "Each act is asked of the rules again on the day: the bench card says how, leafward why <folder> <item> says why. Days planned for the camera stand in tables/item-days.csv.",
  ];
}
