import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Day } from "../../../src/core/units/day.ts";
import { allEvents } from "../../../src/edge/keep/keep.ts";
import {
  type ADevice,
  type ARealHouse,
  aRealHouse,
  axe,
  hasBrowser,
  LAPTOP,
  overflow,
  smallTargets,
  TABLET,
} from "./a-house.ts";

const ROOMS = [
  "Today",
  "Door",
  "Ward",
  "Bench",
  "Camera",
  "Shelf",
  "Plan",
  "Stores",
  "People",
  "Climate",
  "Questions",
  "Settings",
];

describe.skipIf(!hasBrowser)("the house, in a real browser", () => {
  let house: ARealHouse;
  beforeAll(async () => {
    house = await aRealHouse("nine-lamps", "2026-10-05" as Day);
  });
  afterAll(() => house?.close());

  test("a device that was let in by a code finds every room, and no browser complaint", async () => {
    const device = await house.enter("lead");
    for (const name of ROOMS) {
      await device.page
        .getByRole("navigation", { name: "Rooms" })
        .getByRole("link", { name, exact: true })
        .click();
      await device.page.getByRole("main", { name }).getByRole("heading", { level: 1 }).waitFor();
    }
    expect(device.complaints).toEqual([]);
    await device.context.close();
  });

  test("the code is gone from the address, and a wrong code is refused with what to do", async () => {
    const device = await house.enter("scribe");
    expect(device.page.url()).not.toContain("#in=");
    await device.context.clearCookies();
    await device.page.evaluate(() => indexedDB.deleteDatabase("leafward"));
    const fresh = await device.context.newPage();
    await fresh.goto(house.server().address);
    await fresh.getByLabel("Code").fill("WRONG-ONE");
    await fresh.getByRole("button", { name: "Come in" }).click();
    await expect.poll(() => fresh.getByRole("alert").innerText()).toContain("ask the lead for a new code");
    expect(await axe(fresh)).toEqual([]);
    await device.context.close();
  });

  test.each([LAPTOP, TABLET, { width: 390, height: 844 }])(
    "the day's first screen at $width × $height: nothing to mend for an accessibility checker, no sideways scroll, every target large enough",
    async (viewport) => {
      const device = await house.enter("lead", { viewport });
      await device.go("#/today");
      await device.page.locator(".today-floor").waitFor();
      expect(await axe(device.page)).toEqual([]);
      expect(await overflow(device.page)).toBe(0);
      expect(await smallTargets(device.page)).toEqual([]);
      await device.context.close();
    },
  );

  test("by keyboard alone: the first stop skips to the room, and Enter on a room's name goes there", async () => {
    const { page, context } = await house.enter("lead");
    await page.keyboard.press("Tab");
    expect(await focused(page)).toBe("Skip to the room");
    await page.getByRole("link", { name: "Ward", exact: true }).first().focus();
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { level: 1, name: "Ward" }).waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe("MAIN");
    await context.close();
  });

  test("a reload comes back to where somebody was", async () => {
    const { page, go, context } = await house.enter("lead");
    await go("#/stores");
    await page.goto(house.server().address);
    await page.getByRole("main", { name: "Stores" }).waitFor();
    await context.close();
  });

  test("without the server: the program opens again, says that the laptop is away, and has the campaign", async () => {
    const device = await house.enter("lead");
    await serviceWorkerReady(device);
    await house.stop();
    await device.page.reload();
    await device.page.getByText("House of the Nine Lamps").first().waitFor();
    await device.page.getByText("Laptop out of reach").waitFor();
    await device.page.locator(".today-floor").waitFor();
    await house.startAgain();
    await device.page.getByText("Connected").waitFor();
    await device.context.close();
  });

  test("a device that was shown out is asked for a code, whatever it still has", async () => {
    const device = await house.enter("boxer");
    const lead = await house.enter("lead");
    const names = await lead.page.evaluate(async () => {
      const devices = (await (await fetch("/api/devices")).json()) as { device: string; role: string }[];
      return devices.filter(({ role }) => role === "boxer").map((each) => each.device);
    });
    for (const name of names)
      await lead.page.evaluate((each) => fetch(`/api/devices/${each}`, { method: "DELETE" }), name);
    await device.page.reload();
    await device.page.getByLabel("Code").waitFor();
    await device.context.close();
    await lead.context.close();
  });

  test("what was written is in the log under the name of who wrote it", async () => {
    let founded = 0;
    for await (const { event } of allEvents(house.keep, "House of the Nine Lamps"))
      if (event.kind === "campaignFounded") founded++;
    expect(founded).toBe(1);
  });
});

const focused = (page: ADevice["page"]): Promise<string> =>
  page.evaluate(() => document.activeElement?.textContent ?? "");

const serviceWorkerReady = ({ page }: ADevice): Promise<unknown> =>
  page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    for (let tries = 0; tries < 100; tries++) {
      if ((await caches.keys()).length > 0 && navigator.serviceWorker.controller !== null) return;
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
  });
