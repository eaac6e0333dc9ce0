import { atWork } from "../../../core/say/rooms/at-work.ts";
import { camera as words } from "../../../core/say/rooms/camera.ts";
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
import { CameraItem } from "./camera-item.tsx";

/** Imaging: covers that come first, the day in order, and one item at a time. */
export function CameraRoom({ open: [what, id] }: RoomProps) {
  return what === "item" && id !== undefined ? <CameraItem key={id} id={id} /> : <CameraDay />;
}

function CameraDay() {
  const { person } = useWriter();
  const view = useView("camera", person);
  const at = useView("atWork", person);
  if (view === null) return <h1>{ROOM_NAMES.camera}</h1>;
  return (
    <>
      <div>
        <h1>{ROOM_NAMES.camera}</h1>
        <p className="quiet">{words.intro}</p>
      </div>
      {at?.running && <Running running={at.running} item="" room="camera" />}
      <ItemFinder found={(item) => goTo("camera", "item", item)} />
      {at && view.covers.all > 0 && <Account at={at} />}
      <MyDay hasPlan={view.hasPlan} lines={view.lines} hasPerson={person !== null} />
      {view.covers.all > 0 && (
        <>
          <ReadyList id="covers" room="camera" ready={view.covers} heading={words.covers} />
          <p className="quiet">{words.coversHelp}</p>
        </>
      )}
      <ReadyList id="ready" room="camera" ready={view.ready} heading={atWork.ready} />
    </>
  );
}
