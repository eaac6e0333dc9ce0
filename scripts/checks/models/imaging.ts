import * as imaging from "../../../src/core/physics/imaging.ts";
import { type CheckModels, type Inputs, num } from "../model.ts";
import { entryNamed } from "../named.ts";

/** The files' names of the ways to lie under the camera. */
const CAPTURE_OF: Readonly<Record<string, imaging.Capture>> = {
  openings: "openings",
  pages: "pages",
  pageByPage: "pages",
  leafBothSides: "leaves-both-sides",
};

function captureOf(row: Inputs): imaging.Capture {
  const capture = CAPTURE_OF[String(row.kind)];
  if (!capture)
    throw new TypeError(
      `input "kind" is ${JSON.stringify(row.kind)}, expected ${Object.keys(CAPTURE_OF).join(", ")}`,
    );
  return capture;
}

function levelOf(levels: readonly imaging.ImagingLevel[], asked: unknown): imaging.ImagingLevel {
  const found = levels.find(({ level }) => level === String(asked));
  if (!found) throw new TypeError(`no level ${JSON.stringify(asked)}`);
  return found;
}

/** A share as whole per cent, without what binary fractions lose. */
const percent = (share: number): number => Math.round(share * 1000) / 10;

export const models: CheckModels = {
  "image.size": (row) => {
    const ppi = num(row, "ppi");
    const width = imaging.pixelsFromLength(num(row, "width_mm"), ppi);
    const height = imaging.pixelsFromLength(num(row, "height_mm"), ppi);
    return {
      w_px: width,
      h_px: height,
      MB_24bit: imaging.megabytesFromPixels(width, height, 8),
      MB_48bit: imaging.megabytesFromPixels(width, height, 16),
    };
  },
  "image.ppiForText": (row) => ({
    ppi: imaging.ppiForText(
      num(row, "QI"),
      num(row, "charHeight_mm"),
      row.kind === "tonal" ? "tonal" : "bitonal",
    ),
  }),
  "image.ppiForStroke": (row) => ({
    ppi:
      row.stroke_in === undefined
        ? imaging.ppiForStroke(num(row, "QI"), num(row, "stroke_mm"))
        : imaging.ppiForStrokeInInches(num(row, "QI"), num(row, "stroke_in")),
  }),
  "imaging.shots": (row) => ({
    shots: imaging.shotsFromLeaves(
      captureOf(row),
      num(row, "leaves"),
      num(row, "coverAndEdgeViews"),
      num(row, "targets"),
    ),
  }),
  "imaging.slotHours": (row) => ({
    hours: imaging.slotHours(
      num(row, "shots"),
      num(row, "shotsPerHour"),
      num(row, "setupMin"),
      num(row, "availability"),
    ),
  }),
  "imaging.storage": (row) => ({
    GB: imaging.gigabytesFromShots(
      num(row, "shots"),
      num(row, "MBmaster"),
      num(row, "derivativeFraction"),
      num(row, "copies"),
    ),
  }),
  "imaging.throughputPublished": (row) => {
    const { value, range } = entryNamed(String(row.kind), imaging.PUBLISHED_THROUGHPUT, ({ kind }) => kind);
    return { value, note: range };
  },
  "imaging.fadgi2023.boundGeneral": (row) => {
    const found = levelOf(imaging.FADGI_BOUND_LEVELS, row.star);
    return {
      meanDE2000_lt: found.meanDeltaE,
      p90DE2000_lt: found.extremeDeltaE,
      ppiMin: found.ppi,
      samplingEfficiency_gt: percent(found.sampling),
      toneDeltaL_lt: found.toneDeltaL,
      whiteBalance_lt: found.whiteDeltaE,
    };
  },
  "imaging.iso19264": (row) => {
    const found = levelOf(imaging.ISO_19264_LEVELS, row.level);
    return {
      meanDE_le: found.meanDeltaE,
      maxDE_le: found.extremeDeltaE,
      samplingEfficiencyPct_ge: percent(found.sampling),
      toneDeltaL_le: found.toneDeltaL,
      whiteBalance_le: found.whiteDeltaE,
    };
  },
};
