import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Day } from "../../../src/core/units/day.ts";
import {
  type ADevice,
  type ARealHouse,
  aRealHouse,
  axe,
  hasBrowser,
  overflow,
  smallTargets,
  TABLET,
} from "./a-house.ts";

/** Saltmere on the day its plan begins: six bags that dry, one of them dry enough to leave. An invented campaign. */
const TODAY = "2026-06-01" as Day;

describe.skipIf(!hasBrowser)("the Ward on a tablet", () => {
  let house: ARealHouse;
  let lead: ADevice;
  beforeAll(async () => {
    house = await aRealHouse("saltmere", TODAY);
    lead = await house.enter("lead", { viewport: TABLET });
    await lead.workAs("MQ");
  });
  afterAll(() => house.close());

  const bag = (number: string) => lead.page.getByRole("link", { name: new RegExp(`^${number}`) });
  const said = (words: string) => lead.page.getByRole("status").filter({ hasText: words }).first().waitFor();

  test("shows each bag with what it last read and what it waits for, what cannot wait first", async () => {
    await lead.go("#/ward");
    await bag("SR-0484").waitFor();
    const first = await lead.page.locator(".bag-on-shelf").first().innerText();
    expect(first).toContain("58%");
    expect(first).toContain("Dry on");
    expect(await bag("SR-0484").innerText()).toContain("May be released");
    expect(await axe(lead.page)).toEqual([]);
    expect(await smallTargets(lead.page)).toEqual([]);
    expect(await overflow(lead.page)).toBe(0);
  });

  test("a bag with gel counts none of its readings, however dry they look", async () => {
    await lead.go("#/ward/bag/SR-0407");
    await lead.page.getByText("Counts from when the gel is out.").first().waitFor();
    expect(await lead.page.getByRole("heading", { name: "Why it may not leave yet" }).count()).toBe(1);
    await lead.page.getByRole("button", { name: "Release", exact: true }).click();
    await lead.page.getByText("Nothing in this bag has earned its release yet.").waitFor();
  });

  test("a reading takes a press, the figures, and a press; the value before stands beside it", async () => {
    await lead.go("#/ward");
    await lead.page.getByRole("link", { name: "Read, Bag SR-0411" }).click();
    await lead.page.getByText("Before: 58%").waitFor();
    await lead.page.getByRole("button", { name: "5", exact: true }).click();
    await lead.page.getByRole("button", { name: "7", exact: true }).click();
    await lead.page.getByRole("button", { name: "Write it down" }).click();
    await said("Bag SR-0411 reads 57%");
    await lead.page.waitForFunction(() => document.activeElement?.textContent?.includes("SR-0411"));
    expect(await bag("SR-0411").innerText()).toContain("57%");
  });

  test("a reading far from the one before is asked again, and an impossible one is not taken", async () => {
    await lead.go("#/ward/read/SR-0411");
    const figure = lead.page.getByLabel("Relative humidity in the bag");
    await figure.fill("85");
    await figure.press("Enter");
    await lead.page.getByText("85% is far from 57% before. Is it right?").waitFor();
    await lead.page.getByRole("button", { name: "Type it again" }).click();
    await figure.fill("157");
    await figure.press("Enter");
    await lead.page.getByText("157% cannot be").waitFor();
    expect(await lead.page.getByRole("button", { name: /^Yes/ }).count()).toBe(0);
    await lead.page.getByRole("button", { name: "Type it again" }).click();
  });

  test("what was typed and not written is there again after a reload", async () => {
    await lead.go("#/ward/read/SR-0319");
    await lead.page.getByLabel("Relative humidity in the bag").fill("1");
    await lead.page.reload();
    await lead.page.getByLabel("Relative humidity in the bag").waitFor();
    expect(await lead.page.getByLabel("Relative humidity in the bag").inputValue()).toBe("1");
  });

  test("changing gel asks for protection first, and its minutes go on the account of who did it", async () => {
    await lead.go("#/ward/bag/SR-0341/gel");
    await lead.page.getByRole("note", { name: "Before you open it" }).waitFor();
    const left = lead.page.getByText(/near mould left for you today/);
    const before = Number.parseInt(await left.innerText(), 10);
    await lead.page.getByLabel("Grams of gel put in").fill("200");
    await lead.page.getByRole("button", { name: "Write it down" }).click();
    await said("Gel changed for dry: bag SR-0341");
    await lead.page.getByRole("button", { name: "Gel", exact: true }).click();
    await lead.page.getByText(`${before - 5} mins near mould left for you today.`).waitFor();
  });

  test("a release needs a look and two different names, and takes the bag off its shelf", async () => {
    await lead.go("#/ward/bag/SR-0484/release");
    const release = lead.page
      .getByRole("region", { name: "Release" })
      .getByRole("button", { name: "Release" });
    expect(await release.getAttribute("aria-disabled")).toBe("true");
    await lead.page.getByRole("checkbox", { name: /We have both looked/ }).check();
    await lead.page.getByText("Two different people sign.").waitFor();
    await lead.page.getByLabel("First to sign").selectOption("MQ");
    expect(await lead.page.locator("select:has-text('Each chooses') option[value=MQ]:disabled").count()).toBe(
      1,
    );
    await lead.page.getByLabel("Second to sign").selectOption("PA");
    expect(await axe(lead.page)).toEqual([]);
    await release.click();
    await said("Released SR-0484");
    await lead.go("#/ward");
    await bag("SR-0411").waitFor();
    expect(await bag("SR-0484").count()).toBe(0);
  });

  test("undone, the item lies in its bag again", async () => {
    await lead.page.getByRole("button", { name: "Undo" }).click();
    await bag("SR-0484").waitFor();
  });

  test("several items go into one bag, with a caution and their minutes, and the bag is then to be read", async () => {
    await lead.go("#/ward/put-in/SR-0001");
    await lead.page.getByRole("button", { name: "Not SR-0001" }).waitFor();
    await lead.page.getByLabel("Number of an item").fill("SR-0003");
    await lead.page.getByRole("main").getByRole("button", { name: "Open", exact: true }).click();
    await lead.page.getByRole("button", { name: "Not SR-0003" }).waitFor();
    await lead.page.getByRole("button", { name: "New: B-1" }).click();
    await lead.page.getByLabel("Shelf").fill("2");
    expect(await axe(lead.page)).toEqual([]);
    await lead.page.getByRole("button", { name: "Put in and close" }).click();
    await said("2 items in bag B-1");
    await lead.page.getByRole("heading", { level: 1, name: "Bag B-1" }).waitFor();
    await lead.go("#/ward");
    await lead.page.getByRole("heading", { name: "Shelf 2" }).waitFor();
  });

  test("without the laptop a reading is kept, and sent when it is in reach again", async () => {
    await lead.context.setOffline(true);
    await lead.go("#/ward/read/B-1");
    await lead.page.getByLabel("Relative humidity in the bag").fill("66");
    await lead.page.getByRole("button", { name: "Write it down" }).click();
    await said("Bag B-1 reads 66%");
    await lead.page.getByTestId("outbox").getByText("1 entry waits").waitFor();
    await lead.context.setOffline(false);
    await lead.page.getByTestId("outbox").getByText("All sent").waitFor();
  });

  test("by keyboard alone a bag is found, opened and read", async () => {
    await lead.go("#/ward");
    await lead.page.getByLabel("Bag or item").focus();
    await lead.page.keyboard.type("0402");
    await bag("SR-0402").waitFor();
    await lead.page.keyboard.press("Tab");
    await lead.page.keyboard.press("Enter");
    await lead.page.getByRole("heading", { level: 1, name: "Bag SR-0402" }).waitFor();
    await lead.page.getByRole("button", { name: "Read", exact: true }).focus();
    await lead.page.keyboard.press("Enter");
    await lead.page.waitForFunction(() => document.activeElement?.getAttribute("name") === "relHum");
    await lead.page.keyboard.type("24");
    await lead.page.keyboard.press("Enter");
    await said("Bag SR-0402 reads 24%");
    await lead.page.waitForFunction(() => document.activeElement?.textContent === "Read");
  });

  test("a photographer's device shows the bags and says why it writes nothing here", async () => {
    const camera = await house.enter("photographer", { viewport: TABLET });
    await camera.go("#/ward/bag/SR-0402/read");
    await camera.page.getByText(/This device’s role does not write this down/).waitFor();
  });

  test("nothing was complained of in the browser", () => {
    expect(lead.complaints.filter((each) => !/ERR_INTERNET_DISCONNECTED|net::/.test(each))).toEqual([]);
  });
});
