import type { StopItem, StopPlan } from "../../core/plan/stop/stop-plan.ts";
import { sayDay } from "../../core/say/dates.ts";
import { STOP_SHEET as words } from "../../core/say/papers/stop-sheet.ts";
import {
  STOP_CAUTIONS,
  sayAfterwards,
  sayStopTodo,
  sayStopUnderstood,
  sayStopVerdict,
} from "../../core/say/stop.ts";
import type { Block, Cell, SheetView } from "./sheet-view.ts";

/** How everything is left when work stops on a day: what cannot be made safe, what to do, and where each item then lies. */
export function stopSheetView(plan: StopPlan, locale = "en-GB"): SheetView {
  const day = sayDay(plan.stop, locale, "full");
  const after = sayAfterwards(plan);
  return {
    kind: words.kind,
    campaign: plan.campaign,
    title: words.title,
    side: day,
    tail: day,
    wide: false,
    code: "",
    blocks: [
      { kind: "lead", text: sayStopVerdict(plan) },
      { kind: "points", title: "", lines: [sayStopUnderstood(plan)] },
      { kind: "points", title: words.todo, lines: sayStopTodo(plan) },
      restsTable(plan),
      ...(after.length > 0 ? [{ kind: "points", title: words.afterwards, lines: after } as const] : []),
      { kind: "points", title: "", lines: Object.values(STOP_CAUTIONS) },
      { kind: "facts", title: "", rows: [[words.keys, "……………………………………"]] },
    ],
  };
}

/** Every item under the state in which it is left, the most pressing state first. */
function restsTable({ items }: StopPlan): Block {
  const groups = new Map<string, StopItem[]>();
  for (const each of items) {
    const rest = restOf(each);
    groups.set(rest, [...(groups.get(rest) ?? []), each]);
  }
  const isTrouble = (list: readonly StopItem[]): boolean => list.some(({ why }) => why !== null);
  const ranked = [...groups].sort(([, a], [, b]) => Number(isTrouble(b)) - Number(isTrouble(a)));
  return {
    kind: "table",
    title: words.rests,
    columns: [
      { name: words.columns.rest, width: 52 },
      { name: words.columns.count, width: 15 },
      { name: words.columns.which, width: "1fr" },
      { name: words.columns.done, width: 12 },
    ],
    rows: ranked.flatMap(([rest, list]) => rowsOf(rest, list)),
    blank: 0,
    tall: false,
  };
}

const restOf = ({ verdict, rest, why }: StopItem): string => {
  if (why !== null) return `${words.trouble}: ${rest.says}`;
  if (verdict === "comes later") return words.later;
  return verdict === "done" || verdict === "finish" || verdict === "start" ? words.boxed : rest.says;
};

/** Numbers to a row: more would not break over a page. */
const A_ROW = 60;

function rowsOf(rest: string, list: readonly StopItem[]): Cell[][] {
  const numbers = list.map(({ item }) => item).sort();
  return Array.from({ length: Math.ceil(numbers.length / A_ROW) }, (_, at): Cell[] => [
    at === 0 ? { strong: rest } : rest,
    at === 0 ? { strong: String(numbers.length) } : "",
    { note: numbers.slice(at * A_ROW, (at + 1) * A_ROW).join(", ") },
    { tick: true },
  ]);
}
