import { ask, questions as words } from "../../../core/say/rooms/questions.ts";
import { LOCALE } from "../frame/reader.ts";
import { ItemWhy } from "../item/item-why.tsx";
import { KeptPicture } from "../item/kept-picture.tsx";
import { linkTo } from "../walls/where.ts";
import { AnswerForm } from "./answer-form.tsx";
import type { QuestionView } from "./views.ts";

const WHEN = new Intl.DateTimeFormat(LOCALE, { dateStyle: "medium", timeStyle: "short" });

/** One question: the item, what is asked, its pictures, what was answered. */
export function QuestionCard(p: { readonly question: QuestionView; readonly mayAnswer: boolean }) {
  const { name, item, title, text, by, at, pictures, answers } = p.question;
  return (
    <li className="question">
      <h3>
        {item === null ? words.general : <a href={linkTo("door", "item", item)}>{item}</a>}{" "}
        <span className="question-title">{title}</span>
      </h3>
      <p className="question-text">{text}</p>
      <p className="quiet">
        {name} · {words.asked(by, WHEN.format(at))}
      </p>
      {pictures.length > 0 && (
        <ul className="question-pictures">
          {pictures.map((each, index) => (
            <li key={each}>
              <KeptPicture picture={each} says={ask.pictureN(index + 1)} />
            </li>
          ))}
        </ul>
      )}
      {answers.map((answer) => (
        <div key={answer.at} className="question-answer">
          <p className="question-text">{answer.text}</p>
          <p className="quiet">{words.answeredBy(answer.by, WHEN.format(answer.at))}</p>
        </div>
      ))}
      {item !== null && <ItemWhy item={item} />}
      {p.mayAnswer && <AnswerForm name={name} item={item} isFirst={answers.length === 0} />}
    </li>
  );
}
