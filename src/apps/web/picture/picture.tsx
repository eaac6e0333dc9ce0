import type { Plan } from "../../../core/plan/plan.ts";
import { picture } from "../../../core/say/page.ts";
import { Section } from "../frame/section.tsx";
import "./picture.css";

/** The whole plan on one sheet, black on white as it is printed; a click shows it large. */
export const Picture = ({ plan }: { plan: Plan }) => (
  <Section id="picture" heading={picture.heading} intro={picture.intro}>
    <a className="picture" href="picture.svg">
      <img src="picture.svg" alt={picture.alternative(plan.campaign)} width="1123" height="794" />
      <span>{picture.large}</span>
    </a>
  </Section>
);
