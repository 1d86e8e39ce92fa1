import { describe, expect, test } from "vitest";
import { type CardFinding, type CueCard, cueCard } from "../../shared-model/cards/cue-card.ts";
import { CARD_WIDTH, cueCardText } from "../../shared-model/cards/cue-card-text.ts";
import { prepare } from "../../shared-model/judging/prepare.ts";
import { sectionOf } from "../../shared-model/music/section.ts";
import type { Texture } from "../../shared-model/music/texture.ts";
import { textureById } from "../../shared-model/music/textures/catalogue.ts";
import { DEMO_ORGANS, demoOrgan } from "../instruments/demo-organs.ts";
import { type Registered, registered } from "./registered.ts";

/** A card whose sentences stand here, so that it does not change with the words of a rule. */
function cardOf({ problem, state, judgement }: Registered, said: { why: string; findings: readonly CardFinding[] }) {
  const why = { rule: "said-here", points: 1, text: said.why, source: "common practice", parts: [], stops: [] };
  const reasons = [{ ...why, severity: "praise" as const, remedy: null }];
  return cueCard(problem, state, { parts: judgement.parts, reasons, prescription: null }, said.findings);
}

const BARE: CueCard = {
  organ: "St. Example, Sampleford",
  section: null,
  bars: null,
  label: "Gedackt 8",
  hands: [{ who: "Both hands", keyboard: "Werk", what: null, octave: 0 }],
  divisions: [{ name: "Werk", stops: [{ name: "Gedackt 8", or: [] }] }],
  couplers: [],
  tremulants: [],
  unisonOff: [],
  boxes: [],
  warnings: [],
  why: null,
};

describe("cards as they lie on the desk", () => {
  test("Wiekenborg: a 4' flute an octave lower, with a warning", () => {
    const wiekenborg = registered(
      "wiekenborg",
      `
name: Verse 2
bars: 17-32
texture: melody-over-accompaniment
keyboards: {melody: Brustwerk, accompaniment: Hauptwerk, bass: Pedal}
octaves: {melody: -1}
drawn: {Brustwerk: [Rohrflöte], Hauptwerk: [Spitzflöte], Pedal: [Subbass]}
`,
    );
    const findings = [
      {
        severity: "warning",
        text: "Subbass 16 alone leaves the bass without its 8'.",
        remedy: "Draw Octave 8.",
      },
      { severity: "note", text: "A note does not stand on a card.", remedy: null },
    ] as const;
    expect(cueCardText(cardOf(wiekenborg, { why: "Rohrflöte 4 sings softly at its place.", findings }))).toBe(`\
Verse 2, bars 17-32
Rohrflöte 4 an octave lower over the
Spitzflöte
==============================================
! Subbass 16 alone leaves the bass without
  its 8'.

Right hand  Brustwerk
            an octave lower than written
Left hand   Hauptwerk
Feet        Pedal

HAUPTWERK
  Spitzflöte 8

BRUSTWERK
  Rohrflöte 4

PEDAL
  Subbass 16

Rohrflöte 4 sings softly at its place.

St. Nikolai, Wiekenborg
`);
  });

  test("Alcorava: divided stops on one keyboard, nothing for the feet", () => {
    const alcorava = registered(
      "alcorava",
      `
name: Tiento
texture: treble-solo
tradition: spanish
keyboards: {melody: Órgano, accompaniment: Órgano}
drawn: {Órgano: [Violón 8 bass, Octava 4 bass, Violón 8 treble, Corneta]}
`,
    );
    expect(cueCardText(cardOf(alcorava, { why: "The Corneta stands out.", findings: [] }))).toBe(`\
Tiento
Corneta over foundations 8 4
==============================================

Right hand  Órgano
Left hand   Órgano

ÓRGANO
  Violón 8 bass
  Violón 8 treble
  Octava 4 bass
  Corneta treble

The Corneta stands out.

Capilla de los Calafates, Alcorava
`);
  });

  test("Port-Lestrane: couplers, tremulant, a box, and an error with what to do", () => {
    const lestrane = registered(
      "port-lestrane",
      `
texture: melody-over-accompaniment
tradition: french-symphonic
keyboards: {melody: Récit, accompaniment: Positif, bass: Pédale}
drawn: {Récit: [Basson-Hautbois, Bourdon], Positif: [Cor de nuit, Salicional], Pédale: [Soubasse]}
couplers: [Positif to Pédale]
tremulants: [Récit]
boxes: {Récit: half}
`,
    );
    const findings = [{ severity: "error", text: "Here is an error.", remedy: "Here is what to do." }] as const;
    expect(cueCardText(cardOf(lestrane, { why: "Oboe over soft foundations.", findings }))).toBe(`\
Basson-Hautbois with tremulant over two 8s
==============================================
WRONG Here is an error. Here is what to do.

Right hand  Récit
Left hand   Positif
Feet        Pédale

POSITIF
  Cor de nuit 8
  Salicional 8

RÉCIT
  Bourdon 8
  Basson-Hautbois 8

PÉDALE
  Soubasse 16

Couple      Positif to Pédale
Tremulant   Récit
Box         Récit half open

Notre-Dame-des-Phares, Port-Lestrane
`);
  });
});

