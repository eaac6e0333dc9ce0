import { createHash } from "node:crypto";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Filed, Kind } from "../../../src/core/log/kinds.ts";
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

describe.skipIf(!hasBrowser)("the Camera, in a real browser", () => {
  let house: ARealHouse;
  beforeAll(async () => {
    house = await aRealHouse("saltmere", "2026-06-01" as Day);
  }, 60_000);
  afterAll(() => house?.close());

  const entries = async <K extends Kind>(kind: K): Promise<Filed<K>["payload"][]> => {
    const [campaign = ""] = await house.keep.campaigns();
    const found: Filed<K>["payload"][] = [];
    for await (const { event } of allEvents(house.keep, campaign))
      if (event.kind === kind) found.push(event.payload as unknown as Filed<K>["payload"]);
    return found;
  };

  test("covers in red rot come first: six views, counted, over a reload too; then the item goes to be wrapped", async () => {
    const device = await at("#/camera/item/SR-0007");
    const { page } = device;
    await page.getByText("0 of 6").waitFor();
    await page.getByRole("button", { name: "Start: photograph the covers" }).click();
    await page.getByText("0 of 6 pictures are counted. Finish all the same?").waitFor();
    await page.getByRole("button", { name: /^All of them/ }).click();
    await page.getByText("6 of 6 · all there").waitFor();
    await page.reload();
    await page.getByText("6 of 6 · all there").waitFor();
    await page.getByLabel("Minutes of work", { exact: true }).fill("12");
    await page.getByRole("button", { name: "Done", exact: true }).click();
    await page.getByText("Next: wrap, at the Bench.").waitFor();
    await expect.poll(() => entries("coversPictured").then((all) => all.length)).toBe(1);
    expect((await entries("coversPictured"))[0]).toMatchObject({ minutes: 12, station: "cover-stand" });
    await device.context.close();
  });

  test("the next covers wait until the station is wiped down", async () => {
    const device = await at("#/camera/item/SR-0010");
    const { page } = device;
    await page.getByText("SR-0007 lay here and leaves red rot").waitFor();
    expect(await page.getByRole("button", { name: /^Start/ }).count()).toBe(0);
    await page.getByRole("button", { name: "cover-stand is wiped down" }).click();
    await page.getByRole("button", { name: "Start: photograph the covers" }).waitFor();
    await device.context.close();
  });

  test("what is not released or not cleaned is refused, with the reason", async () => {
    const device = await at("#/camera/item/SR-0001");
    await device.page.getByText("it is released from the Ward by readings first").waitFor();
    await device.go("#/camera/item/SR-0002");
    await device.page.getByText("it is cleaned first").waitFor();
    expect(await device.page.getByRole("button", { name: /^Start/ }).count()).toBe(0);
    await device.context.close();
  });

  test("the camera's files are linked by their checksums, and frames are noted with a look at their number", async () => {
    const device = await at("#/camera/item/SR-0053");
    const { page } = device;
    const bytes = Buffer.from("a picture, as far as a checksum cares");
    await page
      .locator("#files input[type=file]")
      .setInputFiles([{ name: "IMG_0001.tif", mimeType: "image/tiff", buffer: bytes }]);
    await page.getByText("1 file linked with SR-0053").waitFor();
    // SHA-256 by Node's own OpenSSL
    const sum = createHash("sha256").update(bytes).digest("hex");
    await expect.poll(() => entries("pictureTaken").then((all) => all.map((p) => p.picture))).toContain(sum);
    await page.getByLabel("First frame").fill("1021");
    await page.getByLabel("Last frame").fill("1023");
    await page.getByText(/These are 3 frames; the list asks for \d+/).waitFor();
    await page.getByRole("button", { name: "Note the frames" }).click();
    await page.getByText("Frames 1021 to 1023 (3)").waitFor();
    await device.context.close();
  });

  test("imaging without the laptop is kept, and sent when it is back", async () => {
    const device = await at("#/camera/item/SR-0102");
    const { page, context } = device;
    await page.getByRole("button", { name: "Start: photograph" }).waitFor();
    await house.stop();
    await page.getByRole("button", { name: "Start: photograph" }).click();
    await page.getByRole("button", { name: "Done", exact: true }).click();
    await page.getByText("Next: box and label, at the Shelf.").waitFor();
    await house.startAgain();
    await expect
      .poll(() => entries("actDone").then((all) => all.some(({ item }) => item === "SR-0102")), {
        timeout: 30_000,
      })
      .toBe(true);
    await context.close();
  });

  test.each([LAPTOP, TABLET, { width: 390, height: 844 }])(
    "at $width × $height every state has nothing to mend for an accessibility checker, no sideways scroll, large targets",
    async (viewport) => {
      const device = await at("#/camera", viewport);
      for (const hash of [
        "#/camera",
        "#/camera/item/SR-0018",
        "#/camera/item/SR-0188",
        "#/camera/item/SR-0001",
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

  async function at(hash: string, viewport = TABLET): Promise<ADevice> {
    const device = await house.enter("lead", { viewport });
    await device.workAs("ID");
    await device.go(hash);
    return device;
  }
});
