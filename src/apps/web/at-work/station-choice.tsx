import { useState } from "react";
import { sayNumber } from "../../../core/say/dates.ts";
import { atWork as words } from "../../../core/say/rooms/at-work.ts";
import { LOCALE } from "../frame/reader.ts";
import { DoButton } from "../item/do-button.tsx";
import { useWhyNot } from "../item/use-why-not.ts";
import { useStatus } from "../link/use-view.ts";
import { useWrite } from "../link/use-write.ts";
import { useWriter } from "../walls/writer.tsx";
import { clockMinute } from "./clock-minute.ts";
import { MinutesField, minutesIn } from "./minutes-field.tsx";
import "./station-choice.css";
import type { StationOpen } from "./stations-open.ts";

/** Where the work is done. */
export function StationChoice(p: {
  readonly stations: readonly StationOpen[];
  readonly chosen: string;
  readonly choose: (station: string) => void;
}) {
  const [only] = p.stations;
  if (p.stations.length < 2) return only ? <p>{words.at(only.id)}</p> : null;
  return (
    <fieldset className="station-choice">
      <legend>{words.station}</legend>
      {p.stations.map(({ id }) => (
        <label key={id}>
          <input type="radio" name="station" checked={id === p.chosen} onChange={() => p.choose(id)} />
          {id}
        </label>
      ))}
    </fieldset>
  );
}

/** What has to be wiped away before anything else comes to a station. */
export function StationGate(p: { readonly station: StationOpen; readonly usualMinutes: number }) {
  const { id, before } = p.station;
  const [minutes, setMinutes] = useState(sayNumber(p.usualMinutes, LOCALE));
  const [write, status, { person }] = [useWrite(), useStatus(), useWriter()];
  const mayNot = useWhyNot("stationWiped");
  const n = minutesIn(minutes);
  if (before === null) return null;
  function wiped(): void {
    if (status === null || person === null || n === null) return;
    const minute = Math.max(0, clockMinute() - Math.round(n));
    void write(words.wipedSaid(id), {
      kind: "stationWiped",
      payload: { station: id, day: status.today, minute, person, minutes: n },
    });
  }
  return (
    <section className="station-gate" aria-label={words.gate(id)}>
      <h2>{words.gate(id)}</h2>
      <p>{words.gateWhy(before.item, before.dirt)}</p>
      <ol className="station-gate-how">
        {words.gateHow.map((each) => (
          <li key={each}>{each}</li>
        ))}
      </ol>
      <MinutesField label={words.gateMinutes} value={minutes} change={setMinutes} />
      <DoButton isMain whyNot={mayNot ?? (n === null ? words.badMinutes : null)} act={wiped}>
        {words.wiped(id)}
      </DoButton>
    </section>
  );
}
