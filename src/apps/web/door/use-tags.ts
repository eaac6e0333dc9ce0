import { useDraft } from "../walls/use-draft.ts";

/** The numbers whose tags wait to be printed from this device. */
export function useTags() {
  const [tags, setTags, clear] = useDraft<readonly string[]>("tags", []);
  return {
    tags,
    clear,
    add: (id: string) => setTags([...tags.filter((each) => each !== id), id]),
    remove: (id: string) => setTags(tags.filter((each) => each !== id)),
  };
}
