import { createReadStream } from "node:fs";
import { type Encoding, encodingOf } from "./encoding.ts";

/** Bytes 0x80 to 0x9f of Windows-1252; elsewhere it is Latin-1. Source: WHATWG Encoding Standard, index windows-1252. */
const UPPER =
  "\u20ac\u0081\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\u008d\u017d\u008f" +
  "\u0090\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\u009d\u017e\u0178";

/** The text of the bytes: letters recognised, mark at the start taken off, every line end one `\n`. */
export function decodeText(bytes: Uint8Array): { readonly text: string; readonly encoding: Encoding } {
  const encoding = encodingOf(bytes);
  const decoder = new LineDecoder(encoding);
  return { text: decoder.next(bytes) + decoder.end(), encoding };
}

/** The text of a file in pieces, so that its size does not matter. */
export async function* textPieces(path: string, encoding: Encoding): AsyncGenerator<string> {
  const decoder = new LineDecoder(encoding);
  for await (const piece of createReadStream(path, { highWaterMark: 1 << 20 }))
    yield decoder.next(piece as Buffer);
  yield decoder.end();
}

class LineDecoder {
  private readonly wide: TextDecoder | null;
  private heldReturn = false;

  constructor(encoding: Encoding) {
    this.wide = encoding === "windows-1252" ? null : new TextDecoder(encoding);
  }

  next(bytes: Uint8Array): string {
    return this.oneLineEnd(
      this.wide === null ? windows1252(bytes) : this.wide.decode(bytes, { stream: true }),
    );
  }

  end(): string {
    const rest = this.oneLineEnd(this.wide === null ? "" : this.wide.decode());
    return this.heldReturn ? `${rest}\n` : rest;
  }

  /** `\r\n` and a lone `\r` become `\n`; a `\r` at the end of a piece waits for the next. */
  private oneLineEnd(piece: string): string {
    if (piece === "") return "";
    const text = this.heldReturn ? `\r${piece}` : piece;
    this.heldReturn = text.endsWith("\r");
    const whole = this.heldReturn ? text.slice(0, -1) : text;
    return whole.includes("\r") ? whole.replace(/\r\n?/g, "\n") : whole;
  }
}

function windows1252(bytes: Uint8Array): string {
  const latin = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString("latin1");
  return latin.replace(/[\u0080-\u009f]/g, (letter) => UPPER[letter.charCodeAt(0) - 0x80] ?? letter);
}
