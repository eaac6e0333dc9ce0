import type { LogEvent } from "../../core/log/event.ts";
import { allEvents, type Keep } from "../keep/keep.ts";

export type Link = Pick<LogEvent, "device" | "number" | "hash" | "before">;

/** Where each event of a campaign stands in its chain, and the last place that was read. */
export async function linksIn(
  keep: Keep,
  campaign: string,
): Promise<{ readonly links: readonly Link[]; readonly last: number }> {
  const links: Link[] = [];
  let last = 0;
  for await (const { place, event } of allEvents(keep, campaign)) {
    const { device, number, hash, before } = event;
    links.push({ device, number, hash, before });
    last = place;
  }
  return { links, last };
}
