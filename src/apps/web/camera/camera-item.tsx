import { atWork } from "../../../core/say/rooms/at-work.ts";
import { bench } from "../../../core/say/rooms/bench.ts";
import { camera as words } from "../../../core/say/rooms/camera.ts";
import { ItemWork } from "../at-work/item-work.tsx";
import { count } from "../frame/reader.ts";
import { Empty } from "../frame/section.tsx";
import { useView } from "../link/use-view.ts";
import { linkTo } from "../walls/where.ts";
import { useWriter } from "../walls/writer.tsx";
import { FrameRange } from "./frame-range.tsx";
import { LinkFiles } from "./link-files.tsx";
import { ShotList } from "./shot-list.tsx";
import { useTally } from "./use-tally.ts";

/** One item under the camera. */
export function CameraItem({ id }: { readonly id: string }) {
  const { person } = useWriter();
  const view = useView("cameraItem", id);
  const at = useView("atWork", person);
  const isListed = useView("isListed", id);
  const tally = useTally(id, view?.step?.act ?? "");
  if (isListed === false)
    return (
      <>
        <h1>{id}</h1>
        <Empty title={bench.unknown(id)} help={bench.unknownHelp} />
        <a href={linkTo("camera")}>{atWork.back}</a>
      </>
    );
  if (view === null) return <h1>{id}</h1>;
  const wanted = view.shots.reduce((sum, shot) => sum + (shot.wanted ?? 0), 0);
  const have = view.shots.reduce(
    (sum, shot) => sum + (shot.wanted === null ? 0 : Math.min(shot.wanted, tally.of(shot))),
    0,
  );
  const doubt = have < wanted ? words.notYet(count(have).text, count(wanted).text) : "";
  return (
    <ItemWork card={view} at={at} room="camera" doubt={doubt}>
      {view.step && (
        <>
          <ShotList shots={view.shots} tally={tally} />
          <FrameRange item={id} shots={view.shots} noted={view.noted} tally={tally} />
          <LinkFiles item={id} shots={view.shots} />
        </>
      )}
    </ItemWork>
  );
}
