import type { Facts, FactValue } from "../items/facts.ts";
import type { Band } from "./care.ts";
import { type Norms, plus, times } from "./norms.ts";

/** What the minutes of an item depend on. */
export interface Workload {
  readonly format: string;
  /** Leaves, sheets, pages or openings, as the format counts them. */
  readonly leaves: number;
  /** Share of leaves with growth, 0 to 1. */
  readonly affected: number;
  readonly mould: boolean;
  readonly redRot: 0 | 1 | 2 | 3;
  readonly fragile: boolean;
  readonly areaM2: number;
}

/** Leaves where nobody counted: a typical item of the format. Common practice, no source. */
const TYPICAL_LEAVES: Readonly<Record<string, number>> = {
  bound_volume: 200,
  pamphlet: 16,
  loose_sheets: 85,
  newspaper: 60,
  album: 30,
  palm_leaf_bundle: 80,
  bark_manuscript: 60,
  folded_book: 40,
};
const RUB: Readonly<Record<string, 0 | 1 | 2 | 3>> = { trace: 1, clear: 2, heavy: 3, unsure: 2 };

export function workloadOf(
  facts: Facts,
  answers: Readonly<Record<string, FactValue>>,
  conditions: ReadonlySet<string>,
): Workload {
  const format = String(facts.format);
  const mould = ["mould_active", "mould_dormant", "mould_suspected"].some((each) => conditions.has(each));
  const extent = answers.mould_extent_pct;
  return {
    format,
    leaves: typeof facts.leaves === "number" ? facts.leaves : (TYPICAL_LEAVES[format] ?? 1),
    affected: mould ? Math.min(1, (typeof extent === "number" ? extent : 10) / 100) : 0,
    mould,
    redRot: conditions.has("red_rot") ? (RUB[String(answers.rub_mark)] ?? 2) : 0,
    fragile: conditions.has("brittle") || conditions.has("flaking_media"),
    areaM2: areaOf(facts),
  };
}

/** Without a second side a sheet is taken as 1 m by 0.7 m of its longest side. */
function areaOf(facts: Facts): number {
  const side = (typeof facts.longest_side_cm === "number" ? facts.longest_side_cm : 80) / 100;
  return side * side * 0.7;
}

export interface Work {
  readonly norms: readonly string[];
  readonly minutes: Band;
}

const bandOfMany =
  (norms: Norms) =>
  (...terms: readonly (readonly [id: string, count: number])[]): Work => ({
    norms: terms.filter(([, count]) => count > 0).map(([id]) => id),
    minutes: plus(...terms.map(([id, count]) => times(norms.band(id), count))),
  });

/** Minutes at the Bench, from the norms of the format and the share of leaves with growth. */
export function cleaningOf(norms: Norms, load: Workload): Work {
  const sum = bandOfMany(norms);
  const hit = load.leaves * load.affected;
  const leafNorm =
    load.affected < 0.1
      ? "c-vol-mould-light"
      : load.affected <= 0.5
        ? "c-vol-mould-mod"
        : "c-vol-mould-heavy";
  const change = load.mould || load.redRot > 0 ? 1 : 0; // wipe-down after a contaminated item (S01)
  switch (load.format) {
    case "bound_volume":
    case "pamphlet":
      if (!load.mould)
        return sum(
          ["c-vol-dust-outside", 1],
          ["c-vol-redrot-cover", load.redRot === 1 ? 1 : 0],
          ["s-change", change],
        );
      return sum(["c-vol-mould-outside", 1], [leafNorm, hit], ["s-change", change]);
    case "loose_sheets":
      // Ten files a box: the box norm shared by its sheets. Common practice, no source.
      return sum(
        ["c-box-prep", load.leaves / 850],
        [load.fragile ? "c-sheet-heavy" : "c-sheet-mod", hit],
        ["s-change", change],
      );
    case "newspaper":
      return sum(
        ["c-vol-dust-outside", 1],
        ["c-news", load.mould ? hit : load.leaves * 0.1],
        ["s-change", change],
      );
    case "map_plan":
      return sum(["c-map", load.areaM2 * (load.mould ? 2 : 1)], ["s-change", change]);
    case "scroll_roll":
      return sum(["c-scroll", 3], ["s-change", change]);
    case "album":
      return sum(["c-album-page", load.leaves * 0.5], ["s-change", change]);
    case "photo_print":
    case "photo_cased":
      return sum([load.mould ? "c-print-mould" : "c-print", 1], ["s-change", change]);
    case "glass_negative":
      return sum(["c-glass", 1], ["s-change", change]);
    case "film_negative":
      return sum(["c-film", load.leaves], ["s-change", change]);
    case "palm_leaf_bundle":
      return sum(
        ["c-palm-open", 1],
        ["c-palm-brush", load.leaves - hit],
        ["c-palm-mould", hit],
        ["s-change", change],
      );
    case "bark_manuscript":
      return sum(["c-palm-brush", load.leaves], ["s-change", change]);
    case "folded_book":
      return sum(["c-folded", load.leaves], ["s-change", change]);
    case "parchment_document":
      return sum(["c-parchment", 1], ["s-change", change]);
    case "sealed_document":
      return sum(["c-sealed", 1], ["s-change", change]);
    default:
      return sum(["c-vol-dust-outside", 1], ["s-change", change]);
  }
}

