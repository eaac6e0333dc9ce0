import { sayAct } from "../../../core/say/conditions.ts";
import { sayMinutes } from "../../../core/say/dates.ts";
import { sayClock } from "../../../core/say/day-sheet.ts";
import { atWork as words } from "../../../core/say/rooms/at-work.ts";
import { LOCALE } from "../frame/reader.ts";
import { DoButton } from "../item/do-button.tsx";
import { useWhyNot } from "../item/use-why-not.ts";
import "./begin.css";
import { useStart } from "./use-work.ts";
import type { AccountShown, AtWork } from "./views.ts";
import type { WorkCard, WorkStep } from "./work-card.ts";

/** One tap that begins the step, or why it cannot be begun now.   @param room where the item is taken */
export function Begin(p: {
  readonly card: WorkCard;
  readonly step: WorkStep;
  readonly at: AtWork | null;
  readonly room: "Bench" | "Camera";
}) {
  const { card, step, at } = p;
  const start = useStart();
  const mayNot = useWhyNot("sessionStarted", "itemMoved");
  const why = mayNot ?? runningWhy(at) ?? (step.exposed ? nearWhy(at) : null);
  const left = at?.account ? Math.min(at.account.leftToday, at.account.maskLeft ?? 1440) : 1440;
  const isLong = why === null && step.exposed && step.usualMinutes > left;
  return (
    <div className="begin">
      <DoButton isMain whyNot={why} act={() => void start(card.id, step.act, step.exposed, p.room)}>
        {words.start(sayAct(step.act))}
      </DoButton>
      {isLong && <p>{words.longer(sayMinutes(step.usualMinutes, LOCALE), sayMinutes(left, LOCALE))}</p>}
      {step.exposed && <p className="begin-alone">{words.alone}</p>}
    </div>
  );
}

const runningWhy = (at: AtWork | null): string | null =>
  at?.running ? words.isRunning(at.running.item) : null;

/** Whatever the cause is, clean work is said as that alone. */
function nearWhy(at: AtWork | null): string | null {
  if (at === null) return null;
  if (at.account === null) return words.stops["clean work"];
  const { stop } = at.account;
  return stop === null ? null : stop === "mask" ? maskWhy(at.account) : words.stops[stop];
}

const maskWhy = ({ breakUntil, limits }: AccountShown): string =>
  breakUntil === null
    ? words.breakDue(sayMinutes(limits.maskBreakMinutes, LOCALE))
    : words.breakUntil(sayClock(breakUntil, LOCALE));
