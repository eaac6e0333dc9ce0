import { deflateRawSync, inflateRawSync } from "node:zlib";
import type { LogEvent } from "../../core/log/event.ts";
import { sumOfBody } from "./frames.ts";
import type { BlockRow } from "./manifest.ts";

/** A block is closed when its lines are this long. What a torn file loses is lost by whole blocks. */
const FULL_BYTES = 256 * 1024;
/** A block that would be longer is no block of ours. */
const MOST_BYTES = 64 * 1024 * 1024;

export interface Block {
  readonly row: BlockRow;
  /** One event a line as JSON, compressed (RFC 1951). */
  readonly body: Buffer;
}

/** Events in blocks, in their order. */
export async function* blocksOf(events: AsyncIterable<LogEvent>): AsyncGenerator<Block> {
  let pending: LogEvent[] = [];
  let lines: string[] = [];
  let length = 0;
  for await (const event of events) {
    const line = JSON.stringify(event);
    pending.push(event);
    lines.push(line);
    length += line.length;
    if (length < FULL_BYTES) continue;
    yield blockOf(pending, lines);
    [pending, lines, length] = [[], [], 0];
  }
  if (pending.length > 0) yield blockOf(pending, lines);
}

function blockOf(events: readonly LogEvent[], lines: readonly string[]): Block {
  const body = deflateRawSync(lines.join("\n"));
  const holds = spansOf(events.map(({ device, number }) => ({ device, from: number, to: number })));
  return { row: { sum: sumOfBody(body), events: events.length, holds }, body };
}

/** For each device one span around all of its own, sorted by device. */
export function spansOf(spans: BlockRow["holds"]): BlockRow["holds"] {
  const byDevice = new Map<string, BlockRow["holds"][number]>();
  for (const { device, from, to } of spans) {
    const span = byDevice.get(device) ?? { device, from, to };
    byDevice.set(device, { device, from: Math.min(span.from, from), to: Math.max(span.to, to) });
  }
  return [...byDevice.values()].sort((a, b) => (a.device < b.device ? -1 : 1));
}

/** The lines of a block; null: whoever signed it wrote no block of ours. */
export function linesIn(body: Buffer): readonly string[] | null {
  try {
    return inflateRawSync(body, { maxOutputLength: MOST_BYTES }).toString("utf8").split("\n");
  } catch {
    return null;
  }
}
