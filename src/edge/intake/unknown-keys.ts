import { z } from "zod";

export interface UnknownKey {
  /** Dotted, e.g. `place.climat`. */
  readonly path: string;
  /** The names that would have been right there. */
  readonly known: readonly string[];
}

/** Every key of the given value that the shape does not have. */
export function unknownKeys(shape: z.ZodType, given: unknown, path = ""): UnknownKey[] {
  if (shape instanceof z.ZodOptional) return unknownKeys(shape.unwrap() as z.ZodType, given, path);
  if (shape instanceof z.ZodArray && Array.isArray(given))
    return given.flatMap((each, i) => unknownKeys(shape.element as z.ZodType, each, `${path}${i}.`));
  if (!(shape instanceof z.ZodObject) || typeof given !== "object" || given === null) return [];
  const inside = shape.shape as Record<string, z.ZodType>;
  return Object.entries(given).flatMap(([key, value]) => {
    const known = Object.hasOwn(inside, key) ? inside[key] : undefined;
    return known === undefined
      ? [{ path: path + key, known: Object.keys(inside) }]
      : unknownKeys(known, value, `${path}${key}.`);
  });
}
