import type { Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Filed, Kind } from "../../../src/core/log/kinds.ts";
import { isOf } from "../../../src/core/log/standing.ts";
import type { Day } from "../../../src/core/units/day.ts";
import { allEvents } from "../../../src/edge/keep/keep.ts";
import {
  type ARealHouse,
  aRealHouse,
  axe,
  hasBrowser,
  LAPTOP,
  overflow,
  smallTargets,
  TABLET,
} from "./a-house.ts";
import { writtenBefore } from "./written-before.ts";

const TODAY = "2026-06-01" as Day;
const PHONE = { width: 390, height: 844 };
const PICTURE = Buffer.from(
  "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==",
  "base64",
); // one dot, PNG

const MAP = {
  ...{ title: "Chart of the inner roads", priority: "want" as const },
  facts: { format: "map_plan", support: "paper_rag", media: ["ink_carbon"] },
};
const listed = (...items: readonly string[]) =>
  items.map((item) => ({ kind: "itemListed" as const, payload: { ...MAP, item } }));

describe.skipIf(!hasBrowser)("the Door, in a real browser", () => {
  let house: ARealHouse;
  beforeAll(async () => {
    house = await aRealHouse("nine-lamps", TODAY);
    await writtenBefore(house, ...listed("T-1", "T-2", "T-3", "T-4", "T-5"));
  }, 60_000);
  afterAll(() => house?.close());

  const entries = async <K extends Kind>(kind: K, item: string): Promise<Filed<K>["payload"][]> => {
    const [campaign = ""] = await house.keep.campaigns();
    const found: Filed<K>["payload"][] = [];
    for await (const { event } of allEvents(house.keep, campaign)) {
      const payload = event.payload as unknown as Filed<K>["payload"]; // as the server keeps it
      if (isOf(event as unknown as Filed, kind) && event.payload.item === item) found.push(payload);
    }
    return found;
  };
  const at = async (hash: string, { viewport = TABLET, person = "HK" } = {}) => {
    const device = await house.enter("lead", { viewport });
    await device.workAs(person);
    await device.go(hash);
    return device;
  };
  const sent = (page: Page) => page.getByText("All sent").waitFor();

  test("a new number is listed with its format alone, its tag waits to be printed, and its survey begins", async () => {
    const { page, complaints } = await at("#/door");
    await page.getByLabel("Number of an item").fill("T-900");
    await page.getByRole("button", { name: "Open", exact: true }).click();
    await page.getByRole("button", { name: "Not listed yet: list it" }).click();
    await page.getByLabel("Title, or what it is").fill("Letter book");
    await page.getByLabel("palm leaf bundle").check();
    await page.getByRole("button", { name: "List it" }).click();
    await page.getByRole("heading", { level: 1, name: "T-900" }).waitFor();
    await page.getByRole("button", { name: "None of these is there" }).waitFor();
    await page.getByText("Its tag is on the list to print").waitFor();
    await sent(page);
    const [payload] = await entries("itemListed", "T-900");
    expect(payload).toMatchObject({ title: "Letter book", facts: { support: "palm_leaf" } });
    expect(complaints).toEqual([]);
  });

  test("a survey is answered tap by tap to its end, and its minutes are booked on who made it", async () => {
    const { page } = await at("#/door/item/T-1");
    await surveySound(page);
    await page.getByText("Nothing more to ask").waitFor();
    await page
      .getByText(/^It is on its way/)
      .first()
      .waitFor();
    await page.getByLabel("Minutes at this survey").fill("7");
    await page.getByRole("button", { name: "Survey done" }).click();
    await page.getByText(/Surveyed by HK, .* 7 minutes/).waitFor();
    await sent(page);
    expect(await entries("actDone", "T-1")).toMatchObject([
      { act: "survey", person: "HK", minutes: 7, exposed: false, day: TODAY },
    ]);
    expect((await entries("findingRecorded", "T-1")).every(({ by }) => by === "HK")).toBe(true);
  }, 60_000);

  test("an answer that stops the work leaves the stop screen alone: shut, mark, ask, and no further question", async () => {
    const { page } = await at("#/door/item/T-2");
    const glance = page
      .getByRole("button", { name: "chemical" })
      .or(page.getByRole("button", { name: /^mothball.*Yes$/ }));
    await glance.first().click();
    await page.getByRole("button", { name: "Write it so; the rest is no" }).click();
    await page.getByRole("heading", { level: 1, name: "Stop: T-2" }).waitFor();
    expect(await page.getByRole("heading", { name: "Survey" }).count()).toBe(0);
    expect(await page.getByRole("img", { name: "Warning: toxic material" }).count()).toBe(1); // ISO 7010 W016
    await page
      .getByLabel("What do you want to know?")
      .fill("A smell of mothballs. May it lie beside the others?");
    await page.setInputFiles("input[type=file]", { name: "a.png", mimeType: "image/png", buffer: PICTURE });
    await page.getByRole("img", { name: "Picture: question, picture 1" }).waitFor();
    await page.getByRole("button", { name: "Ask", exact: true }).click();
    await page.getByText("Asked the adviser").waitFor();
    await sent(page);
    expect(await entries("questionAsked", "T-2")).toHaveLength(1);
    expect(await entries("pictureTaken", "T-2")).toHaveLength(1);
    expect(await axe(page)).toEqual([]);
  });

  test("without a network the survey goes on, and what was answered is sent when the laptop is in reach again", async () => {
    const device = await at("#/door/item/T-3");
    const { page } = device;
    await page.getByRole("button", { name: "None of these is there" }).waitFor();
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready; // from here on the program opens without the laptop
    });
    await device.context.setOffline(true);
    await page.getByRole("button", { name: "None of these is there" }).click();
    await answer(page, "No");
    await page.getByText(/to be sent/).waitFor();
    await page.reload();
    await page.getByText("Answers given").waitFor();
    await device.context.setOffline(false);
    await sent(page);
    expect((await entries("findingRecorded", "T-3")).map(({ test }) => test)).toContain("rodent_signs");
  }, 60_000);

  test("by keyboard alone an item is opened and answered, and the focus goes along to the next question", async () => {
    const { page } = await at("#/door", { viewport: LAPTOP });
    await page.getByLabel("Number of an item").focus();
    await page.keyboard.type("t-4");
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { level: 1, name: "T-4" }).waitFor();
    await tabTo(page, page.getByRole("button", { name: "None of these is there" }));
    await page.keyboard.press("Enter");
    const question = page.locator(".survey-question");
    await question.waitFor();
    const first = await question.innerText();
    await tabTo(page, page.locator(".survey-asked").getByRole("button", { name: "No", exact: true }));
    await page.keyboard.press("Enter");
    await page.waitForFunction(
      (was) => document.querySelector("h3:focus")?.textContent?.includes(was) === false,
      first,
    );
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe("H3");
  });

  test("two people who answer differently out of reach of each other are shown both answers, and settle them", async () => {
    const [one, other] = [await at("#/door/item/T-5"), await at("#/door/item/T-5", { person: "AT" })];
    for (const each of [one, other]) {
      await each.page.getByRole("button", { name: "None of these is there" }).waitFor();
      await each.context.setOffline(true);
    }
    const mark = (page: Page, word: string): Locator =>
      page.getByRole("button", { name: new RegExp(`^musty.*${word}$`) });
    await mark(one.page, "Yes").click();
    await one.page.getByRole("button", { name: "Write it so; the rest is no" }).click();
    await other.page.getByRole("button", { name: "None of these is there" }).click();
    await one.page.getByText(/to be sent/).waitFor();
    await other.page.getByText(/to be sent/).waitFor();
    await one.context.setOffline(false);

    await sent(one.page);
    await other.context.setOffline(false);
    const settle = other.page.locator(".settle");
    await settle.waitFor();
    expect(await axe(other.page)).toEqual([]);
    await settle.getByLabel("Hoby Kestrane").check();
    await settle.getByRole("button", { name: "No", exact: true }).click();
    await settle.waitFor({ state: "detached" });
    await sent(other.page);
    const [settled] = await entries("disagreementSettled", "T-5");
    expect(settled).toMatchObject({ test: "musty_odour", answer: "no", by: ["AT", "HK"] });
  }, 60_000);

  test("whose role does not list items is told so at the button", async () => {
    const device = await house.enter("boxer", { viewport: TABLET, person: "HK" });
    await device.go("#/door/list/T-901");
    const list = device.page.getByRole("button", { name: "List it" });
    await list.waitFor();
    expect(await list.getAttribute("aria-disabled")).toBe("true");
    await device.page.getByText("The lead can do it").waitFor();
  });

  test.each([
    ["a laptop", LAPTOP],
    ["a tablet held upright", TABLET],
    ["a telephone", PHONE],
  ])(
    "every screen fits %s: nothing to scroll sideways for, large targets, no fault a checker finds",
    async (_, viewport) => {
      const { page, go } = await at("#/door", { viewport });
      for (const hash of [
        "#/door",
        "#/door/item/NL-002",
        "#/door/list/NL-002",
        "#/door/list/T-902",
        "#/door/tags",
        "#/door/item/T-903",
      ]) {
        await go(hash);
        await page.getByRole("heading", { level: 1 }).waitFor();
        expect([hash, await overflow(page), await smallTargets(page), await axe(page)]).toEqual([
          hash,
          0,
          [],
          [],
        ]);
      }
    },
    60_000,
  );

  test("on paper a tag is its number, its code and its dangers, without the page’s own words", async () => {
    const { page, go } = await at("#/door/item/T-4");
    await page.getByRole("button", { name: "Put its tag on the list to print" }).click();
    await go("#/door/tags");
    await page.getByRole("img", { name: "Square code: T-4" }).waitFor();
    await page.emulateMedia({ media: "print" });
    expect(await page.getByText("Print, cut, and lay each tag").isVisible()).toBe(false);
    expect(await page.locator(".tag-number").isVisible()).toBe(true);
  });
});

const answer = (page: Page, word: string): Promise<void> =>
  page.locator(".survey-asked").getByRole("button", { name: word, exact: true }).click();

/** Answers what is asked as a sound item gives it, until nothing is. */
async function surveySound(page: Page): Promise<void> {
  const settled = page.getByText("Nothing more to ask");
  const heading = page.locator(".survey-asked h3");
  await heading.or(settled).first().waitFor();
  while ((await settled.count()) === 0) {
    const answered = await page.locator(".answers-given > li").count();
    const sound = page
      .locator(".survey-asked")
      .getByRole("button", { name: /^(No|None|None of these is there)$/ })
      .or(page.locator(".survey-asked").getByRole("button", { name: "Unsure", exact: true }));
    await sound.first().click();
    await page.waitForFunction(
      (was) => document.querySelectorAll(".answers-given > li").length > was,
      answered,
    );
  }
}

async function tabTo(page: Page, wanted: Locator): Promise<void> {
  await wanted.waitFor();
  const isThere = () => wanted.evaluate((element) => element === document.activeElement);
  for (let presses = 0; presses < 120 && !(await isThere()); presses++) await page.keyboard.press("Tab");
  expect(await isThere()).toBe(true);
}
