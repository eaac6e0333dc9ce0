import type { Campaign } from "../../items/campaign.ts";
import { heatOutlook, LIGHT_WORK } from "../../physics/people/heat.ts";
import { withShorterDays } from "./_internals/shorter-days.ts";
import type { Change } from "./change.ts";

/** Rests in heat: a quarter of each hour. Common practice, no source. */
const SHARE_WORKED = 0.75;

export type HeatEffect = "none" | "rests" | "no mould work" | "no work";

/**
 * What the heat of a room leaves of a day, by the worse end of the estimate and for people used to it: over the limit in a coverall with
 * hood nobody works near mould, over it in ordinary clothes nobody works; from the alert on a quarter of each hour is rest.
 */
export function heatEffect({ dryBulb, relHum }: { dryBulb: number; relHum: number }): HeatEffect {
  const worst = (clothing: "sms-coverall" | "cloth-coverall", hood: boolean): string => {
    const { felt, error, alert, limit } = heatOutlook({
      room: { dryBulb, relHum },
      clothing,
      hood,
      metabolicRate: LIGHT_WORK,
    });
    return felt + error >= limit ? "over" : felt + error >= alert ? "alert" : "fine";
  };
  const covered = worst("sms-coverall", true);
  const plain = worst("cloth-coverall", false);
  if (plain === "over") return "no work";
  if (covered === "over") return "no mould work";
  return covered === "alert" || plain === "alert" ? "rests" : "none";
}

export function inHeat(campaign: Campaign, change: Change & { change: "room heat" }): Campaign {
  const { from, to } = change;
  const effect = heatEffect(change);
  if (effect === "none") return campaign;
  const row = { who: "everyone", from, to };
  if (effect === "no work")
    return { ...campaign, calendar: [...campaign.calendar, { ...row, what: "closed" }] };
  const rested = campaign.people.reduce(
    (now, { code, hoursADay }) =>
      withShorterDays(now, { change: "hours", who: code, hours: hoursADay * SHARE_WORKED, from, to }),
    campaign,
  );
  return effect === "rests"
    ? rested
    : { ...rested, calendar: [...rested.calendar, { ...row, what: "clean work" }] };
}
