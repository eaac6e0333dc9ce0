/** Minutes by which a sum of lines may differ from the work behind it: each line is printed to a tenth, the day's total to a minute. */
export const roundingOf = (lines: number): number => 0.5 + 0.05 * lines + 1e-6;
