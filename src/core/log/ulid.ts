/** Crockford's base 32, as the ULID specification lists it: without I, L, O and U. */
const DIGITS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
const TIME_DIGITS = 10;

/** 26 digits, of which the first is at most 7: 48 bits of time and 80 of chance. */
export const ULID = /^[0-7][0-9A-HJKMNP-TV-Z]{25}$/;

/**
 * The next id of a device, greater than its last: the time and fresh chance, or the last one plus one where the time has not moved on.
 * A carry out of the chance goes into the time, so that the count never ends; the ULID specification would fail there.
 * @param ms since 1970, 0 to 2^48 - 1   @param random ten bytes
 * Source: ULID specification (github.com/ulid/spec), sections Encoding and Monotonicity.
 */
export function nextUlid(ms: number, random: Uint8Array, last = ""): string {
  const fresh = timeDigits(ms) + chanceDigits(random.subarray(0, 5)) + chanceDigits(random.subarray(5, 10));
  return last.slice(0, TIME_DIGITS) >= fresh.slice(0, TIME_DIGITS) ? plusOne(last) : fresh;
}

function timeDigits(ms: number): string {
  let rest = ms;
  let digits = "";
  for (let i = 0; i < TIME_DIGITS; i++) {
    digits = DIGITS.charAt(rest % 32) + digits;
    rest = Math.floor(rest / 32);
  }
  return digits;
}

/** Eight digits of five bytes. */
function chanceDigits(bytes: Uint8Array): string {
  let rest = bytes.reduce((sum, byte) => sum * 256 + byte, 0); // 40 bits: exact in a double
  let digits = "";
  for (let i = 0; i < 8; i++) {
    digits = DIGITS.charAt(rest % 32) + digits;
    rest = Math.floor(rest / 32);
  }
  return digits;
}

function plusOne(ulid: string): string {
  let at = ulid.length - 1;
  while (at > 0 && ulid[at] === "Z") at--;
  const digit = DIGITS.charAt(DIGITS.indexOf(ulid.charAt(at)) + 1);
  return ulid.slice(0, at) + digit + "0".repeat(ulid.length - 1 - at);
}
