import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { KINDS, type Kind } from "../../../src/core/log/kinds.ts";
import { publishedRoles } from "../../../src/edge/serve/published-roles.ts";
import { EXAMPLES } from "../../core/log/examples.ts";
import { type ADevice, type AHouse, aHouse, CAMPAIGN } from "./a-house.ts";

const SEED = 20260619;
const kinds = Object.keys(KINDS) as Kind[];

let house: AHouse;
let lead: ADevice;
beforeAll(async () => {
  house = await aHouse();
  lead = await house.enter("laptop", "lead");
});

const routes = Object.keys(publishedRoles().opens)
  .filter((route) => /\/api\/(?!plan|page|papers|what-if|live|leave|devices\/)/.test(route))
  .map((route) => route.split(" ") as [string, string]);

const anything = fc.oneof(
  fc.json({ maxDepth: 4 }),
  fc.string({ unit: "binary", maxLength: 200 }),
  fc
    .anything({ withNullPrototype: false, withBigInt: false, maxDepth: 3 })
    .map((each) => JSON.stringify({ events: [each], code: each, device: each, role: "boxer" })),
);
const types = fc.constantFrom(
  "application/json",
  "text/plain",
  "multipart/form-data; boundary=x",
  "multipart/form-data",
  "x",
);
const queries = fc.oneof(
  fc.constant(""),
  fc
    .record(
      { after: fc.oneof(fc.double(), fc.string({ maxLength: 20 })), most: fc.double() },
      { requiredKeys: [] },
    )
    .map(
      (each) => `?${new URLSearchParams(Object.entries(each).map(([name, value]) => [name, String(value)]))}`,
    ),
);

describe("whatever is sent", () => {
  test.each(routes)("%s %s answers, and it is never a fault of ours", async (method, path) => {
    await fc.assert(
      fc.asyncProperty(
        anything,
        types,
        queries,
        fc.string({ unit: "binary", minLength: 1, maxLength: 80 }),
        async (body, type, query, part) => {
          const at = path.replace(/:\w+/, encodeURIComponent(part)) + query;
          const sent = method === "GET" ? {} : { body, headers: { "content-type": type } };
          const answered = await lead.ask(at, { method, ...sent });
          const text = await answered.text();
          expect(answered.status, text).toBeLessThan(500);
          if (answered.status >= 400)
            expect(JSON.parse(text).problem?.remedy ?? JSON.parse(text).answers).toBeTruthy();
        },
      ),
      { seed: SEED, numRuns: 40 },
    );
  });

  const spoiled = fc.tuple(
    fc.constantFrom(...kinds),
    fc.constantFrom("not", "not", "not", "payload", "envelope", "hash", "gone"),
    fc.anything({ maxDepth: 2, withNullPrototype: false, withBigInt: false }),
  );

  test("a batch is kept whole, or nothing of it", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(spoiled, { minLength: 1, maxLength: 6 }), async (wishes) => {
        const events = wishes.map(([kind, what, value]) => {
          const field = Object.keys(EXAMPLES[kind])[0] ?? "";
          if (what === "payload") return lead.example(kind, { ...EXAMPLES[kind], [field]: jsonOf(value) });
          if (what === "envelope") return { ...lead.example(kind), seen: value };
          if (what === "hash") return { ...lead.example(kind), number: 7 };
          return what === "gone" ? value : lead.example(kind);
        });
        const before = await house.keep.after(CAMPAIGN, 0, 100_000);
        const { status, answers } = await lead.send(...events);
        const after = await house.keep.after(CAMPAIGN, 0, 100_000);
        const added = after.slice(before.length).map(({ event }) => event);
        expect(status).toBeLessThan(500);
        expect(after.slice(0, before.length)).toEqual(before);
        if (status === 200) expect(added).toEqual(JSON.parse(JSON.stringify(events)));
        else expect(added).toEqual([]);
        if (status === 200) expect(answers.every(({ answer }) => answer === "kept")).toBe(true);
        else expect(answers?.some(({ answer }) => answer === "kept") ?? false).toBe(false);
      }),
      { seed: SEED, numRuns: 80 },
    );
  });
});

/** What a value is after it went through JSON. */
const jsonOf = (value: unknown): unknown => JSON.parse(JSON.stringify(value) ?? "null");
