import { atWork as words } from "../../../core/say/rooms/at-work.ts";
import { count } from "../frame/reader.ts";
import { Empty, Section } from "../frame/section.tsx";
import { linkTo, type RoomName } from "../walls/where.ts";
import type { ReadyItems } from "./ready-items.ts";
import "./ready-list.css";

/** Items whose next act is done here. */
export function ReadyList(p: {
  readonly id: string;
  readonly room: RoomName;
  readonly ready: ReadyItems;
  readonly heading: string;
}) {
  const { ready } = p;
  if (ready.all === 0)
    return (
      <Section id={p.id} heading={p.heading}>
        <Empty title={words.noneReady} help={words.noneReadyHelp} />
      </Section>
    );
  return (
    <Section
      id={p.id}
      heading={p.heading}
      intro={words.readyHelp(String(ready.first.length), count(ready.all))}
    >
      <ul className="ready-list">
        {ready.first.map((item) => (
          <li key={item.id}>
            <a href={linkTo(p.room, "item", item.id)}>{item.id}</a>
            <span className="ready-list-title">{item.title}</span>
            <span className="quiet">
              {[item.act, words.dirt(item.dirt), item.isMust ? words.must : ""]
                .filter((each) => each !== "")
                .join(" · ")}
            </span>
          </li>
        ))}
      </ul>
    </Section>
  );
}
