import { atWork } from "../../../core/say/rooms/at-work.ts";
import { bench } from "../../../core/say/rooms/bench.ts";
import { camera as words } from "../../../core/say/rooms/camera.ts";
import { ItemWork } from "../at-work/item-work.tsx";
import type { AtWork } from "../at-work/views.ts";
import { count } from "../frame/reader.ts";
import { Empty } from "../frame/section.tsx";
import { useView } from "../link/use-view.ts";
import { linkTo } from "../walls/where.ts";
import { useWriter } from "../walls/writer.tsx";
import { FrameRange } from "./frame-range.tsx";
import { LinkFiles } from "./link-files.tsx";
import { ShotList } from "./shot-list.tsx";
import { useTally } from "./use-tally.ts";
import type { CameraItem as CameraItemView } from "./views.ts";

/** One item under the camera. */
export function CameraItem({ id }: { readonly id: string }) {
  const { person } = useWriter();
  const view = useView("cameraItem", id);
  const at = useView("atWork", person);
  const isListed = useView("isListed", id);
  if (isListed === false)
    return (
      <>
        <h1>{id}</h1>
        <Empty title={bench.unknown(id)} help={bench.unknownHelp} />
        <a href={linkTo("camera")}>{atWork.back}</a>
      </>
    );
  if (view === null) return <h1>{id}</h1>;
  return <UnderCamera key={view.step?.act ?? ""} view={view} at={at} />;
}

function UnderCamera({ view, at }: { readonly view: CameraItemView; readonly at: AtWork | null }) {
  const { id, shots, step } = view;
  const tally = useTally(id, step?.act ?? "");
  const counted = shots.filter(({ wanted }) => wanted !== null);
  const wanted = counted.reduce((sum, shot) => sum + (shot.wanted ?? 0), 0);
  const have = counted.reduce((sum, shot) => sum + Math.min(shot.wanted ?? 0, tally.of(shot)), 0);
  const doubt = have < wanted ? words.notYet(count(have).text, count(wanted).text) : "";
  return (
    <ItemWork card={view} at={at} room="camera" doubt={doubt}>
      {step && (
        <>
          <ShotList shots={shots} tally={tally} />
          <FrameRange item={id} shots={shots} noted={view.noted} tally={tally} />
          <LinkFiles item={id} shots={shots} />
        </>
      )}
    </ItemWork>
  );
}
