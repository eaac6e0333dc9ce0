import {
  answer,
  binds,
  floor,
  frame,
  left,
  orders,
  papers,
  people,
  picture,
  sheets,
} from "../../../core/say/page.ts";
import "./contents.css";

const PARTS = [
  ["finish", answer.nav],
  ["rooms", floor.nav],
  ["binds", binds.nav],
  ["picture", picture.nav],
  ["people", people.nav],
  ["left", left.nav],
  ["orders", orders.nav],
  ["sheets", sheets.nav],
  ["papers", papers.nav],
] as const;

export const Contents = () => (
  <nav className="contents" aria-label={frame.contents}>
    <ul>
      {PARTS.map(([id, words]) => (
        <li key={id}>
          <a href={`#${id}`}>{words}</a>
        </li>
      ))}
    </ul>
  </nav>
);
