import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import {
  HOUSING_CAUTIONS,
  HOUSING_NAMES,
  PART_NAMES,
  sayBeside,
  sayBook,
  sayBookShort,
  sayFolds,
  sayGrain,
  sayMaking,
  sayPaper,
  saySheet,
  sayTray,
  sayUsed,
  sayYield,
} from "../../core/say/housing.ts";
import { sayProblem } from "../../core/say/problems.ts";
import { drawingOf } from "../../core/stores/housing/drawing.ts";
import { HOUSING_KINDS, type Housing, housingFor } from "../../core/stores/housing/housing.ts";
import { onSheets, type PieceYield } from "../../core/stores/housing/on-sheets.ts";
import { drawingDxf } from "../../edge/handover/drawing-dxf.ts";
import { drawingSvg } from "../../edge/handover/drawing-svg.ts";
import { housingPaper } from "../../edge/papers/housing-paper.ts";
import { Refusal } from "./damp/given.ts";
import { answered, type DampCommand, type Figure, type Report } from "./damp/report.ts";
import { choicesFrom, HOUSE_OPTIONS, type Stock, stockFrom, type Wanted, wantedFrom } from "./house-asked.ts";
import { HOUSE_HELP } from "./house-help.ts";

/** A wrapper or box from measured sizes: every piece, how it goes together, and its drawing. */
export const wrap: DampCommand = (...to) =>
  answered({ name: "wrap", help: HOUSE_HELP, options: HOUSE_OPTIONS }, to, async (given) => {
    const kind = HOUSING_KINDS.find((each) => each === given.files[0]);
    if (kind === undefined)
      throw new Refusal([
        `"${given.files[0] ?? ""}" is no kind of wrapper or box here; expected ${HOUSING_KINDS.join(", ")}. For example: npx leafward wrap four-flap --size 240x165x32`,
      ]);
    const wanted = await wantedFrom(given, to[2]);
    const chosen = choicesFrom(given);
    const stock = stockFrom(given);
    const sheet = given.oneOf("sheet", ["a4", "letter"], "The paper in the printer.", "a4");
    const grams = given.has("grams")
      ? given.quantity("grams", "count", {
          low: 25,
          high: 400,
          remedy: "The standard speaks of 25 g/m² and over.",
        })
      : null;
    given.settle();
    const made = housingFor(kind, wanted.book, chosen);
    if (!made.ok) throw new Refusal(made.problems.map(sayProblem));
    const out = given.text("out");
    const files =
      out === undefined ? [] : await drawn(made.value, wanted, out, sheet === "a4" ? "A4" : "Letter");
    return reportOf({ housing: made.value, wanted, stock, grams, files });
  });

interface Made {
  readonly housing: Housing;
  readonly wanted: Wanted;
  readonly stock: Stock | null;
  readonly grams: number | null;
  readonly files: readonly string[];
}

function reportOf({ housing, wanted, stock, grams, files }: Made): Report {
  const yields = stock
    ? onSheets(housing.blanks, stock.sheet, { grain: stock.grain, boxes: stock.copies })
    : [];
  const short = yields.filter(({ sheets }) => sheets === null);
  return {
    exit: short.length > 0 ? 1 : 0,
    sections: [
      {
        understood: [`${sayBook(wanted.name, wanted.book, wanted.places)} ${sayUsed(housing)}`],
        verdict: `${HOUSING_NAMES[housing.kind]}${short.length > 0 ? ": the sheet in stock is too small" : ""}.`,
        todo: sayMaking(housing),
        figures: [
          ...figuresOf(housing),
          ...sheetFigures(yields, stock),
          ...paperFigure(grams),
          ...fileFigures(files),
        ],
        cautions: HOUSING_CAUTIONS.map((sentence, at) => ({ code: `housing-${at + 1}`, sentence })),
        data: {
          ...housing,
          yields: yields.map(({ blank, ...each }) => ({ part: blank.part, ...each })),
          files,
        },
      },
    ],
  };
}

function figuresOf(housing: Housing): Figure[] {
  const { blanks, dropBack } = housing;
  const beside = sayBeside(housing);
  return [
    ...blanks.flatMap((blank) => [
      {
        label: PART_NAMES[blank.part],
        value: `${blank.count} of ${saySheet(blank)}, grain ${sayGrain(blank)}`,
      },
      ...(blank.across.length > 2
        ? [{ label: "  folds from the left", value: `${sayFolds(blank.across)} mm` }]
        : []),
      ...(blank.down.length > 2
        ? [{ label: "  folds from the top", value: `${sayFolds(blank.down)} mm` }]
        : []),
    ]),
    ...(dropBack ? sayTray(dropBack) : []),
    ...(beside ? [{ label: "beside it", value: beside }] : []),
  ];
}

const sheetFigures = (yields: readonly PieceYield[], stock: Stock | null): Figure[] =>
  stock ? yields.map((each) => ({ label: "from stock", value: sayYield(each, stock.sheet) })) : [];
const paperFigure = (grams: number | null): Figure[] =>
  grams === null ? [] : [{ label: "paper", value: sayPaper(grams) }];
const fileFigures = (files: readonly string[]): Figure[] =>
  files.length === 0
    ? [{ label: "drawings", value: "add --out <folder> for PDF at true scale, SVG and DXF" }]
    : files.map((file) => ({ label: "written", value: file }));

/** Writes the three drawings and names them. @throws Refusal when the folder cannot be written */
async function drawn(
  housing: Housing,
  { name, book }: Wanted,
  folder: string,
  sheet: "A4" | "Letter",
): Promise<string[]> {
  const drawing = drawingOf(housing.blanks);
  const subtitle = sayBookShort(name, book);
  const title = HOUSING_NAMES[housing.kind];
  const pdf = await housingPaper(
    {
      title,
      subtitle,
      drawing,
      pieces: housing.blanks.map((blank) => ({
        name: PART_NAMES[blank.part],
        count: blank.count,
        size: saySheet(blank),
        grain: sayGrain(blank),
      })),
      making: [...sayMaking(housing), sayUsed(housing)],
      cautions: HOUSING_CAUTIONS,
    },
    sheet,
  );
  const stem = [name.replace(/[^\p{L}\p{N}._-]+/gu, "-"), housing.kind]
    .filter((part) => part !== "")
    .join("-");
  const files = [
    [`${stem}.pdf`, pdf],
    [`${stem}.svg`, drawingSvg(drawing, `${title}. ${subtitle}`)],
    [`${stem}.dxf`, drawingDxf(drawing, `${title}. ${subtitle}`)],
  ] as const;
  try {
    await mkdir(folder, { recursive: true });
    for (const [file, content] of files) await writeFile(join(folder, file), content);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    throw new Refusal([
      `The drawings could not be written to ${folder} (${reason}). Choose a folder that can be written.`,
    ]);
  }
  return files.map(([file]) => join(folder, file));
}
