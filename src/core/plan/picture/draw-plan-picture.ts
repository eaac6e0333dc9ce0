import { finishMarks } from "./finish-marks.ts";
import { keyOf } from "./key.ts";
import { type Across, escaped, PATTERNS, PLOT, SHEET, text } from "./marks.ts";
import { peopleHeight, peoplePanel } from "./people-panel.ts";
import type { PlanPicture } from "./plan-picture.ts";
import { cameraPanel, ROOM_HEIGHT, wardPanel } from "./rooms-panel.ts";
import { storesHeight, storesPanel } from "./stores-panel.ts";
import { timeAxis, uprights } from "./time-axis.ts";
import type { PictureWords } from "./words.ts";

const FINISH_TOP = 70;
const HEAD = 24;
const HEAD_STYLE = 'font-size="13" font-weight="bold"';

/**
 * The whole plan on one sheet of A4, landscape: who is near mould when, the Ward, the camera, the stores, the end and the finish over one
 * axis of days. Black on white, each thing by its own pattern and words; a title and a text alternative for who cannot see it.
 * @returns SVG, 297 × 210 mm
 */
export function drawPlanPicture(picture: PlanPicture, words: PictureWords): string {
  const x: Across = (day) => PLOT.left + ((PLOT.right - PLOT.left) * day) / Math.max(1, picture.days.length);
  const people = FINISH_TOP + 20 + HEAD;
  const ward = people + peopleHeight(picture) + HEAD;
  const camera = ward + ROOM_HEIGHT + HEAD;
  const stores = camera + ROOM_HEIGHT + HEAD - 4;
  const bottom = stores + storesHeight(picture) + 8;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${SHEET.width} ${SHEET.height}" width="297mm" height="210mm" role="img" aria-labelledby="plan-title plan-words" font-family="'Noto Sans', 'DejaVu Sans', sans-serif" font-size="12">`,
    `<title id="plan-title">${escaped(words.title(picture))}</title>`,
    `<desc id="plan-words">${escaped(words.alternative(picture))}</desc>`,
    PATTERNS,
    `<rect width="${SHEET.width}" height="${SHEET.height}" fill="#fff"/>`,
    text(40, 34, words.title(picture), 'font-size="20" font-weight="bold"'),
    text(40, 53, words.subtitle(picture), 'font-size="13"'),
    uprights(picture, x, FINISH_TOP, bottom),
    text(PLOT.left, people - 7, words.people, HEAD_STYLE),
    ...peoplePanel(picture, words, x, people - 4),
    text(PLOT.left, ward - 6, words.ward, HEAD_STYLE),
    ...wardPanel(picture, words, x, ward),
    text(PLOT.left, camera - 6, words.camera, HEAD_STYLE),
    ...cameraPanel(picture, words, x, camera),
    ...(picture.stores.length === 0 ? [] : [text(PLOT.left, stores - 2, words.stores, HEAD_STYLE)]),
    ...storesPanel(picture, words, x, stores),
    ...finishMarks(picture, words, x, FINISH_TOP, bottom),
    ...timeAxis(picture, words, x, bottom),
    ...keyOf(words, bottom + 56),
    "</svg>",
    "",
  ].join("\n");
}
