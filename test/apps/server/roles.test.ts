import { beforeAll, describe, expect, test } from "vitest";
import { KINDS, type Kind } from "../../../src/core/log/kinds.ts";
import { mayCorrect, mayDo, mayOpen } from "../../../src/core/log/may-do.ts";
import { ROLES } from "../../../src/core/log/roles.ts";
import { correctionOf } from "../../../src/core/log/subjects.ts";
import { publishedRoles } from "../../../src/edge/serve/published-roles.ts";
import { EXAMPLES } from "../../core/log/examples.ts";
import { buildPageIfMissing } from "../../e2e/built-page.ts";
import { samplePicture, samplePlan } from "../sample-plan.ts";
import { type ADevice, type AHouse, aDevice, aHouse } from "./a-house.ts";

/** Who may what is common practice, no source: the lead plans, releases and lets in; the conservator answers; the custodian's person looks. */
const table = publishedRoles();
const kinds = Object.keys(KINDS) as Kind[]; // the names of the kinds

let house: AHouse;
const devices = new Map<string, ADevice>();
const of = (role: string): ADevice => {
  const found = devices.get(role);
  if (!found) throw new Error(`No device is ${role}.`);
  return found;
};
beforeAll(async () => {
  await buildPageIfMissing();
  const page = { plan: samplePlan(), picture: samplePicture, papersFolder: "none" };
  house = await aHouse({ page });
  for (const role of ROLES)
    devices.set(role, await house.enter(role === "lead" ? "laptop" : `of ${role.replace("'", "")}`, role));
});

describe("the table, over the real server", () => {
  test.each(ROLES)("%s writes the kinds of its column and no others", async (role) => {
    const own = of(role);
    const foreign = (kind: Kind) => kind === "eventCorrected" && !mayCorrect(table, role, false);
    const mayWrite = (kind: Kind) => mayDo(table, role, kind) && !foreign(kind);
    const barred = kinds.filter((kind) => !mayWrite(kind)).map((kind) => own.example(kind));
    const refused = await own.send(...barred, {}); // the last is refused to anybody
    const kept = await own.send(...kinds.filter(mayWrite).map((kind) => own.example(kind)));
    if (!mayOpen(table, role, "POST /api/events")) {
      expect(refused.status).toBe(403);
      return;
    }
    expect(kept.answers.filter(({ answer }) => answer !== "kept")).toEqual([]);
    const codes = refused.answers.slice(0, -1).map(({ problem }) => problem?.code);
    expect(codes.filter((code) => code !== "not-your-role")).toEqual([]);
    expect(kept.answers.length + codes.length).toBe(kinds.length);
  });

  const routes = Object.keys(table.opens).filter(
    (route) => route.includes("/api/") && route.split(" ")[1] !== "/api/leave",
  );
  const ofPlan = /^(?:GET \/api\/(?:plan|page|roster|papers)|POST \/api\/(?:what-if|ease))$/;

  test.each(routes.filter((route) => !ofPlan.test(route)))(
    "%s opens to its row and to no one else",
    async (route) => {
      const [method = "", path = ""] = route.split(" ");
      const ask = async (who: ADevice): Promise<number> => {
        const stop = new AbortController();
        const body = method === "POST" ? { body: "{}", headers: { "content-type": "application/json" } } : {};
        const answered = await who.ask(path.replace(/:\w+/, "0"), { method, ...body, signal: stop.signal });
        stop.abort();
        return answered.status;
      };
      for (const role of ROLES)
        expect((await ask(of(role))) === 403, `${role} is refused`).toBe(!mayOpen(table, role, route));
      const stranger = aDevice(house.server, "stranger", "lead");
      const isOpen = mayOpen(table, null, route);
      const status = await ask(stranger);
      if (!isOpen) expect(status).toBe(401);
    },
  );

  test("what cannot be found is no door: a row for each route and a route for each row", async () => {
    const described = (await (await of("boxer").ask("/api/description")).json()) as {
      paths: Record<string, object>;
    };
    const there = Object.entries(described.paths).flatMap(([path, methods]) =>
      Object.keys(methods).map((method) => `${method.toUpperCase()} ${path.replace(/\{(\w+)\}/g, ":$1")}`),
    );
    const rows = Object.keys(table.opens).filter((route) => route.includes("/api/") && !ofPlan.test(route));
    expect(there.sort()).toEqual(rows.sort());
  });

  test("on this machine alone the plan's page is open to whoever sits there, as the folder is", async () => {
    const stranger = aDevice(house.server, "stranger", "lead");
    for (const path of ["/", "/api/plan", "/api/page", "/picture.svg", "/api/papers"])
      expect((await stranger.ask(path)).status, path).toBe(200);
  });
});

