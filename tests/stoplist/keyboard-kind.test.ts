import { describe, expect, it } from "vitest";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { divisionKinds } from "../../shared-model/stoplist/keyboard-kind.ts";

/** What each manual is taken for: `Manual I: Principal 8 | Manual II: Gedackt 8`, `[box]` behind a name for an enclosed one. */
function kinds(organ: string): Readonly<Record<string, string>> {
  const divisions = organ.split(" | ").map((row, index) => {
    const [head = "", stops = ""] = row.split(": ");
    const name = head.replace(" [box]", "");
    const boxed = head.endsWith("[box]") ? ", enclosed: true" : "";
    return `  - {name: "${name}", kind: manual, keyboard: ${index + 1}${boxed}, stops: [${stops}]}`;
  });
  const { instrument } = readInstrumentFile(
    `registrant: instrument/1\nname: Test organ\ndivisions:\n${divisions.join("\n")}\n`,
    "organ.yaml",
  );
  if (!instrument) throw new Error("The organ of the test was not read.");
  return Object.fromEntries([...divisionKinds(instrument)].map(([name, set]) => [name, [...set].sort().join(" ")]));
}

describe("keyboards called by numbers", () => {
  it.each([
    ["Manual I", "Manual II"],
    ["I. Manual", "II. Manual"],
    ["Manual 1", "Manual 2"],
    ["1st Manual", "2nd Manual"],
    ["First Manual", "Second Manual"],
    ["Erstes Manual", "Zweites Manual"],
    ["Manuaal I", "Manuaal II"],
    ["1er clavier", "2e clavier"],
    ["Clavier I", "Clavier II"],
    ["Tastiera I", "Tastiera II"],
    ["Prima tastiera", "Seconda tastiera"],
    ["Primer teclado", "Segundo teclado"],
    ["I", "II"],
  ])("%s is the main one, %s a secondary one", (first, second) => {
    expect(kinds(`${first}: Principal 8, Octave 4 | ${second}: Principal 8, Gedackt 8, Octave 4, Octave 2`)).toEqual({
      [first]: "main",
      [second]: "positive",
    });
  });

  it("in a box is a swell too", () => {
    expect(kinds("Manual I: Principal 8 | Manual II [box]: Gedackt 8 | Manual III [box]: Salicional 8")).toEqual({
      "Manual I": "main",
      "Manual II": "positive swell",
      "Manual III": "positive swell",
    });
  });

  it("gives way to a division that is named as the main one", () => {
    expect(kinds("Manual I: Principal 4, Gedackt 8 | Hauptwerk: Principal 8")).toEqual({
      "Manual I": "positive",
      Hauptwerk: "main",
    });
  });

  it("is a positive in front where the next one has the deeper principal", () => {
    const organ = "Manual I: Gedackt 8, Principal 4 | Manual II: Principal 8, Octave 4 | Manual III: Gedackt 8";
    expect(kinds(organ)).toEqual({ "Manual I": "positive", "Manual II": "main", "Manual III": "positive" });
  });
});

describe("keyboards called by names", () => {
  it("are what the name says, and one of no name is the main one where it is alone", () => {
    expect(kinds("Great: Open Diapason 8 | Swell [box]: Oboe 8 | Choir: Dulciana 8")).toEqual({
      Great: "main",
      Swell: "recit swell",
      Choir: "choir positive",
    });
    expect(kinds("Manual: Gedackt 8")).toEqual({ Manual: "main" });
    expect(kinds("Teclado: Flautado 8")).toEqual({ Teclado: "main" });
  });

  it("of no meaning are told apart by the deepest principal", () => {
    expect(kinds("Lower: Principal 4, Gedackt 8, Flöte 4, Octave 2 | Upper: Principal 8")).toEqual({
      Lower: "positive",
      Upper: "main",
    });
  });
});
