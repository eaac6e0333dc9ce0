import { Airing } from "./airing.tsx";
import { ReaderScreen } from "./reader-screen.tsx";
import { Readers } from "./readers.tsx";
import { WriteReading } from "./write-reading.tsx";

/** The readers of the stores, one of them, a reading by hand, or whether to air. */
export function ClimateRoom({ open }: { readonly open: readonly string[] }) {
  const [what, which = ""] = open;
  if (what === "reader" && which !== "") return <ReaderScreen key={which} name={which} />;
  if (what === "write") return <WriteReading key={which} reader={which} />;
  if (what === "air") return <Airing store={which} />;
  return <Readers />;
}
