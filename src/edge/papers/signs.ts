/**
 * Our own line drawings of safety signs, named by their ISO 7010 code. The shape and colour family of each is that of ISO 3864-1:
 * triangle on yellow warns, blue disc commands, barred red ring forbids, green square shows safety, red square shows fire equipment.
 * Shape and figure alone carry the meaning, so a black-and-white print says the same.
 */
export type SignCode =
  | "W001"
  | "W009"
  | "W016"
  | "W021"
  | "W022"
  | "M004"
  | "M009"
  | "M010"
  | "M011"
  | "M017"
  | "P002"
  | "P003"
  | "P004"
  | "P010"
  | "P022"
  | "E003"
  | "E011"
  | "F001";

interface Sign {
  /** The sign's meaning, read out by a screen reader. */
  readonly says: string;
  /** SVG inside a 100 × 100 box, in the figure colour of its family. */
  readonly figure: string;
}

/** Safety colours of ISO 3864-4 in screen values (from memory, near RAL 1003, 5005, 3001, 6032); signal black and white. */
const YELLOW = "#f9b800";
const BLUE = "#005387";
const RED = "#b02318";
const GREEN = "#237f52";
const BLACK = "#1a1a1a";
const WHITE = "#ffffff";

const HAND =
  "M37 78 L37 62 L27 50 Q24 45 28 43 Q32 42 35 46 L40 52 L40 26 Q40 22 43.5 22 Q47 22 47 26 L47 44 L48.5 44 L48.5 21 Q48.5 17 52 17 Q55.5 17 55.5 21 L55.5 44 L57 44 L57 25 Q57 21 60.5 21 Q64 21 64 25 L64 47 L65.5 47 L65.5 33 Q65.5 29 68.5 29 Q72 29 72 33 L72 60 Q72 68 66 78 Z";
const FLAME =
  "M50 20 Q53 32 62 42 Q70 51 69 61 Q68 76 50 77 Q32 76 31 61 Q31 52 38 45 Q39 51 43 53 Q41 36 50 20 Z";
const HEAD =
  "M50 17 Q68 17 68 38 Q68 52 60 59 L60 65 Q80 68 82 84 L18 84 Q20 68 40 65 L40 59 Q32 52 32 38 Q32 17 50 17 Z";

