import type { RuleBook } from "../rule-book.ts";
import { METHODS } from "../settle.ts";
import { type Circuit, type Literal, not } from "./circuit.ts";
import type { SymbolicCare } from "./symbolic.ts";

/** A sentence about every item the rules can tell apart, and the literal of its opposite: where that cannot hold, the sentence is proved. */
export interface Claim {
  readonly id: string;
  readonly says: string;
  readonly broken: (care: SymbolicCare, circuit: Circuit, book: RuleBook) => Literal;
}

const GROWTH = ["mould_active", "mould_dormant", "mould_suspected"];
const DAMP = ["damp", "wet"];
const STOPS = ["pesticide_suspected", "rodent_contaminated", "guano_contaminated", "nitrate_advanced"];

/** Present, or not ruled out by an unsure. */
const anyOf = (care: SymbolicCare, circuit: Circuit, conditions: readonly string[]): Literal =>
  circuit.or(...conditions.map((each) => care.condition(each).maybe));
const allBanned = (care: SymbolicCare, circuit: Circuit, actions: readonly string[]): Literal =>
  circuit.and(...actions.map(care.banned));
const has = (care: SymbolicCare, circuit: Circuit, fact: string, values: readonly string[]): Literal =>
  circuit.or(...values.map((value) => care.world.is(fact, value)));

/** A surface that never meets a method, whatever else is found. */
const never =
  (where: (care: SymbolicCare, circuit: Circuit) => Literal, actions: readonly string[]) =>
  (care: SymbolicCare, circuit: Circuit): Literal =>
    circuit.without(where(care, circuit), allBanned(care, circuit, actions));

/** A person or place in which exposed work is never offered. */
const notOffered =
  (where: (care: SymbolicCare, circuit: Circuit) => Literal) =>
  (care: SymbolicCare, circuit: Circuit): Literal =>
    circuit.and(
      care.world.is("task.exposes_mould", "yes"),
      where(care, circuit),
      not(care.banned("assign_mould_work")),
    );

