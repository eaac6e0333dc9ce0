/** What waits in a queue: by key, then by place in the list. */
export interface Waiter {
  readonly at: number;
  key: number;
}

/** A queue in order of keys; most leave at its head, which costs nothing, few in between. */
export class Waiting<T extends Waiter> {
  private rows: T[] = [];
  private head = 0;

  add(one: T): void {
    const at = this.placeOf(one);
    if (at === this.rows.length) this.rows.push(one);
    else if (at === this.head && this.head > 0) this.rows[--this.head] = one;
    else this.rows.splice(at, 0, one);
  }

  remove(one: T): void {
    const at = this.placeOf(one);
    if (at - this.head > 50) this.rows.splice(at, 1);
    else {
      for (let n = at; n > this.head; n--) this.rows[n] = this.rows[n - 1] as T;
      this.head++;
    }
    if (this.head > 500 && this.head * 2 > this.rows.length) {
      this.rows = this.rows.slice(this.head);
      this.head = 0;
    }
  }

  /** Where one stands, or would stand. */
  private placeOf(one: T): number {
    let low = this.head;
    for (let high = this.rows.length; low < high; ) {
      const middle = (low + high) >> 1;
      const other = this.rows[middle] as T;
      if ((other.key - one.key || other.at - one.at) < 0) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  get length(): number {
    return this.rows.length - this.head;
  }

  /** The n-th from the head, from 0. */
  nth(n: number): T {
    return this.rows[this.head + n] as T;
  }
}
