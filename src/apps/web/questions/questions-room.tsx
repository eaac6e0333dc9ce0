import { questions as words } from "../../../core/say/rooms/questions.ts";
import { ROOM_NAMES } from "../../../core/say/rooms/walls.ts";
import { count } from "../frame/reader.ts";
import { Empty, Section } from "../frame/section.tsx";
import { AskAdviser } from "../item/ask-adviser.tsx";
import { useView } from "../link/use-view.ts";
import { QuestionCard } from "./question-card.tsx";
import "./questions.css";

/** What the team asks the adviser, and what was answered. */
export function QuestionsRoom() {
  const view = useView("questions");
  if (view === null) return null;
  const { open, answered, mayAnswer } = view;
  return (
    <>
      <div>
        <h1>{ROOM_NAMES.questions}</h1>
        <p className="quiet">{words.intro}</p>
      </div>
      <Section id="questions-open" heading={words.open(count(open.length))}>
        {open.length === 0 && <Empty title={words.noneOpen} help={words.noneOpenHelp} />}
        {open.length > 0 && !mayAnswer && <p className="quiet">{words.mayNotAnswer}</p>}
        <ol className="questions">
          {open.map((question) => (
            <QuestionCard key={question.name} question={question} mayAnswer={mayAnswer} />
          ))}
        </ol>
      </Section>
      {view.mayAsk && <AskAdviser />}
      <Section id="questions-answered" heading={words.answered}>
        {answered.length === 0 && <Empty title={words.noneAnswered} help={words.noneAnsweredHelp} />}
        <ol className="questions">
          {answered.map((question) => (
            <QuestionCard key={question.name} question={question} mayAnswer={mayAnswer} />
          ))}
        </ol>
      </Section>
    </>
  );
}
