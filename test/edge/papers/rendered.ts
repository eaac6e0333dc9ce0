import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** Whether poppler's tools are here; without them claims about how a page looks are skipped. */
export const hasPoppler = spawnSync("pdftoppm", ["-v"]).error === undefined;
if (!hasPoppler)
  console.warn("pdftoppm (poppler-utils) is not installed: the claims on how papers look are skipped.");

export interface Pixels {
  readonly width: number;
  readonly height: number;
  /** Four bytes a pixel: red, green, blue, opacity. */
  readonly data: Uint8ClampedArray;
}

const withFile = <T>(pdf: Uint8Array, work: (file: string, folder: string) => T): T => {
  const folder = mkdtempSync(join(tmpdir(), "leafward-look-"));
  try {
    writeFileSync(join(folder, "paper.pdf"), pdf);
    return work(join(folder, "paper.pdf"), folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

/** The first page as poppler draws it; without colour if so asked. */
export const firstPage = (pdf: Uint8Array, dotsPerInch: number, isGray = false): Pixels =>
  withFile(pdf, (file, folder) => {
    const gray = isGray ? ["-gray"] : [];
    const [page, resolution] = [join(folder, "page"), String(dotsPerInch)];
    spawnSync("pdftoppm", ["-r", resolution, "-f", "1", "-l", "1", "-singlefile", ...gray, file, page]);
    return pixelsOf(readFileSync(`${page}.${isGray ? "pgm" : "ppm"}`));
  });

/** A portable pixmap (P6) or graymap (P5) of 8 bits: letters, width, height, most, then bytes. */
function pixelsOf(file: Buffer): Pixels {
  const head = /^P([56])\s+(\d+)\s+(\d+)\s+255\s/.exec(file.subarray(0, 40).toString("latin1"));
  if (!head) throw new Error("not a picture of pdftoppm's");
  const [width, height, step] = [Number(head[2]), Number(head[3]), head[1] === "6" ? 3 : 1];
  const data = new Uint8ClampedArray(width * height * 4).fill(255);
  for (let pixel = 0; pixel < width * height; pixel++)
    for (let colour = 0; colour < 3; colour++)
      data[pixel * 4 + colour] = file[head[0].length + pixel * step + (step === 3 ? colour : 0)] ?? 255;
  return { width, height, data };
}

/** A rectangle of a picture, in shares of its width and height. */
export function cutOut(
  { width, height, data }: Pixels,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
): Pixels {
  const [left, top] = [Math.floor(x0 * width), Math.floor(y0 * height)];
  const [wide, high] = [Math.floor((x1 - x0) * width), Math.floor((y1 - y0) * height)];
  const cut = new Uint8ClampedArray(wide * high * 4);
  for (let y = 0; y < high; y++)
    cut.set(
      data.subarray(((top + y) * width + left) * 4, ((top + y) * width + left + wide) * 4),
      y * wide * 4,
    );
  return { width: wide, height: high, data: cut };
}

/** What poppler's pdftotext reads, one space between words. */
export const textOf = (pdf: Uint8Array): string =>
  withFile(pdf, (file) =>
    spawnSync("pdftotext", [file, "-"], { encoding: "utf8" }).stdout.replace(/\s+/g, " ").trim(),
  );
