import { describe, expect, test } from "vitest";
import { checkFolder } from "../../../src/apps/cli/check.ts";
import { folderWith, readWith, rows, the } from "./campaign-folder.ts";

const SECRET = "asthma since 2019";
const PEOPLE = "person,name,role,mould_work";

/** Everything that is kept or said, as one text. */
const allOf = (value: unknown): string => JSON.stringify(value);

describe("why someone is not to do mould work is neither kept nor repeated", () => {
  test.each(["illness", "Diagnosis", "reason", "Grund", "motif", "health note"])(
    "a people column %s",
    async (heading) => {
      const read = await readWith({
        "people.csv": rows(`${PEOPLE},${heading}`, `AN,Ana,lead,yes,${SECRET}`, "BO,Bo,lead,no,x"),
      });
      expect(the("health-reason-not-kept", read)).toMatchObject({
        severity: "note",
        file: "people.csv",
        column: heading,
      });
      expect(the("health-reason-not-kept", read).got).toBeUndefined();
      expect(allOf(read)).not.toContain("asthma");
    },
  );
  test("a calendar note on clean work, whatever it says", async () => {
    const read = await readWith({
      "calendar.csv": rows(
        "from,to,who,what,note",
        `2026-06-10,,AN,clean work,just tired`,
        "2026-06-11,,everyone,away,Feast day",
      ),
    });
    expect(the("health-reason-not-kept", read)).toMatchObject({ line: 2, column: "note" });
    expect(allOf(read)).not.toContain("tired");
    expect(read.campaign?.calendar.map(({ note }) => note)).toEqual([undefined, "Feast day"]);
  });
  test("a calendar note elsewhere that tells of health", async () => {
    const read = await readWith({
      "calendar.csv": rows("from,to,who,what,note", `2026-06-10,,AN,away,${SECRET}`),
    });
    the("health-reason-not-kept", read);
    expect(allOf(read)).not.toContain("asthma");
  });
  test.each(["no (asthma)", "not after surgery", "", "see doctor"])(
    "mould_work '%s' counts as no",
    async (written) => {
      const read = await readWith({ "people.csv": rows(PEOPLE, `AN,Ana,lead,${written}`, "BO,Bo,lead,yes") });
      expect(read.campaign?.people[0]?.mouldWork).toBe(false);
      expect(the("clean-work-assumed", read)).toMatchObject({ severity: "note", line: 2 });
      if (written !== "") expect(allOf(read)).not.toContain(written);
    },
  );
  test("a word of the calendar that is itself a reason is not quoted", async () => {
    const read = await readWith({
      "calendar.csv": rows("from,to,who,what", "2026-06-10,,AN,pregnant", "2026-06-10,,AN (asthma),away"),
    });
    expect(the("unknown-word", read).got).toBe("not shown");
    expect(allOf(read)).not.toMatch(/pregnant|asthma/);
  });
  test("a cell beyond the headings, or a broken row, is not quoted", async () => {
    const read = await readWith({
      "people.csv": rows(PEOPLE, "AN,Ana,lead,yes,has a secret", "BO,Bo,lead,yes", 'CY,"Cy"secret,lead,no'),
    });
    expect(allOf(read)).not.toContain("secret");
  });
  test("what is printed for the lead does not have it either", async () => {
    const folder = await folderWith({
      "people.csv": rows(`${PEOPLE},condition`, `AN,Ana,lead,no: ${SECRET},${SECRET}`, "BO,Bo,lead,yes,"),
      "calendar.csv": rows("from,who,what,note", `2026-06-10,AN,clean work,${SECRET}`),
    });
    const lines: string[] = [];
    await checkFolder(folder, (line) => lines.push(line), { all: true });
    expect(lines.join("\n")).not.toContain("asthma");
    expect(lines.join("\n")).toContain("was not kept");
  });
});
