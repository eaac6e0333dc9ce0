import fc from "fast-check";

/** Asserts the claim over numbers drawn from the ranges; a failure shows its seed and the smallest counter-example found. */
export function holdsForAll(
  ranges: readonly fc.Arbitrary<number>[],
  claim: (...values: number[]) => void,
): void {
  fc.assert(fc.property(fc.tuple(...ranges), (values) => claim(...values)));
}

export const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true });
