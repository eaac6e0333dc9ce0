import { left } from "../../../core/say/page.ts";

/** The general warning sign, ISO 7010 W001, beside its words: for rules that keep people from harm. */
export const SafetySign = () => (
  <p className="left-safety">
    <svg viewBox="0 0 40 36" aria-hidden="true">
      <path className="left-safety-field" d="M20 3 37 33H3z" />
      <path className="left-safety-mark" d="M20 13v10" />
      <circle className="left-safety-dot" cx="20" cy="28" r="2.2" />
    </svg>
    {left.safety}
  </p>
);
