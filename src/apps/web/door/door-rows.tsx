import { useWindowVirtualizer } from "@tanstack/react-virtual";
import { useLayoutEffect, useRef, useState } from "react";
import { door, sayWord } from "../../../core/say/rooms/door.ts";
import { linkTo } from "../walls/where.ts";
import "./door-rows.css";
import type { DoorRow } from "./list-view.ts";

const ROW_PX = 76;
const BEYOND = 12;

/** The list, of which only what is in sight stands in the page: it may have twenty thousand lines. */
export function DoorRows({ rows }: { readonly rows: readonly DoorRow[] }) {
  const list = useRef<HTMLUListElement>(null);
  const [top, setTop] = useState(0);
  useLayoutEffect(() => {
    const { y } = list.current?.getBoundingClientRect() ?? { y: 0 };
    setTop(y + scrollY);
  }, []);
  const sight = useWindowVirtualizer({
    ...{ count: rows.length, overscan: BEYOND, scrollMargin: top },
    estimateSize: () => ROW_PX,
    getItemKey: (at) => rows[at]?.id ?? at,
  });
  return (
    <ul className="door-rows" ref={list} style={{ blockSize: sight.getTotalSize() }}>
      {sight.getVirtualItems().map(({ key, index, start }) => {
        const row = rows[index];
        return (
          row && (
            <li
              key={key}
              ref={sight.measureElement}
              data-index={index}
              aria-setsize={rows.length}
              aria-posinset={index + 1}
              style={{ transform: `translateY(${start - top}px)` }}
            >
              <DoorLine row={row} />
            </li>
          )
        );
      })}
    </ul>
  );
}

const DoorLine = ({ row }: { readonly row: DoorRow }) => (
  <a className="door-line" href={linkTo("door", "item", row.id)}>
    <strong>{row.id}</strong>
    <span className="door-line-title">
      {row.title} <span className="quiet">{sayWord(row.format)}</span>
    </span>
    <span className="door-line-marks">
      <span data-destiny={row.destiny}>{door.marks[row.destiny]}</span>
      {row.isDisagreed && <span>{door.disagree}</span>}
      {row.priority === "must" && <span>{door.must}</span>}
    </span>
  </a>
);
