import { settings } from "../../../core/say/rooms/settings.ts";
import { ROOM_NAMES } from "../../../core/say/rooms/walls.ts";
import { Section } from "../frame/section.tsx";
import { useStatus, useView } from "../link/use-view.ts";
import { DeviceSettings } from "./device-settings.tsx";
import { HouseSettings } from "./house-settings.tsx";
import { LimitRow } from "./limit-row.tsx";
import { PowerCut } from "./power-cut.tsx";
import { Refused } from "./refused.tsx";
import "./settings.css";

/** Limits with their sources, the campaign's days, this device, and what it could not send. */
export function SettingsRoom() {
  const view = useView("settings");
  const status = useStatus();
  if (view === null || status === null) return null;
  const names = Object.keys(view.limits) as (keyof typeof view.limits)[]; // its own names
  return (
    <>
      <h1>{ROOM_NAMES.settings}</h1>
      <Refused entries={status.refused} />
      <Section id="limits" heading={settings.limits} intro={settings.limitsHelp}>
        <ul className="settings-limits">
          {names.map((name) => (
            <LimitRow key={name} name={name} limits={view.limits} mayChange={view.mayChangeLimits} />
          ))}
        </ul>
      </Section>
      <HouseSettings view={view} />
      <PowerCut />
      <DeviceSettings status={status} />
      <Section id="cautions" heading={settings.cautions}>
        <ul className="settings-cautions">
          {settings.cautionLines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </Section>
    </>
  );
}
