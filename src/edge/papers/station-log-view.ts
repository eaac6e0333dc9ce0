import type { Campaign } from "../../core/items/campaign.ts";
import { STATION_LOG as words } from "../../core/say/papers/station-log.ts";
import type { SheetView } from "./sheet-view.ts";

const LINES = 9;
const TOOL_LINES = 3;

/** A sheet for each place of each station, to write every wipe-down and every tool set on. */
export const stationLogViews = ({ name, stations }: Campaign): SheetView[] =>
  stations.flatMap(({ id, places, kind }) =>
    Array.from({ length: places }, (_, at): SheetView => {
      const title = places > 1 ? `${id} ${at + 1}` : id;
      return {
        kind: words.kind,
        campaign: name,
        title,
        side: kind,
        tail: title,
        wide: true,
        code: "",
        blocks: [
          { kind: "signs", codes: ["M009", "M011", "P003", "P022"] },
          { kind: "framed", ...words.rules },
          { kind: "framed", ...words.alcohol },
          { kind: "table", title: words.wiped, columns: COLUMNS, rows: [], blank: LINES, tall: false },
          { kind: "table", title: words.tools, columns: TOOLS, rows: [], blank: TOOL_LINES, tall: false },
        ],
      };
    }),
  );

const { columns, toolColumns } = words;
const COLUMNS = [
  { name: columns.day, width: 30 },
  { name: columns.last, width: "1fr" },
  { name: columns.method, width: 46 },
  { name: columns.product, width: 42 },
  { name: columns.dry, width: 20 },
  { name: columns.who, width: 18 },
  { name: columns.next, width: 46 },
] as const;
const TOOLS = [
  { name: toolColumns.set, width: 42 },
  { name: toolColumns.used, width: "1fr" },
  { name: toolColumns.washed, width: 34 },
  { name: toolColumns.hung, width: 34 },
  { name: toolColumns.dry, width: 34 },
  { name: toolColumns.back, width: 46 },
  { name: toolColumns.who, width: 18 },
] as const;
