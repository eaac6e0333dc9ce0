import { useEffect, useRef, useState } from "react";
import { suppose as supposeWords, easier as words } from "../../../core/say/rooms/plan.ts";
import type { DeskLine } from "../../../edge/solve/what-if-messages.ts";
import { count } from "../frame/reader.ts";
import { Section } from "../frame/section.tsx";
import { DoButton } from "../item/do-button.tsx";
import { useStatus } from "../link/use-view.ts";
import { jsonLines } from "./json-lines.ts";

type Told = Extract<DeskLine, { step: "as it is" | "trying" | "eased" }>;

/** What would move the date: tried one by one when somebody asks. */
export function Easier() {
  const status = useStatus();
  const [told, setTold] = useState<Told | "asked" | "away" | null>(null);
  const going = useRef<AbortController>(null);
  useEffect(() => () => going.current?.abort(), []);
  async function ask(): Promise<void> {
    const own = new AbortController();
    going.current = own;
    setTold("asked");
    const reached = await jsonLines<Told>("api/ease", {}, own.signal);
    let last: Told | null = null;
    if (reached.kind === "lines")
      for await (const line of reached.lines) {
        last = line;
        setTold(line);
      }
    if (!own.signal.aborted && last?.step !== "eased") setTold("away");
  }
  if (status?.me.role !== "lead") return null;
  const isGoing = told !== null && told !== "away" && (told === "asked" || told.step !== "eased");
  return (
    <Section id="easier" heading={words.heading} intro={words.intro}>
      {isGoing ? (
        <progress aria-label={words.heading} />
      ) : (
        <p>
          <DoButton whyNot={status.line === "away" ? supposeWords.awayNow : null} act={() => void ask()}>
            {words.ask}
          </DoButton>
        </p>
      )}
      <p role="status">{stepWords(told)}</p>
      {told !== null && typeof told !== "string" && told.step === "eased" && (
        <>
          <Lines title={words.helps} lines={told.helps} />
          <Lines title={words.noHelp} lines={told.noHelp} />
          <Lines title={words.mustLeft} lines={told.mustLeft} />
          <p className="quiet">{words.method(count(told.plans), count(told.draws))}</p>
        </>
      )}
    </Section>
  );
}

const Lines = ({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) => (
  <div>
    <h3>{title}</h3>
    {lines.length === 0 ? (
      <p>{words.nothing}</p>
    ) : (
      <ol className="easier-lines">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ol>
    )}
  </div>
);

function stepWords(told: Told | "asked" | "away" | null): string {
  if (told === null) return "";
  if (told === "away") return supposeWords.awayNow;
  if (told === "asked" || told.step === "as it is") return words.working;
  return told.step === "trying" ? words.trying(told.ask, count(told.number).text, count(told.of).text) : "";
}
