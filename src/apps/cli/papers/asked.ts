import { parseArgs } from "node:util";
import { PAPER_KINDS, PAPERS_HELP, PAPERS_WORDS, type PaperKind } from "../../../core/say/papers/command.ts";
import { type Day, dayFrom } from "../../../core/units/day.ts";
import { ITEM_PAPERS } from "./one-item.ts";

export interface Asked {
  readonly folder: string;
  readonly kinds: readonly PaperKind[];
  readonly item: string | null;
  readonly sheet: "A4" | "Letter";
  readonly today: Day | undefined;
  readonly stop: Day | undefined;
  readonly outFolder: string | undefined;
}

/** What was asked for; else the help, or the sentence that says what does not fit. */
export function askedFrom(args: string[]): Asked | string {
  try {
    const { values, positionals } = parseArgs({ args, allowPositionals: true, options: OPTIONS });
    if (values.help) return PAPERS_HELP;
    const [folder, ...more] = positionals;
    if (folder === undefined || more.length > 0) return PAPERS_WORDS.noFolder;
    const kinds = kindsFrom(values.only, values.item);
    if (typeof kinds === "string") return kinds;
    const size = (values.size ?? values.sheet ?? "a4").toLowerCase();
    if (size !== "a4" && size !== "letter") return PAPERS_WORDS.noSize(size);
    const [today, stop] = [values.today, values.stop].map((text) =>
      text === undefined ? undefined : dayFrom(text),
    );
    if (today === null) return PAPERS_WORDS.noDay("today", values.today ?? "");
    if (stop === null) return PAPERS_WORDS.noDay("stop", values.stop ?? "");
    const sheet = size === "a4" ? "A4" : "Letter";
    return { folder, kinds, item: values.item ?? null, sheet, today, stop, outFolder: values.out };
  } catch (error) {
    if (error instanceof TypeError) return `${error.message}\n\n${PAPERS_HELP}`;
    throw error;
  }
}

const OPTIONS = {
  only: { type: "string", multiple: true },
  item: { type: "string" },
  size: { type: "string" },
  sheet: { type: "string" },
  today: { type: "string" },
  stop: { type: "string" },
  out: { type: "string" },
  help: { type: "boolean", short: "h", default: false },
} as const;

function kindsFrom(only: readonly string[] | undefined, item: string | undefined): PaperKind[] | string {
  const all = Object.keys(item === undefined ? PAPER_KINDS : ITEM_PAPERS) as PaperKind[]; // keys of a record of kinds
  if (only === undefined) return all.filter((kind) => item !== undefined || kind !== "item-records");
  const wanted = only.flatMap((text) => text.split(",")).map((text) => text.trim());
  for (const each of wanted) {
    if (!(each in PAPER_KINDS)) return PAPERS_WORDS.noKind(each);
    if (!all.includes(each as PaperKind)) return PAPERS_WORDS.notOfItem(each); // just looked up
  }
  return all.filter((kind) => wanted.includes(kind));
}
