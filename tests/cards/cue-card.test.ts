import { describe, expect, test } from "vitest";
import { cueCard } from "../../shared-model/cards/cue-card.ts";
import { judgedExample } from "./judged-example.ts";
import { registered } from "./registered.ts";

describe("what a card holds", () => {
  test("stops that would do as well stand beside the last of their like, those that are off do not", () => {
    const { problem, state, judgement } = judgedExample({
      organ: "Great: Bourdon 8, Gedackt 8 (Stopped Diapason 8, Stopped Flute 8 off, Gedackt 4), Octave 4 (Prestant 4)",
      plays: "accompaniment on Great",
    });
    expect(cueCard(problem, state, judgement).divisions).toEqual([
      {
        name: "Great",
        stops: [
          { name: "Bourdon 8", or: [] },
          { name: "Gedackt 8", or: ["Stopped Diapason 8"] },
          { name: "Octave 4", or: ["Prestant 4"] },
        ],
      },
    ]);
  });

  test("errors come before warnings, each sentence once; praise and notes stay away", () => {
    const { problem, state, judgement } = judgedExample({ organ: "Great: Gedackt 8", plays: "melody on Great" });
    const finding = (severity: "error" | "warning" | "note" | "praise", text: string) => ({
      severity,
      text,
      remedy: null,
    });
    const card = cueCard(problem, state, judgement, [
      finding("note", "A note."),
      finding("warning", "A warning."),
      finding("error", "An error."),
      finding("praise", "Praise."),
      finding("warning", "A warning."),
    ]);
    expect(card.warnings).toEqual([
      { severity: "error", text: "An error.", remedy: null },
      { severity: "warning", text: "A warning.", remedy: null },
    ]);
  });

  test("what the judging forbids stands on the card without being asked for", () => {
    const { problem, state, judgement } = judgedExample({
      organ: "Great: Nasat 2 2/3 (Gedackt 8)",
      plays: "melody on Great",
    });
    const { warnings } = cueCard(problem, state, judgement);
    expect(warnings.some((warning) => warning.severity === "error" && /Nasat 2 2\/3/.test(warning.text))).toBe(true);
  });

  test("a box stands on it only when something behind it sounds", () => {
    const boxed = (organ: string) => {
      const { problem, state, judgement } = judgedExample({
        organ,
        plays: "melody on Swell, accompaniment on Great",
        boxes: { Swell: "closed" },
      });
      return cueCard(problem, state, judgement).boxes;
    };
    expect(boxed("Swell [box]: Oboe 8 | Great: Gedackt 8")).toEqual([{ name: "Swell", position: "closed" }]);
    expect(boxed("Swell [box]: (Oboe 8) | Great: Gedackt 8")).toEqual([]);
  });

  test("feet that rest and a bass that goes to the hands are said", () => {
    const lines = (keyboards: string, drawn: string) => `
texture: plenum
keyboards: ${keyboards}
drawn: ${drawn}
`;
    const resting = registered("wiekenborg", lines("{plenum: Hauptwerk}", "{Hauptwerk: [Octave 8]}"));
    expect(cueCard(resting.problem, resting.state, resting.judgement).hands).toEqual([
      { who: "Both hands", keyboard: "Hauptwerk", what: null, octave: 0 },
      { who: "Feet", keyboard: null, what: null, octave: 0 },
    ]);
    const bass = registered("alcorava", lines("{plenum: Órgano, bass: Órgano}", "{Órgano: [Violón 8]}"));
    expect(cueCard(bass.problem, bass.state, bass.judgement).hands.map((hand) => hand.who)).toEqual([
      "Both hands",
      "Bass",
    ]);
  });

  test("the recipe's author is why; without one, what speaks most for it", () => {
    const bedos = registered(
      "lurvaux",
      `
texture: plein-jeu
tradition: french-classical
keyboards: {plenum: Grand-Orgue, bass: Pédale}
drawn:
  Positif: [Montre 8, Bourdon 8, Prestant 4, Doublette 2, Fourniture, Cymbale]
  Grand-Orgue: [Montre 16, Bourdon 16, Montre 8, Bourdon 8, Prestant 4, Doublette 2, Fourniture, Cymbale]
  Pédale: [Trompette 8, Clairon 4]
couplers: [Positif to Grand-Orgue]
`,
    );
    const card = cueCard(bedos.problem, bedos.state, bedos.judgement);
    expect([card.label, card.why]).toEqual([
      "Plein jeu with pedal reeds, Positif coupled",
      "Recipe: Dom Bédos (1766).",
    ]);
    const { problem, state, judgement } = judgedExample({
      organ: "Swell: Oboe 8 | Great: Gedackt 8",
      plays: "melody on Swell, accompaniment on Great",
    });
    const best = judgement.reasons.filter((reason) => reason.points > 0).map((reason) => reason.text);
    expect(best).toContain(cueCard(problem, state, judgement).why);
  });
});
