import { writeFile } from "node:fs/promises";
import {
  ethanolInRoom,
  mostSolutionAtOnce,
  mostSolutionPerHour,
  type Room,
  USUAL_MIXING,
} from "../../../core/physics/rooms/room-air.ts";
import { weightFromVolume } from "../../../core/physics/solutions/ethanol-amounts.ts";
import {
  flashPointFromVolumeFraction,
  handlingCautions,
  MOST_LITRES,
  transportClassFrom,
} from "../../../core/physics/solutions/ethanol-fire.ts";
import { USE_WITHIN_DAYS } from "../../../core/physics/solutions/ethanol-label.ts";
import {
  type Recipe,
  recipeFrom,
  WIPE_MILLILITRES_PER_SQUARE_METRE,
} from "../../../core/physics/solutions/ethanol-recipe.ts";
import { vapourFromVolumeFraction } from "../../../core/physics/solutions/ethanol-vapour.ts";
import { DESIGN_LIMIT } from "../../../core/physics/solutions/exposure-limits.ts";
import { CAUTIONS as ROOM_AIR } from "../../../core/say/cautions/room-air.ts";
import { CAUTIONS as SOLUTIONS } from "../../../core/say/cautions/solutions.ts";
import {
  MIX_CAUTIONS,
  MIX_TODO,
  type MixCase,
  mixFigures,
  sayMixVerdict,
} from "../../../core/say/damp/mix.ts";
import { MIX_PAPER } from "../../../core/say/damp/mix-label.ts";
import { sayRoom, saySpill, vapourFigures } from "../../../core/say/damp/vapour.ts";
import { sayDay } from "../../../core/say/dates.ts";
import { addDays, type Day, dayFrom } from "../../../core/units/day.ts";
import { mixPaper } from "../../../edge/papers/mix-paper.ts";
import { machineNow } from "../now.ts";
import type { Given } from "./given.ts";
import { MIX_HELP } from "./help-damp.ts";
import { answered, cannot, cautionsOf, type DampCommand, type Figure, type Report } from "./report.ts";
import { roomFrom } from "./room.ts";

const OPTIONS = {
  want: "text",
  volume: "text",
  stock: "text",
  temp: "text",
  room: "text",
  changes: "text",
  label: "text",
  made: "text",
  sheet: "text",
} as const;
const SHIFT = 8; // h
/** Of the lower explosive limit, from which nobody may be there. NIOSH. */
const DANGEROUS_SHARE = 0.1;

/** Wipe solution of ethanol and water: what to weigh, how to check it, how much may be out in a room. */
export const mix: DampCommand = (...to) =>
  answered({ name: "mix", help: MIX_HELP, options: OPTIONS }, to, (given) => {
    const of = caseFrom(given);
    const room = roomOf(given);
    const paper = paperFrom(given);
    given.settle();
    const report = reportOf(of, room);
    return paper ? withPaper(report, of, room, paper) : report;
  });

interface Paper {
  readonly path: string;
  readonly made: Day;
  readonly sheet: "A4" | "Letter";
}

function paperFrom(given: Given): Paper | null {
  const text = given.text("made");
  const made = text === undefined ? machineNow().today : dayFrom(text);
  if (made === null) given.refuseInWords(MIX_PAPER.madeFault(text ?? ""));
  const sheet =
    given.oneOf("sheet", ["a4", "letter"], MIX_PAPER.sheetRemedy, "a4") === "a4" ? "A4" : "Letter";
  const path = given.text("label");
  return path === undefined || made === null ? null : { path, made, sheet };
}

/** The sheet to mix by and the labels, written beside the answer. */
async function withPaper(
  report: Report,
  of: MixCase,
  room: Room | null,
  { path, made, sheet }: Paper,
): Promise<Report> {
  const [section] = report.sections;
  if (!section) return report;
  const paper = {
    ...{
      want: of.want,
      volume: of.volume,
      recipe: section.verdict,
      todo: section.todo,
      figures: section.figures,
    },
    made: sayDay(made, "en-GB"),
    useBy: sayDay(addDays(made, USE_WITHIN_DAYS), "en-GB"),
    cautions: [
      ...new Set(section.cautions.map(({ sentence }) => sentence)),
      ...(room ? [] : [MIX_PAPER.noRoom]),
    ],
  };
  const bytes = await mixPaper(paper, { sheet });
  try {
    await writeFile(path, bytes);
  } catch (error) {
    throw cannot(
      "paper-not-written",
      path,
      error instanceof Error ? (error.message.split(",")[0] ?? "") : "",
    );
  }
  return { ...report, closing: [MIX_PAPER.written(path)] };
}

