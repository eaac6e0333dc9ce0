import type { Plan } from "../../../core/plan/plan.ts";
import { floor } from "../../../core/say/page.ts";
import { count } from "../frame/reader.ts";
import { Empty, Section } from "../frame/section.tsx";
import "./floor.css";
import { Room } from "./room.tsx";

/** The five rooms as a floor that is walked from the Door to the Shelf. */
export const Floor = ({ plan }: { plan: Plan }) => (
  <Section id="rooms" heading={floor.heading} intro={floor.intro}>
    {plan.rooms.length === 0 ? (
      <Empty title={floor.empty} help={floor.emptyHelp} />
    ) : (
      <ol className="floor">
        {plan.rooms.map((room) => (
          <Room key={room.room} room={room} now={count(room.now).text} toCome={count(room.toCome).text} />
        ))}
      </ol>
    )}
  </Section>
);
