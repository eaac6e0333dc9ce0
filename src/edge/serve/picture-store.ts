import { createHash, randomUUID } from "node:crypto";
import { createReadStream, createWriteStream } from "node:fs";
import { mkdir, open, rename, rm, stat } from "node:fs/promises";
import { join } from "node:path";
import { type Readable, Transform } from "node:stream";
import { pipeline } from "node:stream/promises";
import { PICTURE_KINDS, type PictureKind, pictureKindOf, TOLD_BY } from "./picture-kinds.ts";

/** A picture as it lies in the folder. */
export interface StoredPicture {
  /** SHA-256 of the file, 64 hexadecimal digits. */
  readonly picture: string;
  readonly kind: PictureKind;
  readonly bytes: number;
}

/**
 * Takes a picture in under its SHA-256, durable when this answers; the same twice is one. Where it is refused nothing is kept.
 * @param wasCut whether the stream, once it has ended, was longer than it may be
 */
export async function storePicture(
  folder: string,
  given: Readable,
  wasCut: () => boolean,
): Promise<StoredPicture | "too large" | "not a picture"> {
  const pictures = join(folder, "pictures");
  await mkdir(pictures, { recursive: true });
  const waiting = join(pictures, `${randomUUID()}.coming`);
  try {
    const { head, picture, bytes } = await written(given, waiting);
    if (wasCut()) return "too large";
    const kind = pictureKindOf(head);
    if (kind === null) return "not a picture";
    await rename(waiting, join(pictures, `${picture}.${kind.ending}`));
    await synced(pictures);
    return { picture, kind, bytes };
  } finally {
    await rm(waiting, { force: true });
  }
}

/** Writes a stream to the disk, to be durable when this answers. */
async function written(given: Readable, path: string) {
  const hash = createHash("sha256");
  let head = Buffer.alloc(0);
  let bytes = 0;
  const told = new Transform({
    transform: (part: Buffer, _encoding, next) => {
      hash.update(part);
      bytes += part.length;
      if (head.length < TOLD_BY) head = Buffer.concat([head, part.subarray(0, TOLD_BY)]);
      next(null, part);
    },
  });
  await pipeline(given, told, createWriteStream(path, { flags: "wx", flush: true }));
  return { head, picture: hash.digest("hex"), bytes };
}

/** So that the new name outlives a power cut; Windows cannot open a folder and needs no such thing. */
async function synced(folder: string): Promise<void> {
  if (process.platform === "win32") return;
  const handle = await open(folder, "r");
  await handle.sync();
  await handle.close();
}

export interface FoundPicture {
  readonly type: string;
  readonly bytes: number;
  read(): Readable;
}

/** A picture that lies in the folder. */
export async function findPicture(folder: string, picture: string): Promise<FoundPicture | null> {
  for (const { type, ending } of PICTURE_KINDS) {
    const path = join(folder, "pictures", `${picture}.${ending}`);
    const found = await stat(path).catch(() => null);
    if (found) return { type, bytes: found.size, read: () => createReadStream(path) };
  }
  return null;
}
