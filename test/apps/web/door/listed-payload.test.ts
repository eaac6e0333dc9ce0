import { describe, expect, test } from "vitest";
import { draftOf, EMPTY_LISTING, listedPayload } from "../../../../src/apps/web/door/listed-payload.ts";
import { KINDS, type Payload } from "../../../../src/core/log/kinds.ts";

describe("listing an item", () => {
  const draft = {
    ...EMPTY_LISTING,
    title: " Rent roll ",
    format: "bound_volume",
    heightMm: "330",
    widthMm: "22,5",
  };

  test("a title and a format are enough, and what was not said is not written", () => {
    expect(
      listedPayload("B-1", { ...EMPTY_LISTING, title: "Rent roll", format: "bound_volume" }, null),
    ).toEqual({
      item: "B-1",
      title: "Rent roll",
      facts: { format: "bound_volume" },
      priority: "want",
    });
  });

  test("sizes may be typed with a comma, and the longest side follows from them in cm", () => {
    const payload = listedPayload("B-1", draft, null);
    expect(payload).toMatchObject({ title: "Rent roll", heightMm: 330, widthMm: 22.5 });
    expect(payload.facts.longest_side_cm).toBe(33);
  });

  test("a listing changed and written again loses nothing the form does not show", () => {
    const before: Payload<"itemListed"> = {
      item: "B-1",
      title: "Rent roll",
      facts: { format: "bound_volume", restricted_view: true, media: ["ink_carbon"], leaves: 120 },
      priority: "must",
      due: "2026-07-17" as NonNullable<Payload<"itemListed">["due"]>,
      custodianRule: "Kept face up",
    };
    expect(listedPayload("B-1", draftOf(before), before)).toEqual(before);
  });

  test("what is written is what the log accepts", () => {
    expect(KINDS.itemListed.payload.safeParse(listedPayload("B-1", draft, null)).success).toBe(true);
  });
});
