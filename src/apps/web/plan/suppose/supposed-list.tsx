import { suppose as words } from "../../../../core/say/rooms/plan.ts";
import "./supposed-list.css";

/** What is supposed together, each to be taken away. */
export const SupposedList = (p: {
  readonly supposed: readonly string[];
  readonly setSupposed: (next: readonly string[]) => void;
}) => (
  <ul className="supposed-list">
    {p.supposed.map((phrase) => (
      <li key={phrase}>
        <span>{phrase}</span>
        <button
          type="button"
          aria-label={words.remove(phrase)}
          onClick={() => p.setSupposed(p.supposed.filter((each) => each !== phrase))}
        >
          ✕
        </button>
      </li>
    ))}
  </ul>
);
