import type { Care, Step } from "../../core/care/care.ts";
import type { ItemCare, PartCare } from "../../core/care/item-care.ts";
import { sayDo, sayNot } from "../../core/say/actions.ts";
import { sayAct } from "../../core/say/conditions.ts";
import type { BenchStep } from "./views.ts";

/** Consumable id → `wrapper paper (m2)`. */
type StoreWords = (use: string) => string;

/** Body and parts as the rules have them when the item lies on the bench: what they still forbid then is what the cleaner must know. */
export const whenAtBench = (care: ItemCare): readonly [PartCare, ...PartCare[]] =>
  care.at(new Set([...care.done, "release", "covers", "wrap"]), true) as readonly [PartCare, ...PartCare[]];

/** A step, and after it a row of its own for each part that is done another way at the same sitting. */
export function benchSteps(step: Step, care: ItemCare, storeWords: StoreWords): BenchStep[] {
  const leaves = typeof care.item.facts.leaves === "number" ? care.item.facts.leaves : 1;
  const all = step.parts.reduce((sum, part) => sum + part.leaves, leaves);
  const share = (part: number, of: Step): Step => ({
    ...of,
    minutes: {
      low: (of.minutes.low * part) / all,
      typical: (of.minutes.typical * part) / all,
      high: (of.minutes.high * part) / all,
    },
  });
  const [atBench, ...parts] = whenAtBench(care);
  const body = benchStep(share(leaves, step), atBench.care, storeWords);
  if (step.parts.length === 0) return [body];
  return [
    { ...body, act: `${body.act}: the rest` },
    ...step.parts.map((part): BenchStep => {
      const own = parts.find((each) => each.name === part.name)?.care ?? atBench.care;
      const row = benchStep(
        { ...share(part.leaves, step), methods: part.methods, uses: {} },
        own,
        storeWords,
      );
      const act = `${sayAct(step.act)}: ${part.name}`;
      return part.methods.length > 0 ? { ...row, act } : { ...row, act: `${act}: leave as it is` };
    }),
  ];
}

function benchStep(step: Step, care: Care, storeWords: StoreWords): BenchStep {
  const { low, high } = step.minutes;
  const [from, to] = [Math.max(1, Math.round(low)), Math.max(1, Math.round(high))];
  return {
    room: step.room,
    act: sayAct(step.act),
    methods: step.methods.map((method, at) => methodWords(method, care, at === 0)),
    minutes: from === to ? `${from}` : `${from} to ${to}`,
    exposed: step.exposed,
    protection: worn(step.protection).map(sayDo),
    uses: Object.entries(step.uses)
      .filter(([, quantity]) => quantity >= 0.05)
      .map(
        ([use, quantity]) =>
          `about ${quantity < 10 ? Math.round(quantity * 10) / 10 : Math.round(quantity)} ${storeWords(use)}`,
      ),
  };
}

/** The base and heavy sets hold mask and gloves already. */
export const worn = (protection: readonly string[]): string[] =>
  protection.some((each) => each.startsWith("ppe_mould"))
    ? protection.filter(
        (each) => each.startsWith("ppe_mould") || each === "second_person" || each === "gloves_double",
      )
    : [...protection];

/** A method with the places where it is banned: `soft brush (never: brushing the green part)`. */
function methodWords(method: string, care: Care, first: boolean): string {
  const words = sayDo(method);
  const bans = care.forbid.filter((ban) => ban.action.startsWith(`${method}_`) && ban.action !== method);
  const start = first ? words : words.charAt(0).toLowerCase() + words.slice(1);
  return bans.length === 0
    ? start
    : `${start} (never: ${bans.map((ban) => sayNot(ban.action).toLowerCase()).join(", ")})`;
}
