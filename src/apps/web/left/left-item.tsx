import type { Left } from "../../../core/plan/plan.ts";
import { sayDo } from "../../../core/say/actions.ts";
import { left } from "../../../core/say/page.ts";

export const LeftItem = ({ item }: { item: Left }) => (
  <li className="left-item">
    <p>
      <strong>{item.item}</strong> {item.title} {item.must && <em>· {left.must}</em>}
    </p>
    <p>{item.why}</p>
    {item.askWho.length > 0 && <p>{item.askWho.map(sayDo).join(" · ")}</p>}
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