const SIGNS: Readonly<Record<SignCode, Sign>> = {
  W001: {
    says: "General warning",
    figure: '<path d="M45.5 36 L54.5 36 L52.5 63 L47.5 63 Z"/><circle cx="50" cy="72" r="4.6"/>',
  },
  W009: { says: "Warning: biological hazard", figure: trefoil() },
  W016: {
    says: "Warning: toxic material",
    figure: `<g stroke="${BLACK}" stroke-width="5" stroke-linecap="round"><path d="M32 63 L68 80 M68 63 L32 80"/></g><path d="M50 33 Q65 33 65 47 Q65 54 59.5 57 L59.5 64 L40.5 64 L40.5 57 Q35 54 35 47 Q35 33 50 33 Z" stroke="${YELLOW}" stroke-width="2"/><g fill="${YELLOW}"><ellipse cx="43.6" cy="48" rx="3.6" ry="4"/><ellipse cx="56.4" cy="48" rx="3.6" ry="4"/><path d="M50 52 L52 56.5 L48 56.5 Z"/><path d="M46 59 L47 59 L47 64 L46 64 Z M49.5 59 L50.5 59 L50.5 64 L49.5 64 Z M53 59 L54 59 L54 64 L53 64 Z"/></g>`,
  },
  W021: {
    says: "Warning: flammable material",
    figure: `<g transform="translate(15.5 22) scale(0.69)"><path d="${FLAME}"/></g><path d="M33 77.5 L67 77.5 L67 81.5 L33 81.5 Z"/>`,
  },
  W022: {
    says: "Warning: sharp element",
    figure:
      '<path d="M30 80 L36.5 62 L43 80 Z M43.5 80 L50 62 L56.5 80 Z M57 80 L63.5 62 L70 80 Z"/><path d="M45 36 Q45 32 50 32 Q55 32 55 36 L55 51 Q55 57.5 50 57.5 Q45 57.5 45 51 Z"/>',
  },
  M004: {
    says: "Wear eye protection",
    figure: `<path d="${HEAD}"/><path d="M31 34 L69 34 L69 41 Q67 49 59 49 Q52 49 50.5 42 L49.5 42 Q48 49 41 49 Q33 49 31 41 Z" fill="${BLUE}"/>`,
  },
  M009: {
    says: "Wear protective gloves",
    figure: `<path d="${HAND}"/><path d="M34 81 L69 81 L69 88 L34 88 Z"/>`,
  },
  M010: {
    says: "Wear protective clothing",
    figure: `<circle cx="50" cy="20" r="8.5"/><path d="M39 31 L61 31 Q70 32 72 41 L77 64 L69 66 L64 46 L64 87 L52.5 87 L50 60 L47.5 87 L36 87 L36 46 L31 66 L23 64 L28 41 Q30 32 39 31 Z"/><path d="M50 33 L50 57" stroke="${BLUE}" stroke-width="2.2"/>`,
  },
  M011: {
    says: "Wash your hands",
    figure:
      '<path d="M22 22 L56 22 Q66 22 66 32 L66 36 L56 36 L56 33 Q56 31 53 31 L22 31 Z"/><path d="M61 40 Q66 47 61 50 Q56 47 61 40 Z M52 44 Q57 51 52 54 Q47 51 52 44 Z M69 46 Q74 53 69 56 Q64 53 69 46 Z"/><path d="M14 68 Q24 58 34 60 L52 60 Q57 60 57 64 Q57 67 52 67 L42 67 L58 67 L74 60 Q79 58 81 62 Q82 65 78 67 L58 79 Q54 82 48 82 L14 82 Z"/>',
  },
  M017: {
    says: "Wear respiratory protection",
    figure: `<path d="${HEAD}"/><path d="M32 39 L68 39" stroke="${BLUE}" stroke-width="3"/><path d="M36 40 L50 36 L64 40 L62 55 Q57 62 50 62 Q43 62 38 55 Z" fill="${BLUE}"/><circle cx="50" cy="50" r="6.5" fill="${WHITE}"/><circle cx="50" cy="50" r="3" fill="${BLUE}"/>`,
  },
  P002: {
    says: "No smoking",
    figure: `<path d="M18 55 L66 55 L66 64 L18 64 Z M69 55 L75 55 L75 64 L69 64 Z"/><path d="M72 50 Q72 44 66 43 Q59 42 60 35 M79 50 Q80 38 70 37 Q66 36 67 30" fill="none" stroke="${BLACK}" stroke-width="3.4"/>`,
  },
  P003: {
    says: "No open flame",
    figure: `<g transform="translate(22 12) scale(0.56)"><path d="${FLAME}"/></g><path d="M46.5 58 L53.5 58 L53.5 86 L46.5 86 Z"/>`,
  },
  P004: {
    says: "No way through on foot",
    figure: `<circle cx="53" cy="21" r="7.5"/><path d="M45 30 L57 30 L61 43 L70 50 L66.5 55.5 L56.5 48 L55.5 56 L66 84 L57.5 84 L48 62 L39 84 L30.5 84 L43 53 L44 41 L37 45 L33 56 L27 53.5 L32 40 Z"/>`,
  },
  P010: { says: "Do not touch", figure: `<path d="${HAND}"/>` },
  P022: {
    says: "No eating or drinking",
    figure:
      '<path d="M24 37 L52 37 L48.5 78 L27.5 78 Z M41 36 L46 20 L56 20 L56 24 L49 24 L45 36 Z"/><path d="M62 24 L64.5 24 L64.5 40 L67 40 L67 24 L69.5 24 L69.5 40 L72 40 L72 24 L74.5 24 L74.5 44 Q74 48 70.5 49 L71 78 L65.5 78 L66 49 Q62.5 48 62 44 Z"/>',
  },
  E003: {
    says: "First aid",
    figure:
      '<path d="M39 18 L61 18 L61 39 L82 39 L82 61 L61 61 L61 82 L39 82 L39 61 L18 61 L18 39 L39 39 Z"/>',
  },
  E011: {
    says: "Eye wash",
    figure: `<path d="M16 40 Q50 8 84 40 Q50 66 16 40 Z"/><circle cx="50" cy="38" r="10.5" fill="${GREEN}"/><circle cx="50" cy="38" r="4" fill="${WHITE}"/><path d="M50 63 Q57 74 50 78 Q43 74 50 63 Z M33 61 Q40 72 33 76 Q26 72 33 61 Z M67 61 Q74 72 67 76 Q60 72 67 61 Z"/><path d="M20 81 L80 81 L74 88 L26 88 Z"/>`,
  },
  F001: {
    says: "Fire extinguisher",
    figure: `<path d="M30 40 Q30 32 38 32 L50 32 Q58 32 58 40 L58 86 L30 86 Z M39 23 L49 23 L49 29 L39 29 Z"/><path d="M33 20 L52 14 M48 24 Q66 24 68 46 L69 58" fill="none" stroke="${WHITE}" stroke-width="4" stroke-linecap="round"/><g transform="translate(56 52) scale(0.44)"><path d="${FLAME}"/></g>`,
  },
};

