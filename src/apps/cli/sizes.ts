import { careOfCampaign } from "../../core/care/item-care.ts";
import { loadNorms } from "../../core/care/norms.ts";
import { routeOf } from "../../core/care/route.ts";
import { SIZES_CAUTIONS, SIZES_HELP, SIZES_WORDS } from "../../core/say/sizes.ts";
import { type Boxed, lyingFlat } from "../../core/stores/assortment/box-need.ts";
import { chooseSizes, type SizeChoice } from "../../core/stores/assortment/choose-sizes.ts";
import { fitChance } from "../../core/stores/assortment/fit-chance.ts";
import { readPublished } from "../../edge/published.ts";
import { startSolver } from "../../edge/solve/solver.ts";
import { type Given, Refusal } from "./damp/given.ts";
import { answered, cautionsOf, type DampCommand, type Report } from "./damp/report.ts";
import { openFolder } from "./open-folder.ts";

const OPTIONS = {
  share: "text",
  count: "text",
  most: "text",
  clearance: "text",
  tolerance: "text",
  own: "text",
  padding: "text",
  worth: "text",
} as const;
const DRAWS = 200;
/** An item takes a box of its own when its housing uses at least so much of one. */
const OWN_BOX = 0.4;
const BOXES = "k-box-vol";

/** `leafward sizes`: which box sizes to order, how many of each, and what one more size buys. */
export const sizes: DampCommand = (...to) =>
  answered({ name: "sizes", help: SIZES_HELP, options: OPTIONS }, to, async (given) => {
    const asked = askedFrom(given);
    const [folder] = given.files;
    if (folder === undefined || given.files.length > 1)
      given.refuseInWords("leafward sizes takes one folder, for example: npx leafward sizes demo/saltmere");
    given.settle();
    return reportOf(folder ?? "", asked, to[2]);
  });

type Asked = ReturnType<typeof askedFrom>;
function askedFrom(given: Given) {
  const count = (name: string, low: number, high: number, fallback: number, remedy: string): number =>
    given.quantity(name, "count", { low, high, remedy }, fallback);
  const length = (name: string, high: number, fallback: number, remedy: string): number =>
    given.quantity(name, "length", { low: 0, high, remedy }, fallback);
  return {
    share: given.quantity("share", "relHum", { low: 0.01, high: 1, remedy: "95 is usual." }, 0.95),
    clearance: length("clearance", 100, 8, "5 to 10 mm is usual in a store box."),
    tolerance: length("tolerance", 50, 2, "How far off may a measure be?"),
    count: given.has("count") ? count("count", 1, 8, 1, "How many sizes can you store apart?") : null,
    most: count("most", 1, 8, 5, "More than 8 sizes are no assortment."),
    worth: count("worth", 0, 100_000, 60, "Minutes."),
    costs: {
      ownMinutes: count("own", 0.1, 1000, 30, "Minutes to make one box."),
      minutesPerLitre: count("padding", 0.001, 100, 0.5, "Minutes to pad one litre."),
    },
  };
}

async function reportOf(folder: string, asked: Asked, complain: (line: string) => void): Promise<Report> {
  const opened = await openFolder(folder, complain);
  if (!opened) throw new Refusal([]);
  const { campaign, book } = opened;
  const norms = loadNorms(readPublished("norms.json"));
  const items = careOfCampaign(book, campaign).flatMap((care): Boxed[] => {
    const box = routeOf(norms, care).steps.find(({ act }) => act === "box");
    if ((box?.uses[BOXES] ?? 0) < OWN_BOX) return [];
    const { id, heightMm, widthMm, thicknessMm, facts } = care.item;
    const isMeasured = heightMm !== undefined && widthMm !== undefined && thicknessMm !== undefined;
    return [
      { id, kind: String(facts.format), size: isMeasured ? lyingFlat(heightMm, widthMm, thicknessMm) : null },
    ];
  });
  if (!items.some(({ size }) => size !== null)) throw new Refusal([SIZES_WORDS.nobody]);
  const solver = startSolver();
  const most = asked.count ?? asked.most;
  const { choices, candidates } = await chooseSizes(items, { ...asked, most }, solver.solve);
  await solver.close();
  const choice = asked.count === null ? worthwhile(choices, asked.worth) : (choices.at(-1) as SizeChoice);
  const chance = fitChance(items, choice.sizes, { ...asked, draws: DRAWS, seed: 1 });
  const store = campaign.stores.find(({ use }) => use === BOXES);
  return {
    exit: 0,
    sections: [
      {
        understood: [SIZES_WORDS.understood(items, campaign.name, campaign.items.length - items.length)],
        verdict: SIZES_WORDS.verdict(choice, chance),
        todo: [
          ...chance.sizes.map(({ size, wanted }) => SIZES_WORDS.order(size, wanted, store?.pack ?? 1)),
          ...(store?.orderBy ? [SIZES_WORDS.before(store.orderBy)] : []),
          ...(store && store.onHand > 0 ? [SIZES_WORDS.stock(store.onHand)] : []),
        ],
        figures: [
          ...choices.map((each, n) => ({
            label: `${n + 1} size${n === 0 ? "" : "s"}`,
            value: [SIZES_WORDS.row(each), ...savedBy(choices, n)].join("; "),
          })),
          { label: "proof", value: SIZES_WORDS.proof(choice, candidates) },
        ],
        cautions: cautionsOf(["ready", "whole", "minutes", "lift"], SIZES_CAUTIONS),
        data: { items: items.length, choices, chosen: choice.sizes.length, chance, candidates },
      },
    ],
  };
}

const savedBy = (choices: readonly SizeChoice[], n: number): string[] => {
  const [own, next] = [choices[n], choices[n + 1]];
  return own && next ? [SIZES_WORDS.more(own.minutes - next.minutes)] : [];
};

/** The first number of sizes after which one more does not save enough. */
function worthwhile(choices: readonly SizeChoice[], worth: number): SizeChoice {
  const stop = choices.findIndex(
    (each, n) => each.minutes - (choices[n + 1]?.minutes ?? each.minutes) < worth,
  );
  return choices[stop === -1 ? choices.length - 1 : stop] as SizeChoice;
}
