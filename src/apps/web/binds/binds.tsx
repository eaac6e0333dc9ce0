import type { Plan } from "../../../core/plan/plan.ts";
import { sayPercent } from "../../../core/say/dates.ts";
import { binds } from "../../../core/say/page.ts";
import { LOCALE } from "../frame/reader.ts";
import { Empty, Section } from "../frame/section.tsx";
import "./binds.css";

const SHOWN = 6;

/** What holds the date, the costliest first, each with how much of it is used. */
export const Binds = ({ plan }: { plan: Plan }) => (
  <Section id="binds" heading={binds.heading} intro={binds.intro}>
    {plan.binds.length === 0 ? (
      <Empty title={binds.empty} help={binds.emptyHelp} />
    ) : (
      <ol className="binds">
        {plan.binds.slice(0, SHOWN).map((bind) => (
          <li key={bind.resource}>
            <p>{bind.sentence}</p>
            {bind.load > 0 && <Load load={bind.load} />}
          </li>
        ))}
      </ol>
    )}
  </Section>
);

/** How much of a resource is used, as a bar and in words. */
const Load = ({ load }: { load: number }) => (
  <>
    <svg viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
      <rect className="binds-all" width="100" height="6" />
      <rect className="binds-used" width={100 * load} height="6" />
    </svg>
    <p className="quiet">{binds.loadValue(sayPercent(load, LOCALE))}</p>
  </>
);
