import { describe, expect, it } from "vitest";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { prepare } from "../../shared-model/judging/prepare.ts";
import { sectionOf } from "../../shared-model/music/section.ts";
import type { Texture } from "../../shared-model/music/texture.ts";
import { textureById } from "../../shared-model/music/textures/catalogue.ts";
import { lackingFor, lackingOf } from "../../shared-model/propose/lacking.ts";
import { propose } from "../../shared-model/propose/propose.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";

const { instrument } = readInstrumentFile(
  `
registrant: instrument/1
name: Test organ
divisions:
  - {name: Hauptwerk, kind: manual, keyboard: 1, stops: [Gedackt 8]}
  - {name: Positiv, kind: manual, keyboard: 2, stops: [Gedackt 8]}
  - {name: Pedal, kind: pedal, stops: [Subbass 16]}
`,
  "organ.yaml",
);

/** What an organ lacks of the first recipe of a full chorus, and what could stand in. */
const lackingOn = (stops: string, couplers = "[]") => {
  const organ = readInstrumentFile(
    `registrant: instrument/1\nname: A\ndivisions:\n  - {name: Manual, kind: manual, stops: ${stops}}\ncouplers: ${couplers}\n`,
    "organ.yaml",
  ).instrument as Instrument;
  const problem = prepare(organ, sectionOf(textureById("plenum-manual") as Texture, {}));
  const [reading] = problem.readings.flatMap(({ prescription }, at) =>
    prescription ? [{ prescription, reading: at }] : [],
  );
  return reading ? lackingOf(problem, reading).map(({ what, way }) => `${what}: ${way}`) : [];
};

describe("what an organ lacks of its best recipe", () => {
  it("is looked for at one octave: a 4 foot is no 2 foot beside its 8, but for an octave coupler", () => {
    const lacks = lackingOn("[Principal 8, Principal 4, Flute 4, Mixture III]");
    expect(lacks).toContain("principal 2: null");
    expect(lackingOn("[Principal 8, Principal 4, Mixture III]", "[Manual to Manual 4]")).not.toContain(
      "principal 2: null",
    );
  });

  it("is said of each part by the name that a musician gives it", () => {
    const texts = ["trio", "melody-over-accompaniment", "plenum", "two-voices"].flatMap((id) => {
      const problem = prepare(instrument as Instrument, sectionOf(textureById(id) as Texture, {}));
      const [best] = propose(problem, { count: 1 }).proposals;
      return best ? lackingFor(problem, best.judgement).map((lack) => lack.text) : [];
    });
    expect(texts.length).toBeGreaterThan(1);
    for (const text of texts) {
      expect(text).toMatch(
        /^The recipe asks the (?:(?:first|second) voice|melody|accompaniment|bass|chorus) for .+; the organ has none\./,
      );
    }
  });
});