function caseFrom(given: Given): MixCase {
  const stock = given.quantity(
    "stock",
    "strength",
    {
      low: 0.05,
      high: 1,
      remedy: "Read the strength by volume off the certificate or the label.",
    },
    0.96,
  );
  return {
    stock,
    want: given.quantity(
      "want",
      "strength",
      {
        low: 0.05,
        high: stock,
        remedy: "A solution cannot be stronger than its stock; about 70 % works best.",
      },
      Math.min(0.7, stock),
    ),
    volume:
      1e6 *
      given.quantity(
        "volume",
        "liquid",
        {
          low: 1e-5,
          high: 0.02,
          remedy: "Make small batches; more than 20 L of alcohol is work for a supplier.",
        },
        0.001,
      ),
    dryBulb: given.temperature(
      "temp",
      { low: 5, high: 40, remedy: "Let alcohol and water stand in the room first." },
      20,
    ),
  };
}

function roomOf(given: Given): Room | null {
  const size = roomFrom(given);
  const airChangeRate = given.quantity(
    "changes",
    "airChanges",
    {
      low: 0,
      high: 100,
      remedy: "A shut room has about 0.3, one with windows open wide 5 or more.",
    },
    0.3,
  );
  return size && { volume: size.volume, airChangeRate, mixingFactor: USUAL_MIXING };
}

function reportOf(of: MixCase, room: Room | null): Report {
  const recipe = recipeFrom({
    finalVolume: of.volume,
    stock: of.stock,
    target: of.want,
    dryBulb: of.dryBulb,
  });
  const flash = flashPointFromVolumeFraction(of.want);
  const vapour = vapourFromVolumeFraction(of.want, of.dryBulb);
  const { low, high } = WIPE_MILLILITRES_PER_SQUARE_METRE;
  const wipeArea = { low: of.volume / high, high: of.volume / low };
  const air = room && inRoom(of, room);
  return {
    exit: 0,
    sections: [
      {
        understood: [],
        verdict: sayMixVerdict(of, recipe),
        todo: todoOf(of, recipe, air),
        figures: [
          ...mixFigures({
            recipe,
            dryBulb: of.dryBulb,
            flash: flash.flashPoint,
            vapourPpm: vapour.saturationPpm,
            wipeArea,
            transport: transportClassFrom(of.want),
          }),
          ...(air?.figures ?? []),
        ],
        cautions: [
          ...cautionsOf([...handlingCautions(of.want), "no-ethanol-on-items"], SOLUTIONS),
          ...cautionsOf(["never-near-nitrate", "ventilate"], MIX_CAUTIONS),
          ...(air && air.spill.shareOfLowerLimit >= DANGEROUS_SHARE
            ? [{ code: "spill", sentence: saySpill(air.spill.shareOfLowerLimit) }]
            : []),
          ...cautionsOf(recipe.cautions, SOLUTIONS),
          ...cautionsOf(air ? ["stronger-near-the-liquid"] : [], ROOM_AIR),
          ...cautionsOf(["buy-locally", "local-rules"], MIX_CAUTIONS),
        ],
        data: {
          wanted: of,
          recipe: { ...recipe, cautions: undefined },
          flashPointCelsius: flash.flashPoint,
          vapourSaturationPpm: vapour.saturationPpm,
          wipeSquareMetres: wipeArea,
          ...(air ? { room: air.data } : {}),
        },
      },
    ],
  };
}

function todoOf(of: MixCase, recipe: Recipe, air: ReturnType<typeof inRoom> | null): string[] {
  const perPercent = weightFromVolume(100, of.want - 0.01, of.dryBulb) - recipe.checkWeight;
  const mostOut = Math.min(
    air?.mostAtOnce ?? Number.POSITIVE_INFINITY,
    1000 * MOST_LITRES.roomOutsideCabinet,
  );
  return [
    MIX_TODO.place(),
    MIX_TODO.weigh(recipe.checkWeight, perPercent),
    MIX_TODO.label(of),
    ...(air && air.mostAtOnce < of.volume ? [MIX_TODO.out(mostOut, air.name)] : []),
  ];
}

/** What the batch could do in a room, and how much of it may be out. */
function inRoom(of: MixCase, room: Room) {
  const spill = ethanolInRoom(room, {
    volume: of.volume,
    volumeFraction: of.want,
    limit: DESIGN_LIMIT,
    hours: SHIFT,
    dryBulb: of.dryBulb,
  });
  const mostAtOnce = mostSolutionAtOnce(room, of.want, of.dryBulb);
  const mostPerHour = mostSolutionPerHour(room, of.want, DESIGN_LIMIT);
  const name = sayRoom(room.volume, room.airChangeRate);
  const figures: Figure[] = vapourFigures({
    room: "the room",
    mostAtOnce,
    mostPerHour,
    limit: DESIGN_LIMIT,
    spill: { share: spill.shareOfLowerLimit, first: spill.first, mean: spill.mean },
    volume: of.volume,
  });
  const data = { ...room, mostAtOnceMillilitres: mostAtOnce, mostPerHourMillilitres: mostPerHour, spill };
  return { name, figures, mostAtOnce, spill, data };
}
