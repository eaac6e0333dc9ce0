import type { Item, WardNote } from "../items/campaign.ts";
import { relHumFromGelContent } from "../physics/bags/gel-isotherms.ts";
import { leakFromEnclosure, type Surroundings } from "../physics/drying/drying.ts";
import {
  bookPaper,
  closedBook,
  DRY_DENSITY,
  type DryingBody,
  leafStack,
  looseLeaves,
} from "../physics/drying/drying-body.ts";
import { ISOTHERMS } from "../physics/sorption/sorption.ts";
import { dayNumber } from "../units/day.ts";
import {
  type BagEvent,
  type BagLog,
  type BagReading,
  type BagState,
  bagStateFromLog,
  type Spared,
} from "./bag-state.ts";
import { type ReadyDate, readyDate } from "./ready-date.ts";
import type { WardCase, WardStage } from "./ward-case.ts";

/* One item of a campaign in the Ward: from what was written down about its bag to its state and to when it may be ready. */

/** The room the bags stand in. */
export interface WardRoom {
  /** Fraction. */
  readonly relHum: number;
  /** °C */
  readonly dryBulb: number;
}

export interface ItemInWard {
  readonly item: string;
  readonly state: BagState;
  readonly ready: ReadyDate;
}

/** Hours since 1970, local time. */
export const hoursOf = ({ day, minute }: Pick<WardNote, "day" | "minute">): number =>
  dayNumber(day) * 24 + minute / 60;

/** @param now hours since 1970; what was written later is left out */
export const itemInWard = (
  item: Item,
  notes: readonly WardNote[],
  room: WardRoom,
  now: number,
): ItemInWard => ({
  item: item.id,
  state: bagStateFromLog(bagLogOf(item, notes), now),
  ready: readyDate(wardCaseOf(item, notes, room, now)),
});

const inOrderOf = (notes: readonly WardNote[]): WardNote[] =>
  [...notes].sort((a, b) => hoursOf(a) - hoursOf(b));

/** What was written about the item's bag, as its state asks for it. */
export function bagLogOf(item: Item, notes: readonly WardNote[]): BagLog {
  const inOrder = inOrderOf(notes);
  return {
    material: sparedOf(item),
    events: eventsOf(inOrder),
    readings: readingsOf(inOrder),
    asks48HoursBelow50: false,
  };
}

/** The same as the ready date asks for it. */
export function wardCaseOf(item: Item, notes: readonly WardNote[], room: WardRoom, now: number): WardCase {
  const inOrder = inOrderOf(notes);
  const readings = readingsOf(inOrder);
  const weighings = inOrder
    .filter((each) => each.what === "weighed")
    .map(({ value = 0, ...when }) => ({ hours: hoursOf(when), grams: value }));
  const closed = inOrder.find((each) => each.what === "closed");
  const start = readings.find((each) => closed !== undefined && each.hours >= hoursOf(closed)) ?? null;
  return {
    body: dryingBodyOf(item, room.dryBulb),
    dryBulb: room.dryBulb,
    start,
    stages: stagesOfNotes(inOrder, room),
    readings,
    weighings,
    now,
  };
}

const readingsOf = (inOrder: readonly WardNote[]): BagReading[] =>
  inOrder
    .filter((each) => each.what === "read")
    .map(({ value = 0, dryBulb, ...when }) => ({
      hours: hoursOf(when),
      relHum: value,
      ...(dryBulb === undefined ? {} : { dryBulb }),
    }));

const EVENT = {
  closed: "closed",
  opened: "opened",
  "gel in": "gel put in",
  "gel out": "gel taken out",
} as const;

const eventsOf = (notes: readonly WardNote[]): BagEvent[] =>
  notes.flatMap((each) => {
    const what = EVENT[each.what as keyof typeof EVENT];
    return what ? [{ hours: hoursOf(each), what }] : [];
  });

