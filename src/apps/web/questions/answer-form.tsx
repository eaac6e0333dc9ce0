import { useId } from "react";
import { ask, questions as words } from "../../../core/say/rooms/questions.ts";
import { DoButton } from "../item/do-button.tsx";
import { useWhyNot } from "../item/use-why-not.ts";
import { useWrite } from "../link/use-write.ts";
import { useDraft } from "../walls/use-draft.ts";

/** The adviser's answer, typed; it survives a reload until it is written. */
export function AnswerForm(p: {
  readonly name: string;
  /** Null: the question is about no item. */
  readonly item: string | null;
  readonly isFirst: boolean;
}) {
  const [text, setText, forget] = useDraft(`answer ${p.name}`, "");
  const write = useWrite();
  const mayNot = useWhyNot("questionAnswered");
  const help = useId();
  async function answer(): Promise<void> {
    const about = p.item === null ? {} : { item: p.item };
    const payload = { question: p.name, text: text.trim(), ...about };
    if ((await write(words.saidAnswered(p.name), { kind: "questionAnswered", payload })) === null) forget();
  }
  return (
    <div className="answer-form">
      <label>
        {words.yourAnswer(p.name)}
        <textarea
          rows={3}
          maxLength={2000}
          value={text}
          aria-describedby={help}
          onChange={({ target }) => setText(target.value)}
        />
      </label>
      <p className="quiet" id={help}>
        {words.answerHelp}
      </p>
      <DoButton
        isMain={p.isFirst}
        whyNot={mayNot ?? (text.trim() === "" ? ask.emptyAnswer : null)}
        act={() => void answer()}
      >
        {p.isFirst ? words.answer : words.answerMore}
      </DoButton>
    </div>
  );
}
