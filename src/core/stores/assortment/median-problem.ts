/**
 * Clients that each go to the cheapest of a few chosen sites, or without one at a price of their own.
 * `costs[site × clients + client]`, 0 or more; a client's weight is in its costs already.
 */
export interface MedianProblem {
  readonly clients: number;
  readonly sites: number;
  readonly costs: Float64Array;
  /** What a client costs that no site serves; endless where each must be served. */
  readonly without: Float64Array;
  /** Sites chosen at most. */
  readonly choose: number;
}
