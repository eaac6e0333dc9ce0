import type { Boxed, BoxSize } from "../stores/assortment/box-need.ts";
import type { SizeChoice } from "../stores/assortment/choose-sizes.ts";
import type { FitChance, Range } from "../stores/assortment/fit-chance.ts";

/* What is said of box sizes to order. */

export const SIZES_HELP = `leafward sizes <folder>: which few box sizes to order, and how many of each

  Every item that is to have a box of its own, one item a box, lying flat. For one size, two, three … the best sizes,
  what share of the items fits, and what one more size would save.

  --share 95             how many in a hundred must fit a box
  --count 3              that many sizes; otherwise as many as are worth it
  --most 5               numbers of sizes looked at, 1 to this
  --clearance 8          room in each direction, mm (5 to 10 in a store box)
  --tolerance 2          how far off a measure may be, mm
  --own 30               minutes to make a box to measure, beyond folding a ready one
  --padding 0.5          minutes to pad a litre that an item leaves empty
  --worth 60             minutes that one size more must save to be worth ordering, storing and telling apart
  --json                 the same answer as JSON

Exit codes: 0 well; 2 it could not be done.`;

export const sayBox = ({ length, width, depth }: BoxSize): string => `${length} × ${width} × ${depth} mm`;
const percent = (share: number): string => `${Math.floor(1000 * share + 1e-6) / 10} %`;
const hours = (minutes: number): string =>
  minutes < 90 ? `${Math.round(minutes)} min` : `${Math.round(minutes / 6) / 10} h`;
const range = ({ p10, p90 }: Range): string => (p10 === p90 ? `${p10}` : `${p10} to ${p90}`);
const sizesOf = (count: number): string => (count === 1 ? "one size" : `${count} sizes`);

export const SIZES_WORDS = {
  understood: (items: readonly Boxed[], name: string, others: number): string => {
    const unmeasured = items.filter(({ size }) => size === null).length;
    const doubt =
      unmeasured === 0
        ? "all measured"
        : `${unmeasured} of them not measured, which are taken to be like the others of their kind`;
    return `${name}: ${items.length} items that are to have a box of their own, ${doubt}. ${others} others share boxes or lie in folders and are not reckoned here.`;
  },
  verdict: ({ sizes, share }: SizeChoice, chance: FitChance): string =>
    `Order ${sizesOf(sizes.length)}: ${percent(share)} of the items fit (${percent(chance.share.p10)} to ${percent(chance.share.p90)} with measures a little off), ${range(chance.own)} boxes are made to measure.`,
  order: (size: BoxSize, wanted: Range, pack: number): string => {
    const packs = Math.ceil(wanted.p90 / pack);
    const bundle = pack === 1 ? "" : `, in packs of ${pack}: ${packs} pack${packs === 1 ? "" : "s"}`;
    return `${sayBox(size)} inside: ${range(wanted)} wanted${bundle}.`;
  },
  before: (day: string): string => `The list of stores says: order boxes by ${day}.`,
  stock: (onHand: number): string =>
    `${onHand} boxes are in stock, their sizes not written down: measure them, and take off the order what serves.`,
  row: (choice: SizeChoice): string =>
    `${choice.sizes.map(sayBox).join("; ")}: ${percent(choice.share)} fit; padding ${hours(choice.paddingMinutes)}, made to measure ${hours(choice.ownMinutes)}`,
  proof: ({ proved, minutes, bound }: SizeChoice, candidates: number): string =>
    proved
      ? `No other choice among ${candidates} sizes costs less work: proved.`
      : `Among ${candidates} sizes none costs less than ${hours(bound)} of work; this one costs ${hours(minutes)}.`,
  more: (saved: number): string => `one more would save ${hours(Math.max(0, saved))}`,
  nobody:
    "No item of this folder is to have a box of its own and has been measured. Measure some of each kind first.",
} as const;

export const SIZES_CAUTIONS = {
  minutes:
    "Minutes of padding and of making are working figures (common practice, no source): put in your own with --own and --padding.",
  whole: "One item lies in one box. Where volumes share boxes fewer are wanted.",
  ready: "Nothing mouldy or damp is boxed: release from quarantine comes first.",
  lift: "Boxes that are heavy when full are lifted by two people or stored low. Follow local rules and licensed practice.",
} as const;
