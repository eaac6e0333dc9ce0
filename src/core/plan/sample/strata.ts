import type { ItemCare } from "../../care/item-care.ts";
import type { Campaign } from "../../items/campaign.ts";
import { type NextLooks, nextLooks } from "./next-looks.ts";
import { lotInterval, USUAL_SURENESS } from "./share-interval.ts";
import type { Stratum } from "./stratum.ts";
import { type Seen, surveyed, TROUBLES, type Trouble } from "./surveyed.ts";

/** What a campaign's survey says of its troubles, and where another look tells most. */
export interface CampaignSample {
  readonly items: number;
  /** Items with an answer to at least one of the tests. */
  readonly looked: number;
  readonly sureness: number;
  readonly strata: readonly Stratum[];
  readonly next: readonly NextLooks[];
}

/** Shares with their intervals, over all, by format and by shelf, each group a lot of its own. */
export function sampleOfCampaign(
  campaign: Campaign,
  care: readonly ItemCare[],
  sureness = USUAL_SURENESS,
): CampaignSample {
  const seen = surveyed(care, campaign.findings);
  const rows = [...seen].flatMap(([{ item }, troubles]) =>
    [...troubles].map(([trouble, answer]) => ({
      trouble,
      answer,
      format: String(item.facts.format),
      shelf: item.foundIn ?? "",
    })),
  );
  const strata = TROUBLES.flatMap((trouble) => {
    const own = rows.filter((row) => row.trouble === trouble);
    const by = (what: "format" | "shelf") =>
      [...new Set(own.map((row) => row[what]))]
        .map((name) =>
          stratumOf(trouble, what, name, answersOf(own.filter((row) => row[what] === name)), sureness),
        )
        .sort((a, b) => b.low - a.low || b.high - a.high || a.name.localeCompare(b.name));
    return own.length === 0
      ? []
      : [stratumOf(trouble, "all", "", answersOf(own), sureness), ...by("format"), ...by("shelf")];
  });
  return {
    items: care.length,
    looked: [...seen.values()].filter((each) => [...each.values()].some((answer) => answer !== "unseen"))
      .length,
    sureness,
    strata,
    next: nextLooks(seen, strata, sureness),
  };
}

const answersOf = (rows: readonly { readonly answer: Seen }[]): Seen[] => rows.map(({ answer }) => answer);

function stratumOf(
  trouble: Trouble,
  by: Stratum["by"],
  name: string,
  answers: readonly Seen[],
  sureness: number,
): Stratum {
  const count = (which: Seen): number => answers.filter((each) => each === which).length;
  const items = answers.length;
  const looked = items - count("unseen");
  const [found, unsure] = [count("yes"), count("unsure")];
  const surely = lotInterval({ looked, found }, items, sureness);
  const atMost = lotInterval({ looked, found: found + unsure }, items, sureness);
  return {
    trouble: trouble.id,
    by,
    name,
    items,
    looked,
    found,
    unsure,
    low: surely.low,
    lowItems: surely.lowItems,
    high: atMost.high,
    highItems: atMost.highItems,
  };
}
