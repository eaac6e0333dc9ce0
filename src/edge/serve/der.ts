/** One value as the Distinguished Encoding Rules write it: tag, length, content. Source: ITU-T X.690 section 8.1 and 10.1, from memory. */
function tagged(tag: number, ...content: readonly Uint8Array[]): Buffer {
  const body = Buffer.concat(content);
  return Buffer.concat([Buffer.of(tag, ...lengthOf(body.length)), body]);
}

/** Up to 65,535 bytes. */
function lengthOf(bytes: number): number[] {
  if (bytes < 128) return [bytes];
  return bytes < 256 ? [0x81, bytes] : [0x82, bytes >> 8, bytes & 255];
}

export const sequence = (...parts: readonly Uint8Array[]): Buffer => tagged(0x30, ...parts);
export const setOf = (...parts: readonly Uint8Array[]): Buffer => tagged(0x31, ...parts);
export const octets = (...parts: readonly Uint8Array[]): Buffer => tagged(0x04, ...parts);
/** @param unused bits at the end of the last byte */
export const bits = (bytes: Uint8Array, unused = 0): Buffer => tagged(0x03, Buffer.of(unused), bytes);
export const utf8 = (text: string): Buffer => tagged(0x0c, Buffer.from(text));
export const yes = (): Buffer => tagged(0x01, Buffer.of(0xff));
/** A whole number that is not negative, the highest byte first. */
export const whole = (bytes: Uint8Array): Buffer =>
  tagged(0x02, (bytes[0] ?? 0) > 127 ? Buffer.of(0) : Buffer.alloc(0), bytes);
/** Explicitly tagged for its place in the context. */
export const inContext = (place: number, content: Uint8Array): Buffer => tagged(0xa0 + place, content);
/** Implicitly tagged, without parts of its own. */
export const plainInContext = (place: number, content: Uint8Array): Buffer => tagged(0x80 + place, content);

/** Years 1950 to 2049 as X.509 wants them. Source: RFC 5280 section 4.1.2.5.1. */
export const utcTime = (ms: number): Buffer =>
  tagged(0x17, Buffer.from(`${new Date(ms).toISOString().slice(2, 19).replace(/[-:T]/g, "")}Z`));

/** `1.2.840.10045.4.3.2` */
export function objectId(dotted: string): Buffer {
  const [first = 0, second = 0, ...rest] = dotted.split(".").map(Number);
  return tagged(0x06, Buffer.from([first * 40 + second, ...rest.flatMap(base128)]));
}

function base128(number: number): number[] {
  const digits = [number % 128];
  for (let rest = Math.floor(number / 128); rest > 0; rest = Math.floor(rest / 128))
    digits.unshift(128 + (rest % 128));
  return digits;
}
