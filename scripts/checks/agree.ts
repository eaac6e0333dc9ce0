/** Whether our answer is the published one, within the tolerance the row states. */

/** One place where the two part, e.g. `M_at_h.168`. */
export interface Difference {
  readonly at: string;
  readonly expected: unknown;
  readonly got: unknown;
  readonly allowed: string;
}

/** Allowed difference of one value; both given, the looser counts. Neither: equal. */
interface Allowed {
  readonly abs?: number;
  readonly rel?: number;
}

type Words = Readonly<Record<string, unknown>>;

/** What binary floating point may lose where the row asks for equality: 1 part in 10⁹. */
const ROUNDING = 1e-9;

/**
 * Compares every key of `expected` with `got`; keys we give beyond it are ignored.
 * @param tolerance `{}` or absent: equal. `{abs}`, `{rel}` (or `{relative}`): one number for every key, or one for each named key.
 *   `{each}`: absolute, for every number inside lists and groups. `{key: number}`: absolute for that key, the others equal.
 *   A number alone is absolute for every key. A name also covers keys that continue it, `meanMcPct` → `meanMcPct_at_day`.
 */
export function differencesFrom(expected: Words, got: Words, tolerance: unknown): Difference[] {
  return Object.entries(expected).flatMap(([key, value]) =>
    differences(key, value, got[key], allowedFor(key, tolerance)),
  );
}

function allowedFor(key: string, tolerance: unknown): Allowed {
  if (typeof tolerance === "number") return { abs: tolerance };
  if (!isWords(tolerance)) return {};
  const own = forName(key, tolerance);
  if (typeof own === "number") return { abs: own };
  const from = isWords(own) ? own : tolerance;
  return {
    ...named("abs", figure(key, from.abs ?? from.absolute ?? from.each)),
    ...named("rel", figure(key, from.rel ?? from.relative)),
  };
}

const named = (name: "abs" | "rel", value: number | undefined): Allowed =>
  value === undefined ? {} : { [name]: value };

/** A figure for every key, or the one among figures by key. */
function figure(key: string, given: unknown): number | undefined {
  const found = isWords(given) ? forName(key, given) : given;
  return typeof found === "number" ? found : undefined;
}

/** The entry of that name, else the longest name that the key continues after an underscore. */
function forName(key: string, among: Words): unknown {
  if (Object.hasOwn(among, key)) return among[key];
  const begun = Object.keys(among).filter((name) => key.startsWith(`${name}_`));
  const longest = begun.sort((a, b) => b.length - a.length)[0];
  return longest === undefined ? undefined : among[longest];
}

function differences(at: string, expected: unknown, got: unknown, allowed: Allowed): Difference[] {
  if (Array.isArray(expected)) {
    if (!Array.isArray(got) || got.length !== expected.length) return [differ(at, expected, got, allowed)];
    return expected.flatMap((value, i) => differences(`${at}[${i}]`, value, got[i], allowed));
  }
  if (isWords(expected)) {
    if (!isWords(got)) return [differ(at, expected, got, allowed)];
    return Object.entries(expected).flatMap(([key, value]) =>
      differences(`${at}.${key}`, value, got[key], allowed),
    );
  }
  if (typeof expected === "number" && typeof got === "number")
    return isNear(expected, got, allowed) ? [] : [differ(at, expected, got, allowed)];
  return Object.is(expected, got) ? [] : [differ(at, expected, got, allowed)];
}

function isNear(expected: number, got: number, allowed: Allowed): boolean {
  const room = Math.max(allowed.abs ?? 0, (allowed.rel ?? 0) * Math.abs(expected));
  const rounding = ROUNDING * Math.max(1e-3, Math.abs(expected));
  return Math.abs(got - expected) <= room + rounding;
}

function differ(at: string, expected: unknown, got: unknown, { abs, rel }: Allowed): Difference {
  const parts = [abs === undefined ? null : `± ${abs}`, rel === undefined ? null : `± ${rel} of it`];
  return { at, expected, got, allowed: parts.filter(Boolean).join(" or ") || "equal" };
}

const isWords = (value: unknown): value is Words =>
  typeof value === "object" && value !== null && !Array.isArray(value);
