// Runs in a process of its own: the typesetter keeps all it has compiled, and only the end of the process gives the memory back.
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { NodeCompiler, PdfStandard } from "@myriaddreamin/typst-ts-node-compiler";
import type { PressAnswer, PressJob } from "./typeset.ts";

const PICTURES = "pictures";

function print(job: PressJob): PressAnswer {
  const compiler = NodeCompiler.create({
    workspace: job.templates,
    fontArgs: [{ fontPaths: [...job.fontFolders] }],
  });
  for (const name of readdirSync(job.templates))
    if (name === "view.json" || name === PICTURES) throw new Error(`${name} is made here`);
  compiler.mapShadow(join(job.templates, "view.json"), Buffer.from(job.view));
  for (const { name, bytes } of job.pictures)
    compiler.mapShadow(join(job.templates, PICTURES, name), Buffer.from(bytes));
  const compiled = compiler.compile({ mainFilePath: join(job.templates, job.template) });
  const document = compiled.result;
  if (!document) {
    const error = compiled.takeError();
    return { fault: JSON.stringify(error ? compiler.fetchDiagnostics(error) : "no document") };
  }
  try {
    return { pdf: compiler.pdf(document, { pdfStandard: PdfStandard.UA_1 }) };
  } catch {
    // A letter that no bundled font has makes PDF/UA refuse; the paper is still wanted, tagged as well as it can be.
    return { pdf: compiler.pdf(document) };
  }
}

process.once("message", (job: PressJob) => {
  let answer: PressAnswer;
  try {
    answer = print(job);
  } catch (error) {
    answer = { fault: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
  process.send?.(answer, () => process.disconnect());
});
