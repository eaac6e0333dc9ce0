/** A kind of picture that is taken in. */
export interface PictureKind {
  /** Media type. */
  readonly type: string;
  /** Of the file's name. */
  readonly ending: string;
}

/** Bytes that tell what a file is. */
export const TOLD_BY = 12;

/** Sources of the first bytes: JPEG, ITU-T T.81 annex B; PNG, W3C PNG specification section 5.2; TIFF 6.0 section 2; WebP, RFC 9649 section 2. All from memory. */
export const PICTURE_KINDS: readonly (PictureKind & { readonly begins: RegExp })[] = [
  { type: "image/jpeg", ending: "jpg", begins: /^ffd8ff/ },
  { type: "image/png", ending: "png", begins: /^89504e470d0a1a0a/ },
  { type: "image/tiff", ending: "tif", begins: /^(?:49492a00|4d4d002a)/ },
  { type: "image/webp", ending: "webp", begins: /^52494646.{8}57454250/ },
];

/** What a file is by its first bytes, whatever it is called. A raw picture of a camera is a TIFF by its bytes. Null: none of those taken in. */
export function pictureKindOf(head: Uint8Array): PictureKind | null {
  const begin = Buffer.from(head).toString("hex");
  const found = PICTURE_KINDS.find(({ begins }) => begins.test(begin));
  return found ? { type: found.type, ending: found.ending } : null;
}
