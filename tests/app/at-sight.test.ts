import { describe, expect, test } from "vitest";
import { fileAtSight } from "../../renderer/entering/from-list.ts";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";

/** Divisions with their stops, as an organ at sight has them before anything is answered. */
const atSight = (text: string): readonly (readonly [string, readonly string[]])[] => {
  const file = fileAtSight({ text, answers: {} }) ?? "";
  const { instrument } = readInstrumentFile(file, "organ.yaml");
  return (instrument?.divisions ?? []).map(({ name, stops }) => [name, stops.map((stop) => stop.name)]);
};

describe("an organ at sight, with nothing answered yet", () => {
  test("leaves out a stop that is not clear", () => {
    expect(atSight("Hauptwerk\nPrincipal 8\nFlöte\nOctave 4")).toEqual([["Hauptwerk", ["Principal", "Octave"]]]);
  });

  test("gives no hand what the pedal plays, wherever it is printed", () => {
    expect(
      atSight(
        "Tastiera di 45 tasti\nPedaliera di 17 note, unita alla tastiera\nPrincipale 8\nOttava 4\nContrabbassi 16",
      ),
    ).toEqual([
      ["Tastiera", ["Principale", "Ottava"]],
      ["Pedaliera", ["Contrabbassi"]],
    ]);
  });

  test("is none where nothing can be read", () => {
    expect(fileAtSight({ text: "Thank you for standing in on Sunday.", answers: {} })).toBeNull();
  });
});
