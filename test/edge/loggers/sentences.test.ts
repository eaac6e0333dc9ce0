import { describe, expect, test } from "vitest";
import { tellReading } from "../../../src/edge/intake/loggers/tell-reading.ts";
import { lines, made, parts, read } from "./made-files.ts";

describe("what was understood is told in plain sentences", () => {
  test("hourly, day first, a gap", async () => {
    const rows = made("2026-05-28T06:00", 300).filter((_, i) => i < 100 || i >= 136);
    const found = await read(
      lines(
        "Datum;Uhrzeit;Temperatur [°C];rel. Feuchte [%]",
        ...rows.map(({ at, warm, damp }) => {
          const { y, m, d, H, M } = parts(at);
          return [
            `${d}.${m}.${y}`,
            `${H}:${M}`,
            String(warm).replace(".", ","),
            String(damp).replace(".", ","),
          ].join(";");
        }),
      ),
    );
    expect(tellReading(found.reading)).toEqual([
      "I read 264 hourly rows from 2026-05-28 06:00 to 2026-06-09 17:00.",
      "I took it as: temperature in °C, humidity in %, day first, a clock of 24 hours, cells parted by semicolons, decimal comma.",
      "The file does not say how far its clock is ahead of UTC.",
      "36 h are missing between 2026-06-01 09:00 and 2026-06-02 22:00.",
    ]);
  });
  test("°F, two sensors, rows left out, an offset", async () => {
    const found = await read(
      lines(
        "Time UTC-5:30,Ward °F,Ward RH %,Bench °F,Bench RH %",
        "06/13/2026 08:00:00 AM,77,50,78,51",
        "06/13/2026 08:15:00 AM,,50,78,51",
        "06/13/2026 08:30:00 AM,,,78,51",
        "06/13/2026 08:15:00 AM,,50,78,51",
        "stopped,,,,",
      ),
    );
    expect(tellReading(found.reading)).toEqual([
      "I read 2 rows, one every 15 minutes, from 2026-06-13 08:00 to 2026-06-13 08:15.",
      "I took it as: temperature in °F, humidity in %, month first, a clock of 12 hours, cells parted by commas, decimal point.",
      "Its clock is UTC-5:30.",
      'I read the sensor "Ward"; there is also "Bench".',
      "Without a value: 1 temperature.",
      "Left out: 1 without a time that can be read, 1 without a value, 1 with a time that was there already.",
    ]);
  });
});
