import { careOfCampaign } from "../../core/care/item-care.ts";
import { loadNorms } from "../../core/care/norms.ts";
import { routeOf } from "../../core/care/route.ts";
import { type Explanation, explain, type PartExplained, TIER_WORDS } from "../../core/say/explain.ts";
import { sayMouldInPlan, sayMouldOutlook } from "../../core/say/mould-outlook.ts";
import { mouldOutlooks } from "../../core/ward/mould-outlook.ts";
import { readPublished } from "../../edge/published.ts";
import { openFolder } from "./open-folder.ts";
import { wrapped } from "./wrapped.ts";

type Out = (line: string) => void;

/** `leafward why`: one item in plain sentences. @returns 0 said · 2 no such folder or item */
export async function whyItem(folder: string, id: string, out: Out, complain: Out): Promise<number> {
  const opened = await openFolder(folder, complain);
  if (!opened) return 2;
  const { campaign, book } = opened;
  const item = campaign.items.find((each) => each.id.toLowerCase() === id.toLowerCase());
  if (!item) {
    const near = campaign.items
      .filter((each) => each.id.toLowerCase().includes(id.toLowerCase()))
      .slice(0, 5);
    complain(`There is no item "${id}" in ${folder}.`);
    if (near.length > 0) complain(`Near it: ${near.map((each) => each.id).join(", ")}.`);
    return 2;
  }
  const [care] = careOfCampaign(book, { ...campaign, items: [item] });
  if (!care) return 2;
  const route = routeOf(loadNorms(readPublished("norms.json")), care);
  const mould = route.destiny === "done" ? undefined : mouldOutlooks(campaign).get(item.id);
  const waits = mould ? sayMouldOutlook(mould, campaign.planFrom) : [];
  if (mould && route.destiny === "route") waits.push(sayMouldInPlan(mould));
  for (const line of whyLines(explain(book, care, route), waits)) out(line);
  return 0;
}

/** The explanation as lines of at most 100 characters, with what its climate means where it waits. */
export function whyLines(said: Explanation, waits: readonly string[] = []): string[] {
  return [
    `${said.item}  ${said.title}`,
    `State: ${said.grade}. Act: ${said.urgency === "none" ? "no hurry" : said.urgency}.`,
    ...wrapped(said.outcome, ""),
    ...wrapped(`Meanwhile it stays ${said.rest}.`, ""),
    ...(said.steps.length > 0 ? wrapped(`Way: ${said.steps.join(" > ")}.`, "") : []),
    ...said.parts.flatMap(partLines),
    ...(waits.length > 0 ? ["", "WHERE IT WAITS"] : []),
    ...waits.flatMap((line) => wrapped(line, "  ")),
    "",
    "Advice to people: follow local rules and licensed practice.",
  ];
}

function partLines(part: PartExplained): string[] {
  return [
    "",
    part.name === "" ? "WHAT WE SAW" : `PART: ${part.name}. What we saw`,
    ...wrapped(part.saw.join("; "), "  "),
    "",
    "WHAT FOLLOWS",
    ...(part.follows.length === 0 ? ["  Nothing of note."] : []),
    ...part.follows.flatMap((each) => [
      ...wrapped(`${each.condition}.`, "  "),
      ...wrapped(`because ${each.because || "nothing has shown otherwise"} [${each.trust}]`, "      "),
    ]),
    ...part.tiers.flatMap(({ tier, rules }) => [
      "",
      TIER_WORDS[tier].toUpperCase(),
      ...rules.flatMap((rule) => [
        ...wrapped(`${rule.rule.padEnd(4)} ${rule.text}`, "  ", "       "),
        ...rule.says.flatMap((line) => wrapped(line, "       - ", "         ")),
        ...wrapped(
          `${rule.because.length > 0 ? `Found: ${rule.because.join("; ")}. ` : ""}${rule.why}.${rule.fromUnsure ? " An unsure counts as the safer side." : ""}`,
          "       ",
        ),
        ...wrapped(`[${rule.source}${rule.source.includes(rule.trust) ? "" : `; ${rule.trust}`}]`, "       "),
      ]),
    ]),
    "",
    "STILL OPEN",
    ...(part.settled ? ["  Nothing you could still find at the Door would change this."] : []),
    ...part.open.map((question) => `  ${question}`),
  ];
}
