import { hazardSays, hazardSvg } from "../../../edge/papers/hazard-signs.ts";
import { signSays, signSvg } from "../../../edge/papers/signs.ts";
import "./sign.css";

/** A safety sign by its ISO 7010 code, or a pictogram by its GHS code; a code without a drawing shows nothing. */
export function Sign({ code }: { readonly code: string }) {
  const [svg, says] = [signSvg(code) ?? hazardSvg(code), signSays(code) ?? hazardSays(code)];
  if (svg === null || says === null) return null;
  // one of our own drawings; nothing typed or sent stands in it
  return <span className="sign" role="img" aria-label={says} dangerouslySetInnerHTML={{ __html: svg }} />;
}

/** Signs in a row. */
export const Signs = ({ codes }: { readonly codes: readonly string[] }) => (
  <span className="signs">
    {codes.map((code) => (
      <Sign key={code} code={code} />
    ))}
  </span>
);
