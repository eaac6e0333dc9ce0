import { type FormEvent, useEffect, useState } from "react";
import type { Problem } from "../../../core/outcome/problem.ts";
import { entrance, walls } from "../../../core/say/rooms/walls.ts";
import { pair } from "../link/tablet-link.ts";
import type { Entrance } from "../log/tablet.ts";
import { ProblemWords } from "../walls/notice.tsx";
import "./entrance.css";
import { FirstRun } from "./first-run.tsx";

/** Lets a device in by the code that the lead reads out. */
export function EntranceScreen({ entered }: { readonly entered: (entrance: Entrance) => void }) {
  const [code, setCode] = useState("");
  const [problem, setProblem] = useState<Problem | null>(null);
  async function comeIn(event: FormEvent): Promise<void> {
    event.preventDefault();
    const paired = await pair(code.trim());
    if (paired.ok) entered(paired.value);
    else setProblem(paired.problems[0] ?? null);
  }
  return (
    <main className="entrance">
      <p className="quiet">{walls.product}</p>
      <h1>{entrance.title}</h1>
      <p>{entrance.help}</p>
      <form onSubmit={comeIn}>
        <label>
          {entrance.code}
          <input
            value={code}
            onChange={({ target }) => setCode(target.value.toUpperCase())}
            autoComplete="off"
            autoCapitalize="characters"
            spellCheck={false}
            maxLength={20}
            required
          />
        </label>
        <button type="submit">{entrance.comeIn}</button>
      </form>
      <div role="alert">{problem && <ProblemWords problem={problem} />}</div>
      <FirstRun />
    </main>
  );
}

/** How often it is tried without being asked. */
const TRIED_EVERY_MS = 3000;

/** Never let in, and the laptop not in reach: tried again until it is. */
export function AwayScreen({ again }: { readonly again: () => void }) {
  useEffect(() => {
    const timer = setInterval(again, TRIED_EVERY_MS);
    return () => clearInterval(timer);
  }, [again]);
  return (
    <main className="entrance">
      <h1>{entrance.away}</h1>
      <p>{entrance.awayHelp}</p>
      <button type="button" onClick={again}>
        {entrance.again}
      </button>
      <FirstRun />
    </main>
  );
}
