import type { LogEvent } from "../../../core/log/event.ts";
import type { Role } from "../../../core/log/roles.ts";
import type { Problem } from "../../../core/outcome/problem.ts";
import type { Day } from "../../../core/units/day.ts";

/** Who this device is, and what it may write. */
export interface Me {
  readonly device: string;
  readonly role: Role;
  /** Null: several people share the device. */
  readonly person: string | null;
  readonly campaign: string;
  readonly writes: readonly string[];
  /** The day it is taken to be, where somebody looks around a demo; null: as the clock says. */
  readonly pretendDay: Day | null;
}

/** What a request came to. `away`: the server was not reached. */
export type Reached<T> =
  | { readonly kind: "answer"; readonly value: T; readonly headers: Headers }
  | { readonly kind: "same" }
  | { readonly kind: "refused"; readonly status: number; readonly problem: Problem }
  | { readonly kind: "away" };

/** What the server says of one entry of a batch. */
export interface EntryAnswer {
  readonly id: string | null;
  readonly answer: "kept" | "refused" | "waits";
  readonly problem?: Problem;
}

const WAIT_MS = 20_000;

/** Asks the server. Never throws: not to reach it is an ordinary state of a tablet. */
export async function ask<T>(path: string, init: RequestInit = {}): Promise<Reached<T>> {
  try {
    const reply = await fetch(path, { signal: AbortSignal.timeout(WAIT_MS), ...init });
    if (reply.status === 304) return { kind: "same" };
    const text = await reply.text();
    const isJson = reply.headers.get("content-type")?.includes("json") ?? false;
    const body: unknown = isJson && text !== "" ? JSON.parse(text) : text;
    if (reply.ok) return { kind: "answer", value: body as T, headers: reply.headers }; // our own server's schema
    const { status } = reply;
    return { kind: "refused", status, problem: problemIn(body, status) };
  } catch {
    return { kind: "away" };
  }
}

export const post = <T>(path: string, body: unknown): Promise<Reached<T>> =>
  ask<T>(path, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify(body),
  });

/** What the server says of a batch; null: not reached, or it can keep nothing now, so that all of it waits. */
export async function sendBatch(events: readonly LogEvent[]): Promise<readonly EntryAnswer[] | null> {
  try {
    const reply = await fetch("/api/events", {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify({ events }),
      signal: AbortSignal.timeout(WAIT_MS),
    });
    if (![200, 409, 422].includes(reply.status)) return null;
    return ((await reply.json()) as { answers?: readonly EntryAnswer[] }).answers ?? null;
  } catch {
    return null;
  }
}

/** A refusal of ours holds a problem; anything else is said by its status. */
const problemIn = (body: unknown, status: number): Problem =>
  (body as { readonly problem?: Problem } | null)?.problem ?? {
    code: `http-${status}`,
    severity: "stop",
    remedy: "Try again; if it stays so, start Leafward on the laptop again.",
  };
