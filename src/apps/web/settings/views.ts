import type { Now } from "../log/now.ts";

export interface SettingsView
  extends Pick<Now["house"], "name" | "start" | "end" | "wardLitres" | "limits" | "stations" | "place"> {
  readonly mayChangeLimits: boolean;
  readonly mayChangeSettings: boolean;
}

const settingsView = ({ house, me }: Now): SettingsView => {
  const { name, start, end, wardLitres, limits, stations, place } = house;
  return {
    ...{ name, start, end, wardLitres, limits, stations, place },
    mayChangeLimits: me.writes.includes("limitsChanged"),
    mayChangeSettings: me.writes.includes("settingsChanged"),
  };
};

export const settingsViews = { settings: settingsView } as const;
