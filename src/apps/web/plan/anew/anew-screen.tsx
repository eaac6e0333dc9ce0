import { useState } from "react";
import { anew as words } from "../../../../core/say/rooms/plan.ts";
import { type Day, dayFrom } from "../../../../core/units/day.ts";
import { Section } from "../../frame/section.tsx";
import { DoButton } from "../../item/do-button.tsx";
import { useStatus } from "../../link/use-view.ts";
import { ProblemWords } from "../../walls/notice.tsx";
import { Typed } from "../suppose/fields.tsx";
import type { ShownPlan } from "../use-shown-plan.ts";
import type { PlanRoomView } from "../views.ts";
import { Accepted } from "./accepted.tsx";
import "./anew-screen.css";
import { MakingProgress } from "./making-progress.tsx";
import { Ready } from "./ready.tsx";
import { isEnd, useMaking } from "./use-making.ts";

interface AnewScreenProps {
  readonly view: PlanRoomView;
  readonly shown: ShownPlan;
  readonly today: Day;
  /** The plan that is shown is to be fetched again. */
  readonly taken: () => void;
}

/** A plan for a new morning: begun, watched, stopped, looked at beside the plan now, accepted or left. */
export function AnewScreen({ view, shown, today, taken }: AnewScreenProps) {
  const status = useStatus();
  const mayPlan = status?.me.role === "lead";
  const [morning, setMorning] = useState<string>(today);
  const [isLong, setIsLong] = useState(false);
  const { now, begin, stop, accept, leave } = useMaking(today, mayPlan);
  const { line } = now;
  const isFirst = shown.kind !== "open";
  const day = dayFrom(morning);
  const whyNot = !mayPlan ? words.notLead : status.line === "away" ? words.awayNow : null;
  const isGoing = line !== null && !isEnd(line);
  return (
    <Section
      id="anew"
      heading={isFirst ? words.first : words.heading}
      intro={isFirst ? words.firstIntro : words.intro}
    >
      {!isGoing && line?.step !== "ready" && line?.step !== "accepted" && (
        <div className="anew-begin">
          <Typed type="date" label={words.morning} value={morning} change={setMorning} />
          {!isFirst && <LongSearch isLong={isLong} change={setIsLong} />}
          <DoButton isMain whyNot={whyNot} act={() => day !== null && begin(day, isLong ? "long" : "short")}>
            {isFirst ? words.beginFirst : words.begin}
          </DoButton>
        </div>
      )}
      <div role="alert">
        {now.isAway && <p>{words.awayNow}</p>}
        {now.problem && <ProblemWords problem={now.problem} />}
        {line?.step === "problem" && <ProblemWords problem={line.problem} />}
      </div>
      {isGoing && <MakingProgress line={line} isStopping={now.isStopping} stop={stop} />}
      {line?.step === "ready" && (
        <Ready
          line={line}
          plan={isFirst ? null : shown.plan}
          accept={() => accept(line.plan)}
          leave={leave}
        />
      )}
      {line?.step === "accepted" && (
        <Accepted
          accepted={line.accepted}
          isLogged={view.accepted?.plan === line.accepted.plan}
          taken={taken}
          again={leave}
        />
      )}
    </Section>
  );
}

const LongSearch = (p: { readonly isLong: boolean; readonly change: (isLong: boolean) => void }) => (
  <label className="anew-long">
    <input type="checkbox" checked={p.isLong} onChange={({ target }) => p.change(target.checked)} />
    {words.long}
  </label>
);
