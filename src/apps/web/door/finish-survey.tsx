import { useEffect, useState } from "react";
import { sayDay } from "../../../core/say/dates.ts";
import { door } from "../../../core/say/rooms/door.ts";
import type { Day } from "../../../core/units/day.ts";
import { count, LOCALE } from "../frame/reader.ts";
import { Section } from "../frame/section.tsx";
import { DoButton } from "../item/do-button.tsx";
import { useWhyNot } from "../item/use-why-not.ts";
import { useStatus } from "../link/use-view.ts";
import { useWrite } from "../link/use-write.ts";
import { useDraft } from "../walls/use-draft.ts";
import { useWriter } from "../walls/writer.tsx";
import "./finish-survey.css";
import type { DoorItem } from "./item-view.ts";
import { minutesSince } from "./minutes-since.ts";

/** The survey's minutes, booked on the person who made it; counted from when the item was opened here. */
export function FinishSurvey({ item }: { readonly item: DoorItem }) {
  const { id, surveyed } = item;
  const [began, setBegan, forget] = useDraft<number>(`survey began ${id}`, 0);
  const [typed, setTyped] = useState<string | null>(null);
  const [near, setNear] = useState<boolean | null>(null);
  const status = useStatus();
  const write = useWrite();
  const { person } = useWriter();
  const whyNot = useWhyNot("actDone");
  useEffect(() => {
    if (minutesSince(began, Date.now()) === null) setBegan(Date.now());
  }, [began, setBegan]);
  const minutes = typed === null ? (minutesSince(began, Date.now()) ?? 1) : Number(typed);
  const exposed = near ?? item.isExposed;
  async function finish(): Promise<void> {
    if (status === null || person === null) return;
    const problem = await write(door.saidFinished(id, count(minutes)), {
      kind: "actDone",
      payload: { item: id, part: "", act: "survey", day: status.today, person, minutes, exposed },
    });
    if (problem !== null) return;
    forget();
    setTyped(null);
    setNear(null);
  }
  return (
    <Section id="finish" heading={door.finish} intro={door.finishHelp}>
      {surveyed !== null && (
        <p role="status">
          {door.surveyed(surveyed.by, sayDay(surveyed.day as Day, LOCALE), count(surveyed.minutes))}
        </p>
      )}
      <div className="finish-survey">
        <label>
          {door.minutes}
          <input
            type="number"
            min={1}
            max={480}
            value={typed ?? String(minutes)}
            onChange={({ target }) => setTyped(target.value)}
          />
        </label>
        <label className="finish-survey-near">
          <input type="checkbox" checked={exposed} onChange={({ target }) => setNear(target.checked)} />
          {door.exposed}
        </label>
        <DoButton
          isMain
          whyNot={whyNot ?? (minutes >= 1 && minutes <= 480 ? null : door.minutesOut)}
          act={() => void finish()}
        >
          {door.finished}
        </DoButton>
      </div>
    </Section>
  );
}
