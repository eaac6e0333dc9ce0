import { useRef } from "react";
import { keepPicture } from "../link/tablet-link.ts";
import { useNotice } from "../walls/notice.tsx";

/** Takes a picture with the device's camera, or from its files, and keeps it.   @param taken is given its SHA-256 */
export function PictureButton(p: { readonly words: string; readonly taken: (picture: string) => void }) {
  const input = useRef<HTMLInputElement>(null);
  const tell = useNotice();
  async function keep(file: File | undefined): Promise<void> {
    if (file === undefined) return;
    const kept = await keepPicture(file);
    if (kept.ok) p.taken(kept.value);
    else if (kept.problems[0]) tell({ problem: kept.problems[0] });
  }
  return (
    <>
      <button type="button" onClick={() => input.current?.click()}>
        {p.words}
      </button>
      <input
        ref={input}
        hidden
        type="file"
        accept="image/jpeg,image/png,image/webp"
        capture="environment"
        onChange={({ target }) => {
          void keep(target.files?.[0]);
          target.value = "";
        }}
      />
    </>
  );
}
