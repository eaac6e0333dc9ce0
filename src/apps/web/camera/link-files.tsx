import { useRef, useState } from "react";
import { camera as words } from "../../../core/say/rooms/camera.ts";
import { count } from "../frame/reader.ts";
import { Section } from "../frame/section.tsx";
import { DoButton } from "../item/do-button.tsx";
import { useWhyNot } from "../item/use-why-not.ts";
import { useStatus } from "../link/use-view.ts";
import { useWrite } from "../link/use-write.ts";
import type { Draft } from "../log/own-entries.ts";
import { SetChoice } from "./frame-range.tsx";
import "./frame-range.css";
import { sha256Of } from "./sha256-of.ts";
import type { ShotsShown } from "./views.ts";

/** Links the camera's own files with a set of the list, by their checksums; the files stay where they are. */
export function LinkFiles({ item, shots }: { readonly item: string; readonly shots: readonly ShotsShown[] }) {
  const [key, setKey] = useState("");
  const shot = shots.find((each) => each.key === key) ?? shots[0];
  const [says, setSays] = useState("");
  const input = useRef<HTMLInputElement>(null);
  const [write, status] = [useWrite(), useStatus()];
  const mayNot = useWhyNot("pictureTaken");
  if (shot === undefined) return null;
  async function link(files: readonly File[]): Promise<void> {
    if (shot === undefined || status === null || files.length === 0) return;
    const drafts: Draft[] = [];
    for (const file of files) {
      setSays(words.filesBusy(count(drafts.length + 1).text, count(files.length).text));
      const picture = await sha256Of(file);
      if (picture === null) return setSays(words.filesFailed(file.name));
      const name = `${shot.set}-${String(shot.linked + drafts.length + 1).padStart(3, "0")}`;
      const payload = { item, part: shot.part, day: status.today, shot: name, picture };
      drafts.push({ kind: "pictureTaken", payload });
    }
    setSays("");
    await write(words.filesSaid(count(files.length), item), ...drafts);
  }
  return (
    <Section id="files" heading={words.files} intro={words.filesHelp}>
      <div className="frame-range">
        <SetChoice shots={shots} chosen={shot} choose={setKey} />
        <DoButton whyNot={mayNot} act={() => input.current?.click()}>
          {words.files}
        </DoButton>
        <input
          ref={input}
          className="unseen"
          type="file"
          multiple
          tabIndex={-1}
          aria-label={words.files}
          onChange={({ target }) => {
            const files = [...(target.files ?? [])].sort((a, b) => (a.name < b.name ? -1 : 1));
            target.value = "";
            void link(files);
          }}
        />
      </div>
      <p role="status">{says}</p>
    </Section>
  );
}
