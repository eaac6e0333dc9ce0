import { expect, test } from "vitest";
import { questionViews } from "../../../../src/apps/web/questions/views.ts";
import { aTablet, listed, TODAY } from "../a-now.ts";

const { questions, nextQuestionName } = questionViews;
const ask = (tablet: ReturnType<typeof aTablet>, item = "M-1") => {
  const question = nextQuestionName(tablet.now());
  tablet.write("questionAsked", { question, item, text: "May the seal be lifted?" });
  return question;
};

test("a question waits with its pictures, and once it is answered it stands among the answered", () => {
  const tablet = aTablet();
  tablet.write("itemListed", listed("M-1", { format: "sealed_document" }));
  const question = ask(tablet);
  const picture = "ab".repeat(32);
  tablet.write("pictureTaken", { item: "M-1", part: "", day: TODAY, shot: question, picture });
  expect(questions(tablet.now()).open).toMatchObject([{ name: question, item: "M-1", pictures: [picture] }]);
  tablet.write("questionAnswered", { question, item: "M-1", text: "No. Box it as it is." });
  const { open, answered } = questions(tablet.now());
  expect(open).toEqual([]);
  expect(answered[0]?.answers.map(({ text }) => text)).toEqual(["No. Box it as it is."]);
});

test("two devices that ask without reaching each other never give two questions one name", () => {
  const [one, other] = [aTablet("bench"), aTablet("ward")];
  expect(ask(one)).not.toBe(ask(other));
});

test("a question taken back waits no longer, and its name is not given again", () => {
  const tablet = aTablet();
  const question = nextQuestionName(tablet.now());
  const event = tablet.write("questionAsked", { question, text: "Which gel?" });
  tablet.write("eventCorrected", { event: event.id, about: [`question:${question}`] });
  expect(questions(tablet.now()).open).toEqual([]);
  expect(nextQuestionName(tablet.now())).not.toBe(question);
});
