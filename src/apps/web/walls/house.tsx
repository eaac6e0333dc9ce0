import { lazy, Suspense, useEffect, useRef } from "react";
import { ROOM_NAMES, walls } from "../../../core/say/rooms/walls.ts";
import { EntranceScreen } from "../entrance/entrance-screen.tsx";
import { useStatus, useView } from "../link/use-view.ts";
import "./house.css";
import { NoticeProvider } from "./notice.tsx";
import { RoomFault } from "./room-fault.tsx";
import { RoomsNav } from "./rooms-nav.tsx";
import { Top } from "./top.tsx";
import { type RoomName, type RoomProps, useWhere } from "./where.ts";
import { WriterProvider } from "./writer.tsx";

const ROOMS: Readonly<Record<RoomName, React.ComponentType<RoomProps>>> = {
  today: lazy(async () => ({ default: (await import("../today/today-room.tsx")).TodayRoom })),
  door: lazy(async () => ({ default: (await import("../door/door-room.tsx")).DoorRoom })),
  ward: lazy(async () => ({ default: (await import("../ward/ward-room.tsx")).WardRoom })),
  bench: lazy(async () => ({ default: (await import("../bench/bench-room.tsx")).BenchRoom })),
  camera: lazy(async () => ({ default: (await import("../camera/camera-room.tsx")).CameraRoom })),
  shelf: lazy(async () => ({ default: (await import("../shelf/shelf-room.tsx")).ShelfRoom })),
  plan: lazy(async () => ({ default: (await import("../plan/plan-room.tsx")).PlanRoom })),
  stores: lazy(async () => ({ default: (await import("../stores-room/stores-room.tsx")).StoresRoom })),
  people: lazy(async () => ({ default: (await import("../people-room/people-room.tsx")).PeopleRoom })),
  climate: lazy(async () => ({ default: (await import("../climate/climate-room.tsx")).ClimateRoom })),
  questions: lazy(async () => ({ default: (await import("../questions/questions-room.tsx")).QuestionsRoom })),
  settings: lazy(async () => ({ default: (await import("../settings/settings-room.tsx")).SettingsRoom })),
};

/** The house: what stands around every room, and the room somebody is in. */
export const House = () => (
  <WriterProvider>
    <NoticeProvider>
      <Walls />
    </NoticeProvider>
  </WriterProvider>
);

function Walls() {
  const status = useStatus();
  const view = useView("walls");
  const where = useWhere();
  const place = useRef<HTMLElement>(null);
  const name = ROOM_NAMES[where.room];
  const first = useRef(true);
  useEffect(() => {
    document.title = walls.here(name, view?.campaign ?? "");
  }, [name, view?.campaign]);
  // the focus moves whenever the room changes
  useEffect(() => {
    if (!first.current) place.current?.focus();
    first.current = false;
  }, [where.room]);
  if (status === null || view === null)
    return (
      <p className="page-note" role="status">
        {walls.openingCampaign}
      </p>
    );
  if (status.isOut) return <EntranceScreen entered={() => {}} />;
  const Room = ROOMS[where.room];
  return (
    <div className="house">
      <Top view={view} status={status} skip={() => place.current?.focus()} />
      <RoomsNav room={where.room} />
      <main className="house-room" ref={place} tabIndex={-1} aria-label={name}>
        <RoomFault where={`${where.room}/${where.open.join("/")}`}>
          <Suspense fallback={<p role="status">{walls.opening}</p>}>
            <Room open={where.open} />
          </Suspense>
        </RoomFault>
      </main>
      <footer className="house-foot">{walls.caution}</footer>
    </div>
  );
}
