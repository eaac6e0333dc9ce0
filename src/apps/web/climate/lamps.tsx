import { climate as words } from "../../../core/say/rooms/climate.ts";
import { Section } from "../frame/section.tsx";
import type { LampView } from "./views.ts";

/** The three lamps: each a disc, full when lit, and in words what lights it and how it stands. */
export const Lamps = ({ lamps }: { readonly lamps: readonly LampView[] }) => (
  <Section id="lamps" heading={words.lamps}>
    <ul className="climate-lamps">
      {lamps.map(({ name, lights, stands, is }) => (
        <li key={name} data-is={is}>
          <svg viewBox="0 0 24 24" aria-hidden="true">
            <circle cx="12" cy="12" r="9" />
          </svg>
          <p>
            <strong>
              {name}: {stands}.
            </strong>{" "}
            <span className="quiet">{lights}</span>
          </p>
        </li>
      ))}
    </ul>
  </Section>
);
