import { createHash } from "node:crypto";
import { readdir, readFile, stat } from "node:fs/promises";
import { extname, join } from "node:path";
import type { Picture } from "./typeset.ts";

const MOST_BYTES = 20_000_000;

/** A picture of the campaign's folder. */
export interface FolderPicture {
  readonly file: string;
  readonly path: string;
  readonly hash: string;
  readonly kind: "jpg" | "png";
  readonly bytes: Uint8Array;
}

/** A picture as a record shows it. */
export interface RecordPicture extends Picture {
  readonly says: string;
}

/** JPEG and PNG pictures in `pictures/` of a campaign folder, by name; and the names of files that are no such thing. */
export async function readPictures(
  folder: string,
): Promise<{ readonly pictures: readonly FolderPicture[]; readonly unread: readonly string[] }> {
  const names = (await readdir(join(folder, "pictures")).catch(() => [])).sort();
  const pictures: FolderPicture[] = [];
  const unread: string[] = [];
  for (const file of names.filter((name) => /^\.(jpe?g|png)$/i.test(extname(name)))) {
    const path = join(folder, "pictures", file);
    const bytes = (await stat(path)).size > MOST_BYTES ? null : new Uint8Array(await readFile(path));
    const kind = bytes === null ? null : kindOf(bytes);
    if (bytes === null || kind === null) unread.push(file);
    else pictures.push({ file, path, kind, bytes, hash: createHash("sha256").update(bytes).digest("hex") });
  }
  return { pictures, unread };
}

/** By the first bytes: JPEG (ISO/IEC 10918-1) or PNG (ISO/IEC 15948). */
function kindOf(bytes: Uint8Array): "jpg" | "png" | null {
  const starts = (...first: number[]): boolean => first.every((byte, at) => bytes[at] === byte);
  if (starts(0xff, 0xd8, 0xff)) return "jpg";
  return starts(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a) ? "png" : null;
}

/** The pictures of one item: those whose checksum the log names, and those whose file name begins with its number. */
export const picturesOf = (
  pictures: readonly FolderPicture[],
  item: string,
  told: ReadonlyMap<string, string>,
): RecordPicture[] =>
  pictures
    .filter(({ file, hash }) => told.has(hash) || isNamedBy(file, item))
    .map(({ file, hash, kind, bytes }) => ({
      name: `${hash.slice(0, 20)}.${kind}`,
      bytes,
      says: `${told.get(hash) ?? file}; SHA-256 ${hash.slice(0, 16)} …`,
    }));

/** `SR-0402-before.jpg` is of SR-0402, `SR-04021.jpg` is not. */
const isNamedBy = (file: string, item: string): boolean =>
  file.toLowerCase().startsWith(item.toLowerCase()) && !/^[\p{L}\p{N}]/u.test(file.slice(item.length));
