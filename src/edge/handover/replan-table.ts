import Papa from "papaparse";
import type { Replan } from "../../core/plan/replan/changes.ts";
import { type CampaignWords, sayWhyChanged } from "../../core/say/replan.ts";

/** Every change of a replan as a table a spreadsheet opens; what an item and what a person has of columns stays empty for the other. */
export function replanTable({ changes }: Replan, words: CampaignWords): string {
  const rows = changes.map((each) =>
    "item" in each
      ? {
          item: each.item,
          act: each.act,
          told_day: each.from.day,
          told_person: each.from.person,
          now_day: each.to?.day ?? "",
          now_person: each.to?.person ?? "",
          told_work: "",
          now_work: "",
          why: sayWhyChanged(each.why, words),
        }
      : {
          item: "",
          act: "",
          told_day: each.day,
          told_person: each.person,
          now_day: each.day,
          now_person: each.person,
          told_work: each.from,
          now_work: each.to,
          why: sayWhyChanged(each.why, words),
        },
  );
  const columns = [
    "item",
    "act",
    "told_day",
    "told_person",
    "now_day",
    "now_person",
    "told_work",
    "now_work",
    "why",
  ];
  return `\uFEFF${Papa.unparse({ fields: columns, data: rows }, { escapeFormulae: true, newline: "\r\n" })}\r\n`;
}
