import { door } from "../../../core/say/rooms/door.ts";
import { Signs } from "../item/sign.tsx";
import "./dangers.css";
import type { Danger } from "./dangers-view.ts";
import type { DoorItem } from "./item-view.ts";

/** What can hurt somebody, before all else. */
export function Dangers({ item }: { readonly item: DoorItem }) {
  const { follows, cleanWork } = item;
  if (follows.dangers.length === 0 && cleanWork === null) return null;
  return (
    <section className="dangers" aria-label={door.dangers}>
      <h2>{door.dangers}</h2>
      {cleanWork !== null && (
        <p role="alert" className="dangers-clean">
          {door.cleanWork(cleanWork)}
        </p>
      )}
      <DangerList dangers={follows.dangers} />
      {follows.peopleRules.length > 0 && (
        <>
          <h3>{door.peopleRules}</h3>
          <ul className="dangers-rules">
            {follows.peopleRules.map((each) => (
              <li key={each}>{each}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

export const DangerList = ({ dangers }: { readonly dangers: readonly Danger[] }) => (
  <ul className="danger-list">
    {dangers.map(({ holds, isDoubtful, signs }) => (
      <li key={holds}>
        <Signs codes={signs} />
        <p>
          <strong>{isDoubtful ? door.maybe : door.holds}</strong> {holds}
        </p>
      </li>
    ))}
  </ul>
);
