import { describe, expect, test } from "vitest";
import { LONGEST_LABEL, labelOf } from "../../shared-model/cards/label.ts";
import { labelsOf } from "../../shared-model/cards/labels.ts";
import type { Example } from "../../shared-model/rules/rule.ts";
import { judgedExample } from "./judged-example.ts";

const labelled = (example: Example): string => {
  const { problem, judgement } = judgedExample(example);
  return labelOf(problem, judgement.parts);
};
const SOLO = "melody on Swell, accompaniment on Great, bass on Pedal";
const TENOR = "melody-in-tenor";
const CHORUS = "Great: Principal 8, Octave 4, Superoctave 2, Mixtur IV";

const said: readonly (readonly [label: string, example: Example])[] = [
  ["Oboe over two flutes", { organ: "Swell: Oboe 8 | Great: Gedackt 8, Flöte 8 | Pedal: Subbass 16", plays: SOLO }],
  [
    "Flutes 8 4 2 2/3 over the Viola",
    { organ: "Swell: Gedackt 8, Flöte 4, Nasat 2 2/3 | Great: Viola 8 | Pedal: Subbass 16", plays: SOLO },
  ],
  ["Cornet over two 8s", { organ: "Swell: Cornet V | Great: Principal 8, Gedackt 8 | Pedal: Subbass 16", plays: SOLO }],
  [
    "Sesquialtera with tremulant over flutes 8 4",
    {
      organ: "Swell: Gedackt 8, Sesquialtera II | Great: Gedackt 8, Flöte 4 | Pedal: Subbass 16",
      plays: SOLO,
      tremulants: ["Swell"],
    },
  ],
  [
    "Flöte 4 an octave lower over the Viola",
    { organ: "Swell: Flöte 4 | Great: Viola 8 | Pedal: Subbass 16", plays: SOLO, octaves: { melody: -1 } },
  ],
  [
    "Krummhorn in the tenor, with two flutes",
    { organ: "Swell: Krummhorn 8 | Great: Gedackt 8, Flöte 8 | Pedal: Subbass 16", plays: SOLO, texture: TENOR },
  ],
  [
    "Trompete 4 in the pedal under principals 8 4",
    {
      organ: "Great: Principal 8, Octave 4 | Pedal: Trompete 4",
      plays: "pedal cantus-firmus on Pedal, accompaniment on Great",
    },
  ],
  [
    "Principal 8 against flutes 8 2",
    {
      organ: "Swell: Principal 8 | Great: Gedackt 8, Waldflöte 2 | Pedal: Subbass 16",
      plays: "right-hand voice on Swell, left-hand voice on Great, bass on Pedal",
    },
  ],
  [
    "Flutes 8 4, all parts alike",
    { organ: "Great: Gedackt 8, Flöte 4", plays: "melody on Great, accompaniment on Great" },
  ],
  ["Full chorus with pedal reeds", { organ: `${CHORUS} | Pedal: Posaune 16`, plays: "plenum on Great, bass on Pedal" }],
  ["Full chorus with the Trompete", { organ: `${CHORUS}, Trompete 8`, plays: "plenum on Great" }],
  [
    "Full chorus with reeds in hands and feet",
    { organ: `${CHORUS}, Trompete 8, Trompete 4 | Pedal: Posaune 16`, plays: "plenum on Great, bass on Pedal" },
  ],
  [
    "Plein jeu, Positif coupled",
    {
      organ: "Positif: Prestant 4 | Grand-Orgue: Montre 8, Prestant 4, Doublette 2, Fourniture IV",
      plays: "plenum on Grand-Orgue",
      couplers: ["Positif to Grand-Orgue"],
      tradition: "french-classical",
    },
  ],
  [
    "Grand jeu",
    {
      organ: "Grand-Orgue: Bourdon 8, Prestant 4, Cornet V, Trompette 8, Clairon 4",
      plays: "plenum on Grand-Orgue",
      tradition: "french-classical",
    },
  ],
  [
    "Fonds 8",
    {
      organ: "Grand-Orgue: Montre 8, Bourdon 8, Gambe 8",
      plays: "plenum on Grand-Orgue",
      tradition: "french-symphonic",
    },
  ],
  ["Foundations 8 4", { organ: "Great: Principal 8, Gedackt 8, Viola 8, Octave 4", plays: "plenum on Great" }],
  [
    "Ripieno",
    { organ: "Great: Principale 8, Ottava 4, Ripieno IV", plays: "plenum on Great", tradition: "italian-renaissance" },
  ],
  ["Voix céleste", { organ: "Swell: Gambe 8, Voix céleste 8", plays: "accompaniment on Swell" }],
  ["Gedackt 8", { organ: "Swell: Gedackt 8", plays: "accompaniment on Swell" }],
  [
    "Oboe over flutes 8 4",
    {
      organ: "Swell: Oboe 8 | Great: Gedackt 8, Flöte 4 | Pedal: Subbass 16",
      plays: SOLO,
      couplers: ["Swell to Great"],
    },
  ],
  [
    "Full chorus, Great against Swell",
    {
      organ: "Great: Principal 8, Octave 4, Mixtur IV | Swell: Gedackt 8, Octave 4, Cymbel III",
      plays: "plenum on Great, plenum on Swell",
    },
  ],
  [
    "Full chorus with reeds and cornet, pedal reeds",
    {
      organ: `${CHORUS}, Trompete 8, Cornet V | Swell: Trompete 4 | Pedal: Posaune 16`,
      plays: "plenum on Great, bass on Pedal",
      couplers: ["Swell to Great"],
    },
  ],
  [
    "Principals 8 4, Swell coupled, with echo",
    {
      organ: "Great: Principal 8 | Swell: Octave 4 | Echo: Gedackt 8",
      plays: "plenum on Great, echo on Echo",
      couplers: ["Swell to Great"],
    },
  ],
  [
    "Jeu de tierce in the tenor, with two 8s",
    {
      organ:
        "Positif: Bourdon 8, Prestant 4, Nazard 2 2/3, Doublette 2, Tierce 1 3/5 | Grand-Orgue: Montre 8, Bourdon 8",
      plays: "left-hand melody on Positif, accompaniment on Grand-Orgue",
      texture: "tierce-en-taille",
      tradition: "french-classical",
    },
  ],
  ["Silence", { organ: "Swell: (Gedackt 8)", plays: "accompaniment on Swell" }],
];

