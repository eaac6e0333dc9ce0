import type { Campaign } from "../../core/items/campaign.ts";
import { WIPE_FROM } from "../../core/plan/day-order.ts";
import type { Plan, SheetRow } from "../../core/plan/plan.ts";
import { sayDirt } from "../../core/say/conditions.ts";
import { sayDay } from "../../core/say/dates.ts";
import { sayClockRange, sayPause, sayWork } from "../../core/say/day-sheet.ts";
import { STATION_SHEET as words } from "../../core/say/papers/station-sheet.ts";
import type { Day } from "../../core/units/day.ts";
import type { Cell, SheetView } from "./sheet-view.ts";

/** What happens at each station on a day of the plan's clock, by whom and in what order. */
export function stationSheetViews(plan: Plan, campaign: Campaign, day: Day, locale = "en-GB"): SheetView[] {
  const here = plan.clock.filter((row) => row.day === day && row.station !== "" && row.kind !== "wait");
  const stations = [...new Set(here.map(({ station }) => station))].sort();
  const titles = new Map(campaign.items.map(({ id, title }) => [id, title]));
  const names = new Map(campaign.people.map(({ code, name }) => [code, name]));
  return stations.map((station) => {
    const rows = here.filter((row) => row.station === station).sort((a, b) => a.from - b.from);
    const isNear = rows.some(({ exposed }) => exposed);
    return {
      kind: words.kind,
      campaign: campaign.name,
      title: station,
      side: sayDay(day, locale, "full"),
      tail: `${station}, ${sayDay(day, locale, "short")}`,
      wide: false,
      code: "",
      blocks: [
        {
          kind: "signs",
          codes: isNear ? ["W009", "M017", "M009", "M004", "M010", "P022"] : ["M011", "P022"],
        },
        { kind: "framed", head: words.rule, text: words.wipe },
        {
          kind: "table",
          title: "",
          columns: COLUMNS,
          rows: rows.map((row) => cellsOf(row, titles, names.get(row.person) ?? row.person, locale)),
          blank: 2,
          tall: false,
        },
        { kind: "points", title: "", lines: [words.order] },
      ],
    };
  });
}

const { columns } = words;
const COLUMNS = [
  { name: columns.time, width: 30 },
  { name: columns.who, width: 24 },
  { name: columns.item, width: "1.6fr" },
  { name: columns.work, width: "1fr" },
  { name: columns.leaves, width: 19 },
  { name: columns.minutes, width: 12 },
  { name: columns.done, width: 12 },
] as const;

function cellsOf(row: SheetRow, titles: ReadonlyMap<string, string>, name: string, locale: string): Cell[] {
  const [item = ""] = row.items;
  const isWork = row.kind === "work";
  const what: Cell = isWork
    ? { strong: row.items.join(", "), note: row.items.length === 1 ? (titles.get(item) ?? "") : "" }
    : { note: row.items.join(", ") };
  const leaves =
    isWork && row.dirt >= WIPE_FROM ? { strong: sayDirt(row.dirt) } : isWork ? sayDirt(row.dirt) : "–";
  return [
    { strong: sayClockRange(row, locale) },
    name,
    what,
    isWork ? { strong: sayWork(row), note: row.exposed ? words.nearMould : "" } : { note: sayPause(row) },
    leaves,
    String(row.to - row.from),
    { tick: true },
  ];
}
