import type { Route } from "../../core/care/care.ts";
import { loadNorms } from "../../core/care/norms.ts";
import type { Campaign } from "../../core/items/campaign.ts";
import { campaignRoutes } from "../../core/plan/campaign-routes.ts";
import { Names } from "../../core/plan/what-if/names.ts";
import { itemsByCare } from "../../core/say/items-by-care.ts";
import { sayReady } from "../../core/say/ready.ts";
import { readPublished } from "../../edge/published.ts";
import { openFolder } from "./open-folder.ts";
import { wrapped } from "./wrapped.ts";

type Out = (line: string) => void;

/**
 * `leafward ready`: which items may go before the camera now, and what stands before each other one.
 * @param kind an item's number, a format or a condition; every item where it is left out
 * @returns 0 said · 2 no such folder or kind
 */
export async function readyItems(
  folder: string,
  kind: string | undefined,
  out: Out,
  complain: Out,
): Promise<number> {
  const opened = await openFolder(folder, complain);
  if (!opened) return 2;
  const { campaign, book } = opened;
  const { routes } = campaignRoutes(book, loadNorms(readPublished("norms.json")), campaign);
  const meant = kind === undefined ? routes.map((each) => each.item) : itemsOf(campaign, routes, kind);
  if (meant === null) {
    const formats = [...new Set(campaign.items.map(({ facts }) => String(facts.format)))];
    complain(
      `No item here is "${kind}". Say a number, "mouldy", "red rot", a cover, or one of: ${formats.join(", ")}.`,
    );
    return 2;
  }
  const set = new Set(meant);
  const lines = sayReady(routes.filter((each) => set.has(each.item)));
  for (const line of lines) for (const each of wrapped(line, "", "   ")) out(each);
  return 0;
}

function itemsOf(campaign: Campaign, routes: readonly Route[], kind: string): readonly string[] | null {
  const words = kind.trim().toLowerCase();
  const cover = words.replaceAll(" ", "_");
  const covered = campaign.items.filter(
    ({ facts }) =>
      String(facts.cover ?? "")
        .split("_")
        .includes(cover) || facts.cover === cover,
  );
  return covered.length > 0
    ? covered.map(({ id }) => id)
    : new Names(campaign, itemsByCare(routes)).items(words);
}
