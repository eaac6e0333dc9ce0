import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { clockMinute } from "../../../src/apps/web/at-work/clock-minute.ts";
import type { Filed, Kind } from "../../../src/core/log/kinds.ts";
import { isOf } from "../../../src/core/log/standing.ts";
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
import { writtenBefore } from "./written-before.ts";

const TODAY = "2026-06-01" as Day;
/** Mouldy registers of the harbour: released by a copied entry, so that they may come to the Bench. */
const MOULDY = ["SR-0319", "SR-0341", "SR-0402"] as const;
const released = MOULDY.map((item) => ({
  kind: "actCopied" as const,
  payload: { item, day: TODAY, act: "release" as const, person: "ID", minutes: 5, exposed: false },
}));
/** A mask worn until now: near mould for as long as it may be, then 30 minutes off. */
const worn = (person: string, minutes: number) => ({
  kind: "sessionWorked" as const,
  payload: {
    ...{ person, day: TODAY, minute: Math.max(0, clockMinute() - minutes), acts: ["clean" as const] },
    ...{ minutes, exposedMinutes: minutes, maskMinutes: minutes },
  },
});

describe.skipIf(!hasBrowser)("the Bench, in a real browser", () => {
  let house: ARealHouse;
  beforeAll(async () => {
    house = await aRealHouse("saltmere", TODAY);
    await writtenBefore(house, ...released, worn("TL", 75), {
      kind: "cleanWorkThisWeek",
      payload: { person: "PA", from: TODAY, to: TODAY },
    });
  }, 60_000);
  afterAll(() => house?.close());

  const entries = async <K extends Kind>(kind: K): Promise<Filed<K>["payload"][]> => {
    const [campaign = ""] = await house.keep.campaigns();
    const found: Filed<K>["payload"][] = [];
    for await (const { event } of allEvents(house.keep, campaign))
      if (isOf(event as unknown as Filed, kind)) found.push(event.payload as unknown as Filed<K>["payload"]);
    return found;
  };

  test("work near mould is begun by a tap, runs on over a reload, and its end is written with its minutes", async () => {
    const device = await at("ID", `#/bench/item/${MOULDY[0]}`);
    const { page } = device;
    await page.getByText("Never alone near mould").waitFor();
    expect(await page.getByRole("img", { name: "Wear respiratory protection" }).count()).toBeGreaterThan(0);
    await page.getByRole("button", { name: "Start: clean" }).click();
    await page.getByRole("heading", { name: `Cleaning ${MOULDY[0]}` }).waitFor();
    await page.reload();
    await page.getByRole("heading", { name: `Cleaning ${MOULDY[0]}` }).waitFor();
    await page.getByLabel("Minutes of work", { exact: true }).fill("25");
    await page.getByLabel("Of these in the mask", { exact: true }).fill("20");
    await page.getByRole("button", { name: "Done", exact: true }).click();
    await page.getByText("Next: photograph, at the Camera.").waitFor();
    await expect.poll(() => entries("actDone").then((all) => all.length)).toBe(1);
    expect((await entries("actDone"))[0]).toMatchObject({
      ...{ item: MOULDY[0], act: "clean", person: "ID", minutes: 25, exposed: true, station: "mould-bench" },
    });
    expect(await entries("sessionWorked")).toContainEqual(
      expect.objectContaining({ person: "ID", minutes: 25, exposedMinutes: 25, maskMinutes: 20 }),
    );
    await device.go("#/bench");
    await page.getByText("155 mins left today").waitFor();
    await device.context.close();
  });

  test("after it nothing else comes to the station until it is wiped down", async () => {
    const device = await at("ID", `#/bench/item/${MOULDY[1]}`);
    const { page } = device;
    await page.getByRole("heading", { name: "Wipe mould-bench down first" }).waitFor();
    expect(await page.getByText(`${MOULDY[0]} lay here and leaves mould`).count()).toBe(1);
    expect(await page.getByRole("button", { name: "Start: clean" }).count()).toBe(0);
    await page.getByRole("button", { name: "mould-bench is wiped down" }).click();
    await page.getByRole("button", { name: "Start: clean" }).waitFor();
    await expect.poll(() => entries("stationWiped").then((all) => all.length)).toBe(1);
    await device.context.close();
  });

  test("who is on clean work this week cannot begin near mould, and the screen says only that", async () => {
    const device = await at("PA", `#/bench/item/${MOULDY[2]}`);
    const start = device.page.getByRole("button", { name: "Start: clean" });
    await start.waitFor();
    expect(await start.getAttribute("aria-disabled")).toBe("true");
    expect(await device.page.getByText("Clean work this week").count()).toBeGreaterThan(0);
    expect(await device.page.getByText("left today").count()).toBe(0);
    await device.go("#/bench/item/SR-0002");
    await device.page.getByRole("button", { name: "Start: clean" }).waitFor();
    expect(
      await device.page.getByRole("button", { name: "Start: clean" }).getAttribute("aria-disabled"),
    ).toBe("false");
    await device.context.close();
  });

  test.skipIf(clockMinute() < 80 || clockMinute() > 1400)(
    "after 75 minutes in the mask it comes off, and the screen says until when",
    async () => {
      const device = await at("TL", `#/bench/item/${MOULDY[2]}`);
      const start = device.page.getByRole("button", { name: "Start: clean" });
      await start.waitFor();
      expect(await start.getAttribute("aria-disabled")).toBe("true");
      expect(
        await device.page.getByText(/Mask off, outside the zone, until \d\d:\d\d/).count(),
      ).toBeGreaterThan(0);
      await device.context.close();
    },
  );

  test("without the laptop the work goes on, and is sent when it is back", async () => {
    const device = await at("ID", "#/bench/item/SR-0005");
    const { page, context } = device;
    await page.getByRole("button", { name: "Start: clean" }).waitFor();
    await house.stop();
    await page.getByRole("button", { name: "Start: clean" }).click();
    await page.getByRole("button", { name: "Break: goes on later" }).click();
    await page.getByRole("button", { name: "Start: clean" }).waitFor();
    await house.startAgain();
    await expect
      .poll(() => entries("itemMoved").then((all) => all.some(({ item }) => item === "SR-0005")), {
        timeout: 30_000,
      })
      .toBe(true);
    await context.close();
  });

  test("begun by mistake is ended without minutes, and an end can be taken back", async () => {
    const device = await at("ID", "#/bench/item/SR-0009");
    const { page } = device;
    await page.getByRole("button", { name: "Start: clean" }).click();
    await page.getByRole("button", { name: "Begun by mistake" }).click();
    await page.getByRole("button", { name: "Start: clean" }).waitFor();
    await page.getByText("The beginning was a mistake").waitFor();
    await page.getByRole("button", { name: "Undo" }).click();
    await page.getByRole("heading", { name: "Cleaning SR-0009" }).waitFor();
    await page.getByRole("button", { name: "Begun by mistake" }).click();
    await page.getByRole("button", { name: "Start: clean" }).waitFor();
    await page.getByText("All sent").waitFor();
    await device.context.close();
  });

  test("what is still in the Ward is not worked on here, and the screen says why", async () => {
    const device = await at("ID", "#/bench/item/SR-0001");
    await device.page.getByText("It stays in the Ward").waitFor();
    expect(await device.page.getByRole("button", { name: /^Start/ }).count()).toBe(0);
    await device.context.close();
  });

  test("by keyboard alone: begin and end, the focus going along", async () => {
    const device = await at("ID", "#/bench/item/SR-0019");
    const { page } = device;
    await page.getByRole("button", { name: "Start: clean" }).focus();
    await page.keyboard.press("Enter");
    await expect.poll(() => focused(page)).toContain("Cleaning SR-0019");
    await page.getByRole("button", { name: "Done", exact: true }).focus();
    await page.keyboard.press("Enter");
    await expect.poll(() => focused(page)).toBe("SR-0019");
    await device.context.close();
  });

  test.each([LAPTOP, TABLET, { width: 390, height: 844 }])(
    "at $width × $height every state has nothing to mend for an accessibility checker, no sideways scroll, large targets",
    async (viewport) => {
      const device = await at("ID", "#/bench", viewport);
      for (const hash of [
        "#/bench",
        `#/bench/item/${MOULDY[2]}`,
        "#/bench/item/SR-0201",
        "#/bench/item/none",
      ]) {
        await device.go(hash);
        await device.page.waitForLoadState("networkidle");
        expect([hash, await axe(device.page)]).toEqual([hash, []]);
        expect(await overflow(device.page)).toBe(0);
        expect((await smallTargets(device.page)).filter((each) => !each.includes("unseen"))).toEqual([]);
      }
      expect(device.complaints).toEqual([]);
      await device.context.close();
    },
  );

  async function at(person: string, hash: string, viewport = TABLET): Promise<ADevice> {
    const device = await house.enter("lead", { viewport });
    await device.workAs(person);
    await device.go(hash);
    return device;
  }
});

const focused = (page: ADevice["page"]): Promise<string> =>
  page.evaluate(() => document.activeElement?.textContent ?? "");
