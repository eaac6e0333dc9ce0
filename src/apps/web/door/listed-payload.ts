import type { Payload } from "../../../core/log/kinds.ts";

type Listed = Payload<"itemListed">;
type Mutable = { -readonly [K in keyof Listed]: Listed[K] };

/** A listing as it is typed: text of fields, words chosen. Empty: not said. */
export interface ListingDraft {
  readonly title: string;
  readonly format: string;
  readonly support: string;
  readonly media: readonly string[];
  readonly cover: string;
  readonly process: string;
  readonly has: readonly string[];
  readonly leaves: string;
  readonly heightMm: string;
  readonly widthMm: string;
  readonly thicknessMm: string;
  readonly massKg: string;
  readonly from: string;
  readonly to: string;
  readonly isMust: boolean;
  readonly foundIn: string;
  readonly custodianRule: string;
}

export const EMPTY_LISTING: ListingDraft = {
  ...{ title: "", format: "", support: "", media: [], cover: "", process: "", has: [] },
  ...{ leaves: "", heightMm: "", widthMm: "", thicknessMm: "", massKg: "", from: "", to: "" },
  ...{ isMust: false, foundIn: "", custodianRule: "" },
};

/** What was listed, ready to be changed. */
export function draftOf({ facts, ...listed }: Listed): ListingDraft {
  const said = (value: unknown): string => (value === undefined ? "" : String(value));
  const list = (value: unknown): readonly string[] => (Array.isArray(value) ? value.map(String) : []);
  return {
    title: listed.title,
    format: said(facts.format),
    support: said(facts.support),
    media: list(facts.media),
    cover: said(facts.cover),
    process: said(facts.process),
    has: list(facts.has),
    leaves: said(facts.leaves),
    heightMm: said(listed.heightMm),
    widthMm: said(listed.widthMm),
    thicknessMm: said(listed.thicknessMm),
    massKg: said(facts.mass_kg),
    from: said(facts.date_earliest),
    to: said(facts.date_latest),
    isMust: listed.priority === "must",
    foundIn: listed.foundIn ?? "",
    custodianRule: listed.custodianRule ?? "",
  };
}

/** A typed number; absent where the field is empty or no number over nought. */
const numberIn = (text: string): number | undefined => {
  const value = Number(text.trim().replace(",", "."));
  return text.trim() === "" || !(value > 0) ? undefined : value;
};

/** The words for the log.   @param before what was listed; facts this form does not show are kept */
export function listedPayload(item: string, draft: ListingDraft, before: Listed | null): Listed {
  const [heightMm, widthMm, thicknessMm] = [draft.heightMm, draft.widthMm, draft.thicknessMm].map(numberIn);
  const sizes = [heightMm, widthMm, thicknessMm].filter((each) => each !== undefined);
  const facts = {
    ...before?.facts,
    format: draft.format,
    support: draft.support || undefined,
    media: draft.media.length > 0 ? draft.media : undefined,
    cover: draft.cover || undefined,
    process: draft.process || undefined,
    has: draft.has.length > 0 ? draft.has : undefined,
    leaves: numberIn(draft.leaves),
    mass_kg: numberIn(draft.massKg),
    date_earliest: numberIn(draft.from),
    date_latest: numberIn(draft.to),
    longest_side_cm: sizes.length === 0 ? undefined : Math.max(...sizes) / 10,
  };
  const listed: Mutable = {
    item,
    title: draft.title.trim(),
    facts: said(facts),
    priority: draft.isMust ? "must" : "want",
  };
  if (before?.due !== undefined) listed.due = before.due;
  if (before?.arrives !== undefined) listed.arrives = before.arrives;
  if (heightMm !== undefined) listed.heightMm = heightMm;
  if (widthMm !== undefined) listed.widthMm = widthMm;
  if (thicknessMm !== undefined) listed.thicknessMm = thicknessMm;
  if (draft.foundIn.trim() !== "") listed.foundIn = draft.foundIn.trim();
  if (draft.custodianRule.trim() !== "") listed.custodianRule = draft.custodianRule.trim();
  return listed;
}

type Facts = Listed["facts"];

/** Without what was not said. */
export const said = (facts: { readonly [name: string]: Facts[string] | undefined }): Facts =>
  Object.fromEntries(
    Object.entries(facts).filter((each): each is [string, Facts[string]] => each[1] !== undefined),
  );
