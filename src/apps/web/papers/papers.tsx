import { papers as words } from "../../../core/say/page.ts";
import { LOCALE } from "../frame/reader.ts";
import { Empty, Section } from "../frame/section.tsx";
import type { PaperFile } from "../use-plan.ts";
import "./papers.css";

const size = (bytes: number): string =>
  new Intl.NumberFormat(LOCALE, { style: "unit", unit: "kilobyte", maximumFractionDigits: 0 }).format(
    bytes / 1000,
  );

/** The PDFs that can be printed now; null when the list could not be read. */
export const Papers = ({ papers }: { papers: readonly PaperFile[] | null }) => (
  <Section id="papers" heading={words.heading} intro={words.intro}>
    {papers === null && <p>{words.failed}</p>}
    {papers?.length === 0 && <Empty title={words.empty} help={words.emptyHelp} />}
    <ul className="papers">
      {papers?.map(({ file, bytes }) => (
        <li key={file}>
          <a href={`papers/${encodeURIComponent(file)}`}>
            {file.replace(/\.pdf$/i, "").replaceAll("-", " ")}{" "}
            <span className="quiet">
              {words.kind}, {size(bytes)}
            </span>
          </a>
        </li>
      ))}
    </ul>
  </Section>
);
