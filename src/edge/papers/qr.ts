import qrcode from "qrcode";

const HALF_LETTER = /\p{Cs}/gu;
const QUIET = 4; // modules of white on every side, ISO/IEC 18004

/** The text as a QR code in one SVG path; level Q still reads with a quarter of it hidden by a fold in the bag. */
export function qrSvg(text: string): string {
  const { modules } = qrcode.create(text.replace(HALF_LETTER, "\ufffd"), { errorCorrectionLevel: "Q" });
  const side = modules.size + 2 * QUIET;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${side} ${side}"><rect width="${side}" height="${side}" fill="#fff"/><path d="${runs(modules)}"/></svg>`;
}

/** One rectangle for each run of dark modules in a row. */
function runs({ size, data }: { readonly size: number; readonly data: Uint8Array }): string {
  let path = "";
  for (let y = 0; y < size; y++) {
    for (let x = 0; x < size; x++) {
      if (!data[y * size + x]) continue;
      const from = x;
      while (x < size && data[y * size + x]) x++;
      path += `M${from + QUIET} ${y + QUIET}h${x - from}v1h-${x - from}z`;
    }
  }
  return path;
}
