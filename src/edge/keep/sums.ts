import { createHash } from "node:crypto";
import { createReadStream } from "node:fs";
import { readFile } from "node:fs/promises";
import { basename } from "node:path";

/** SHA-256 of a file, 64 hexadecimal digits. */
export async function sumOf(path: string): Promise<string> {
  const sum = createHash("sha256");
  for await (const piece of createReadStream(path)) sum.update(piece);
  return sum.digest("hex");
}

/** The file beside it that holds its sum, as `sha256sum` of the GNU core utilities writes and checks it. */
export const sumFileOf = (path: string): string => `${path}.sha256`;
export const sumLine = (path: string, sum: string): string => `${sum}  ${basename(path)}\n`;

/** The sum written beside a file; null: none is there. */
export async function sumBeside(path: string): Promise<string | null> {
  const text = await readFile(sumFileOf(path), "utf8").catch(() => null);
  return text === null ? null : (/^[0-9a-f]{64}/.exec(text)?.[0] ?? "unreadable");
}