describe("the sheet", () => {
  test("a bare card has no empty lines for what it lacks", () => {
    expect(cueCardText(BARE)).toBe(`\
Gedackt 8
==============================================

Both hands  Werk

WERK
  Gedackt 8

St. Example, Sampleford
`);
  });

  test("several keyboards of one hand, resting feet, interchangeable stops, a shaken organ, a narrow sheet", () => {
    const card: CueCard = {
      ...BARE,
      hands: [
        { who: "Right hand", keyboard: "Werk", what: "melody", octave: 0 },
        { who: "Right hand", keyboard: "Echo", what: "echo", octave: 1 },
        { who: "Feet", keyboard: null, what: null, octave: 0 },
      ],
      divisions: [{ name: "Werk", stops: [{ name: "Gedackt 8", or: ["Rohrflöte 8", "Spitzflöte 8"] }] }],
      couplers: ["Echo to Werk", "Echo to Echo 4"],
      unisonOff: ["Echo"],
      tremulants: ["all"],
      bars: "from the double bar",
    };
    expect(cueCardText(card, 28)).toBe(`\
from the double bar
Gedackt 8
============================

Right hand  Werk (melody)
            Echo (echo)
            an octave higher
            than written
Feet        rest

WERK
  Gedackt 8 or Rohrflöte 8
      or Spitzflöte 8

Couple      Echo to Werk
            Echo to Echo 4
Unison off  Echo
Tremulant   the whole organ

St. Example, Sampleford
`);
  });

  test("a word wider than the sheet is cut, and no letter is lost", () => {
    const lines = cueCardText({ ...BARE, organ: "Ä".repeat(100) }, 30).split("\n");
    expect(lines.slice(-5)).toEqual(["", "Ä".repeat(30), "Ä".repeat(30), "Ä".repeat(30), "Ä".repeat(10), ""].slice(1));
    expect(lines.filter((line) => line.length > 30)).toEqual([]);
  });
});

describe.each(DEMO_ORGANS)("everything drawn at %s", (name) => {
  const instrument = demoOrgan(name);
  const stops = instrument.divisions.flatMap((division) => division.stops);
  const problem = prepare(instrument, sectionOf(textureById("plenum") as Texture));
  const state = {
    drawn: new Set(stops.map((stop) => stop.id)),
    couplers: new Set(instrument.couplers.map((coupler) => coupler.name)),
    tremulants: new Set(instrument.tremulants),
    boxes: new Map(),
    unisonOff: new Set(instrument.unisonOff),
  };
  const card = cueCard(problem, state, { parts: [], reasons: [], prescription: null });

  test("stands on the card once, in the console's order", () => {
    expect(card.divisions.flatMap((division) => division.stops.map((stop) => `${division.name}/${stop.name}`))).toEqual(
      stops.map((stop) => stop.id),
    );
    expect(card.couplers).toEqual(instrument.couplers.filter((each) => !each.fixed).map((each) => each.name));
  });

  test("is never wider than the sheet", () => {
    for (const width of [CARD_WIDTH, 24]) {
      expect(
        cueCardText(card, width)
          .split("\n")
          .filter((line) => line.length > width),
      ).toEqual([]);
    }
  });
});
