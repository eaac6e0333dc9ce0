import { careOfCampaign } from "../../core/care/item-care.ts";
import { loadNorms } from "../../core/care/norms.ts";
import { routeOf } from "../../core/care/route.ts";
import { sayBag, sayBagCautions, sayChecks, sayMissing, sayReady } from "../../core/say/ward.ts";
import type { Day } from "../../core/units/day.ts";
import { forecastsOf, type WardForecast, wardRoomOf } from "../../core/ward/forecast.ts";
import { readPublished } from "../../edge/published.ts";
import { openFolder } from "./open-folder.ts";
import { wrapped } from "./wrapped.ts";

interface Ward {
  readonly folder: string;
  readonly item: string | undefined;
  readonly today: Day | undefined;
  readonly out: (line: string) => void;
  readonly complain: (line: string) => void;
}

/** `leafward ward`: each bag of a campaign, or one of them whole. @returns 0 said · 2 no such folder or item */
export async function wardOfFolder({ folder, item, today, out, complain }: Ward): Promise<number> {
  const opened = await openFolder(folder, complain, today);
  if (!opened) return 2;
  const { campaign } = opened;
  const norms = loadNorms(readPublished("norms.json"));
  const routes = careOfCampaign(opened.book, campaign).map((care) => routeOf(norms, care));
  const all = [...forecastsOf(campaign, routes).values()];
  const shown = item ? all.filter((each) => each.item.toLowerCase() === item.toLowerCase()) : all;
  if (item && shown.length === 0) {
    complain(
      `${item} does not lie in the Ward of ${folder}: no bag was closed for it before ${campaign.planFrom}.`,
    );
    return 2;
  }
  const room = wardRoomOf(campaign);
  out(
    `The Ward on ${campaign.planFrom}: ${all.length} ${all.length === 1 ? "item" : "items"} in it; the room at ${Math.round(room.relHum * 100)} % and ${room.dryBulb.toFixed(0)} °C.`,
  );
  out("");
  for (const each of [...shown].sort((a, b) => a.days.typical - b.days.typical))
    for (const line of item ? wholeLines(each, campaign.planFrom) : shortLines(each, campaign.planFrom))
      out(line);
  if (all.length === 0)
    out("Nothing lies in it. Write what happens to a bag into ward.csv: closed, gel in, read, weighed.");
  out("Readings release, never a date. Follow local rules and licensed practice.");
  return 0;
}

function shortLines(forecast: WardForecast, today: Day): string[] {
  const { item, bag } = forecast;
  const [first = ""] = sayReady(forecast, today);
  return [
    ...wrapped(`${item}  ${bag ? sayBag(bag) : "nothing was written down about its bag"}.`, "", "    "),
    ...(bag && sayMissing(bag) ? wrapped(`Next: ${sayMissing(bag)}`, "    ") : []),
    ...wrapped(first, "    "),
    "",
  ];
}

function wholeLines(forecast: WardForecast, today: Day): string[] {
  const { item, bag } = forecast;
  return [
    ...wrapped(`${item}  ${bag ? sayBag(bag) : "nothing was written down about its bag"}.`, "", "    "),
    ...sayReady(forecast, today).flatMap((line) => wrapped(line, "  ")),
    ...(bag
      ? [
          "",
          "A release asks for",
          ...sayChecks(bag).flatMap((line) => wrapped(line, "  ", "       ")),
          "",
          "Mind",
          ...sayBagCautions(bag).flatMap((line) => wrapped(line, "  - ", "    ")),
        ]
      : []),
    "",
  ];
}
