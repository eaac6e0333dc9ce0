import { useMemo, useRef, useState } from "react";
import { ToggleButton, ToggleButtonGroup } from "react-aria-components";
import { sayDayRange } from "../../../../core/say/dates.ts";
import { suppose as supposeWords, days as words } from "../../../../core/say/rooms/plan.ts";
import { isMirrored } from "../../frame/direction.ts";
import { LOCALE } from "../../frame/reader.ts";
import { Section } from "../../frame/section.tsx";
import { useStatus, useView } from "../../link/use-view.ts";
import { linkTo } from "../../walls/where.ts";
import { SupposedList } from "../suppose/supposed-list.tsx";
import type { Roster } from "../use-shown-plan.ts";
import { useWarmWhatIf } from "../use-warm-what-if.ts";
import type { PlanRoomView } from "../views.ts";
import { type Calendar, calendarOf, dayAt, lastDay, placeOf, rowsOf } from "./calendar.ts";
import "./days-screen.css";
import { RosterPicture } from "./roster-picture.tsx";
import { RosterTable } from "./roster-table.tsx";
import { WEEK } from "./sizes.ts";
import { useWeeksInSight } from "./use-weeks-in-sight.ts";

interface DaysScreenProps {
  readonly roster: Roster;
  readonly view: PlanRoomView;
  readonly supposed: readonly string[];
  readonly setSupposed: (next: readonly string[]) => void;
}

/** Everybody's days, as a picture to point at or as a table; and what was supposed by pointing. */
export function DaysScreen({ roster, supposed, setSupposed }: DaysScreenProps) {
  const status = useStatus();
  const mayPlan = status?.me.role === "lead";
  useWarmWhatIf(mayPlan);
  const calendar = useMemo(() => calendarOf(roster), [roster]);
  const still = useView("planDays", calendar.first, lastDay(calendar));
  const rows = useMemo(
    () => (still === null ? null : rowsOf(calendar, roster, still)),
    [calendar, roster, still],
  );
  const [shown, setShown] = useState<"picture" | "table">("picture");
  const [tableWeek, setTableWeek] = useState(0);
  const [said, setSaid] = useState("");
  const box = useRef<HTMLDivElement>(null);
  const sight = useWeeksInSight(box, calendar.weeks, rows !== null && shown === "picture");
  const week = shown === "picture" ? Math.min(sight.at, calendar.weeks - 1) : tableWeek;
  if (status === null || rows === null) return null;
  function toWeek(next: number): void {
    const at = Math.min(calendar.weeks - 1, Math.max(0, next));
    setTableWeek(at);
    box.current?.scrollTo({ left: (isMirrored() ? -1 : 1) * at * WEEK });
  }
  function suppose(phrase: string): void {
    if (!supposed.includes(phrase)) setSupposed([...supposed, phrase]);
    setSaid(words.added(phrase));
  }
  return (
    <>
      <Section id="days" heading={words.heading} intro={words.intro}>
        <div className="days-screen-controls">
          <WeekChoice calendar={calendar} week={week} toWeek={toWeek} />
          <ToggleButtonGroup
            className="days-screen-view"
            aria-label={words.view}
            selectionMode="single"
            disallowEmptySelection
            selectedKeys={[shown]}
            onSelectionChange={(keys) => {
              setTableWeek(week);
              setShown(keys.has("table") ? "table" : "picture");
            }}
          >
            <ToggleButton id="picture">{words.picture}</ToggleButton>
            <ToggleButton id="table">{words.table}</ToggleButton>
          </ToggleButtonGroup>
        </div>
        {shown === "picture" ? (
          <RosterPicture
            calendar={calendar}
            rows={rows}
            box={box}
            sight={sight}
            today={placeOf(calendar, status.today)}
            suppose={mayPlan ? suppose : null}
          />
        ) : (
          <RosterTable calendar={calendar} rows={rows} week={week} />
        )}
        {mayPlan && (
          <p id="roster-how" className="quiet">
            {words.how}
          </p>
        )}
        <p className="unseen" aria-live="polite">
          {said}
        </p>
      </Section>
      {mayPlan && supposed.length > 0 && (
        <Section id="supposed" heading={supposeWords.list}>
          <SupposedList supposed={supposed} setSupposed={setSupposed} />
          <p>
            <a href={linkTo("plan", "suppose")}>{supposeWords.ask}</a>
          </p>
        </Section>
      )}
    </>
  );
}

function WeekChoice(p: {
  readonly calendar: Calendar;
  readonly week: number;
  readonly toWeek: (week: number) => void;
}) {
  const weeks = Array.from({ length: p.calendar.weeks }, (_, n) => n);
  return (
    <div className="days-screen-week">
      <button type="button" onClick={() => p.toWeek(p.week - 1)}>
        {words.earlier}
      </button>
      <label>
        <span className="unseen">{words.toWeek}</span>
        <select value={p.week} onChange={({ target }) => p.toWeek(Number(target.value))}>
          {weeks.map((week) => (
            <option key={week} value={week}>
              {sayDayRange(dayAt(p.calendar, week * 7), dayAt(p.calendar, week * 7 + 6), LOCALE)}
            </option>
          ))}
        </select>
      </label>
      <button type="button" onClick={() => p.toWeek(p.week + 1)}>
        {words.later}
      </button>
    </div>
  );
}
