import type { Left } from "../../../core/plan/plan.ts";
import { sayDo } from "../../../core/say/actions.ts";
import { left } from "../../../core/say/page.ts";
import { SafetySign } from "./safety-sign.tsx";

export const LeftItem = ({ item }: { item: Left }) => (
  <li className="left-item">
    <p className="left-title">
      <span className="left-number">{item.item}</span> {item.title}{" "}
      {item.must && <span className="left-must">{left.must}</span>}
    </p>
    <p>{item.why}</p>
    {item.reasons.some(({ tier }) => tier === 1) && <SafetySign />}
    {item.askWho.length > 0 && <p className="left-ask">{item.askWho.map(sayDo).join(" · ")}</p>}
    {item.reasons.length > 0 && (
      <ul className="quiet">
        {item.reasons.map((reason) => (
          <li key={reason.rule}>
            {left.rule(reason.rule)}: {reason.text} {left.source(reason.source, reason.sourceStatus)}
            {reason.fromUnsure && `; ${left.unsure}`}
          </li>
        ))}
      </ul>
    )}
  </li>
);
