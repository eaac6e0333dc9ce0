import { sayDay } from "../../../core/say/dates.ts";
import { plan as words } from "../../../core/say/rooms/plan.ts";
import { type Day, daysBetween } from "../../../core/units/day.ts";
import { count, LOCALE } from "../frame/reader.ts";
import { Empty } from "../frame/section.tsx";
import { LeftItems } from "../left/left-items.tsx";
import { useStatus, useView } from "../link/use-view.ts";
import { useDraft } from "../walls/use-draft.ts";
import type { RoomProps } from "../walls/where.ts";
import { linkTo } from "../walls/where.ts";
import { AnewScreen } from "./anew/anew-screen.tsx";
import { FinishScreen } from "./finish-screen.tsx";
import { PapersScreen } from "./papers-screen.tsx";
import "./plan-room.css";
import { DaysScreen } from "./roster/days-screen.tsx";
import { SupposeScreen } from "./suppose/suppose-screen.tsx";
import { type ShownPlan, useShownPlan } from "./use-shown-plan.ts";
import type { AcceptedShown, PlanRoomView } from "./views.ts";

const PARTS = ["finish", "days", "suppose", "anew", "left", "papers"] as const;
type Part = (typeof PARTS)[number];

/** The plan people work by, what would change it, and the way to a new one. */
export function PlanRoom({ open }: RoomProps) {
  const view = useView("planRoom");
  const status = useStatus();
  const { shown, again } = useShownPlan(view?.accepted?.plan ?? "");
  const [supposed, setSupposed] = useDraft<readonly string[]>("plan supposed", []);
  if (view === null || status === null) return null;
  const part = PARTS.find((each) => each === open[0]) ?? "finish";
  return (
    <>
      <div className="plan-head">
        <h1>{words.title}</h1>
        <MadeFor shown={shown} accepted={view.accepted} today={status.today} />
      </div>
      <PlanParts open={part} />
      {part === "anew" ? (
        <AnewScreen view={view} shown={shown} today={status.today} taken={again} />
      ) : shown.kind !== "open" ? (
        <NoPlan shown={shown} mayPlan={status.me.role === "lead"} again={again} />
      ) : (
        <PartOf part={part} shown={shown} view={view} supposed={supposed} setSupposed={setSupposed} />
      )}
    </>
  );
}

interface PartProps {
  readonly part: Exclude<Part, "anew">;
  readonly shown: ShownPlan & { readonly kind: "open" };
  readonly view: PlanRoomView;
  readonly supposed: readonly string[];
  readonly setSupposed: (next: readonly string[]) => void;
}

function PartOf({ part, shown, view, supposed, setSupposed }: PartProps) {
  switch (part) {
    case "finish":
      return <FinishScreen plan={shown.plan} />;
    case "days":
      return <DaysScreen roster={shown.roster} view={view} supposed={supposed} setSupposed={setSupposed} />;
    case "suppose":
      return <SupposeScreen plan={shown.plan} view={view} supposed={supposed} setSupposed={setSupposed} />;
    case "left":
      return <LeftItems plan={shown.plan} />;
    case "papers":
      return <PapersScreen plan={shown.plan} papers={shown.papers} />;
  }
}

const PlanParts = ({ open }: { readonly open: Part }) => (
  <nav className="plan-parts" aria-label={words.screens}>
    <ul>
      {PARTS.map((part) => (
        <li key={part}>
          <a href={linkTo("plan", part)} {...(part === open ? { "aria-current": "page" } : {})}>
            {words.parts[part]}
          </a>
        </li>
      ))}
    </ul>
  </nav>
);

/** Which plan this is, how old, and whether this device sees it as it is now. */
function MadeFor(p: {
  readonly shown: ShownPlan;
  readonly accepted: AcceptedShown | null;
  readonly today: Day;
}) {
  const { shown, accepted, today } = p;
  if (shown.kind !== "open") return null;
  const age = daysBetween(shown.plan.planFrom, today);
  const isAccepted = accepted?.from === shown.plan.planFrom;
  return (
    <>
      <p className="quiet">
        {words.madeFor(sayDay(shown.plan.planFrom, LOCALE, "full"))}{" "}
        {isAccepted && accepted.by !== "" && words.acceptedBy(accepted.by)}
      </p>
      {age > 0 && <p>{words.older(count(age))}</p>}
      {shown.isKept && <p role="status">{words.kept}</p>}
    </>
  );
}

function NoPlan(p: { readonly shown: ShownPlan; readonly mayPlan: boolean; readonly again: () => void }) {
  switch (p.shown.kind) {
    case "fetching":
      return <p role="status">{words.fetching}</p>;
    case "none":
      return (
        <>
          <Empty title={words.none} help={words.noneHelp} />
          <p>{p.mayPlan ? <a href={linkTo("plan", "anew")}>{words.noneLead}</a> : words.noneOther}</p>
        </>
      );
    case "closed":
      return <Empty title={words.closed} help={words.closedHelp} />;
    default:
      return (
        <>
          <Empty title={words.failed} help={words.failedHelp} />
          <p>
            <button type="button" onClick={p.again}>
              {words.again}
            </button>
          </p>
        </>
      );
  }
}
