/** What JSON can hold. */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

const LONE_SURROGATE = /\p{Surrogate}/u;
/** How deep an event may be nested. */
export const MOST_DEPTH = 32;

/** Whether a value is JSON that reads the same everywhere: finite numbers, whole letters, no gaps, not nested without end. */
export function isJson(value: unknown, depth = 0): value is Json {
  if (value === null || typeof value === "boolean") return true;
  if (typeof value === "number") return Number.isFinite(value);
  if (typeof value === "string") return !LONE_SURROGATE.test(value);
  if (typeof value !== "object" || depth >= MOST_DEPTH) return false;
  if (Array.isArray(value)) return value.every((each) => isJson(each, depth + 1));
  return Object.entries(value).every(([key, each]) => !LONE_SURROGATE.test(key) && isJson(each, depth + 1));
}

/** One text for one value: no spaces, names sorted by their UTF-16 units, numbers and strings as ECMAScript writes them.
 *  Source: RFC 8785 (2020) section 3.2. */
export function canonicalJson(value: Json): string {
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  if (isList(value)) return `[${value.map(canonicalJson).join(",")}]`;
  let members = "";
  for (const key of Object.keys(value).sort())
    members += `${members === "" ? "" : ","}${JSON.stringify(key)}:${canonicalJson(value[key] as Json)}`; // the key was just listed
  return `{${members}}`;
}

const isList = (value: Json): value is readonly Json[] => Array.isArray(value);
