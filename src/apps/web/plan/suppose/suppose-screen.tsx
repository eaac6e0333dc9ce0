import type { Plan } from "../../../../core/plan/plan.ts";
import { days as dayWords, suppose as words } from "../../../../core/say/rooms/plan.ts";
import { Empty, Section } from "../../frame/section.tsx";
import { DoButton } from "../../item/do-button.tsx";
import { useStatus } from "../../link/use-view.ts";
import { useWarmWhatIf } from "../use-warm-what-if.ts";
import type { PlanRoomView } from "../views.ts";
import { MakeTrue } from "./make-true.tsx";
import { SupposeForm } from "./suppose-form.tsx";
import { SupposedAnswer } from "./supposed-answer.tsx";
import { SupposedList } from "./supposed-list.tsx";
import { useSupposing } from "./use-supposing.ts";

interface SupposeScreenProps {
  readonly plan: Plan;
  readonly view: PlanRoomView;
  readonly supposed: readonly string[];
  readonly setSupposed: (next: readonly string[]) => void;
}

/** What would be different, what becomes of the plan then, and making it true. */
export function SupposeScreen({ view, supposed, setSupposed }: SupposeScreenProps) {
  const status = useStatus();
  const { now, ask, stop } = useSupposing();
  useWarmWhatIf(status?.me.role === "lead");
  const isAnswered = now.asked.length > 0 && now.asked.join("; ") === supposed.join("; ");
  const whyNot = status?.me.role !== "lead" ? words.notLead : status.line === "away" ? words.awayNow : null;
  return (
    <>
      <Section id="suppose" heading={words.heading} intro={words.intro}>
        {supposed.length === 0 ? (
          <Empty title={words.none} help={words.noneHelp} />
        ) : (
          <>
            <h3>{words.list}</h3>
            <SupposedList supposed={supposed} setSupposed={setSupposed} />
            <p>
              <DoButton isMain whyNot={whyNot} act={() => ask(supposed)}>
                {isAnswered ? words.askAgain : words.ask}
              </DoButton>{" "}
              <button type="button" onClick={() => setSupposed([])}>
                {words.clear}
              </button>
            </p>
          </>
        )}
        <SupposeForm
          view={view}
          add={(said) => !supposed.includes(said) && setSupposed([...supposed, said])}
        />
        <p className="quiet">{dayWords.caution}</p>
      </Section>
      {isAnswered && <SupposedAnswer now={now} stop={stop} />}
      {isAnswered && now.proved !== null && now.changes.length > 0 && (
        <MakeTrue changes={now.changes} said={now.supposed} made={() => setSupposed([])} />
      )}
    </>
  );
}
