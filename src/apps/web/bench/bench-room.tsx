import { atWork } from "../../../core/say/rooms/at-work.ts";
import { bench as words } from "../../../core/say/rooms/bench.ts";
import { ROOM_NAMES } from "../../../core/say/rooms/walls.ts";
import { Account } from "../at-work/account.tsx";
import { MyDay } from "../at-work/my-day.tsx";
import { ReadyList } from "../at-work/ready-list.tsx";
import { Running } from "../at-work/running.tsx";
import { ItemFinder } from "../item/item-finder.tsx";
import { useView } from "../link/use-view.ts";
import type { RoomProps } from "../walls/where.ts";
import { goTo } from "../walls/where.ts";
import { useWriter } from "../walls/writer.tsx";
import { BenchItem } from "./bench-item.tsx";

/** Cleaning and wrapping: a day in order, and one item at a time. */
export function BenchRoom({ open: [what, id] }: RoomProps) {
  return what === "item" && id !== undefined ? <BenchItem key={id} id={id} /> : <BenchDay />;
}

function BenchDay() {
  const { person } = useWriter();
  const view = useView("bench", person);
  const at = useView("atWork", person);
  if (view === null) return <h1>{ROOM_NAMES.bench}</h1>;
  return (
    <>
      <div>
        <h1>{ROOM_NAMES.bench}</h1>
        <p className="quiet">{words.intro}</p>
      </div>
      {at?.running && <Running running={at.running} item="" room="bench" />}
      <ItemFinder found={(item) => goTo("bench", "item", item)} />
      {at && <Account at={at} />}
      <MyDay hasPlan={view.hasPlan} lines={view.lines} hasPerson={person !== null} />
      <ReadyList id="ready" room="bench" ready={view.ready} heading={atWork.ready} />
    </>
  );
}
