import type { LogEvent } from "./event.ts";
import type { Reached } from "./state.ts";

/** What of an event says where it stands in its chain. */
type Link = Pick<LogEvent, "device" | "number" | "hash" | "before">;

/** A device's links by number; null where two stand under one number. */
type Chain = ReadonlyMap<number, Link | null>;

/**
 * How far each device's events are here for certain: from its first, each once, each following on the one before. Whoever holds the event
 * with that hash can hold no others before it, so that nothing up to there need be sent to them.
 */
export function unbroken(links: Iterable<Link>): ReadonlyMap<string, Reached> {
  const reached = new Map<string, Reached>();
  for (const [device, chain] of chainsOf(links)) {
    let [number, hash] = [0, ""];
    for (let next = chain.get(1); next?.before === hash; next = chain.get(number + 1))
      [number, hash] = [next.number, next.hash];
    if (number > 0) reached.set(device, { number, hash });
  }
  return reached;
}

/** Up to which number each device's events are here without a gap, whatever else stands against them. */
export function gapless(links: Iterable<Link>): ReadonlyMap<string, number> {
  const numbers = new Map<string, number>();
  for (const [device, chain] of chainsOf(links)) {
    let number = 0;
    while (chain.has(number + 1)) number++;
    numbers.set(device, number);
  }
  return numbers;
}

/** What somebody who has reached so far may lack. Where our chain is not known to be theirs everything of that device is sent.
 *  @param links all that are here   @param theirs what `unbroken` gave there */
export function lackedBy(
  theirs: ReadonlyMap<string, Reached>,
  links: readonly Link[],
): (event: Link) => boolean {
  const ours = unbroken(links);
  const shared = new Set(
    links
      .filter(({ device, number, hash }) => {
        const their = theirs.get(device);
        return their?.number === number && their.hash === hash && number <= (ours.get(device)?.number ?? 0);
      })
      .map(({ device }) => device),
  );
  return ({ device, number }) => !(shared.has(device) && number <= (theirs.get(device)?.number ?? 0));
}

function chainsOf(links: Iterable<Link>): Map<string, Chain> {
  const chains = new Map<string, Map<number, Link | null>>();
  for (const link of links) {
    const chain = chains.get(link.device) ?? new Map<number, Link | null>();
    const known = chain.get(link.number);
    chain.set(link.number, known === undefined || known?.hash === link.hash ? link : null);
    chains.set(link.device, chain);
  }
  return chains;
}
