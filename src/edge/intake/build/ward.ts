import type { WardNote } from "../../../core/items/campaign.ts";
import type { Problem } from "../../../core/outcome/problem.ts";
import type { Built, CampaignTables } from "../campaign-tables.ts";
import { problem } from "../problem.ts";
import { type Register, Waiting } from "../register.ts";
import { unknownItem } from "./items.ts";

const NOON = 720;

/** Looks at known items' bags; a reading without a figure and a time that cannot be read are named and left out. */
export function buildWard(table: CampaignTables["ward"], items: Register): Built<WardNote> {
  const problems: Problem[] = [];
  const waiting = new Waiting();
  const values = table.rows.flatMap(({ file, line, cells }): WardNote[] => {
    const at = (column: string) => ({ file, line, column });
    const item = items.meant(cells.item);
    if (item.kind === "unknown") problems.push(unknownItem(cells.item, items, at("item")));
    if (item.kind === "aside") waiting.add(item.waitsFor, at("item"));
    const minute = cells.time === undefined ? NOON : minuteFrom(cells.time);
    if (minute === null)
      problems.push(
        problem("not-a-date", "stop", at("time"), {
          got: cells.time ?? "",
          expected: "a time such as 09:30",
          remedy: "Write the time as 09:30, or leave it empty for noon.",
        }),
      );
    const needs = cells.what === "read" || cells.what === "weighed";
    if (needs && cells.value === undefined)
      problems.push(
        problem("required-empty", "stop", at("value"), {
          expected: cells.what === "read" ? "the reading in % RH" : "the weight in grams",
          remedy: "Write the figure, or take the row out.",
        }),
      );
    if (cells.what === "read" && cells.value !== undefined && cells.value > 100)
      problems.push(
        problem("number-out-of-range", "stop", at("value"), {
          got: String(cells.value),
          expected: "a reading from 0 to 100 % RH",
          remedy: "Look at the reader's note again.",
        }),
      );
    const unfit = needs && (cells.value === undefined || (cells.what === "read" && cells.value > 100));
    if (item.kind !== "known" || minute === null || unfit) return [];
    const value = cells.what === "read" ? (cells.value ?? 0) / 100 : cells.value;
    return [
      {
        item: item.name,
        day: cells.date,
        minute,
        what: cells.what,
        ...(value === undefined ? {} : { value }),
        ...(cells.temperature_c === undefined ? {} : { dryBulb: cells.temperature_c }),
      },
    ];
  });
  return { values, used: values.length, problems: [...problems, ...waiting.problems()] };
}

function minuteFrom(time: string): number | null {
  const match = /^\s*(\d{1,2})[:.h](\d{2})\s*$/.exec(time);
  if (!match) return null;
  const [hour, minute] = [Number(match[1]), Number(match[2])];
  return hour < 24 && minute < 60 ? hour * 60 + minute : null;
}