describe("what a musician would call it", () => {
  test.each(said)("%s", (label, example) => expect(labelled(example)).toBe(label));

  test("a name of unusual length is cut at a word, never beyond the width", () => {
    const name = "Grandissima Trombetta Militare di Battaglia del Santo Patrono e di Tutti i Fratelli";
    const { problem, judgement } = judgedExample({ organ: "Great: Trombetta 8", plays: "melody on Great" });
    const divisions = problem.instrument.divisions.map((division) => ({
      ...division,
      stops: division.stops.map((stop) => ({ ...stop, name })),
    }));
    const label = labelOf({ ...problem, instrument: { ...problem.instrument, divisions } }, judgement.parts);
    expect(label).toBe("Grandissima Trombetta Militare di Battaglia del Santo…");
    expect(label.length).toBeLessThanOrEqual(LONGEST_LABEL);
  });
});

describe("several of one label", () => {
  const ORGANS = [
    "Great: Principal 8, Octave 4 (Gedackt 8, Flöte 4) | Pedal: Subbass 16 (Octavbass 8, Posaune 16)",
    "Great: Principal 8, Octave 4 (Gedackt 8, Flöte 4) | Pedal: Subbass 16, Octavbass 8 (Posaune 16)",
    "Great: Principal 8, Octave 4 (Gedackt 8, Flöte 4) | Pedal: Octavbass 8 (Subbass 16, Posaune 16)",
    "Great: Gedackt 8, Flöte 4 (Principal 8, Octave 4) | Pedal: Subbass 16 (Octavbass 8, Posaune 16)",
    "Great: Principal 8, Octave 4 (Gedackt 8, Flöte 4) | Pedal: Subbass 16 (Octavbass 8, Posaune 16)",
  ].map((organ) => judgedExample({ organ, plays: "plenum on Great, bass on Pedal" }));

  test("say how they differ from the first", () => {
    const [first] = ORGANS;
    if (!first) throw new Error("There is no organ.");
    expect(
      labelsOf(
        first.problem,
        ORGANS.map(({ judgement }) => judgement.parts),
      ),
    ).toEqual([
      "Principals 8 4",
      "Principals 8 4; with Octavbass 8 in the pedal",
      "Principals 8 4; Octavbass 8 for Subbass 16 in the pedal",
      "Flutes 8 4",
      "Principals 8 4",
    ]);
  });

  test("shorten what they share before they shorten how they differ", () => {
    const twins = ["(Gedackt 8, Flöte 4)", ", Gedackt 8, Flöte 4"].map((more) =>
      judgedExample({
        organ: `Swell: Sesquialtera II ${more} | Great: Viola da Gamba 8 | Pedal: Subbass 16`,
        plays: SOLO,
        tremulants: ["Swell"],
      }),
    );
    const [first] = twins;
    if (!first) throw new Error("There is no organ.");
    expect(
      labelsOf(
        first.problem,
        twins.map(({ judgement }) => judgement.parts),
      ),
    ).toEqual(["Sesquialtera with tremulant over the Viola da Gamba", "Sesquialtera; with Gedackt 8 and Flöte 4"]);
  });

  test("a coupler that only the feet hear is told", () => {
    const organ = "Great: Principal 8, Octave 4 | Pedal: Subbass 16";
    const [apart, coupled] = [[], ["Great to Pedal"]].map((couplers) =>
      judgedExample({ organ, plays: "plenum on Great, bass on Pedal", couplers }),
    );
    if (!apart || !coupled) throw new Error("There is no organ.");
    expect(labelsOf(apart.problem, [apart.judgement.parts, coupled.judgement.parts])).toEqual([
      "Principals 8 4",
      "Principals 8 4; pedal coupled",
    ]);
  });
});
