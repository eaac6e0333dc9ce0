/* Pieces of SVG. Lengths are px at 96 to the inch; black on white, told apart by pattern and line, never by colour. */

/** A4 landscape, 297 × 210 mm. */
export const SHEET = { width: 1123, height: 794 } as const;
/** Where the days are drawn: names to the left, figures to the right. */
export const PLOT = { left: 196, right: 1010 } as const;

export const escaped = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
export const px = (n: number): string => String(Number(n.toFixed(1)));

/** Patterns: `away` wide slanting lines, `used` dots, `range` crossing lines. */
export const PATTERNS = `<defs>
<pattern id="plan-away" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0.5 0V5" stroke="#000" stroke-width="0.7"/></pattern>
<pattern id="plan-used" width="4" height="4" patternUnits="userSpaceOnUse"><rect x="0.5" y="0.5" width="1.8" height="1.8"/></pattern>
<pattern id="plan-range" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 1H6M1 0V6" stroke="#000" stroke-width="0.6"/></pattern>
</defs>`;

export type Fill = "away" | "used" | "range";
const paint = (fill: Fill | "black" | "none"): string =>
  fill === "black" ? "#000" : fill === "none" ? "none" : `url(#plan-${fill})`;

export const text = (x: number, y: number, words: string, more = ""): string =>
  `<text x="${px(x)}" y="${px(y)}"${more === "" ? "" : ` ${more}`}>${escaped(words)}</text>`;

export const line = (x1: number, y1: number, x2: number, y2: number, width = 1, dash = ""): string =>
  `<path d="M${px(x1)} ${px(y1)}L${px(x2)} ${px(y2)}" stroke="#000" stroke-width="${width}"${dash === "" ? "" : ` stroke-dasharray="${dash}"`} fill="none"/>`;

export const box = (
  x: number,
  y: number,
  width: number,
  height: number,
  fill: Fill | "black" | "none",
  edge = 0,
): string =>
  `<rect x="${px(x)}" y="${px(y)}" width="${px(Math.max(0, width))}" height="${px(height)}" fill="${paint(fill)}"${edge > 0 ? ` stroke="#000" stroke-width="${edge}"` : ""}/>`;

export type Across = (day: number) => number;

/** One number a day as the outline of steps, closed along the ground. @param y where a value lies */
export function steps(values: readonly number[], x: Across, y: (value: number) => number): string {
  const ground = px(y(0));
  let path = "";
  let before = 0;
  values.forEach((value, d) => {
    if (value === before) return;
    if (before === 0) path += `M${px(x(d))} ${ground}`;
    else path += `H${px(x(d))}`;
    path += `V${px(y(value))}`;
    if (value === 0) path += "Z";
    before = value;
  });
  if (before !== 0) path += `H${px(x(values.length))}V${ground}Z`;
  return path;
}

export const area = (path: string, fill: Fill | "black" | "none", edge = 0): string =>
  path === ""
    ? ""
    : `<path d="${path}" fill="${paint(fill)}"${edge > 0 ? ` stroke="#000" stroke-width="${edge}"` : ""}/>`;

/** A delivery: an arrow standing on the line. */
export const arrow = (x: number, y: number): string =>
  `<path d="M${px(x)} ${px(y)}l-3.5 6h7zm0 6v5" fill="#000" stroke="#000" stroke-width="1"/>`;
/** Gone: a cross. */
export const cross = (x: number, y: number): string =>
  `<path d="M${px(x - 4)} ${px(y - 4)}l8 8m0-8l-8 8" stroke="#000" stroke-width="2" fill="none"/>`;
/** Send the order: an open diamond. */
export const diamond = (x: number, y: number): string =>
  `<path d="M${px(x)} ${px(y - 5)}l5 5l-5 5l-5-5z" fill="#fff" stroke="#000" stroke-width="1.4"/>`;
