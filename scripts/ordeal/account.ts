import type { LogEvent } from "../../src/core/log/event.ts";
import type { Placed } from "../../src/edge/keep/keep.ts";
import { unless } from "./trial.ts";

/** What was sent, what was acknowledged, and what is there. */
export class Account {
  readonly #acknowledged = new Map<string, string>();
  readonly #kept = new Map<string, string>();
  readonly #batchOf = new Map<string, readonly LogEvent[]>();
  readonly faults: string[] = [];
  place = 0;

  get acknowledged(): number {
    return this.#acknowledged.size;
  }

  sending(batch: readonly LogEvent[]): void {
    for (const { id } of batch) this.#batchOf.set(id, batch);
  }

  taken(batch: readonly LogEvent[]): void {
    for (const { id, hash } of batch) this.#acknowledged.set(id, hash);
  }

  /** Compares with what came to be there since it last looked.   @param when for the words of a fault */
  look(fresh: readonly Placed[], when: string): void {
    for (const { place, event } of fresh) {
      if (place !== this.place + 1) this.faults.push(`${when}: place ${place} follows on ${this.place}`);
      if (this.#kept.has(event.id)) this.faults.push(`${when}: ${event.id} is there twice`);
      this.#kept.set(event.id, event.hash);
      this.place = place;
    }
    const halves = new Set<readonly LogEvent[]>();
    for (const { event } of fresh) {
      const batch = this.#batchOf.get(event.id) ?? [];
      if (batch.some(({ id }) => !this.#kept.has(id))) halves.add(batch);
    }
    this.faults.push(...[...halves].map((batch) => `${when}: half of a batch of ${batch.length} is there`));
  }

  /** Acknowledged and not there, or there otherwise. */
  lost(): string[] {
    return [...this.#acknowledged].flatMap(([id, hash]) =>
      unless(this.#kept.get(id) === hash, `${id} was acknowledged and is not there`),
    );
  }
}
