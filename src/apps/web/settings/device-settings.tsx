import { useEffect, useState } from "react";
import { sayDay, sayNumber } from "../../../core/say/dates.ts";
import { settings } from "../../../core/say/rooms/settings.ts";
import { count, LOCALE } from "../frame/reader.ts";
import { Section } from "../frame/section.tsx";
import { leave } from "../link/tablet-link.ts";
import type { Status } from "../log/tablet.ts";

/** What this device is, what it keeps, and leaving. */
export function DeviceSettings({ status }: { readonly status: Status }) {
  const { me, waiting, elsewhere } = status;
  const megabytes = useMegabytesKept();
  const isKept = "serviceWorker" in navigator && navigator.serviceWorker.controller !== null;
  return (
    <Section id="device" heading={settings.device}>
      <p>
        {settings.deviceSays(me.device, me.role)}{" "}
        {me.person === null ? settings.shared : settings.person(me.person)}
      </p>
      <p>{settings.numbers(sayNumber(12_345.6, LOCALE, 1), sayDay(status.today, LOCALE))}</p>
      {megabytes !== null && <p>{settings.kept(sayNumber(megabytes, LOCALE, 1))}</p>}
      <p>{isKept ? settings.program.yes : settings.program.no}</p>
      <p className="quiet">{settings.install}</p>
      <p>{waiting > 0 ? settings.waiting(count(waiting)) : settings.nothingWaits}</p>
      {elsewhere.entries > 0 && (
        <p>
          {settings.elsewhere(count(elsewhere.entries), new Intl.ListFormat(LOCALE).format(elsewhere.names))}
        </p>
      )}
      <Leave waits={waiting > 0} />
    </Section>
  );
}

function useMegabytesKept(): number | null {
  const [megabytes, setMegabytes] = useState<number | null>(null);
  useEffect(() => {
    void navigator.storage?.estimate().then(({ usage = 0 }) => setMegabytes(usage / 1e6));
  }, []);
  return megabytes;
}

function Leave({ waits }: { readonly waits: boolean }) {
  const [asks, setAsks] = useState(false);
  return (
    <div className="settings-leave">
      <p className="quiet">{settings.leaveHelp}</p>
      {asks ? (
        <>
          {waits && <p role="alert">{settings.leaveWaits}</p>}
          <button type="button" onClick={() => void leave().then(() => location.reload())}>
            {settings.leaveYes}
          </button>
          <button type="button" onClick={() => setAsks(false)}>
            {settings.cancel}
          </button>
        </>
      ) : (
        <button type="button" onClick={() => setAsks(true)}>
          {settings.leave}
        </button>
      )}
    </div>
  );
}
