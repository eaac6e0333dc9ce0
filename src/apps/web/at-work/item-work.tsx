import { type ReactNode, useRef } from "react";
import { atWork as words } from "../../../core/say/rooms/at-work.ts";
import { bench } from "../../../core/say/rooms/bench.ts";
import { camera } from "../../../core/say/rooms/camera.ts";
import { ROOM_NAMES } from "../../../core/say/rooms/walls.ts";
import { AskAdviser } from "../item/ask-adviser.tsx";
import { ItemWhy } from "../item/item-why.tsx";
import { useDraft } from "../walls/use-draft.ts";
import { linkTo } from "../walls/where.ts";
import { Account } from "./account.tsx";
import { Begin } from "./begin.tsx";
import { CardFacts, StepCard } from "./card.tsx";
import "./item-work.css";
import { Running } from "./running.tsx";
import { StationChoice, StationGate } from "./station-choice.tsx";
import type { AtWork } from "./views.ts";
import type { WorkCard, WorkStep } from "./work-card.ts";

interface ItemWorkProps {
  readonly card: WorkCard;
  readonly at: AtWork | null;
  readonly room: "bench" | "camera";
  /** What speaks against calling it done yet; empty: nothing. */
  readonly doubt?: string;
  readonly children?: ReactNode;
}

/** One item at work: what comes now, the station it needs, the clock, and what its card says. */
export function ItemWork(p: ItemWorkProps) {
  const { card, at, room } = p;
  const title = useRef<HTMLHeadingElement>(null);
  return (
    <>
      <div>
        <p>
          <a className="item-work-back" href={linkTo(room)}>
            {words.back}
          </a>
        </p>
        <h1 ref={title} tabIndex={-1}>
          {card.id}
        </h1>
        <p className="item-work-title">{card.title}</p>
      </div>
      {card.step === null && at?.running && (
        <Running running={at.running} item={card.id} room={room} ended={() => title.current?.focus()} />
      )}
      {card.step === null ? (
        <NotHere card={card} room={room} />
      ) : (
        <Here key={card.step.act} {...p} step={card.step} ended={() => title.current?.focus()} />
      )}
      <AskAdviser item={card.id} />
      {p.children}
      <CardFacts card={card} />
      <ItemWhy item={card.id} />
    </>
  );
}

function Here(p: ItemWorkProps & { readonly step: WorkStep; readonly ended: () => void }) {
  const { card, step, at, room } = p;
  const [chosen, choose] = useDraft(`station ${step.act}`, "");
  const station = step.stations.find(({ id }) => id === chosen) ?? step.stations[0];
  const runs = at?.running ?? null;
  return (
    <>
      {runs && (
        <Running
          running={runs}
          item={card.id}
          room={room}
          station={station?.id ?? ""}
          doubt={p.doubt ?? ""}
          ended={p.ended}
        />
      )}
      {at && step.exposed && <Account at={at} />}
      {runs === null && (
        <>
          <StationChoice stations={step.stations} chosen={station?.id ?? ""} choose={choose} />
          {station?.before ? (
            <StationGate key={station.id} station={station} usualMinutes={step.wipeMinutes} />
          ) : (
            <Begin card={card} step={step} at={at} room={room === "bench" ? "Bench" : "Camera"} />
          )}
        </>
      )}
      <StepCard card={card} step={step} />
    </>
  );
}

/** Why nothing is done to it here now, and where it goes on. */
function NotHere({ card, room }: { readonly card: WorkCard; readonly room: "bench" | "camera" }) {
  const { standing } = card;
  switch (standing.kind) {
    case "here":
      return null;
    case "done":
      return <p className="item-work-refusal">{bench.isDone}</p>;
    case "at the Door":
      return (
        <Refusal says={bench.atDoor}>
          <a href={linkTo("door", "item", card.id)}>{bench.goThere(ROOM_NAMES.door)}</a>
        </Refusal>
      );
    case "set aside":
      return (
        <Refusal says={bench.stopped}>
          <ul>
            {standing.why.map((each) => (
              <li key={each}>{each}</li>
            ))}
          </ul>
        </Refusal>
      );
    case "elsewhere":
      return (
        <Refusal says={elsewhere(standing.act, room)}>
          <p>{bench.elsewhere(ROOM_NAMES[standing.room], standing.act)}</p>
          <a href={linkTo(standing.room, "item", card.id)}>{bench.goThere(ROOM_NAMES[standing.room])}</a>
        </Refusal>
      );
  }
}

function elsewhere(act: string, room: "bench" | "camera"): string {
  if (act === "release" || act === "admit") return room === "bench" ? bench.inWard : camera.notReleased;
  return room === "camera" && (act === "clean" || act === "wrap") ? camera.notClean : "";
}

const Refusal = (p: { readonly says: string; readonly children: ReactNode }) => (
  <section className="item-work-refusal" role="note">
    {p.says !== "" && (
      <p>
        <strong>{p.says}</strong>
      </p>
    )}
    {p.children}
  </section>
);