export const CLAIMS: readonly Claim[] = [
  {
    id: "no-water-on-painted-leaves",
    says: "No water reaches a palm leaf with ink or paint on its surface, or of which it is not known.",
    broken: never(
      (care, circuit) =>
        circuit.and(
          care.world.is("item.format", "palm_leaf_bundle"),
          circuit.or(
            has(care, circuit, "obs.writing_raised_or_cut", ["on_surface", "both", "unsure"]),
            has(care, circuit, "item.media", [
              "inked_on_surface",
              "painted",
              "gilding",
              "lacquer",
              "unknown",
            ]),
          ),
        ),
      ["clean_damp_swab", "water_on_item"],
    ),
  },
  {
    id: "no-untested-water",
    says: "No damp cleaning of anything that was not shown safe by a signed-off drop test.",
    broken: never(
      (care) => not(care.world.is("obs.water_spot_moves", "no")),
      ["clean_damp_swab", "water_on_item"],
    ),
  },
  {
    id: "no-alcohol-on-items",
    says: "No alcohol on any item.",
    broken: (care) => not(care.banned("clean_ethanol")),
  },
  {
    id: "no-mould-at-bench",
    says: "Nothing damp, wet or with growth, nor perhaps so, is cleaned before two readings have shown it dry.",
    broken: never(
      (care, circuit) =>
        circuit.without(
          anyOf(care, circuit, [...GROWTH, ...DAMP]),
          care.world.is("state.dry_verified", "yes"),
        ),
      ["clean_any", ...METHODS],
    ),
  },
  {
    id: "no-mould-at-camera",
    says: "Nothing damp, wet or with growth, nor perhaps so, reaches the camera before release, and no growth the camera zone before it is cleaned.",
    broken: (care, circuit) =>
      circuit.or(
        circuit.without(
          circuit.without(
            anyOf(care, circuit, [...GROWTH, ...DAMP]),
            care.world.is("state.dry_verified", "yes"),
          ),
          allBanned(care, circuit, ["image", "image_pages", "image_covers", "image_in_camera_zone"]),
        ),
        circuit.and(
          anyOf(care, circuit, GROWTH),
          care.world.is("plan.step", "image"),
          not(care.world.is("state.cleaned", "yes")),
          not(care.hold),
          not(care.banned("image_in_camera_zone")),
        ),
      ),
  },
  {
    id: "covers-before-wrapper",
    says: "A powdering cover is pictured before it is wrapped, and wrapped before its leaves are cleaned or pictured.",
    broken: (care, circuit) => {
      const rot = care.condition("red_rot").maybe;
      const pictured = care.world.is("state.covers_imaged", "yes");
      const wrapped = care.world.is("state.wrapped", "yes");
      return circuit.or(
        circuit.and(rot, not(pictured), not(care.banned("wrap_cover_final"))),
        circuit.and(rot, not(wrapped), not(allBanned(care, circuit, ["clean_pages", "image_pages"]))),
      );
    },
  },
  {
    id: "stops-stop",
    says: "Possible poison, droppings and decaying nitrate stop every cleaning, the camera and every test by hand, and somebody is asked.",
    broken: (care, circuit) =>
      circuit.without(
        anyOf(care, circuit, STOPS),
        circuit.and(
          allBanned(care, circuit, ["clean_any", "image", "test_by_hand", ...METHODS]),
          care.escalated("ask_conservator"),
        ),
      ),
  },
  {
    id: "stops-stay-warm",
    says: "Nothing with droppings or possible poison is frozen.",
    broken: never(
      (care, circuit) =>
        anyOf(care, circuit, ["rodent_contaminated", "guano_contaminated", "pesticide_suspected"]),
      ["freeze_insects", "freeze_hold"],
    ),
  },
  {
    id: "bloom-is-dry",
    says: "Growth on a damp, wet or musty item is never explained away as bloom.",
    broken: (care, circuit) =>
      circuit.without(
        circuit.and(
          care.world.is("obs.growth_visible", "yes"),
          circuit.or(
            ...["damp_to_touch", "wet", "musty_odour"].map((each) => care.world.is(`obs.${each}`, "yes")),
            care.world.compare({ f: "obs.erh", op: "gte", v: 60 }).yes,
          ),
        ),
        anyOf(care, circuit, GROWTH),
      ),
  },
  {
    id: "nitrate-mark-counts",
    says: "Film marked nitrate is nitrate whatever its date or the item it lies in, and never shut airtight.",
    broken: never((care) => care.world.is("obs.film_edge_mark", "nitrate"), ["seal_airtight", "open_flame"]),
  },
  {
    id: "untested-at-the-door",
    says: "An item with an open must-ask test is neither cleaned nor pictured.",
    broken: (care, circuit) =>
      circuit.without(care.atTheDoor, allBanned(care, circuit, ["clean_any", "image"])),
  },
  {
    id: "unknown-kind-held",
    says: "An item nobody can name is held, and a conservator is asked.",
    broken: (care, circuit) =>
      circuit.without(
        care.world.is("item.format", "other"),
        circuit.and(care.hold, care.escalated("ask_conservator")),
      ),
  },
  {
    id: "no-method-left",
    says: "Where every way of cleaning is forbidden, the item is held or goes as it was found.",
    broken: (care, circuit) =>
      circuit.and(
        care.world.is("plan.step", "clean"),
        allBanned(care, circuit, METHODS),
        not(care.hold),
        not(care.required("image_as_found")),
      ),
  },
  {
    id: "always-a-rest",
    says: "Every item has a safe resting state on every day, whatever was found.",
    broken: (care, circuit) => not(circuit.or(...care.rests.values())),
  },
  {
    id: "hazards-rest-apart",
    says: "Nothing with growth, insects, poison, droppings or decaying film ever rests on an ordinary shelf.",
    broken: (care, circuit) =>
      circuit.and(
        anyOf(care, circuit, [
          ...GROWTH,
          ...STOPS,
          "insect_active",
          "nitrate_suspected",
          "acetate_degrading",
          "wet",
          "damp",
        ]),
        circuit.or(care.rests.get("shelf") ?? not(care.hold), care.rests.get("wrapped") ?? not(care.hold)),
      ),
  },
  {
    id: "growth-means-protection",
    says: "Wherever something grows or may grow, isolation, a label and mould protection are required.",
    broken: (care, circuit) =>
      circuit.without(
        anyOf(care, circuit, GROWTH),
        circuit.and(care.required("isolate"), care.required("label_hazard"), care.required("ppe_mould_base")),
      ),
  },
  {
    id: "unfit-never-exposed",
    says: "Nobody who may not do mould work, or of whom it is not known, is given exposed work.",
    broken: notOffered((care) => not(care.world.is("person.fit_mould", "yes"))),
  },
  {
    id: "untrained-never-exposed",
    says: "Nobody without the basic training, under 18, unwell or with a bad mask seal is given exposed work.",
    broken: notOffered((care, circuit) =>
      circuit.or(
        not(care.world.is("person.trained", "mould_basic")),
        care.world.compare({ f: "person.age", op: "lt", v: 18 }).maybe,
        care.world.is("person.symptoms", "yes"),
        care.world.is("person.symptoms", "unsure"),
        has(care, circuit, "person.mask_seal", ["bad", "unsure"]),
      ),
    ),
  },
  {
    id: "limits-kept",
    says: "Nobody at the day's limit, or with three exposed days behind in the week, is given exposed work; without masks for the whole session nobody is.",
    broken: notOffered((care, circuit) =>
      circuit.or(
        care.world.compare({ f: "person.mould_minutes_today", op: "gte", v: 240 }).maybe,
        care.world.compare({ f: "person.mould_days_other_this_week", op: "gte", v: 3 }).maybe,
        not(care.world.is("stock.respirators_for_task", "yes")),
      ),
    ),
  },
  {
    id: "heat-never-traded",
    says: "Over the heat limit the work stops, and protection is never taken off to cool down.",
    broken: (care, circuit) =>
      circuit.or(
        circuit.without(
          circuit.or(
            care.world.is("room.wbgt_over_limit", "yes"),
            care.world.is("room.wbgt_over_limit", "unsure"),
          ),
          allBanned(care, circuit, ["start_session", "remove_respirator", "drop_ppe_for_heat"]),
        ),
        circuit.without(
          care.world.is("room.wbgt_over_alert", "yes"),
          allBanned(care, circuit, ["remove_respirator", "drop_ppe_for_heat"]),
        ),
      ),
  },
  {
    id: "powder-never-rubbed",
    says: "Powdery or lifting writing never meets sponge or vacuum.",
    broken: never(
      (care, circuit) => anyOf(care, circuit, ["friable_media", "flaking_media"]),
      ["clean_sponge", "clean_vacuum_mesh"],
    ),
  },
  {
    id: "images-never-touched",
    says: "A lifting, tacky or mouldy image layer meets no tool at all, and film no brush.",
    broken: (care, circuit) =>
      circuit.or(
        circuit.without(
          care.condition("image_layer_unsafe").maybe,
          allBanned(care, circuit, [...METHODS, "touch_image_layer"]),
        ),
        circuit.without(care.world.is("item.format", "film_negative"), care.banned("clean_brush")),
      ),
  },
  {
    id: "no-bulb-over-growth",
    says: "No air is blown over growth.",
    broken: never(
      (care, circuit) => circuit.without(anyOf(care, circuit, GROWTH), care.world.is("state.cleaned", "yes")),
      ["clean_puffer"],
    ),
  },
  {
    id: "skins-stay-dry",
    says: "Parchment never meets damp, sponge, press or humidity at the team's hands.",
    broken: never(
      (care, circuit) =>
        circuit.or(
          care.world.is("item.support", "parchment"),
          care.world.is("item.format", "parchment_document"),
        ),
      ["clean_damp_swab", "clean_sponge", "press_flat", "humidify"],
    ),
  },
  {
    id: "custodian-only-adds",
    says: "No command of any rule lifts a ban, so that whatever a custodian or another part adds, nothing is ever permitted by it.",
    broken: (care, circuit, book) => circuit.or(...[...bannable(book)].map((action) => care.lifted(action))),
  },
];

/** Every action some rule can ban. */
export function bannable(book: RuleBook): Set<string> {
  const found = new Set<string>();
  for (const rule of book.rules)
    for (const { verb, action } of rule.consequences) if (verb === "forbid") found.add(action);
  for (const action of [...found]) for (const member of book.families.get(action) ?? []) found.add(member);
  return found;
}