/** A filled bag where nobody wrote its litres, gel where nobody weighed it, fresh gel, polyethylene 0.1 mm, seams. Common practice, no source. */
const USUAL = {
  litres: 20,
  gelGrams: 500,
  gelContent: 0.02,
  permeance: 4e-4,
  airChangesPerDay: 0.1,
} as const;

/** What the item lay in, a stage from each event on. */
function stagesOfNotes(notes: readonly WardNote[], room: WardRoom): WardStage[] {
  let litres: number | null = null;
  let gel = 0;
  const stages: WardStage[] = [];
  for (const note of notes) {
    if (!(note.what in EVENT)) continue;
    if (note.what === "closed") litres = note.value ?? litres ?? USUAL.litres;
    if (note.what === "opened") litres = null;
    if (note.what === "gel in") gel = (note.value ?? USUAL.gelGrams) / 1000;
    if (note.what === "gel out") gel = 0;
    stages.push({ fromHours: hoursOf(note), surroundings: surroundingsOf(litres, gel, room) });
  }
  return stages;
}

/** What a bag or the open room is to the drying model. */
export function surroundingsOf(litres: number | null, gel: number, room: WardRoom): Surroundings {
  if (litres === null) return { kind: "room", relHum: room.relHum };
  const volume = Math.max(1, litres) / 1000; // m³
  const enclosure = {
    area: 6 * volume ** (2 / 3), // m², of a cube
    permeance: USUAL.permeance,
    volume,
    airChangesPerDay: USUAL.airChangesPerDay,
  };
  return {
    kind: "bag",
    airVolume: volume,
    ...(gel > 0 ? { gel: { dryMass: gel, relHum: relHumFromGelContent(USUAL.gelContent) } } : {}),
    leak: leakFromEnclosure(enclosure, room.dryBulb),
    relHum: room.relHum,
  };
}

const SKIN = new Set(["parchment"]);
const LEAVES = new Set(["palm_leaf_bundle", "bark_manuscript"]);
const IMAGES = new Set(["photo_print", "album", "glass_negative", "film_negative", "photo_cased"]);
const SINGLE = new Set(["photo_print", "map_plan", "parchment_document", "sealed_document"]);

/** What drying must spare, the tenderest thing on the item. */
function sparedOf({ facts }: Item): Spared {
  const format = String(facts.format);
  if (IMAGES.has(format)) return "image layer";
  if (LEAVES.has(format)) return "palm leaf";
  if (SKIN.has(String(facts.support)) || SKIN.has(String(facts.cover)) || format === "parchment_document")
    return "skin";
  if (facts.cover === "lacquered_boards") return "lacquer";
  return facts.cover === "wooden_boards" ? "wood" : "paper";
}

/** Thickness of one sheet, m. Common practice, no source. */
const SHEET = 2e-4;

/** An item as the drying model sees it, by its format and size; a file's size where none was measured. */
export function dryingBodyOf(
  { facts, heightMm = 330, widthMm = 240, thicknessMm = 40 }: Item,
  dryBulb: number,
): DryingBody {
  const format = String(facts.format);
  const size = { height: heightMm / 1000, width: widthMm / 1000, thickness: Math.max(1, thicknessMm) / 1000 };
  if (LEAVES.has(format))
    return leafStack(size, { isotherm: ISOTHERMS.palmLeaf, dryDensity: DRY_DENSITY.palmLeaf, dryBulb });
  if (SINGLE.has(format))
    return looseLeaves(size, Math.min(SHEET, size.thickness), {
      isotherm: ISOTHERMS.ragPaper,
      dryDensity: DRY_DENSITY.paper,
      dryBulb,
    });
  if (format === "loose_sheets" || format === "pamphlet")
    return leafStack(size, { isotherm: ISOTHERMS.ragPaper, dryDensity: DRY_DENSITY.paper, dryBulb });
  return closedBook(size, bookPaper(dryBulb));
}
