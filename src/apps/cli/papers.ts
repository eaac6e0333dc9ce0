import { mkdir, writeFile } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import { loadNorms } from "../../core/care/norms.ts";
import type { Campaign } from "../../core/items/campaign.ts";
import { campaignRoutes } from "../../core/plan/campaign-routes.ts";
import { PAPERS_HELP, PAPERS_WORDS, type PaperKind } from "../../core/say/papers/command.ts";
import { addDays, type Day, weekdayOf } from "../../core/units/day.ts";
import { readState } from "../../edge/keep/read-state.ts";
import { projectFolder, readPublished } from "../../edge/published.ts";
import { openFolder } from "./open-folder.ts";
import { type Asked, askedFrom } from "./papers/asked.ts";
import { ITEM_PAPERS } from "./papers/one-item.ts";
import { ASKED_PLAN_PAPERS, PLAN_PAPERS } from "./papers/planned-papers.ts";
import type { PaperSource, Printed } from "./papers/printed.ts";
import { STANDING_PAPERS } from "./papers/standing-papers.ts";
import { planFolder } from "./plan-folder.ts";

type Out = (line: string) => void;

/** Days from the morning to the last day of work when nobody named one: three weeks. */
const STOP_IN = 20;

/** `leafward papers`: @returns 0 printed · 2 it could not be done, which was said */
export async function papers(args: string[], out: Out, complain: Out): Promise<number> {
  const asked = askedFrom(args);
  if (typeof asked === "string") {
    const isHelp = asked === PAPERS_HELP;
    (isHelp ? out : complain)(asked);
    return isHelp ? 0 : 2;
  }
  const source = await sourceOf(asked, complain);
  if (typeof source === "string") {
    if (source !== "") complain(source);
    return 2;
  }
  const printed = await printAll(asked, source, complain);
  if (printed === null) return 2;
  const target = resolve(
    asked.outFolder ?? join(projectFolder(), "out", basename(resolve(asked.folder)), "papers"),
  );
  const empty = printed.filter(([, files]) => files.length === 0).map(([kind]) => kind);
  const files = printed.flatMap(([, list]) => list);
  for (const { name, bytes } of files) {
    await mkdir(dirname(join(target, name)), { recursive: true });
    await writeFile(join(target, name), bytes);
  }
  if (files.length > 0) out(PAPERS_WORDS.written(target, namesOf(files)));
  if (empty.length > 0) out(PAPERS_WORDS.nothing(empty));
  out(PAPERS_WORDS.caution);
  return 0;
}

/** A folder of files is named once, with how many lie in it. */
function namesOf(files: readonly Printed[]): string[] {
  const counts = new Map<string, number>();
  for (const { name } of files) {
    const folder = dirname(name);
    const shown = folder === "." ? name : `${folder}/`;
    counts.set(shown, (counts.get(shown) ?? 0) + 1);
  }
  return [...counts].map(([name, n]) => (name.endsWith("/") ? `${name} (${n})` : name));
}

async function printAll(
  asked: Asked,
  source: PaperSource,
  complain: Out,
): Promise<(readonly [PaperKind, readonly Printed[]])[] | null> {
  const { kinds, item } = asked;
  const plain: Printers<PaperSource> = item === null ? STANDING_PAPERS : ITEM_PAPERS;
  const planned: Printers<PlanAsked> = item === null ? { ...PLAN_PAPERS, ...ASKED_PLAN_PAPERS } : {};
  const printed: (readonly [PaperKind, readonly Printed[]])[] = [];
  const needsPlan = kinds.some((kind) => planned[kind]);
  const plan = needsPlan ? await planFolder(asked.folder, asked.today, complain) : null;
  if (plan?.campaign === null) return null;
  complain(PAPERS_WORDS.setting);
  for (const kind of kinds) {
    const [one, other] = [plain[kind], planned[kind]];
    if (one) printed.push([kind, await one(source)]);
    else if (other && plan) printed.push([kind, await other({ ...source, ...plan, allCards: false })]);
  }
  return printed;
}

type PlanAsked = Parameters<(typeof ASKED_PLAN_PAPERS)["box-labels"]>[0];
type Printers<S> = Partial<Record<PaperKind, (source: S) => Promise<Printed[]>>>;

/** The campaign and what papers are made of; a sentence when it cannot be used, empty when that was said. */
async function sourceOf(asked: Asked, complain: Out): Promise<PaperSource | string> {
  const opened = await openFolder(asked.folder, complain, asked.today);
  if (!opened) return "";
  const { campaign, book } = opened;
  const { planFrom, end, items } = campaign;
  const item = items.find(({ id }) => id.toLowerCase() === asked.item?.toLowerCase());
  if (asked.item !== null && !item) return PAPERS_WORDS.noItem(asked.item, near(asked.item, items));
  const stop = asked.stop ?? usualStop(campaign);
  if (stop < planFrom || stop > end) return PAPERS_WORDS.noStop(stop, planFrom, end);
  const norms = loadNorms(readPublished("norms.json"));
  return {
    ...{ folder: asked.folder, campaign, book, norms, sheet: asked.sheet, stop, complain },
    ...campaignRoutes(book, norms, campaign),
    state: await readState(asked.folder),
    item: item?.id ?? null,
  };
}

/** The last day within three weeks, and before the end, on which somebody works. */
function usualStop({ planFrom, end, people }: Campaign): Day {
  const days = Array.from({ length: STOP_IN + 1 }, (_, n) => addDays(planFrom, n)).filter(
    (day) => day <= end,
  );
  const works = (day: Day): boolean => people.some(({ weekdays }) => weekdays.includes(weekdayOf(day)));
  return days.findLast(works) ?? planFrom;
}

const near = (wanted: string, items: readonly { readonly id: string }[]): string[] =>
  items
    .map(({ id }) => id)
    .filter((id) => id.toLowerCase().includes(wanted.toLowerCase()))
    .slice(0, 5);
