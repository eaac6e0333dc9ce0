import { near as nearWords, leaving as words } from "../../../core/say/rooms/ward.ts";
import type { NearView } from "./bag-view.ts";
import type { NearPerson } from "./near-people.ts";

/** One of the two who sign; nobody signs twice, and nobody who may not stand near it now. */
export const Signer = (p: {
  readonly label: string;
  readonly people: readonly NearPerson[];
  readonly near: NearView;
  readonly chosen: string;
  readonly other: string;
  readonly choose: (code: string) => void;
}) => (
  <label>
    <span>{p.label}</span>
    <select value={p.chosen} onChange={({ target }) => p.choose(target.value)}>
      <option value="">{words.choose}</option>
      {p.people.map(({ code, name, stop }) => {
        const isStopped = p.near.isExposed && stop !== null;
        return (
          <option key={code} value={code} disabled={isStopped || code === p.other}>
            {isStopped && stop !== null ? nearWords.stop[stop](name) : name}
          </option>
        );
      })}
    </select>
  </label>
);
