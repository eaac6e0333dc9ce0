import { getDocument, VerbosityLevel } from "pdfjs-dist/legacy/build/pdf.mjs";

/** A PDF as a reader that is none of ours sees it (Mozilla's pdf.js). */
export interface PdfRead {
  /** What stands on each page, words with one space between. */
  readonly pages: readonly string[];
  /** Width and height of the first page in points. */
  readonly size: readonly [number, number];
  readonly isTagged: boolean;
  /** Roles of the structure tree, as ISO 32000-1 14.8.4 names them. */
  readonly roles: ReadonlySet<string>;
  readonly fonts: readonly { readonly name: string; readonly isEmbedded: boolean }[];
}

export async function readPdf(bytes: Uint8Array): Promise<PdfRead> {
  const loading = getDocument({ data: Uint8Array.from(bytes), verbosity: VerbosityLevel.ERRORS });
  const document = await loading.promise;
  const roles = new Set<string>();
  const pages: string[] = [];
  let size: [number, number] = [0, 0];
  for (let n = 1; n <= document.numPages; n++) {
    const page = await document.getPage(n);
    const { width, height } = page.getViewport({ scale: 1 });
    if (n === 1) size = [width, height];
    const { items } = await page.getTextContent();
    const text = items.map((each) => ("str" in each ? `${each.str}${each.hasEOL ? " " : ""}` : "")).join("");
    pages.push(text.replace(/\s+/g, " ").trim());
    gatherRoles(await page.getStructTree(), roles);
  }
  const mark = await document.getMarkInfo();
  await loading.destroy();
  return { pages, size, roles, isTagged: mark?.Marked === true, fonts: fontsIn(bytes) };
}

function gatherRoles(node: unknown, roles: Set<string>): void {
  if (typeof node !== "object" || node === null) return;
  if ("role" in node && typeof node.role === "string") roles.add(node.role);
  if ("children" in node && Array.isArray(node.children))
    for (const each of node.children) gatherRoles(each, roles);
}

/** Each font's descriptor and whether the font's own file stands in the PDF (ISO 32000-1 9.9). */
function fontsIn(bytes: Uint8Array): PdfRead["fonts"] {
  const objects = Buffer.from(bytes).toString("latin1").split("endobj");
  return objects.flatMap((each) => {
    const name = /\/Type\s*\/FontDescriptor/.test(each)
      ? /\/FontName\s*\/[A-Z]{6}\+([\w-]+)/.exec(each)?.[1]
      : undefined;
    return name === undefined ? [] : [{ name, isEmbedded: /\/FontFile[23]?\s/.test(each) }];
  });
}
