import { loadNorms } from "../src/core/care/norms.ts";
import { campaignRoutes } from "../src/core/plan/campaign-routes.ts";
import { benchCardView } from "../src/edge/papers/bench-card-view.ts";
import { benchCardFiles, benchCards } from "../src/edge/papers/papers.ts";
import type { BenchCardView } from "../src/edge/papers/views.ts";
import { readPublished } from "../src/edge/published.ts";
import { publishedRuleBook } from "../src/edge/rule-book.ts";
import { makeCampaign } from "./make-campaign.ts";
import { pdfkitCards } from "./peers/pdfkit-cards.ts";

const CARDS = 500;
const TURNS = 2;

/** Bench cards to PDF, pages a second: ours in one file and as they are printed, and a general-purpose library laying out the same words. */
export async function benchPapers(): Promise<void> {
  const cards = cardViews(CARDS);
  console.log(`${CARDS} bench cards to PDF, each way ${TURNS} times`);
  console.log(
    "  way                                                   pages     MB        seconds   pages a second",
  );
  const ways: readonly [string, () => Promise<readonly Uint8Array[]>][] = [
    ["ours, one file", async () => [await benchCards(cards, { sheet: "A4" })]],
    ["ours, files of a hundred in two processes", () => benchCardFiles(cards, { sheet: "A4" })],
    ["pdfkit: the words alone, no signs, codes or tags", async () => [await pdfkitCards(cards)]],
  ];
  for (const [name, print] of ways) await benchWay(name, print);
}

async function benchWay(name: string, print: () => Promise<readonly Uint8Array[]>): Promise<void> {
  const times: number[] = [];
  let files: readonly Uint8Array[] = [];
  for (let turn = 0; turn < TURNS; turn++) {
    const from = performance.now();
    files = await print();
    times.push((performance.now() - from) / 1000);
  }
  const pages = files.reduce((sum, file) => sum + pageCount(file), 0);
  const megabytes = files.reduce((sum, file) => sum + file.length, 0) / 1e6;
  const rates = times.map((seconds) => (pages / seconds).toFixed(0)).join(" / ");
  console.log(
    `  ${name.padEnd(50)} ${String(pages).padStart(8)} ${megabytes.toFixed(1).padStart(6)} ${times
      .map((each) => each.toFixed(1))
      .join(" / ")
      .padStart(14)} ${rates.padStart(16)}`,
  );
}

const pageCount = (pdf: Uint8Array): number =>
  Buffer.from(pdf)
    .toString("latin1")
    .match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;

function cardViews(count: number): BenchCardView[] {
  const book = publishedRuleBook();
  const norms = loadNorms(readPublished("norms.json"));
  const campaign = makeCampaign({ items: count + 100, people: 6, weeks: 30, seed: 1 });
  const { care, routes } = campaignRoutes(book, norms, campaign);
  const context = {
    campaign: campaign.name,
    endings: book.endings,
    families: book.families,
    storeWords: (use: string) => `${norms.unit(use)} ${norms.what(use)}`,
  };
  return care
    .flatMap((each, at) => {
      const route = routes[at];
      return route && route.steps.length > 0 ? [benchCardView(each, route, context)] : [];
    })
    .slice(0, count);
}
