import { hazardSays, hazardSvg } from "./hazard-signs.ts";
import { printableIn } from "./printable.ts";
import { qrSvg } from "./qr.ts";
import { signSays, signSvg } from "./signs.ts";
import { type Picture, typeset } from "./typeset.ts";
import { ENGLISH, type PaperWords } from "./words.ts";

export interface PaperOptions {
  readonly sheet: "A4" | "Letter";
  /** BCP 47 tag of the words and views, for screen readers; `en` unless given. */
  readonly language?: string;
  readonly words?: PaperWords;
}

export interface Shown {
  readonly views: readonly unknown[];
  /** ISO 7010 and GHS codes met in the views. */
  readonly signs: readonly string[];
  /** What the QR code of each view says, in the views' order. */
  readonly codes: readonly string[];
  /** Bytes of JPEG and PNG pictures, named as the views name them. */
  readonly pictures?: readonly Picture[];
}

/** Typesets a template over its views. */
export function print(
  template: string,
  { views, signs, codes, pictures = [] }: Shown,
  options: PaperOptions,
): Promise<Uint8Array> {
  const view = {
    sheet: options.sheet,
    language: options.language ?? "en",
    words: options.words ?? ENGLISH,
    signs: drawn(signs),
    codes: codes.map(qrSvg),
    views: printableIn(views),
  };
  return typeset(template, view, pictures);
}

/** The drawing and meaning of each sign asked for; one we have no drawing of is printed as its code. */
function drawn(codes: readonly string[]): Record<string, { readonly svg: string; readonly says: string }> {
  const signs: Record<string, { svg: string; says: string }> = {};
  for (const code of new Set(codes)) {
    const [svg, says] = [signSvg(code) ?? hazardSvg(code), signSays(code) ?? hazardSays(code)];
    if (svg !== null && says !== null) signs[code] = { svg, says };
  }
  return signs;
}
