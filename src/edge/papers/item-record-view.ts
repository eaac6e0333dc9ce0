import type { Route } from "../../core/care/care.ts";
import type { ItemCare } from "../../core/care/item-care.ts";
import type { RuleBook } from "../../core/care/rule-book.ts";
import type { Campaign, Item } from "../../core/items/campaign.ts";
import { sayDay } from "../../core/say/dates.ts";
import { explain } from "../../core/say/explain.ts";
import { type HistoryLine, sayMoment } from "../../core/say/papers/history.ts";
import { RECORD as words } from "../../core/say/papers/item-record.ts";
import type { Block, SheetView } from "./sheet-view.ts";

/** What belongs to one item's record. */
export interface RecordOf {
  readonly campaign: Campaign;
  readonly book: RuleBook;
  readonly care: ItemCare;
  readonly route: Route;
  readonly history: readonly HistoryLine[];
  readonly pictures: readonly { readonly name: string; readonly says: string }[];
}

/** Everything that is known of one item: what it is and has, what was found and by whom, what was done, its pictures. */
export function itemRecordView(record: RecordOf, locale = "en-GB"): SheetView {
  const { campaign, care, pictures } = record;
  const { item } = care;
  return {
    kind: words.kind,
    campaign: campaign.name,
    title: item.id,
    side: sayDay(campaign.planFrom, locale),
    tail: item.id,
    wide: false,
    code: item.id,
    blocks: [
      { kind: "lead", text: item.title },
      { kind: "facts", title: words.is, rows: isRows(item, locale) },
      ...hasBlocks(record),
      findingsTable(record),
      historyTable(record, locale),
      pictures.length > 0
        ? { kind: "pictures", title: words.pictures, pictures }
        : { kind: "points", title: words.pictures, lines: [words.noPictures] },
    ],
  };
}

function isRows(item: Item, locale: string): [string, string][] {
  const { labels } = words;
  const { facts, heightMm, widthMm, thicknessMm } = item;
  const size = [heightMm, widthMm, thicknessMm].filter((each) => each !== undefined).join(" × ");
  const made = [...new Set([facts.date_earliest, facts.date_latest])].filter((each) => each !== undefined);
  const leaves = typeof facts.leaves === "number" ? `, ${facts.leaves} leaves` : "";
  const rows: [string, string][] = [
    [labels.format, `${String(facts.format).replaceAll("_", " ")}${leaves}`],
    [labels.size, size === "" ? "" : `${size} mm`],
    [labels.parts, item.parts.map(({ name }) => name).join(", ")],
    [labels.dates, made.join("–")],
    [labels.found, item.foundIn ?? ""],
    [labels.due, item.due ? sayDay(item.due, locale) : ""],
    [labels.priority, words.priority[item.priority]],
    [labels.rule, item.custodianRule ?? ""],
  ];
  return rows.filter(([, value]) => value !== "");
}

function hasBlocks({ book, care, route }: RecordOf): Block[] {
  const said = explain(book, care, route);
  const { labels } = words;
  const follows = said.parts.flatMap(({ name, follows: list }) =>
    list.map(
      ({ condition, because }) =>
        `${name === "" ? "" : `${name}: `}${condition}${because === "" ? "" : ` (${because})`}`,
    ),
  );
  return [
    { kind: "points", title: words.has, lines: follows },
    {
      kind: "facts",
      title: "",
      rows: [
        [labels.state, said.grade],
        [labels.urgency, said.urgency],
        [labels.outcome, said.outcome],
        [labels.rest, said.rest],
      ],
    },
  ];
}

function findingsTable({ campaign, book, care }: RecordOf): Block {
  const { findingColumns: columns } = words;
  return {
    kind: "table",
    title: words.findings,
    columns: [
      { name: columns.day, width: 24 },
      { name: columns.part, width: 30 },
      { name: columns.test, width: "1fr" },
      { name: columns.answer, width: 40 },
      { name: columns.by, width: 14 },
    ],
    rows: campaign.findings
      .filter(({ item }) => item === care.item.id)
      .map(({ day, part, test, answer, by }) => [
        day ?? "–",
        part === "" ? words.whole : part,
        book.facts.get(`obs.${test}`)?.says ?? test.replaceAll("_", " "),
        { strong: String(answer).replaceAll("_", " ") },
        by ?? "–",
      ]),
    blank: 0,
    tall: false,
  };
}

function historyTable({ history }: RecordOf, locale: string): Block {
  const { historyColumns: columns } = words;
  return {
    kind: "table",
    title: words.history,
    columns: [
      { name: columns.day, width: 36 },
      { name: columns.what, width: "1fr" },
      { name: columns.by, width: 26 },
    ],
    rows: history.map((line) => [sayMoment(line, locale), line.what, line.by === "" ? "–" : line.by]),
    blank: 2,
    tall: false,
  };
}
