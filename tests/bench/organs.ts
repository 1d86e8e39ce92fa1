import { readFileSync } from "node:fs";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { randomInstrument } from "../instruments/random-instruments.ts";

/** Organs of one line of the table: random ones of a size, or one demo organ. */
export type Organs =
  | { readonly manuals: number; readonly stops: number; readonly seeds: number }
  | { readonly demo: string };

// Compiled files lie two folders deeper than the sources.
const FOLDER = new URL("../../../instruments/", import.meta.url);

/** Seed of the first random organ of a line; the others follow it. */
export const FIRST_SEED = 1000;

export function organsOf(organs: Organs): readonly Instrument[] {
  if ("demo" in organs) {
    const file = `${organs.demo}.yaml`;
    const { instrument } = readInstrumentFile(readFileSync(new URL(file, FOLDER), "utf8"), file);
    if (!instrument) throw new Error(`${file} cannot be read.`);
    return [instrument];
  }
  const { manuals, stops, seeds } = organs;
  return Array.from({ length: seeds }, (_, index) =>
    randomInstrument(FIRST_SEED + index, {
      manuals,
      stops,
      pedal: true,
      manner: index % 2 === 0 ? "romantic" : "baroque",
    }),
  );
}

export const organsText = (organs: Organs): string =>
  "demo" in organs ? organs.demo : `${organs.manuals} / ${organs.stops}`;
