import { type FormEvent, useState } from "react";
import { settings } from "../../../core/say/rooms/settings.ts";
import { Section } from "../frame/section.tsx";
import { useStatus } from "../link/use-view.ts";
import { useWrite } from "../link/use-write.ts";

/** Hours the freezer stood without power today. */
export function PowerCut() {
  const [hours, setHours] = useState("");
  const [fault, setFault] = useState("");
  const status = useStatus();
  const write = useWrite();
  if (!status?.me.writes.includes("powerCut")) return null;
  const { today } = status;
  async function keep(event: FormEvent): Promise<void> {
    event.preventDefault();
    const number = Number(hours.replace(",", "."));
    if (hours.trim() === "" || !Number.isFinite(number) || number < 0) return setFault(settings.notANumber);
    setFault("");
    const payload = { day: today, hours: number };
    if ((await write(settings.powerCutKept(hours), { kind: "powerCut", payload })) === null) setHours("");
  }
  return (
    <Section id="power-cut" heading={settings.powerCut} intro={settings.powerCutHelp}>
      <form className="settings-form" onSubmit={keep}>
        <label>
          {settings.hours}
          <input inputMode="decimal" value={hours} onChange={({ target }) => setHours(target.value)} />
        </label>
        <p role="alert">{fault}</p>
        <button type="submit">{settings.writeDown}</button>
      </form>
    </Section>
  );
}
