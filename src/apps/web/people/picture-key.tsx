import { people } from "../../../core/say/page.ts";
import { type CellState, DayCell } from "./day-cell.tsx";

const SIGNS: readonly (readonly [CellState, string])[] = [
  [{ minutes: 60, limit: 100 }, people.keyBar],
  ["clean", people.keyClean],
  ["away", people.keyAway],
  ["closed", people.keyClosed],
];

export const PictureKey = () => (
  <ul className="people-key" aria-label={people.key}>
    {SIGNS.map(([state, words]) => (
      <li key={words}>
        <svg aria-hidden="true">
          <DayCell state={state} />
        </svg>
        {words}
      </li>
    ))}
  </ul>
);
