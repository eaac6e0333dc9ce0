import type { Draft } from "./draft.ts";
import type { Chance } from "./seeded.ts";

const PHOTOGRAPHS = new Set(["photo_print", "album", "glass_negative", "film_negative", "photo_cased"]);

/** Living growth: it smears, or nobody was sure that it does not, or it sits in damp paper. */
export function living(chance: Chance, draft: Draft, low: number, typical: number, high: number): void {
  const way = chance.next();
  grown(chance, draft, low, typical, high, chance.whole(65, 84));
  Object.assign(draft.answers, {
    growth_smears: way < 0.78 ? "yes" : way < 0.92 ? "unsure" : "no",
    growth_lifts_dry: chance.happens(0.12) ? "unsure" : "no",
    damp_to_touch: chance.happens(0.62) || way >= 0.92 ? "yes" : "no",
    musty_odour: chance.happens(0.7) ? "yes" : "no",
  });
}

/** Dry growth: it does not smear, it lifts as powder, the bag reads below 60 %. */
export function dormant(chance: Chance, draft: Draft, low: number, typical: number, high: number): void {
  grown(chance, draft, low, typical, high, chance.whole(43, 57));
  Object.assign(draft.answers, {
    growth_smears: "no",
    growth_lifts_dry: chance.happens(0.06) ? "unsure" : "yes",
    damp_to_touch: "no",
    musty_odour: chance.happens(0.4) ? "yes" : "no",
  });
}

/** Suspected: doubtful spots, a smell alone, or dry-looking growth in a bag that reads 60 to 64 %. */
export function suspected(chance: Chance, draft: Draft): void {
  const way = chance.next();
  if (way < 0.5) {
    Object.assign(draft.answers, {
      growth_visible: "unsure",
      musty_odour: chance.happens(0.5) ? "yes" : "no",
      damp_to_touch: "no",
    });
  } else if (way < 0.8) {
    Object.assign(draft.answers, { growth_visible: "no", musty_odour: "yes", damp_to_touch: "no" });
  } else {
    grown(chance, draft, 1, 4, 15, chance.whole(60, 64));
    Object.assign(draft.answers, { growth_smears: "no", growth_lifts_dry: "unsure", damp_to_touch: "no" });
  }
}

/** Growth on an image layer: nobody touches it with bud or brush, so smear and lift stay untested. */
export function onImage(chance: Chance, draft: Draft, low: number, typical: number, high: number): void {
  if (!PHOTOGRAPHS.has(draft.row.format)) throw new Error(`${draft.row.format} is no photograph.`);
  grown(chance, draft, low, typical, high, chance.whole(44, 63));
}

function grown(
  chance: Chance,
  draft: Draft,
  low: number,
  typical: number,
  high: number,
  reading: number,
): void {
  const share = Math.round(chance.skewed(low, typical, high));
  Object.assign(draft.answers, {
    growth_visible: "yes",
    erh: reading,
    mould_extent_pct: chance.happens(0.04) ? "unsure" : share,
  });
}
