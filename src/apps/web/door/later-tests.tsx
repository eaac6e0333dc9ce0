import { door } from "../../../core/say/rooms/door.ts";
import { count } from "../frame/reader.ts";
import { Fold } from "../item/fold.tsx";
import { useWhyNot } from "../item/use-why-not.ts";
import { AnswerButtons } from "./answer-buttons.tsx";
import type { LaterTest } from "./ask-view.ts";
import { useAnswer } from "./use-answer.ts";

/** Tests that take hours or another pair of hands: noted, and written down when their answer is there. */
export function LaterTests(p: { readonly item: string; readonly later: readonly LaterTest[] }) {
  const answer = useAnswer(p.item);
  const whyNot = useWhyNot("findingRecorded");
  if (p.later.length === 0) return null;
  return (
    <section aria-label={door.later}>
      <h3>{door.later}</h3>
      <ul>
        {p.later.map(({ part, test, hours, who }) => (
          <li key={`${part} ${test.id}`}>
            <Fold
              words={hours > 0 ? door.laterHours(test.short, count(hours)) : door.laterWho(test.short, who)}
            >
              <p>{test.question}</p>
              <p className="quiet">{door.how(test.how)}</p>
              <AnswerButtons
                choices={test.choices}
                whyNot={whyNot}
                answer={(given) => void answer(part, { test, answer: given })}
              />
            </Fold>
          </li>
        ))}
      </ul>
    </section>
  );
}
