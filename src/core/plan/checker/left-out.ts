import type { Left } from "../plan.ts";
import type { Fault } from "./fault.ts";
import type { PlanOnPaper } from "./plan-on-paper.ts";

/** Every item is boxed before, boxed in the plan, or named once among those left, with a reason that fits it. */
export function leftFaults(paper: PlanOnPaper): Fault[] {
  const named = new Map<string, Left[]>();
  for (const left of paper.plan.left) named.set(left.item, [...(named.get(left.item) ?? []), left]);
  const faults: Fault[] = [];
  for (const item of paper.items.keys()) {
    const lines = named.get(item) ?? [];
    const fault = lineFault(paper, item, lines);
    if (fault) faults.push(fault);
    if (lines[0]) faults.push(...reasonFaults(paper, lines[0]));
  }
  for (const item of named.keys())
    if (!paper.items.has(item))
      faults.push({
        code: "left-wrong",
        item,
        figure: "item",
        got: item,
        limit: "items table",
        source: "items",
      });
  return faults;
}

function lineFault(paper: PlanOnPaper, item: string, lines: readonly Left[]): Fault | null {
  const source = "the plan's own work";
  const isBoxed = paper.itemDays.get(item)?.days.box !== undefined || paper.care.get(item)?.done.has("box");
  if (isBoxed && lines.length > 0)
    return { code: "left-wrong", item, figure: "boxed", got: "left out", limit: "boxed", source };
  if (isBoxed) return null;
  if (lines.length === 0) return { code: "left-missing", item, got: 0, limit: 1, source };
  return lines.length > 1 ? { code: "left-twice", item, got: lines.length, limit: 1, source } : null;
}

function reasonFaults(paper: PlanOnPaper, { item, title, must, kind, why, reasons }: Left): Fault[] {
  const faults: Fault[] = [];
  const wrong = (figure: string, got: string, limit: string, source: string): void => {
    faults.push({ code: "left-wrong", item, figure, got, limit, source });
  };
  const given = paper.items.get(item);
  if (given && must !== (given.priority === "must"))
    wrong("priority", must ? "must" : "want", given.priority, "items");
  if (given && title !== given.title) wrong("title", title, given.title, "items");
  if (why.trim() === "" || (kind === "set aside" && reasons.length === 0))
    faults.push({ code: "left-no-reason", item, got: "none", limit: "a reason", source: kind });
  const fits = kindOf(paper, item);
  if (!fits.includes(kind)) wrong("kind", kind, fits.join(" or "), "care");
  return faults;
}

/** An item on a route has run out of time; one without a route waits for tests where some are missing, else a rule stops it. */
function kindOf(paper: PlanOnPaper, item: string): readonly Left["kind"][] {
  if (paper.itemDays.has(item)) return ["no time"];
  const care = paper.care.get(item);
  const open =
    care && [care.whole, ...care.parts.map((part) => part.care)].some((each) => each.missingTests.length > 0);
  return open ? ["at the Door", "set aside"] : ["set aside"];
}
