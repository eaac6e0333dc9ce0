import { careOfCampaign } from "../../core/care/item-care.ts";
import { looksFor } from "../../core/plan/sample/looks-for.ts";
import { WITHIN } from "../../core/plan/sample/next-looks.ts";
import { binomialInterval, lotInterval } from "../../core/plan/sample/share-interval.ts";
import { type CampaignSample, sampleOfCampaign } from "../../core/plan/sample/strata.ts";
import type { Stratum } from "../../core/plan/sample/stratum.ts";
import {
  CAMPAIGN_WORDS,
  SAMPLE_CAUTIONS,
  SAMPLE_HELP,
  SAMPLE_REFUSALS,
  SAMPLE_WORDS,
  type SampleFigures,
} from "../../core/say/sample.ts";
import { type Given, Refusal } from "./damp/given.ts";
import { answered, cautionsOf, type DampCommand, type Figure, type Report } from "./damp/report.ts";
import { openFolder } from "./open-folder.ts";

const OPTIONS = { sure: "text", all: "flag" } as const;
const SHELVES = 10;
const MOST_ITEMS = 1e6;

/** `leafward sample`: how sure a share is, from three numbers or from a campaign folder. */
export const sample: DampCommand = (...to) =>
  answered({ name: "sample", help: SAMPLE_HELP, options: OPTIONS }, to, async (given) => {
    const sureness = given.quantity(
      "sure",
      "relHum",
      { low: 0.5, high: 0.999, remedy: "95 is usual." },
      0.95,
    );
    const [folder = "", ...more] = given.files;
    if (given.files.length === 3) return reportOfNumbers(numbersFrom(given, sureness));
    if (more.length > 0 || folder === "" || /^\d+$/.test(folder))
      given.refuseInWords(SAMPLE_REFUSALS.arguments);
    given.settle();
    return reportOfFolder(folder, sureness, given.has("all"), to[2]);
  });

function numbersFrom(given: Given, sureness: number): SampleFigures {
  const [looked = 0, found = 0, all = 0] = given.files.map((text) => {
    if (!/^\d+$/.test(text)) given.refuseInWords(SAMPLE_REFUSALS.number(text));
    return Number(text);
  });
  given.settle();
  if (all > MOST_ITEMS) given.refuseInWords(SAMPLE_REFUSALS.many(all));
  if (found > looked) given.refuseInWords(SAMPLE_REFUSALS.found(found, looked));
  if (looked > all) given.refuseInWords(SAMPLE_REFUSALS.all(looked, all));
  given.settle();
  const seen = { looked, found };
  const share = looked === 0 ? 0.5 : found / looked;
  return {
    ...seen,
    all,
    sureness,
    lot: lotInterval(seen, all, sureness),
    binomial: binomialInterval(seen, sureness),
    looksIfSame: looksFor(WITHIN, share, all, sureness),
    looksWhatever: looksFor(WITHIN, 0.5, all, sureness),
  };
}

function reportOfNumbers(figures: SampleFigures): Report {
  const { labels } = SAMPLE_WORDS;
  const { looked, all, looksIfSame } = figures;
  const more = Math.max(0, looksIfSame - looked);
  return {
    exit: 0,
    sections: [
      {
        understood: [SAMPLE_WORDS.understood(figures)],
        verdict: SAMPLE_WORDS.verdict(figures),
        todo: [
          SAMPLE_WORDS.more(figures),
          ...(more > 0 ? [SAMPLE_WORDS.choose(Math.max(1, Math.floor((all - looked) / more)))] : []),
          ...(looked < all ? [SAMPLE_WORDS.kinds] : []),
          SAMPLE_WORDS.leaves,
        ],
        figures: (["seen", "lot", "endless", "same", "whatever"] as const).map((name) => ({
          label: labels[name],
          value: SAMPLE_WORDS[name](figures),
        })),
        cautions: cautionsOf(["chosen", "clumped"], SAMPLE_CAUTIONS),
        data: { ...figures },
      },
    ],
  };
}

async function reportOfFolder(
  folder: string,
  sureness: number,
  everyShelf: boolean,
  complain: (line: string) => void,
): Promise<Report> {
  const opened = await openFolder(folder, complain);
  if (!opened) throw new Refusal([]);
  const { campaign, book } = opened;
  const found = sampleOfCampaign(campaign, careOfCampaign(book, campaign), sureness);
  const wholes = found.strata.filter(({ by }) => by === "all");
  const unseen = Math.max(0, ...wholes.map(({ items, looked }) => items - looked));
  return {
    exit: 0,
    sections: [
      {
        understood: [CAMPAIGN_WORDS.understood(found, campaign.name)],
        verdict: wholes.map((each) => CAMPAIGN_WORDS.verdict(each, sureness)).join(" "),
        todo:
          found.next.length === 0
            ? [CAMPAIGN_WORDS.noneLeft, ...(unseen > 0 ? [CAMPAIGN_WORDS.stillUnseen(unseen)] : [])]
            : [...found.next.map(CAMPAIGN_WORDS.next), SAMPLE_WORDS.leaves],
        figures: wholes.flatMap((whole) => figuresOf(found, whole, everyShelf)),
        cautions: cautionsOf(["chosen", "unsure-both-ways", "not-tested"], SAMPLE_CAUTIONS),
        data: { ...found },
      },
    ],
  };
}

/** A trouble by format, then by shelf; groups that were looked at whole and have none are left out. */
function figuresOf({ strata }: CampaignSample, { trouble }: Stratum, everyShelf: boolean): Figure[] {
  const own = strata.filter((each) => each.trouble === trouble && each.high > 0);
  return (["format", "shelf"] as const).flatMap((by) => {
    const rows = own.filter((each) => each.by === by);
    const shown = by === "shelf" && !everyShelf ? rows.slice(0, SHELVES) : rows;
    const rest = rows.length - shown.length;
    if (rows.length === 0) return [];
    return [
      { label: `${trouble} ${CAMPAIGN_WORDS.heading[by]}`, value: "" },
      ...shown.map((each) => ({
        label: `  ${CAMPAIGN_WORDS.label(each)}`,
        value: CAMPAIGN_WORDS.line(each),
      })),
      ...(rest > 0 ? [{ label: "", value: CAMPAIGN_WORDS.moreShelves(rest) }] : []),
    ];
  });
}
