import { door, sayAnswer } from "../../../core/say/rooms/door.ts";
import { count } from "../frame/reader.ts";
import { useStatus } from "../link/use-view.ts";
import { useWrite } from "../link/use-write.ts";
import { useWriter } from "../walls/writer.tsx";
import type { AskedTest } from "./ask-view.ts";

/** One answer to be written down. */
export interface Answer {
  readonly test: AskedTest;
  readonly answer: string | number;
}

/** Writes answers about an item or a part of it, as whoever works here found them now. */
export function useAnswer(item: string): (part: string, ...answers: readonly Answer[]) => Promise<void> {
  const write = useWrite();
  const status = useStatus();
  const { person } = useWriter();
  return async (part, ...answers) => {
    const [first] = answers;
    if (status === null || first === undefined) return;
    const said =
      answers.length === 1
        ? door.said(first.test.short, sayAnswer(first.answer))
        : door.saidSeveral(count(answers.length));
    const clock = new Date();
    const found = {
      ...{ item, part, day: status.today, minute: clock.getHours() * 60 + clock.getMinutes() },
      ...(person === null ? {} : { by: person }),
    };
    await write(
      said,
      ...answers.map(({ test, answer }) => ({
        kind: "findingRecorded" as const,
        payload: { ...found, test: test.id, answer },
      })),
    );
  };
}
