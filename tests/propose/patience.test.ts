import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { prepare } from "../../shared-model/judging/prepare.ts";
import { sectionOf } from "../../shared-model/music/section.ts";
import type { Texture, Tradition } from "../../shared-model/music/texture.ts";
import { textureFor } from "../../shared-model/music/textures/catalogue.ts";
import { propose } from "../../shared-model/propose/propose.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { nonsenseIn } from "./nonsense.ts";

/** So few that the chorus below is not proved within them; by default it would be. */
const FEW_SETS = 20_000;

function proposedOn(file: string, id: string, tradition: Tradition, patience?: number) {
  const text = readFileSync(new URL(`../../instruments/${file}`, import.meta.url), "utf8");
  const instrument = readInstrumentFile(text, file).instrument as Instrument;
  const problem = prepare(instrument, sectionOf(textureFor(id, tradition) as Texture, { tradition }));
  return { problem, ...propose(problem, patience === undefined ? {} : { patience }) };
}

describe("a full chorus on a large organ of another school, for which there is too little patience", () => {
  const { problem, proposals, proven } = proposedOn(
    "aldrunburg.yaml",
    "grand-choeur-symphonic",
    "french-symphonic",
    FEW_SETS,
  );

  test("is proposed all the same, and it is said that nothing is proved", { timeout: 300_000 }, () => {
    expect(proven).toBe(false);
    expect(proposals.length).toBeGreaterThan(0);
    expect(nonsenseIn(problem, proposals)).toEqual([]);
  });

  test("comes out the same when it is asked for again", { timeout: 300_000 }, () => {
    const again = proposedOn("aldrunburg.yaml", "grand-choeur-symphonic", "french-symphonic", FEW_SETS).proposals;
    expect(again.map((each) => each.found.signature)).toEqual(proposals.map((each) => each.found.signature));
  });
});

test("what an organ serves is proved", () => {
  expect(proposedOn("sallowby.yaml", "hymn-verse", "neutral").proven).toBe(true);
});
