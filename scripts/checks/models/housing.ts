import { fourFlapBlank, fourFlapWalls, phaseBoxBlank } from "../../../src/core/stores/housing/cross.ts";
import { dropBackFrom } from "../../../src/core/stores/housing/drop-back.ts";
import { jacketBlank } from "../../../src/core/stores/housing/jacket.ts";
import type { Book } from "../../../src/core/stores/housing/measures.ts";
import {
  type IsoSeries,
  isoSheet,
  mmFromPoints,
  tearFromGrammage,
} from "../../../src/core/stores/housing/sheets.ts";
import { phaseStripLengthFrom, twoStripBlanks } from "../../../src/core/stores/housing/two-strip.ts";
import { type CheckModels, type Inputs, num } from "../model.ts";

const bookOf = (inputs: Inputs): Book => ({
  height: num(inputs, "H"),
  width: num(inputs, "W"),
  thickness: num(inputs, "T"),
});

export const models: CheckModels = {
  "paper.isoSize": (inputs) => {
    const { width, height } = isoSheet(inputs.series as IsoSeries, num(inputs, "n"));
    return { w: width, h: height };
  },
  "paper.iso9706TearMin": (inputs) => ({ mN: tearFromGrammage(num(inputs, "grammage")) }),
  "board.pointToMm": (inputs) => ({ mm: mmFromPoints(num(inputs, "pt")) }),
  "housing.jacket": (inputs) => {
    const { width, height, across } = jacketBlank(bookOf(inputs), {
      boardThickness: num(inputs, "boardThickness"),
      flap: num(inputs, "flap"),
      turnIn: num(inputs, "turnIn"),
      heightEase: num(inputs, "heightEase"),
    });
    return { flatWidth: width, flatHeight: height, folds: across.slice(1, -1) };
  },
  "housing.fourFlap": (inputs) => {
    if (num(inputs, "sideFraction") !== 1) throw new TypeError("side flaps are always full");
    const stock = num(inputs, "stock");
    const { width, height, fields } = fourFlapBlank(bookOf(inputs), {
      stock,
      clearance: num(inputs, "clearance"),
      headFraction: num(inputs, "headFraction"),
    });
    const base = fields.find(({ part }) => part === "base");
    const walls = fourFlapWalls(num(inputs, "T"), stock);
    return { base: [base?.width, base?.height], walls, vertical: height, horizontal: width };
  },
  "housing.softPhase.published": (inputs) => {
    const book = { height: num(inputs, "H_mm"), width: num(inputs, "W_mm"), thickness: num(inputs, "T_mm") };
    const { width, height } = phaseBoxBlank(book, { clearance: 0 });
    return { flatWidth_mm: width, flatHeight_mm: height };
  },
  "housing.phaseBoxVertical.published": (inputs) => ({
    length_mm: phaseStripLengthFrom(num(inputs, "L_mm"), num(inputs, "D_mm")),
    width_mm: num(inputs, "W_mm"),
  }),
  "housing.phaseStrip.published": (inputs) => {
    const a = num(inputs, "a_mm");
    const [inner] = twoStripBlanks(
      { height: a, width: 100, thickness: num(inputs, "T_mm") },
      { stock: 0, clearance: 0, overlap: num(inputs, "overlap_mm") },
    );
    return { length_mm: inner?.width };
  },
  "housing.dropBack": (inputs) => ({
    ...dropBackFrom(bookOf(inputs), {
      board: num(inputs, "board"),
      cloth: num(inputs, "cloth"),
      play: num(inputs, "play"),
      lining: 0,
      square: num(inputs, "square"),
    }),
  }),
};
