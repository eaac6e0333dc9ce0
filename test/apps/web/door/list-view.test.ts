import { expect, test } from "vitest";
import { doorList } from "../../../../src/apps/web/door/list-view.ts";
import { tagsView } from "../../../../src/apps/web/door/tags-view.ts";
import { aTablet, listed, TODAY } from "../a-now.ts";

const MAP = { format: "map_plan", support: "paper_rag", media: ["ink_carbon"] };

test("an item that nobody has looked at waits at the Door, and one that was moved to the Shelf does not", () => {
  const tablet = aTablet();
  tablet.write("itemListed", listed("M-1", MAP));
  tablet.write("itemListed", listed("M-2", MAP));
  tablet.write("itemMoved", { item: "M-2", room: "Shelf", day: TODAY });
  const { rows, counts } = doorList(tablet.now(), "survey", "");
  expect(rows.map(({ id }) => id)).toEqual(["M-1"]);
  expect(counts).toMatchObject({ all: 1, survey: 1, ready: 0, settle: 0 });
});

test("the list is searched by number and by title, in large letters or small", () => {
  const tablet = aTablet();
  tablet.write("itemListed", { ...listed("M-1", MAP), title: "Two maps of the harbour" });
  tablet.write("itemListed", listed("M-2", MAP));
  expect(doorList(tablet.now(), "all", "HARBOUR").rows.map(({ id }) => id)).toEqual(["M-1"]);
  expect(doorList(tablet.now(), "all", "m-2").rows.map(({ id }) => id)).toEqual(["M-2"]);
});

test("two answers that contradict bring an item into the list wherever it stands", () => {
  const [one, other] = [aTablet("one"), aTablet("two")];
  const base = one.write("itemListed", listed("M-1", MAP));
  const moved = one.write("itemMoved", { item: "M-1", room: "Camera", day: TODAY });
  other.take(base, moved);
  const wet = { item: "M-1", part: "", test: "wet", day: TODAY } as const;
  const seen = one.write("findingRecorded", { ...wet, answer: "yes", by: "MQ" });
  other.write("findingRecorded", { ...wet, answer: "no", by: "TL" });
  other.take(seen);
  expect(doorList(other.now(), "settle", "").rows).toMatchObject([{ id: "M-1", isDisagreed: true }]);
});

test("a tag of a dangerous item says so with its signs; a number nobody has listed has no tag", () => {
  const tablet = aTablet();
  tablet.write("itemListed", listed("M-1", MAP));
  tablet.write("findingRecorded", { item: "M-1", part: "", test: "rodent_signs", answer: "yes", day: TODAY });
  const [tag, ...more] = tagsView(tablet.now(), ["M-1", "M-9"]);
  expect(more).toEqual([]);
  expect(tag?.dangers[0]?.signs).toContain("W009"); // ISO 7010: biological hazard
});
