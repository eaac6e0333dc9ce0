import { settings } from "../../../core/say/rooms/settings.ts";
import { Section } from "../frame/section.tsx";
import { giveUp, sendAgain } from "../link/tablet-link.ts";
import type { Status } from "../log/tablet.ts";
import { ProblemWords } from "../walls/notice.tsx";

/** Entries that the server would not keep, each with why and what can be done. */
export function Refused({ entries }: { readonly entries: Status["refused"] }) {
  if (entries.length === 0) return null;
  return (
    <Section id="refused" heading={settings.refused} intro={settings.refusedHelp}>
      <ul className="settings-refused">
        {entries.map(({ id, kind, problem }) => (
          <li key={id}>
            <p>
              <strong>{settings.refusedWhat(kind)}</strong>
            </p>
            <ProblemWords problem={problem} />
            <button type="button" onClick={() => void sendAgain(id)}>
              {settings.tryAgain}
            </button>
            <button type="button" onClick={() => void giveUp(id)}>
              {settings.giveUp}
            </button>
          </li>
        ))}
      </ul>
    </Section>
  );
}
