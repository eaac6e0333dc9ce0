import { useEffect, useState } from "react";
import { Workbox } from "workbox-window";
import { walls } from "../../../core/say/rooms/walls.ts";

/** Keeps the program itself on this device, and offers a newer one when it is there; never while somebody works unasked. */
export function NewerVersion() {
  const [waiting, setWaiting] = useState<Workbox | null>(null);
  useEffect(() => {
    if (!("serviceWorker" in navigator)) return;
    const workbox = new Workbox("./sw.js");
    workbox.addEventListener("waiting", () => setWaiting(workbox));
    workbox.addEventListener("controlling", ({ isUpdate }) => {
      if (isUpdate) location.reload();
    });
    workbox.register().catch(() => {}); // a certificate the device does not trust: it works on while it is open
  }, []);
  if (waiting === null) return null;
  return (
    <p role="status">
      {walls.newer}{" "}
      <button type="button" onClick={() => waiting.messageSkipWaiting()}>
        {walls.newerTake}
      </button>
    </p>
  );
}
