import { beforeAll, describe, expect, test } from "vitest";
import { KINDS, type Kind } from "../../../src/core/log/kinds.ts";
import { ABOUT_THINGS } from "../../../src/core/log/told-of-health.ts";
import { allEvents } from "../../../src/edge/keep/keep.ts";
import { EXAMPLES } from "../../core/log/examples.ts";
import { type ADevice, type AHouse, aHouse, CAMPAIGN } from "./a-house.ts";

const REASON = "MQ is pregnant";
/** As a code or a word of the vocabulary could hold it. */
const AS_A_WORD = "mq_is_pregnant";

let house: AHouse;
let lead: ADevice;
beforeAll(async () => {
  house = await aHouse();
  lead = await house.enter("laptop", "lead");
});

type Path = readonly (string | number)[];
const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null;

/** Paths to every text, and to every object, in a value. */
function pathsIn(value: unknown, wanted: "text" | "object", at: Path = []): Path[] {
  if (typeof value === "string") return wanted === "text" ? [at] : [];
  if (!isObject(value)) return [];
  const here = wanted === "object" && !Array.isArray(value) ? [at] : [];
  return [...here, ...Object.entries(value).flatMap(([name, part]) => pathsIn(part, wanted, [...at, name]))];
}

/** A copy with something else at a path. */
function withAt(value: unknown, [name, ...rest]: Path, put: (old: unknown) => unknown): unknown {
  if (name === undefined) return put(value);
  const copy = structuredClone(value) as Record<string, unknown>; // a path leads through objects and lists
  copy[name] = withAt(copy[name], rest, put);
  return copy;
}

const statusOf = async (kind: Kind, payload: unknown, more: object = {}) =>
  (await lead.send(lead.example(kind, payload as object, more))).status;

const kinds = Object.keys(KINDS) as Kind[]; // the names of the kinds

/** Which of some payloads nothing is said against, sent together with one that is refused, so that none is kept. */
async function takenOf(kind: Kind, payloads: readonly unknown[]): Promise<boolean[]> {
  const sent = await lead.send({}, ...payloads.map((each) => lead.example(kind, each as object)));
  expect(sent.status).toBe(422);
  return sent.answers.slice(1).map(({ answer }) => answer !== "refused");
}

describe("why somebody may not do a work comes in nowhere", () => {
  test.each(kinds)("not in a text of %s, but where it is about a thing", async (kind) => {
    const example = EXAMPLES[kind];
    const paths = pathsIn(example, "text").flatMap((path) =>
      [REASON, AS_A_WORD].map((put) => ({ path, put })),
    );
    const taken = await takenOf(
      kind,
      paths.map(({ path, put }) => withAt(example, path, () => put)),
    );
    const fields = paths.filter((_, at) => taken[at]).map(({ path: [field] }) => String(field));
    const things = ABOUT_THINGS[kind] ?? [];
    expect(fields.filter((field) => !things.includes(field))).toEqual([]);
  });

  test.each(kinds)("not in a field that %s does not have, nor in its name", async (kind) => {
    const example = EXAMPLES[kind];
    const extras = [{ reason: REASON }, { [AS_A_WORD]: 1 }];
    const paths = pathsIn(example, "object").flatMap((path) => extras.map((extra) => ({ path, extra })));
    const taken = await takenOf(
      kind,
      paths.map(({ path, extra }) => withAt(example, path, (old) => ({ ...(old as object), ...extra }))),
    );
    const fields = paths.filter((_, at) => taken[at]).map(({ path }) => path.join("."));
    expect(fields, "a fact's value is about a thing").toEqual(
      kind === "itemListed" || kind === "partListed" ? ["facts"] : [],
    );
  });

  test("not beside the payload: around it, in who, in the clock, in the kind, as another version", async () => {
    const { noteWritten } = EXAMPLES;
    const { who, clock } = lead.example("noteWritten");
    const more: readonly object[] = [
      { reason: REASON },
      { [AS_A_WORD]: 1 },
      { who: { ...who, reason: REASON } },
      { who: { ...who, person: REASON } },
      { clock: { ...clock, reason: REASON } },
      { kind: "mqIsPregnant" },
      { version: 2 },
      { device: REASON },
      { campaign: REASON },
      { seen: [REASON] },
    ];
    for (const each of more)
      expect(await statusOf("noteWritten", noteWritten, each), JSON.stringify(each)).toBe(422);
  });

  test("not with the batch, nor with a device that is let in", async () => {
    const ask = async (path: string, body: object) => (await lead.post(path, body)).status;
    expect(await ask("/api/events", { events: [lead.example("noteWritten")], reason: REASON })).toBe(400);
    expect(await ask("/api/pairings", { device: REASON, role: "boxer" })).toBe(400);
    expect(await ask("/api/pairings", { device: "t", role: REASON })).toBe(400);
    expect(await ask("/api/pairings", { device: "t", role: "boxer", person: REASON })).toBe(400);
    expect(await ask("/api/pairings", { device: "t", role: "boxer", reason: REASON })).toBe(400);
  });

  test("not in a note beside a person's days, which have entries of their own", async () => {
    const days = { ...EXAMPLES.calendarChanged, what: "away" as const, note: "as she said" };
    expect(await statusOf("personListed", EXAMPLES.personListed)).toBe(200);
    expect(await statusOf("calendarChanged", { ...days, who: "MQ" })).toBe(422);
    expect(await statusOf("calendarChanged", { ...days, who: "everyone" })).toBe(200);
  });

  test("and what was refused stands in no list", async () => {
    const events = [];
    for await (const { event } of allEvents(house.keep, CAMPAIGN)) events.push(event);
    const about = events.filter(({ kind }) => ABOUT_THINGS[kind] === undefined);
    expect(JSON.stringify(about)).not.toMatch(/pregnant/i);
    const lists = ["/api/refused", "/api/devices"].map(async (path) => (await lead.ask(path)).text());
    expect((await Promise.all(lists)).join()).not.toMatch(/pregnant/i);
  });
});

describe("what is no reason comes in", () => {
  test("titles of papers about illness, masks in a store, and a thousand ids", async () => {
    const titled = {
      ...EXAMPLES.itemListed,
      title: "Register of the sick, Harbour hospital, 1911",
      custodianRule: "Ask the doctor's heirs",
    };
    const store = { ...EXAMPLES.storeListed, name: "Medical masks" };
    expect(await statusOf("itemListed", titled)).toBe(200);
    expect(await statusOf("storeListed", store)).toBe(200);
    const id = "01KT26DM80QQQQ7RASH7FEVER1"; // an id that happens to hold such words
    expect(
      await statusOf(
        "eventCorrected",
        { event: id, about: ["item:SR-0031"] },
        { id: "01KT26DM80QQQQ7RASH7FEVER0" },
      ),
    ).toBe(200);
  });
});
