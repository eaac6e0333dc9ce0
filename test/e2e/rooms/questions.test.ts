import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Day } from "../../../src/core/units/day.ts";
import { type ARealHouse, aRealHouse, axe, hasBrowser, overflow, smallTargets, TABLET } from "./a-house.ts";

const TODAY = "2026-06-01" as Day;

describe.skipIf(!hasBrowser)("questions to the adviser, in a real browser", () => {
  let house: ARealHouse;
  beforeAll(async () => {
    house = await aRealHouse("nine-lamps", TODAY);
  }, 60_000);
  afterAll(() => house?.close());

  test("a question asked at an item reaches the conservator without anybody’s name, and the answer comes back", async () => {
    const team = await house.enter("cleaner", { viewport: TABLET, person: "HK" });
    await team.go("#/door/item/NL-002");
    await team.page.getByText("Stop and ask the adviser").click();
    await team.page
      .getByLabel("What do you want to know?")
      .fill("The lacquer lifts at one edge. Brush or leave?");
    await team.page.reload(); // what was typed is still there
    await team.page.getByRole("button", { name: "Ask", exact: true }).click();
    await team.page.getByText("All sent").waitFor();

    const adviser = await house.enter("conservator", { viewport: TABLET });
    await adviser.go("#/questions");
    await adviser.page.getByText("The lacquer lifts at one edge").waitFor();
    const shown = await adviser.page.locator("main").innerText();
    expect(shown).not.toMatch(/\bHK\b|Kestrane/);
    expect(shown).toContain("Asked by cleaner");
    expect([await overflow(adviser.page), await smallTargets(adviser.page), await axe(adviser.page)]).toEqual(
      [0, [], []],
    );
    await adviser.page.getByRole("textbox", { name: /^Answer to/ }).fill("Leave it. Picture it as it is.");
    await adviser.page.getByRole("button", { name: "Answer", exact: true }).click();
    await adviser.page.getByText("Answered by conservator").waitFor();

    await team.go("#/questions");
    await team.page.getByText("Leave it. Picture it as it is.").waitFor();
    await team.page.getByText("No question waits").waitFor();
    expect(adviser.complaints).toEqual([]);
  }, 60_000);

  test("words about somebody’s health are not written down, and the question stays as it was typed", async () => {
    const team = await house.enter("cleaner", { viewport: TABLET, person: "HK" });
    await team.go("#/questions");
    await team.page.getByText("Ask the adviser", { exact: true }).click();
    const text = team.page.getByLabel("What do you want to know?");
    await text.fill("Anouk has asthma, who may go on with it?");
    await team.page.getByRole("button", { name: "Ask", exact: true }).click();
    await team.page.getByText("may tell of somebody's health").waitFor();
    expect(await text.inputValue()).toContain("who may go on");
    await team.page.getByText("No question waits").waitFor();
  });
});
