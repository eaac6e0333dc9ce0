import { TIER_WORDS } from "../../../core/say/explain.ts";
import { why } from "../../../core/say/rooms/why.ts";
import { useView } from "../link/use-view.ts";
import "./item-why.css";

/** Why an item is treated as it is: what was seen, what follows, each rule with its reason and source. */
export function ItemWhy({ item }: { readonly item: string }) {
  const said = useView("itemWhy", item);
  if (said === null) return null;
  return (
    <details className="item-why">
      <summary>{why.title}</summary>
      <p>{said.outcome}</p>
      {said.parts.map((part) => (
        <section key={part.name} aria-label={part.name || said.title}>
          {part.name !== "" && <h3>{part.name}</h3>}
          <p className="quiet">{part.saw.join("; ")}</p>
          <ul>
            {part.follows.map((each) => (
              <li key={each.condition}>
                <strong>{each.condition}</strong> {each.because !== "" && why.because(each.because)}
              </li>
            ))}
          </ul>
          {part.tiers.map(({ tier, rules }) => (
            <section key={tier} aria-label={TIER_WORDS[tier]}>
              <h4>{TIER_WORDS[tier]}</h4>
              <ul>
                {rules.map((rule) => (
                  <li key={rule.rule}>
                    <strong>{rule.text}</strong> {rule.says.join(". ")}.{" "}
                    <span className="quiet">
                      {rule.why}. {rule.fromUnsure && why.unsure}{" "}
                      {why.source(rule.rule, rule.source, rule.trust)}
                    </span>
                  </li>
                ))}
              </ul>
            </section>
          ))}
        </section>
      ))}
    </details>
  );
}
