import type { Change } from "../../../../core/plan/what-if/change.ts";
import { suppose as words } from "../../../../core/say/rooms/plan.ts";
import { DoButton } from "../../item/do-button.tsx";
import { useWhyNot } from "../../item/use-why-not.ts";
import { useView } from "../../link/use-view.ts";
import { useWrite } from "../../link/use-write.ts";
import { goTo } from "../../walls/where.ts";

/** Writes what was supposed into the log as what it is, and goes on to planning anew. */
export function MakeTrue(p: {
  readonly changes: readonly Change[];
  readonly said: readonly string[];
  readonly made: () => void;
}) {
  const found = useView("planEntries", p.changes);
  const entries = found?.entries ?? [];
  const write = useWrite();
  const whyNot = useWhyNot(...new Set(entries.map(({ kind }) => kind)));
  if (found === null) return null;
  if (found.entries === null) return <p>{words.cannot}</p>;
  async function makeTrue(): Promise<void> {
    const problem = await write(words.saidTrue(p.said.join("; ")), ...entries);
    if (problem !== null) return;
    p.made();
    goTo("plan", "anew");
  }
  return (
    <div>
      <p>
        <DoButton isMain whyNot={whyNot} act={() => void makeTrue()}>
          {words.accept}
        </DoButton>
      </p>
      <p className="quiet">{words.acceptHelp}</p>
    </div>
  );
}
