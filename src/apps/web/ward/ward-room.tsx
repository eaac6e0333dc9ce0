import { goTo } from "../walls/where.ts";
import { BagScreen } from "./bag-screen.tsx";
import { PutIn } from "./put-in.tsx";
import { QuickRead } from "./quick-read.tsx";
import { Shelves } from "./shelves.tsx";

/** Bags on their shelves, one bag, one reading, or what is put in. */
export function WardRoom({ open }: { readonly open: readonly string[] }) {
  const [what, which = "", act = ""] = open;
  if (what === "bag" && which !== "") return <BagScreen key={which} bag={which} act={act} />;
  if (what === "read" && which !== "")
    return <QuickRead bag={which} done={() => goTo("ward", "at", which)} />;
  if (what === "put-in") return <PutIn first={which} />;
  return <Shelves at={what === "at" ? which : ""} />;
}
