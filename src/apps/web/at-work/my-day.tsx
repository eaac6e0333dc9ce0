import { atWork as words } from "../../../core/say/rooms/at-work.ts";
import { Empty, Section } from "../frame/section.tsx";
import type { DayLine } from "./day-lines.ts";
import { DayList } from "./day-list.tsx";

/** The day of whoever works here, or why there is none. */
export function MyDay(p: {
  readonly hasPlan: boolean;
  readonly lines: readonly DayLine[] | null;
  readonly hasPerson: boolean;
}) {
  return (
    <Section id="day" heading={words.day} {...(p.lines === null ? {} : { intro: words.dayHelp })}>
      {p.lines !== null ? (
        <DayList lines={p.lines} />
      ) : !p.hasPlan ? (
        <Empty title={words.noPlan} help={words.noPlanHelp} />
      ) : !p.hasPerson ? (
        <Empty title={words.nobody} help={words.nobodyHelp} />
      ) : (
        <Empty title={words.nothingPlanned} help={words.nothingPlannedHelp} />
      )}
    </Section>
  );
}
