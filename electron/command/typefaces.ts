import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Face } from "../../shared-model/cards/paper/type.ts";
import { openTypefaces, type TypefaceBytes, type Typefaces } from "../../shared-model/cards/pdf.ts";
import { Refusal } from "./terminal.ts";

/** Source Serif 4 and Source Sans 3 (SIL Open Font License), whole: with fractions and the letters of all Europe. */
const FILES: Readonly<Record<Face, string>> = {
  serif: "@expo-google-fonts/source-serif-4/400Regular/SourceSerif4_400Regular.ttf",
  "serif-bold": "@expo-google-fonts/source-serif-4/600SemiBold/SourceSerif4_600SemiBold.ttf",
  sans: "@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf",
  "sans-bold": "@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf",
  dynamic: "@expo-google-fonts/source-serif-4/700Bold_Italic/SourceSerif4_700Bold_Italic.ttf",
};

/**
 * The faces that cards are printed in, from where the package was installed.
 *
 * @throws Refusal when a font file is missing: the installation is not whole.
 */
export function installedTypefaces(): Typefaces {
  const { resolve } = createRequire(import.meta.url);
  const read = (path: string): Uint8Array => {
    try {
      return readFileSync(resolve(path));
    } catch {
      throw new Refusal(`The font file ${path} is missing, so nothing can be printed. Run "npm ci" once more.`);
    }
  };
  const entries = Object.entries(FILES).map(([face, path]) => [face, read(path)] as const);
  return openTypefaces(Object.fromEntries(entries) as TypefaceBytes);
}
