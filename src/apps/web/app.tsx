import { lazy, Suspense, useCallback, useEffect, useState } from "react";
import { LANGUAGE } from "../../core/say/page.ts";
import { walls } from "../../core/say/rooms/walls.ts";
import { codeInAddress } from "./entrance/code-in-address.ts";
import { AwayScreen, EntranceScreen } from "./entrance/entrance-screen.tsx";
import { enter, pair } from "./link/tablet-link.ts";
import type { Entrance } from "./log/tablet.ts";
import { House } from "./walls/house.tsx";
import { comeBack } from "./walls/where.ts";

const PlanAlone = lazy(async () => ({ default: (await import("./page.tsx")).Page }));

/** The way in: the rooms for a device that was let in, the door for one that was not, the plan alone where there is no log. */
export function App() {
  const [entrance, setEntrance] = useState<Entrance | null>(null);
  const code = useState(codeInAddress)[0]; // taken out of the address before anybody goes anywhere
  const tryToEnter = useCallback(async () => {
    const entered = await enter(code !== null);
    const paired = code !== null && entered.kind === "door" ? await pair(code) : null; // who is in keeps their name
    setEntrance(paired?.ok ? paired.value : entered);
  }, [code]);
  useEffect(() => {
    document.documentElement.lang = LANGUAGE.code;
    document.documentElement.dir = LANGUAGE.direction;
    comeBack();
    void tryToEnter();
  }, [tryToEnter]);
  const tryAgain = useCallback(() => void tryToEnter(), [tryToEnter]);
  const opening = (
    <p className="page-note" role="status">
      {walls.opening}
    </p>
  );
  switch (entrance?.kind) {
    case undefined:
      return opening;
    case "in":
      return <House />;
    case "door":
      return <EntranceScreen entered={setEntrance} />;
    case "plan alone":
      return (
        <Suspense fallback={opening}>
          <PlanAlone />
        </Suspense>
      );
    case "away":
      return <AwayScreen again={tryAgain} />;
  }
}
