import type { Care, Ruling } from "../../care/care.ts";
import type { ItemCare } from "../../care/item-care.ts";
import type { Act } from "../../items/campaign.ts";
import { conditionsOf, hasGrowth } from "./contamination.ts";
import type { Fault } from "./fault.ts";
import type { PlanOnPaper } from "./plan-on-paper.ts";

/** What an act does to the item, in the words of the rules; a ban on any of it is a ban on the act. */
const DOES: Readonly<Partial<Record<Act, readonly string[]>>> = {
  covers: ["image_covers"],
  wrap: ["wrap_cover", "wrap_cover_final"],
  clean: ["clean_any", "clean_pages"],
  image: ["image", "image_pages", "image_in_camera_zone"],
};
/** Ways of cleaning a team has; with all of them banned there is no cleaning. */
const WAYS = ["clean_puffer", "clean_brush", "clean_vacuum_mesh", "clean_sponge"];

/** No act that the rules forbid, or hold, in the state the item is in by then; nothing boxed that was never pictured. */
export function careFaults(paper: PlanOnPaper): Fault[] {
  return [...paper.passings].flatMap(([item, passings]) => {
    const care = paper.care.get(item);
    if (!care) return [];
    const faults: Fault[] = [];
    const open = [care.whole, ...care.parts.map((part) => part.care)].flatMap((each) => each.missingTests);
    const [first] = passings;
    if (open.length > 0 && first)
      faults.push({
        code: "tests-missing",
        day: first.first,
        item,
        act: first.act,
        got: [...new Set(open)].join(", "),
        limit: "answered",
        source: "N01",
      });
    const done = new Set(care.done);
    for (const { act, first: day } of passings) {
      faults.push(...rulesAgainst(care, act, done).map((each) => ({ ...each, day, item, act })));
      if (act === "box" && !isPictured(care, done))
        faults.push({
          code: "not-pictured",
          day,
          item,
          act,
          got: "no",
          limit: "pictured",
          source: "order of the rooms",
        });
      done.add(act);
    }
    return faults;
  });
}

const PHOTOGRAPHS = ["photo_print", "album", "glass_negative", "film_negative", "photo_cased"];

/** By the camera, or as found: a photograph with growth that is not cleaned off is pictured at the cover stand and boxed. */
const isPictured = (care: ItemCare, done: ReadonlySet<Act>): boolean =>
  done.has("image") ||
  (done.has("covers") &&
    !done.has("clean") &&
    PHOTOGRAPHS.includes(String(care.item.facts.format)) &&
    hasGrowth(conditionsOf(care)));

/** The first ban or hold of any part stands for all. */
function rulesAgainst(care: ItemCare, act: Act, done: ReadonlySet<Act>): Fault[] {
  const does = DOES[act];
  if (!does) return [];
  const parts = care.at(new Set(done), true);
  for (const { care: now } of parts) {
    const ban =
      bansOn(now, does)[0] ??
      (act === "clean" && !careLeavesWay(parts) ? now.banned.get("clean_brush") : undefined);
    if (ban) return [faultOf("forbidden", ban, act)];
    const hold = now.require.find(isHold);
    if (hold) return [faultOf("held", hold, act)];
  }
  return [];
}

const bansOn = ({ banned }: Care, does: readonly string[]): Ruling[] =>
  does.flatMap((action) => banned.get(action) ?? []);
const careLeavesWay = (parts: readonly { readonly care: Care }[]): boolean =>
  parts.some(({ care }) => WAYS.some((way) => !care.banned.has(way)));
/** A hold of so many days is a wait in the Ward; one that passes ends by the team's own work. */
const isHold = ({ action, details }: Ruling): boolean =>
  action === "hold_item" && details.days === undefined && !details.passes;

const faultOf = (code: Fault["code"], { action, reasons }: Ruling, act: Act): Fault => ({
  code,
  act,
  got: action,
  limit: reasons[0]?.text ?? "a rule",
  source: reasons[0]?.rule ?? "rules",
});
