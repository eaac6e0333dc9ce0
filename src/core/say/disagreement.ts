import type { FactKind } from "../care/rule-book.ts";
import type { Disagreement } from "../log/findings-now.ts";
import { type Day, dayFrom } from "../units/day.ts";
import { sayDay } from "./dates.ts";
import { sayFact } from "./facts.ts";

/** A disagreement and who said what: `SR-0031, cover · growth seen: yes (2 Jun, MQ, on tablet-1) against no (2 Jun, TL, in the sheets)`. */
export function sayDisagreement(
  kinds: ReadonlyMap<string, FactKind>,
  { item, part, test, answers }: Disagreement,
): string {
  const fact = `obs.${test}`;
  const name = `${kinds.get(fact)?.says ?? fact}: `;
  const said = answers.map(({ payload: { answer, day, by }, clock, who, device }) => {
    const people = by === undefined || by.length === 0 ? who.person : by;
    const words = [
      day === undefined ? `written ${saidDay(dayOfWriting(clock.wall))}` : saidDay(day),
      ...(people === undefined ? [] : [typeof people === "string" ? people : people.join(" and ")]),
      device.startsWith("sheets-") ? "in the sheets" : `on ${device}`,
    ];
    return `${sayFact(kinds, fact, answer).slice(name.length)} (${words.join(", ")})`;
  });
  return `${part === "" ? item : `${item}, ${part}`} · ${name}${said.join(" against ")}`;
}

export const sayDisagreements = (count: number): string =>
  `${count === 1 ? "One answer contradicts" : `${count.toLocaleString("en-GB")} answers contradict`} another; whoever wrote had not seen the other's. Until it is settled unsure counts, the safer side:`;

export const HOW_TO_SETTLE =
  "To settle: look again together, and enter what you see on a device that is in touch with this log and shows both; that answer stands for them.";

const saidDay = (day: Day): string => sayDay(day, "en-GB", "tiny");
const dayOfWriting = (wall: number): Day => dayFrom(new Date(wall).toISOString().slice(0, 10)) as Day; // of a date it is one
