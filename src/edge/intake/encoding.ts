import { createReadStream } from "node:fs";

export type Encoding = "utf-8" | "utf-16le" | "utf-16be" | "windows-1252";

/** Which letters the bytes are: a mark at the start decides, then zero bytes, then whether everything is valid UTF-8. */
export function encodingOf(bytes: Uint8Array): Encoding {
  const detector = new EncodingDetector();
  detector.see(bytes);
  return detector.end();
}

/** The same for a file of any size, read once in pieces. */
export async function encodingOfFile(path: string): Promise<Encoding> {
  const detector = new EncodingDetector();
  for await (const piece of createReadStream(path)) {
    detector.see(piece as Buffer);
    if (detector.isCertain) break;
  }
  return detector.end();
}

class EncodingDetector {
  private found: Encoding | null = null;
  private started = false;
  private utf8 = new TextDecoder("utf-8", { fatal: true });

  get isCertain(): boolean {
    return this.found !== null;
  }

  see(bytes: Uint8Array): void {
    if (!this.started) this.found = markedOrWide(bytes);
    this.started = true;
    if (this.found === null && !this.decodes(bytes, true)) this.found = "windows-1252";
  }

  end(): Encoding {
    return this.found ?? (this.decodes(new Uint8Array(), false) ? "utf-8" : "windows-1252");
  }

  private decodes(bytes: Uint8Array, stream: boolean): boolean {
    try {
      this.utf8.decode(bytes, { stream });
      return true;
    } catch {
      return false;
    }
  }
}

function markedOrWide(bytes: Uint8Array): Encoding | null {
  const [a, b, c] = bytes;
  if (a === 0xef && b === 0xbb && c === 0xbf) return null; // still checked: a marked file may be cut or patched
  if (a === 0xff && b === 0xfe) return "utf-16le";
  if (a === 0xfe && b === 0xff) return "utf-16be";
  return wideWithoutMark(bytes.subarray(0, 4096));
}

/** Latin text in two bytes a letter has a zero in most pairs, always on the same side. */
function wideWithoutMark(head: Uint8Array): Encoding | null {
  const zeros = [0, 0];
  head.forEach((byte, i) => {
    if (byte === 0) zeros[i % 2] = (zeros[i % 2] ?? 0) + 1;
  });
  const pairs = head.length / 2;
  const [even = 0, odd = 0] = zeros;
  if (odd > 0.4 * pairs && even < 0.05 * pairs) return "utf-16le";
  return even > 0.4 * pairs && odd < 0.05 * pairs ? "utf-16be" : null;
}
