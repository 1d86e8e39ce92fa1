import { readdirSync, readFileSync } from "node:fs";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";

const FOLDER = new URL("../../instruments/", import.meta.url);

/** The text of a file beside the demo organs. */
export const demoText = (file: string): string => readFileSync(new URL(file, FOLDER), "utf8");

const READ = new Map(
  readdirSync(FOLDER)
    .filter((file) => file.endsWith(".yaml"))
    .sort()
    .map((file) => [file.replace(".yaml", ""), readInstrumentFile(demoText(file), file)] as const),
);

/** Names of the demo organs, those of their files, in alphabetical order. */
export const DEMO_ORGANS: readonly string[] = [...READ.keys()];

/** What the reader of files had to say about one. */
export const demoTroubles = (name: string) => READ.get(name)?.troubles;

/**
 * A demo organ by the name of its file (`wiekenborg`).
 *
 * @throws Error when there is none or it cannot be read.
 */
export function demoOrgan(name: string): Instrument {
  const instrument = READ.get(name)?.instrument;
  if (!instrument) throw new Error(`${name}.yaml was not read.`);
  return instrument;
}
