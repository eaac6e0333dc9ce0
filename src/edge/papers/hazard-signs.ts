/**
 * Our own line drawings of the hazard pictograms of chemicals, named by their GHS code: a black figure on white in a red square set on
 * its corner (UN, Globally Harmonized System of Classification and Labelling of Chemicals, annex 1, from memory). The figure alone
 * carries the meaning, so a black-and-white print says the same.
 */
export type HazardCode = "GHS02" | "GHS06" | "GHS07" | "GHS08";

interface Pictogram {
  readonly says: string;
  /** SVG inside a 100 × 100 box. */
  readonly figure: string;
}

const BLACK = "#1a1a1a";
const RED = "#b02318";
const SKULL = "M50 26 Q66 26 66 41 Q66 48 60.5 51 L60.5 58 L39.5 58 L39.5 51 Q34 48 34 41 Q34 26 50 26 Z";

const PICTOGRAMS: Readonly<Record<HazardCode, Pictogram>> = {
  GHS02: {
    says: "Flammable",
    figure:
      '<path d="M51 22 Q54 33 62 42 Q70 50 69 58 Q68 68 58 70 Q63 64 59 56 Q57 61 53 61 Q55 52 48 45 Q49 54 42 59 Q38 64 42 70 Q32 67 31 58 Q31 51 38 44 Q39 49 42 50 Q42 34 51 22 Z"/><path d="M32 73 L68 73 L68 77 L32 77 Z"/>',
  },
  GHS06: {
    says: "Acutely toxic",
    figure: `<g stroke="${BLACK}" stroke-width="5" stroke-linecap="round"><path d="M31 60 L69 77 M69 60 L31 77"/></g><path d="${SKULL}" stroke="#ffffff" stroke-width="2"/><g fill="#ffffff"><ellipse cx="43.6" cy="42" rx="3.6" ry="4"/><ellipse cx="56.4" cy="42" rx="3.6" ry="4"/><path d="M50 46 L52 50.5 L48 50.5 Z"/></g>`,
  },
  GHS07: {
    says: "Harmful or irritant",
    figure: '<path d="M44.5 24 L55.5 24 L53 57 L47 57 Z"/><circle cx="50" cy="68" r="5.6"/>',
  },
  GHS08: {
    says: "Serious danger to health",
    figure:
      '<circle cx="50" cy="28" r="7"/><path d="M40 38 L60 38 Q69 39 71 49 L72 70 L28 70 L29 49 Q31 39 40 38 Z"/><path d="M50 42 L52.6 50 L60 48 L55 54 L60 60 L52.6 58 L50 66 L47.4 58 L40 60 L45 54 L40 48 L47.4 50 Z" fill="#ffffff"/>',
  },
};

export const HAZARD_CODES = Object.keys(PICTOGRAMS) as readonly HazardCode[];

/** The meaning of a pictogram in words; a code without a drawing gives null. */
export const hazardSays = (code: string): string | null => PICTOGRAMS[code as HazardCode]?.says ?? null;

/** The pictogram as an SVG picture; a code without a drawing gives null. */
export function hazardSvg(code: string): string | null {
  const found = PICTOGRAMS[code as HazardCode];
  if (!found) return null;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100"><path d="M50 4 L96 50 L50 96 L4 50 Z" fill="#ffffff" stroke="${RED}" stroke-width="5" stroke-linejoin="round"/><g fill="${BLACK}">${found.figure}</g></svg>`;
}