/** Three open rings round a point: cut where they look outward, joined by a ring. */
function trefoil(): string {
  const ring = (turn: number): string =>
    `<g transform="rotate(${turn} 50 61)"><circle cx="50" cy="50.5" r="9" fill="none" stroke="${BLACK}" stroke-width="5.2"/><path d="M46.6 47 L47.6 38 L52.4 38 L53.4 47 Z" fill="${YELLOW}"/></g>`;
  return `${ring(0)}${ring(120)}${ring(240)}<circle cx="50" cy="61" r="11.6" fill="none" stroke="${BLACK}" stroke-width="3"/><circle cx="50" cy="61" r="3" fill="${YELLOW}"/>`;
}

const FRAMES: Readonly<Record<string, (figure: string) => string>> = {
  W: (figure) =>
    `<path d="M50 9 L93.5 86 L6.5 86 Z" fill="${YELLOW}" stroke="${BLACK}" stroke-width="7" stroke-linejoin="round"/><g fill="${BLACK}">${figure}</g>`,
  M: (figure) =>
    `<circle cx="50" cy="50" r="49" fill="${BLUE}"/><g fill="${WHITE}" transform="translate(7.5 5.5) scale(0.85)">${figure}</g>`,
  P: (figure) =>
    `<circle cx="50" cy="50" r="44" fill="${WHITE}"/><g fill="${BLACK}" transform="translate(10 10) scale(0.8)">${figure}</g><path d="M19 19 L81 81" stroke="${WHITE}" stroke-width="13"/><path d="M19 19 L81 81" stroke="${RED}" stroke-width="8"/><circle cx="50" cy="50" r="44.5" fill="none" stroke="${RED}" stroke-width="9"/>`,
  E: (figure) => `<rect x="1" y="1" width="98" height="98" fill="${GREEN}"/><g fill="${WHITE}">${figure}</g>`,
  F: (figure) => `<rect x="1" y="1" width="98" height="98" fill="${RED}"/><g fill="${WHITE}">${figure}</g>`,
};

export const SIGN_CODES = Object.keys(SIGNS) as readonly SignCode[];

/** The meaning of a sign in words; a code without a drawing gives null. */
export const signSays = (code: string): string | null => SIGNS[code as SignCode]?.says ?? null;

/** The sign as an SVG picture; a code without a drawing gives null. */
export function signSvg(code: string): string | null {
  const sign = SIGNS[code as SignCode];
  const frame = FRAMES[code.charAt(0)];
  if (!sign || !frame) return null;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100">${frame(sign.figure)}</svg>`;
}
