import type { Finding, Item, Part } from "../../items/campaign.ts";
import type { Facts } from "../../items/facts.ts";
import { type GrowthClassName, growthClassFor } from "../../physics/mould/mould-growth.ts";

/** Unbound leaves of uncoated paper: neither paste, glue, size of gelatine nor skin on them to speak of. Common practice, no source. */
const PLAIN_PAPER = new Set(["paper_rag", "paper_wood_pulp", "paper_tracing", "paper_local_fibre"]);
const LEAVES = new Set(["loose_sheets", "map_plan", "folded_book", "scroll_roll", "pamphlet"]);
const PLAIN_COVER = new Set(["none", "paper"]);

/** How readily an item grows mould: plain paper on which growth was looked for and not seen is less so; all else, and all doubt, is readily. */
export function growthClassOf({ facts, parts }: Item, findings: readonly Finding[]): GrowthClassName {
  const looked = findings.filter(({ test }) => test === "growth_visible");
  const isClean = looked.length > 0 && looked.every(({ answer }) => answer === "no");
  const isPlain =
    isPlainPaper(facts) && parts.every((part: Part) => isPlainPaper({ ...facts, ...part.facts }));
  return growthClassFor(isPlain ? "paper" : "starch-paste", !isClean).growthClass;
}

const isPlainPaper = ({ format, support, cover, process, has }: Facts): boolean =>
  LEAVES.has(String(format)) &&
  PLAIN_PAPER.has(String(support)) &&
  (cover === undefined || PLAIN_COVER.has(String(cover))) &&
  process === undefined &&
  has === undefined;
