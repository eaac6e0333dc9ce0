import type { Plan } from "../../../core/plan/plan.ts";
import { sayDay, sayPercent } from "../../../core/say/dates.ts";
import { answer } from "../../../core/say/page.ts";
import { saySpread } from "../../../core/say/risk.ts";
import { count, LOCALE } from "../frame/reader.ts";
import { Empty, Section } from "../frame/section.tsx";
import "./answer.css";
import { FinishLine } from "./finish-line.tsx";

/** When it will be finished: a range, what is boxed by the end, and how good the plan is proved to be. */
export function Answer({ plan, leftLink = "#left" }: { plan: Plan; leftLink?: string }) {
  const { finish, proof } = plan;
  if (plan.routed === 0)
    return (
      <Section id="finish" heading={answer.heading}>
        <Empty title={answer.empty} help={answer.emptyHelp} />
      </Section>
    );
  const end = sayDay(plan.end, LOCALE);
  return (
    <Section id="finish" heading={answer.heading}>
      <p className="answer-headline">
        {finish.p50 ? answer.headline(sayDay(finish.p50, LOCALE)) : answer.headlineLate(end)}
      </p>
      <dl className="answer-range">
        {(["p10", "p50", "p90"] as const).map((share) => (
          <div key={share}>
            <dt>
              {answer.likely[share]} <span className="quiet">{answer.likelyHelp[share]}</span>
            </dt>
            <dd>{finish[share] ? sayDay(finish[share], LOCALE) : answer.laterThan(end)}</dd>
          </div>
        ))}
      </dl>
      <FinishLine plan={plan} />
      <p className="answer-boxed">
        {answer.boxed(
          count(finish.boxed.p10).text,
          count(finish.boxed.p50).text,
          count(finish.boxed.p90).text,
          count(plan.routed),
        )}{" "}
        {plan.left.length > 0 && <a href={leftLink}>{answer.without(count(plan.left.length))}</a>}
      </p>
      <p>{saySpread(plan, end)}</p>
      <p className="quiet">{answer.proof(sayPercent(proof.itemGap, LOCALE, 1), count(finish.draws).text)}</p>
    </Section>
  );
}
