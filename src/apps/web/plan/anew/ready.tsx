import { useEffect, useRef } from "react";
import type { Plan } from "../../../../core/plan/plan.ts";
import { anew as words } from "../../../../core/say/rooms/plan.ts";
import type { PlanLine } from "../../../server/plan-maker-messages.ts";
import { DoButton } from "../../item/do-button.tsx";
import { useWhyNot } from "../../item/use-why-not.ts";
import { TwoPlans } from "./two-plans.tsx";
import { WhatChanges } from "./what-changes.tsx";

interface ReadyProps {
  readonly line: PlanLine & { readonly step: "ready" };
  /** The plan now; null: there is none. */
  readonly plan: Plan | null;
  readonly accept: () => void;
  readonly leave: () => void;
}

/** A plan nobody works by yet, beside the plan now, with what it changes and why. */
export function Ready({ line, plan, accept, leave }: ReadyProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  const whyNot = useWhyNot("planAccepted");
  useEffect(() => {
    if (document.activeElement === document.body) heading.current?.focus(); // what was pressed is gone
  }, []);
  return (
    <>
      <h3 ref={heading} tabIndex={-1}>
        {words.ready}
      </h3>
      <p role="status">{words.readyHelp}</p>
      <TwoPlans plan={plan} fresh={line.gist} />
      {line.told && <WhatChanges told={line.told} />}
      <p className="anew-actions">
        <DoButton isMain whyNot={whyNot} act={accept}>
          {plan === null ? words.acceptFirst : words.accept}
        </DoButton>
        <button type="button" onClick={leave}>
          {words.leave}
        </button>
      </p>
      <p className="quiet">{words.acceptHelp}</p>
    </>
  );
}
