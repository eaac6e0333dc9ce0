import type { Route } from "../../core/care/care.ts";
import type { Campaign, WardNote } from "../../core/items/campaign.ts";
import { sayDay } from "../../core/say/dates.ts";
import { WARD_SHEET as words } from "../../core/say/papers/ward-sheet.ts";
import { sayMissing } from "../../core/say/ward.ts";
import { forecastsOf } from "../../core/ward/forecast.ts";
import type { Cell, SheetView } from "./sheet-view.ts";

/** Signs of a mould zone's door; practice of the trade, codes of ISO 7010. */
const DOOR = ["W009", "M017", "M004", "M009", "M010", "M011", "P022", "P004"];
/** Lines for what comes in until the next print. */
const BLANK = 8;

/** Everything that lies in the Ward on the campaign's morning, with room to read it three times and to let it out. */
export function wardSheetView(campaign: Campaign, routes: readonly Route[], locale = "en-GB"): SheetView {
  const routeOf = new Map(routes.map((route) => [route.item, route]));
  const admitted = new Map(
    campaign.sessions.flatMap(({ act, item, day }) => (act === "admit" ? [[item, day] as const] : [])),
  );
  const rows = [...forecastsOf(campaign, routes).values()]
    .sort((a, b) => a.item.localeCompare(b.item))
    .map(({ item, bag }): Cell[] => {
      const notes = campaign.ward.filter((each) => each.item === item && each.day < campaign.planFrom);
      const closed = notes.find(({ what }) => what === "closed")?.day ?? admitted.get(item);
      return [
        { strong: item },
        closed ? sayDay(closed, locale, "tiny") : words.notClosed,
        { note: routeOf.get(item)?.wardWhy ?? "" },
        lastReading(notes, locale),
        { note: bag ? sayMissing(bag) || words.earned : words.notClosed },
        ...["", "", "", ""],
      ];
    });
  return sheetOf(campaign, rows, sayDay(campaign.planFrom, locale, "full"));
}

const sheetOf = (campaign: Campaign, rows: readonly (readonly Cell[])[], day: string): SheetView => ({
  kind: words.kind,
  campaign: campaign.name,
  title: words.title,
  side: day,
  tail: day,
  wide: true,
  code: "",
  blocks: [
    { kind: "signs", codes: DOOR },
    { kind: "framed", ...words.rules },
    { kind: "framed", ...words.release },
    { kind: "table", title: "", columns: COLUMNS, rows, blank: BLANK, tall: true },
    { kind: "points", title: "", lines: [words.perItem] },
  ],
});

const { columns } = words;
const COLUMNS = [
  { name: columns.item, width: 25 },
  { name: columns.since, width: 18 },
  { name: columns.because, width: "1fr" },
  { name: columns.last, width: 25 },
  { name: columns.next, width: "1fr" },
  { name: columns.reading, width: 28 },
  { name: columns.reading, width: 28 },
  { name: columns.reading, width: 28 },
  { name: columns.out, width: 27 },
] as const;

/** What the bag last showed, and whether gel lay in it: the reader then shows the gel. */
function lastReading(notes: readonly WardNote[], locale: string): Cell {
  const inOrder = [...notes].sort((a, b) => a.day.localeCompare(b.day) || a.minute - b.minute);
  const read = inOrder.findLast(({ what }) => what === "read");
  const gel = inOrder.findLast(({ what }) => what === "gel in" || what === "gel out");
  const isGel = gel?.what === "gel in" ? [words.gel] : [];
  if (!read) return { note: [words.nothing, ...isGel].join(", ") };
  return {
    strong: words.percent(Math.round((read.value ?? 0) * 100)),
    note: [sayDay(read.day, locale, "tiny"), ...isGel].join(", "),
  };
}
