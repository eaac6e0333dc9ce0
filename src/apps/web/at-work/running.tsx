import { useEffect, useRef } from "react";
import { sayDay, sayMinutes } from "../../../core/say/dates.ts";
import { sayClock } from "../../../core/say/day-sheet.ts";
import { HOUSING_NAMES } from "../../../core/say/housing.ts";
import { atWork as words } from "../../../core/say/rooms/at-work.ts";
import { LOCALE } from "../frame/reader.ts";
import { DoButton } from "../item/do-button.tsx";
import { useWhyNot } from "../item/use-why-not.ts";
import { useDraft } from "../walls/use-draft.ts";
import { linkTo, type RoomName } from "../walls/where.ts";
import { MinutesField, minutesIn } from "./minutes-field.tsx";
import "./running.css";
import { type Ending, useEnd } from "./use-work.ts";
import type { RunningShown } from "./views.ts";

/** Wrappers, as the log names them. */
const WRAPPERS = [
  ["jacket", HOUSING_NAMES.jacket],
  ["four_flap", HOUSING_NAMES["four-flap"]],
  ["two_strip", HOUSING_NAMES["two-strip"]],
  ["phase_box", HOUSING_NAMES["phase-box"]],
] as const;

const KIND_OF = {
  wrap: "itemWrapped",
  covers: "coversPictured",
  image: "actDone",
  clean: "actDone",
} as const;

interface RunningProps {
  readonly running: RunningShown;
  /** What is open here. */
  readonly item: string;
  readonly room: RoomName;
  /** Where the work is done; empty: no station was chosen. */
  readonly station?: string;
  /** What speaks against calling it done yet; empty: nothing. */
  readonly doubt?: string;
  /** Called once the end is written. */
  readonly ended?: () => void;
}

/** The work that runs: since when, how long, and its end. It stands in the log, and so a reload does not lose it. */
export function Running(p: RunningProps) {
  const { running } = p;
  const head = useRef<HTMLHeadingElement>(null);
  // begun here a moment ago: the focus goes where the work goes on
  useEffect(() => {
    if (document.activeElement === document.body) head.current?.focus();
  }, []);
  const since = sayClock(running.minute, LOCALE);
  return (
    <section className="running" aria-label={words.now}>
      <h2 ref={head} tabIndex={-1}>
        {words.doing(running.act, running.item)}
      </h2>
      <p>
        {running.isOld ? (
          words.sinceDay(sayDay(running.day, LOCALE, "short"), since)
        ) : (
          <>
            <strong className="running-minutes">{words.soFar(sayMinutes(running.minutes, LOCALE))}</strong>{" "}
            {words.since(since)}
          </>
        )}
        {running.satBefore > 0 && ` · ${words.satBefore(sayMinutes(running.satBefore, LOCALE))}`}
      </p>
      {running.item !== "" && running.item !== p.item && roomOf(running) !== null && (
        <p>
          <a href={linkTo(roomOf(running) ?? p.room, "item", running.item)}>{words.open}</a>
        </p>
      )}
      <EndForm key={`${running.day} ${running.minute}`} {...p} />
    </section>
  );
}

const roomOf = ({ act }: RunningShown): RoomName | null =>
  act === "wrap" || act === "clean" ? "bench" : act === "covers" || act === "image" ? "camera" : null;

/** Typed minutes as text; empty: as the clock has it. */
interface Typed {
  readonly minutes: string;
  readonly mask: string;
  readonly wrapper: string;
}
const AS_THE_CLOCK: Typed = { minutes: "", mask: "", wrapper: "jacket" };

function EndForm({ running, item, station = "", doubt = "", ended }: RunningProps) {
  const end = useEnd(running);
  const [typed, setTyped, forget] = useDraft(
    `end ${running.day} ${running.minute} ${running.act}`,
    AS_THE_CLOCK,
  );
  const { act, exposed, isOld } = running;
  const clock = isOld ? "" : String(Math.max(1, running.minutes));
  const [minutes, mask] = [typed.minutes || clock, typed.mask || typed.minutes || clock];
  const mayNotEnd = useWhyNot("sessionWorked");
  const kind = KIND_OF[act as keyof typeof KIND_OF];
  const mayNotDo = useWhyNot("sessionWorked", kind ?? "sessionWorked");
  const isHere = kind !== undefined && running.item === item && item !== "";
  async function write(how: Ending["how"]): Promise<void> {
    const [n, inMask] = [minutesIn(minutes), exposed ? minutesIn(mask) : 0];
    if (how !== "never" && (n === null || inMask === null)) return;
    const ending = { how, minutes: n ?? 0, maskMinutes: inMask ?? 0, wrapper: typed.wrapper, station };
    if (!(await end(ending))) return;
    forget();
    ended?.();
  }
  const bad = minutesIn(minutes) === null || (exposed && minutesIn(mask) === null) ? words.badMinutes : null;
  return (
    <div className="running-end">
      <MinutesField
        label={words.minutes}
        help={words.minutesHelp}
        value={minutes}
        change={(value) => setTyped({ ...typed, minutes: value })}
      />
      {exposed && (
        <MinutesField
          label={words.maskMinutes}
          value={mask}
          change={(value) => setTyped({ ...typed, mask: value })}
        />
      )}
      {act === "wrap" && isHere && (
        <label className="running-wrapper">
          {words.wrapper}
          <select
            value={typed.wrapper}
            onChange={({ target }) => setTyped({ ...typed, wrapper: target.value })}
          >
            {WRAPPERS.map(([name, says]) => (
              <option key={name} value={name}>
                {says}
              </option>
            ))}
          </select>
        </label>
      )}
      {doubt !== "" && isHere && <p role="status">{doubt}</p>}
      <div className="running-acts">
        {isHere && (
          <DoButton isMain whyNot={mayNotDo ?? bad} act={() => void write("done")}>
            {words.done}
          </DoButton>
        )}
        <DoButton whyNot={mayNotEnd ?? bad} act={() => void write("pause")}>
          {isHere ? words.pause : words.end}
        </DoButton>
        <DoButton whyNot={mayNotEnd} act={() => void write("never")}>
          {words.never}
        </DoButton>
      </div>
    </div>
  );
}
