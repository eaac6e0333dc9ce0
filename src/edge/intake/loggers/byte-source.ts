import { createReadStream } from "node:fs";
import { open, stat } from "node:fs/promises";
import { pipeline, Readable } from "node:stream";
import { createGunzip } from "node:zlib";
import { type Encoding, encodingOf } from "../encoding.ts";

/** Bytes looked at before the file is read through. */
const HEAD_BYTES = 1 << 18;
const PIECE_BYTES = 1 << 20;

/** A file of a logger on disk, or its bytes when they are in hand already. */
export type LoggerSource = string | Uint8Array;

export interface OpenedBytes {
  readonly isGzip: boolean;
  readonly encoding: Encoding;
  /** The first part, unpacked, as text. */
  readonly head: string;
  /** The whole file fits into the head. */
  readonly isWhole: boolean;
  /** Length on disk; what it unpacks to is not known before. */
  readonly size: number;
  /** Everything from the first byte on, unpacked; wide letters come as UTF-8, so that digits and delimiters are one byte each. */
  pieces(): AsyncIterable<Uint8Array>;
}

/** Opens a file for looking at its head and then reading it through in pieces. */
export async function openBytes(source: LoggerSource, settled?: Encoding): Promise<OpenedBytes> {
  const size = typeof source === "string" ? (await stat(source)).size : source.length;
  const start = await firstBytes(source);
  const isGzip = start[0] === 0x1f && start[1] === 0x8b;
  const head = await headOf(source, isGzip);
  const encoding = settled ?? encodingOf(head);
  const text = textOf(head, encoding);
  const isRowQuoted = areRowsQuoted(text);
  const pieces = (): AsyncIterable<Uint8Array> => narrowed(streamOf(source, isGzip), encoding);
  return {
    isGzip,
    encoding,
    head: isRowQuoted ? text.replaceAll('"', " ") : text,
    isWhole: head.length < HEAD_BYTES,
    size,
    pieces: isRowQuoted ? () => withoutQuotes(pieces()) : pieces,
  };
}

/** A table that was saved as one column has a quotation mark at both ends of each row and none inside. */
function areRowsQuoted(text: string): boolean {
  const rows = text.split(/[\r\n]+/, 12).filter((row) => row.trim() !== "");
  return rows.length > 2 && rows.slice(0, 10).every((row) => /^"[^"]*[,;|\t][^"]*"\s*$/.test(row));
}

async function* withoutQuotes(pieces: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  for await (const piece of pieces) yield piece.map((byte) => (byte === 34 ? 32 : byte));
}

async function firstBytes(source: LoggerSource): Promise<Uint8Array> {
  if (typeof source !== "string") return source.subarray(0, 4);
  const handle = await open(source);
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(4), 0, 4, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await handle.close();
  }
}

function streamOf(source: LoggerSource, isGzip: boolean): AsyncIterable<Uint8Array> {
  if (typeof source !== "string" && !isGzip) return onePiece(source);
  const packed =
    typeof source === "string"
      ? createReadStream(source, { highWaterMark: PIECE_BYTES })
      : Readable.from([Buffer.from(source.buffer, source.byteOffset, source.byteLength)]);
  if (!isGzip) return packed;
  const unpacked = createGunzip({ chunkSize: PIECE_BYTES });
  return pipeline(packed, unpacked, () => {}); // an error of either comes out of the loop that reads it
}

async function* onePiece(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += PIECE_BYTES) yield bytes.subarray(at, at + PIECE_BYTES);
}

async function headOf(source: LoggerSource, isGzip: boolean): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  let length = 0;
  try {
    for await (const piece of streamOf(source, isGzip)) {
      parts.push(piece);
      length += piece.length;
      if (length >= HEAD_BYTES) break;
    }
  } catch (error) {
    if (!isGzip || length === 0) throw error; // a packed file that was cut short still has a head
  }
  return Buffer.concat(parts).subarray(0, HEAD_BYTES);
}

/** The mark at the start is kept by no decoder: TextDecoder drops it by itself. */
function textOf(head: Uint8Array, encoding: Encoding): string {
  return new TextDecoder(encoding).decode(head, { stream: true });
}

async function* narrowed(pieces: AsyncIterable<Uint8Array>, encoding: Encoding): AsyncGenerator<Uint8Array> {
  if (encoding !== "utf-16le" && encoding !== "utf-16be") {
    yield* pieces;
    return;
  }
  const decoder = new TextDecoder(encoding);
  for await (const piece of pieces) yield Buffer.from(decoder.decode(piece, { stream: true }), "utf8");
  yield Buffer.from(decoder.decode(), "utf8");
}