/** Six camera hours make the norm's images a day, so a slow day is the high end of the minutes. */
const CAMERA_DAY_MINUTES = 360;

/** Exposures: an opening a shot for what is bound, one side for loose sheets, both sides of a palm leaf. Common practice, no source. */
export function imagingOf(norms: Norms, load: Workload): { images: number; work: Work } {
  const [images, norm] = shots(load);
  const perDay = norms.band(norm);
  const minutes = (rate: number): number => (images / rate) * CAMERA_DAY_MINUTES;
  return {
    images,
    work: {
      norms: [norm],
      minutes: { low: minutes(perDay.high), typical: minutes(perDay.typical), high: minutes(perDay.low) },
    },
  };
}

function shots(load: Workload): [images: number, norm: string] {
  switch (load.format) {
    case "loose_sheets":
    case "pamphlet":
      return [load.leaves, "i-sheets"];
    case "map_plan":
    case "scroll_roll":
      return [1, "i-maps"];
    case "photo_print":
    case "photo_cased":
    case "parchment_document":
    case "sealed_document":
      return [2, "i-prints"];
    case "film_negative":
      return [load.leaves, "i-prints"];
    case "glass_negative":
      return [1, "i-glass"];
    case "palm_leaf_bundle":
    case "bark_manuscript":
      return [load.leaves * 2, "i-palm"];
    default:
      return [load.leaves + 7, "i-vol"];
  }
}

/** Boxing and housing, with what it uses up. */
export function housingOf(norms: Norms, load: Workload): Work & { uses: Record<string, number> } {
  const sum = bandOfMany(norms);
  switch (load.format) {
    case "loose_sheets":
      return {
        ...sum(["w-readybox", 0.1], ["w-sleeve", 1]),
        uses: { "k-folder": (load.leaves / 100) * 3, "k-label": 1, "k-box-vol": 0.1 },
      };
    case "palm_leaf_bundle":
    case "bark_manuscript":
      return { ...sum(["w-bundle-case", 1]), uses: { "k-label": 2, "k-box-vol": 1, "k-tape": 1.5 } };
    case "map_plan":
    case "photo_print":
    case "parchment_document":
      return { ...sum(["w-sleeve", 1]), uses: { "k-folder": 1, "k-label": 1 } };
    case "film_negative":
      return { ...sum(["w-sleeve", 1], ["w-readybox", 0.1]), uses: { "k-label": 1, "k-box-vol": 0.1 } };
    case "glass_negative":
      return { ...sum(["w-readybox", 0.1]), uses: { "k-fourflap": 1, "k-label": 1, "k-box-vol": 0.1 } };
    default:
      return { ...sum(["w-readybox", 1]), uses: { "k-box-vol": load.redRot > 0 ? 1 : 0.4, "k-label": 2 } };
  }
}
