import { proxy, wrap } from "comlink";
import type { Outcome } from "../../../core/outcome/problem.ts";
import type { Draft } from "../log/own-entries.ts";
import type { Entrance, Status, Tablet } from "../log/tablet.ts";
import type { ViewArgs, ViewName, ViewResult } from "../views.ts";

const worker = new Worker(new URL("../log/worker.ts", import.meta.url), { type: "module" });
const tablet = wrap<Tablet>(worker);

export const enter = (hasCode: boolean): Promise<Entrance> => tablet.enter(hasCode);
export const pair = (code: string): Promise<Outcome<Entrance>> => tablet.pair(code);
export const lookForPlan = (): Promise<void> => tablet.lookForPlan();
export const sendAgain = (id: string): Promise<void> => tablet.sendAgain(id);
export const giveUp = (id: string): Promise<void> => tablet.giveUp(id);
export const leave = (): Promise<void> => tablet.leave();
export const keepPicture = (picture: Blob): Promise<Outcome<string>> => tablet.keepPicture(picture);
export const pictureHere = (name: string): Promise<Blob | null> => tablet.pictureHere(name);

/** What a screen shows now; null: the campaign is not here yet. */
export const askView = <N extends ViewName>(name: N, args: ViewArgs<N>): Promise<ViewResult<N> | null> =>
  (tablet.view as unknown as (name: N, args: ViewArgs<N>) => Promise<ViewResult<N> | null>)(name, args); // the worker's own types, which a proxy cannot carry

export const writeAs = (
  person: string | null,
  drafts: readonly Draft[],
): Promise<Outcome<readonly string[]>> => tablet.write(drafts, person);
export const undoAs = (person: string | null, ids: readonly string[]): Promise<Outcome<readonly string[]>> =>
  tablet.undo(ids, person);

type Listener = () => void;
const listeners = new Set<Listener>();
let status: Status | null = null;

void tablet.listen(
  proxy((next: Status) => {
    status = next;
    for (const each of listeners) each();
  }),
);

/** For `useSyncExternalStore`. */
export const statusNow = (): Status | null => status;
export function onStatus(listener: Listener): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
