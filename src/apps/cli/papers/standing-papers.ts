import { planStop } from "../../../core/plan/stop/plan-stop.ts";
import type { PaperKind } from "../../../core/say/papers/command.ts";
import { exposureViews } from "../../../edge/papers/exposure-view.ts";
import { hazardLabelViews } from "../../../edge/papers/hazard-label-view.ts";
import { labels } from "../../../edge/papers/label-view.ts";
import { sheets } from "../../../edge/papers/sheet-view.ts";
import { stationLogViews } from "../../../edge/papers/station-log-view.ts";
import { stopSheetView } from "../../../edge/papers/stop-sheet-view.ts";
import { wardSheetView } from "../../../edge/papers/ward-sheet-view.ts";
import { itemRecords } from "./item-records.ts";
import { oneFile, type PaperSource, type Printed } from "./printed.ts";

/** Papers told by the campaign as it stands, without a plan. */
export const STANDING_PAPERS = {
  "ward-sheet": async ({ campaign, routes, sheet }: PaperSource): Promise<Printed[]> => [
    { name: "ward-sheet.pdf", bytes: await sheets([wardSheetView(campaign, routes)], { sheet }) },
  ],
  "hazard-labels": ({ campaign, care, routes, sheet, item }: PaperSource): Promise<Printed[]> => {
    const all = hazardLabelViews(campaign.name, care, routes, campaign.planFrom);
    const views = all.filter(({ number }) => item === null || number === item);
    return oneFile("hazard-labels.pdf", views, () => labels(views, { sheet }));
  },
  "station-logs": async ({ campaign, sheet }: PaperSource): Promise<Printed[]> => [
    { name: "station-logs.pdf", bytes: await sheets(stationLogViews(campaign), { sheet }) },
  ],
  "item-records": itemRecords,
  exposure: async ({ campaign, sheet }: PaperSource): Promise<Printed[]> => [
    { name: "exposure.pdf", bytes: await sheets(exposureViews(campaign), { sheet }) },
  ],
  stop: async (source: PaperSource): Promise<Printed[]> => [
    {
      name: "stop.pdf",
      bytes: await sheets([stopSheetView(planStop(source, source.stop))], { sheet: source.sheet }),
    },
  ],
} satisfies Partial<Record<PaperKind, (source: PaperSource) => Promise<Printed[]>>>;
