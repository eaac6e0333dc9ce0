import { useId } from "react";
import { sayAct } from "../../../core/say/conditions.ts";
import { bench as words } from "../../../core/say/rooms/bench.ts";
import { Signs } from "../item/sign.tsx";
import "./card.css";
import type { WorkCard, WorkStep } from "./work-card.ts";

/** What the step is: with what, in what, and where to stop. */
export function StepCard({ card, step }: { readonly card: WorkCard; readonly step: WorkStep }) {
  const heading = useId();
  const wear = [...new Set(step.rows.flatMap(({ protection }) => protection))];
  return (
    <section className="card" aria-labelledby={heading}>
      <h2 id={heading}>{sayAct(step.act)}</h2>
      {card.signs.length > 0 && <Signs codes={card.signs} />}
      {step.exposed && <p className="card-exposed">{words.exposed}</p>}
      {wear.length > 0 && (
        <p>
          <strong>{words.wear}:</strong> {wear.join(", ")}
        </p>
      )}
      <CardPoints title={words.before} points={card.lookBefore} />
      <ol className="card-steps">
        {step.rows.map((row) => (
          <li key={row.act}>
            {step.rows.length > 1 && <h3>{row.act}</h3>}
            <p className="quiet">{words.minutes(row.minutes)}</p>
            {row.methods.length > 0 && (
              <>
                <p>{words.methods}:</p>
                <ol className="card-methods">
                  {row.methods.map((method) => (
                    <li key={method}>{method}</li>
                  ))}
                </ol>
              </>
            )}
            {row.uses.length > 0 && (
              <p>
                {words.uses}: {row.uses.join(", ")}
              </p>
            )}
          </li>
        ))}
      </ol>
      <div className="card-bans">
        <CardPoints title={words.stop} points={card.stops} isStrong />
        <CardPoints title={words.never} points={card.never} isStrong />
        <CardPoints
          title={words.notYet}
          points={card.notYet.map(({ action, until }) => words.until(action, until))}
        />
      </div>
      <CardPoints title={words.after} points={card.lookAfter} />
      <p className="quiet">{card.then.length === 0 ? words.last : words.then(card.then)}</p>
    </section>
  );
}

/** What the item is, has, and whom to ask. */
export const CardFacts = ({ card }: { readonly card: WorkCard }) => (
  <section className="card" aria-labelledby="card-facts">
    <h2 id="card-facts">{words.about}</h2>
    <p className="quiet">{[card.format, card.where].filter((each) => each !== "").join(" · ")}</p>
    {card.custodianRule !== "" && (
      <p>
        <strong>{words.custodian}:</strong> {card.custodianRule}
      </p>
    )}
    <CardPoints title={words.found} points={card.conditions} />
    <CardPoints title={words.parts} points={card.parts} />
    <CardPoints title={words.ask} points={card.askWho} />
  </section>
);

const CardPoints = (p: { title: string; points: readonly string[]; isStrong?: boolean }) =>
  p.points.length === 0 ? null : (
    <div className="card-points" data-strong={p.isStrong ?? false}>
      <h3>{p.title}</h3>
      <ul>
        {p.points.map((each) => (
          <li key={each}>{each}</li>
        ))}
      </ul>
    </div>
  );