describe("what each role is shown of the state", () => {
  let full: AHouse;
  let written: ReadonlyMap<Kind, string>;
  beforeAll(async () => {
    full = await aHouse();
    const lead = await full.enter("laptop", "lead");
    const writer = { role: "lead", person: "MQ" } as const;
    const events = kinds
      .filter((kind) => kind !== "eventCorrected")
      .map((kind) => lead.example(kind, EXAMPLES[kind], { who: writer }));
    written = new Map(events.map(({ kind, id }) => [kind as Kind, id])); // named by the kinds
    expect((await lead.send(...events)).status).toBe(200);
  });

  const textFor = async (who: ADevice): Promise<string> => (await who.ask("/api/state")).text();
  const idsIn = (text: string): string[] => text.match(/01[0-9A-HJKMNP-TV-Z]{24}/g) ?? [];
  const outside = ["conservator", "custodian's person"] as const;

  test.each(ROLES)("%s: kind by kind as the table says", async (role) => {
    const ids = new Set(
      idsIn(await textFor(await full.enter(role === "lead" ? "laptop" : role.slice(0, 4), role))),
    );
    const sees = table.sees[role];
    for (const [kind, id] of written)
      expect(ids.has(id), kind).toBe(sees === "everything" || sees.includes(kind));
  });

  test.each(outside)(
    "%s: the collection and questions, no days, no notes, no work, and nobody's code",
    async (role) => {
      const text = await textFor(await full.enter(role.slice(0, 5), role));
      expect(text).toContain("Wreck and salvage register");
      expect(text).toContain("May the strap be cut?");
      expect(text).not.toMatch(/MQ|"ID"|Mara|exposed"|minutes"|Harbour Day|strap\.|clean work/);
      const people = [
        "personListed",
        "personAway",
        "personHours",
        "cleanWorkThisWeek",
        "calendarChanged",
      ] as const;
      const work = [
        "sessionStarted",
        "sessionWorked",
        "actDone",
        "actCopied",
        "itemReleased",
        "stationWiped",
      ] as const;
      for (const kind of [
        ...people,
        ...work,
        "noteWritten",
        "coversPictured",
        "itemWrapped",
        "itemBoxed",
      ] as const)
        expect(table.sees[role], kind).not.toContain(kind);
    },
  );

  test.each(outside)(
    "%s: what was corrected counts no longer, and a correction of what is hidden is hidden",
    async (role) => {
      const lead = await full.enter("laptop", "lead");
      const correct = async (kind: Kind): Promise<string> => {
        const target = lead.example(kind, EXAMPLES[kind]);
        const correction = lead.example("eventCorrected", correctionOf(target));
        expect((await lead.send(target, correction)).status).toBe(200);
        return correction.id;
      };
      const [shown, hidden] = [await correct("findingRecorded"), await correct("personAway")];
      const ids = idsIn(await textFor(await full.enter(role.slice(0, 6), role)));
      expect(ids).toContain(shown);
      expect(ids).not.toContain(hidden);
    },
  );
});

describe("the table itself", () => {
  test("the lead may write every kind, the custodian's person none", () => {
    expect(kinds.filter((kind) => !mayDo(table, "lead", kind))).toEqual([]);
    expect(kinds.filter((kind) => mayDo(table, "custodian's person", kind))).toEqual([]);
  });

  test("only the lead releases, accepts a plan, changes limits, says who may work and lets devices in", () => {
    const alone: Kind[] = [
      "itemReleased",
      "planAccepted",
      "limitsChanged",
      "personListed",
      "cleanWorkThisWeek",
      "stationsChanged",
    ];
    for (const kind of alone)
      expect(
        ROLES.filter((role) => mayDo(table, role, kind)),
        kind,
      ).toEqual(["lead"]);
    expect(ROLES.filter((role) => mayOpen(table, role, "POST /api/pairings"))).toEqual(["lead"]);
  });

  test("an unknown kind nobody may write, an unknown route opens to nobody, and names of the language are no rows", () => {
    expect(ROLES.some((role) => mayDo(table, role, "leafPressed") || mayDo(table, role, "toString"))).toBe(
      false,
    );
    expect(
      ROLES.some((role) => mayOpen(table, role, "GET /api/all") || mayOpen(table, role, "constructor")),
    ).toBe(false);
  });
});
