import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { prepare } from "../../shared-model/judging/prepare.ts";
import { sectionOf } from "../../shared-model/music/section.ts";
import type { Texture } from "../../shared-model/music/texture.ts";
import { textureFor } from "../../shared-model/music/textures/catalogue.ts";
import { propose } from "../../shared-model/propose/propose.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";

test("a grand chœur is played from the main keyboard, to which and to the pedal the others are coupled", () => {
  const file = "aldrunburg.yaml";
  const text = readFileSync(new URL(`../../instruments/${file}`, import.meta.url), "utf8");
  const instrument = readInstrumentFile(text, file).instrument as Instrument;
  const tradition = "french-symphonic";
  const texture = textureFor("grand-choeur-symphonic", tradition) as Texture;
  const { proposals, proven } = propose(prepare(instrument, sectionOf(texture, { tradition })), { count: 2 });
  const [first] = proposals;
  expect(proven).toBe(true);
  expect(first?.found.placings.map(({ part, keyboard }) => `${part} on ${keyboard}`)).toEqual([
    "plenum on Hauptwerk",
    "bass on Pedal",
  ]);
  // Common practice: the couplers of the manuals and those to the pedal are drawn together.
  expect([...(first?.found.state.couplers ?? [])].sort()).toEqual([
    "Hauptwerk to Pedal",
    "Positiv to Hauptwerk",
    "Positiv to Pedal",
    "Schwellwerk to Hauptwerk",
    "Schwellwerk to Pedal",
  ]);
});
