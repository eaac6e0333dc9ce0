import { fork } from "node:child_process";
import { createRequire } from "node:module";
import { dirname, extname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { projectFolder } from "../published.ts";

/** One document for the press: where its templates and fonts lie, and what it shows as JSON, never as code. */
export interface PressJob {
  readonly templates: string;
  readonly template: string;
  readonly fontFolders: readonly string[];
  readonly view: string;
  readonly pictures: readonly Picture[];
}

/** A picture a paper shows, under the name its view has for it: `1.jpg`. */
export interface Picture {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export type PressAnswer = { readonly pdf: Uint8Array } | { readonly fault: string };

/** Latin, Greek, Cyrillic and Devanagari; Arabic; Tamil; Thai. No font of the machine is used, so a paper looks the same everywhere. */
const FONTS = [
  "@expo-google-fonts/noto-sans/400Regular",
  "@expo-google-fonts/noto-sans/400Regular_Italic",
  "@expo-google-fonts/noto-sans/700Bold",
  "@expo-google-fonts/noto-sans/900Black",
  "@expo-google-fonts/amiri/400Regular",
  "@expo-google-fonts/amiri/700Bold",
  "@expo-google-fonts/noto-sans-tamil/400Regular",
  "@expo-google-fonts/noto-sans-tamil/700Bold",
  "@expo-google-fonts/noto-sans-thai/400Regular",
  "@expo-google-fonts/noto-sans-thai/700Bold",
];

/** Typesets one template in a process that ends with it. The same view gives the same bytes. */
export function typeset(
  template: string,
  view: unknown,
  pictures: readonly Picture[] = [],
): Promise<Uint8Array> {
  const require = createRequire(import.meta.url);
  const here = fileURLToPath(import.meta.url);
  const fromSources = extname(here) === ".ts";
  const job: PressJob = {
    templates: join(projectFolder(), "src", "edge", "papers", "templates"),
    template: `${template}.typ`,
    fontFolders: FONTS.map((font) => {
      const [scope, name, face] = font.split("/");
      return join(dirname(require.resolve(`${scope}/${name}/package.json`)), face ?? "");
    }),
    view: JSON.stringify(view),
    pictures,
  };
  return new Promise((resolve, reject) => {
    const press = fork(join(dirname(here), `press${extname(here)}`), {
      cwd: projectFolder(),
      execArgv: fromSources ? ["--import", "tsx"] : [],
      serialization: "advanced",
      stdio: ["ignore", "ignore", "pipe", "ipc"],
    });
    let complaint = "";
    press.stderr?.on("data", (text) => {
      complaint += text;
    });
    press.once("message", (answer: PressAnswer) => {
      if ("pdf" in answer) resolve(answer.pdf);
      else reject(new Error(`The paper ${template} could not be typeset: ${answer.fault}`));
    });
    press.once("error", reject);
    press.once("exit", (code) =>
      reject(new Error(`The press for ${template} ended early (${code}): ${complaint}`)),
    );
    press.send(job);
  });
}
