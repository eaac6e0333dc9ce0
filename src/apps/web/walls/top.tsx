import { sayDay } from "../../../core/say/dates.ts";
import { walls } from "../../../core/say/rooms/walls.ts";
import { count, LOCALE } from "../frame/reader.ts";
import type { Status } from "../log/tablet.ts";
import type { WallsView } from "./views.ts";
import "./top.css";
import { NewerVersion } from "./newer-version.tsx";
import { linkTo } from "./where.ts";
import { WriterChoice } from "./writer-choice.tsx";

interface TopProps {
  readonly view: WallsView;
  readonly status: Status;
  /** Moves the focus into the room. */
  readonly skip: () => void;
}

/** Which campaign, which day, who works here, and whether all is sent. */
export const Top = ({ view, status, skip }: TopProps) => (
  <header className="top">
    <a
      className="skip"
      href={location.hash}
      onClick={(event) => {
        event.preventDefault();
        skip();
      }}
    >
      {walls.skip}
    </a>
    {status.me.pretendDay !== null && (
      <p className="top-pretend">{walls.pretend(sayDay(status.me.pretendDay, LOCALE))}</p>
    )}
    <NewerVersion />
    <p className="top-campaign">
      <strong>{view.campaign}</strong>
      <span className="quiet">{sayDay(view.today, LOCALE, "full")}</span>
    </p>
    <WriterChoice people={view.people} />
    <Line status={status} />
  </header>
);

/** Never by colour alone: a sign, and words. */
const Line = ({ status }: { readonly status: Status }) => (
  <div className="top-line" role="status" aria-live="polite" data-line={status.line}>
    <p>
      <span aria-hidden="true">{status.line === "open" ? "●" : "○"}</span>{" "}
      {status.line === "open" ? walls.connected : walls.away}
    </p>
    {status.rowsToCome > 0 && <p className="quiet">{walls.deciding(count(status.rowsToCome))}</p>}
    <p className="quiet" data-testid="outbox">
      {status.waiting + status.pictures === 0 ? walls.allSent : waitingWords(status)}
    </p>
    {status.refused.length > 0 && (
      <p>
        {walls.refused(count(status.refused.length))}{" "}
        <a href={linkTo("settings", "refused")}>{walls.refusedSee}</a>
      </p>
    )}
  </div>
);

const waitingWords = ({ waiting, pictures }: Status): string =>
  [
    ...(waiting > 0 ? [walls.waiting(count(waiting))] : []),
    ...(pictures > 0 ? [walls.pictures(count(pictures))] : []),
  ].join(", ");
