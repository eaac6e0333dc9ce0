import { door } from "../../../core/say/rooms/door.ts";
import { count } from "../frame/reader.ts";
import { Section } from "../frame/section.tsx";
import "./follows-shown.css";
import type { Follows } from "./item-view.ts";

/** What follows from the answers so far. */
export const FollowsShown = ({ follows }: { readonly follows: Follows }) => (
  <Section id="follows" heading={door.follows}>
    <div aria-live="polite" className="follows">
      <p>
        <strong>{follows.outcome}</strong>
      </p>
      {follows.rest !== "" && <p>{door.rest(follows.rest)}</p>}
      <h3>{door.conditions}</h3>
      {follows.conditions.length === 0 ? (
        <p className="quiet">{door.noConditions}</p>
      ) : (
        <ul>
          {follows.conditions.map(({ says, because }) => (
            <li key={says}>
              {says} {because !== "" && <span className="quiet">({because})</span>}
            </li>
          ))}
        </ul>
      )}
      {follows.whom.length > 0 && (
        <>
          <h3>{door.whom}</h3>
          <ul>
            {follows.whom.map((each) => (
              <li key={each}>{each}</li>
            ))}
          </ul>
        </>
      )}
      {follows.steps.length > 0 && (
        <>
          <h3>{door.route}</h3>
          <ol className="follows-steps">
            {follows.steps.map(({ room, act, minutes }) => (
              <li key={`${room} ${act}`}>{door.step(room, act, count(minutes))}</li>
            ))}
          </ol>
        </>
      )}
    </div>
  </Section>
);
