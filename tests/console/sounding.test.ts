import { describe, expect, it } from "vitest";
import { type Pipe, soundingPipes } from "../../shared-model/console/sounding.ts";
import type { ConsoleState } from "../../shared-model/console/state.ts";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { keyFromText } from "../../shared-model/pitch/key.ts";
import type { Division, Instrument } from "../../shared-model/stoplist/instrument.ts";

const ORGAN = `
registrant: instrument/1
name: Chest organ, Quillhaven
divisions:
  - name: Manual
    kind: manual
    keyboard: 1
    compass: C2-C6
    stops:
      - {name: Gedackt, pitch: 8, rank: gedackt}
      - {name: Flöte, pitch: 4, rank: gedackt}
      - {name: Nasat, pitch: 2 2/3, rank: gedackt}
      - Principal 4
  - name: Oberwerk
    kind: manual
    keyboard: 2
    compass: C2-C6
    stops: [Regal 8]
  - name: Pedal
    kind: pedal
    compass: C2-C4
    stops: []
ranks:
  - {id: gedackt, longest: 8, pipes: 80, kind: stopped-flute}
couplers:
  - {coupler: Oberwerk to Manual, through: true}
  - {coupler: Manual to Pedal, through: true}
  - Oberwerk to Manual 4
unison-off: [Manual]
`;
const { instrument, troubles } = readInstrumentFile(ORGAN, "quillhaven.yaml");
const organ = instrument as Instrument;

/** Pipes as `rank:number`, when a key is held with these stops and couplers on. */
function held(
  keyboard: string,
  key: string,
  drawn: readonly string[],
  couplers: readonly string[] = [],
  off: readonly string[] = [],
) {
  const state: ConsoleState = {
    drawn: new Set(drawn),
    couplers: new Set(couplers),
    tremulants: new Set(),
    boxes: new Map(),
    unisonOff: new Set(off),
  };
  const division = organ.divisions.find((each) => each.name === keyboard) as Division;
  return soundingPipes(organ, state, division, keyFromText(key) as number)
    .map(({ rank, number }: Pipe) => `${rank}:${number}`)
    .sort();
}

describe("which pipes sound when a key is held", () => {
  it("reads the organ without an error", () => {
    expect(troubles.filter((trouble) => "severity" in trouble && trouble.severity === "error")).toEqual([]);
  });

  it("an 8 and the 4 from the same rank sound two pipes an octave apart", () => {
    expect(held("Manual", "C2", ["Manual/Gedackt 8", "Manual/Flöte 4"])).toEqual(["gedackt:0", "gedackt:12"]);
  });

  it("a twelfth from the rank takes the pipe nineteen semitones up", () => {
    expect(held("Manual", "C2", ["Manual/Nasat 2 2/3"])).toEqual(["gedackt:19"]);
  });

  it("keys beyond the keyboard sound nothing", () => {
    expect(held("Manual", "C#6", ["Manual/Gedackt 8"])).toEqual([]);
  });

  it("a coupler brings the other manual, and carries it on to the pedal where it goes through", () => {
    const [regal] = held("Oberwerk", "C3", ["Oberwerk/Regal 8"]);
    expect(held("Manual", "C3", ["Oberwerk/Regal 8"], ["Oberwerk to Manual"])).toEqual([regal]);
    expect(held("Pedal", "C3", ["Oberwerk/Regal 8"], ["Oberwerk to Manual", "Manual to Pedal"])).toEqual([regal]);
    expect(held("Pedal", "C3", ["Oberwerk/Regal 8"], ["Manual to Pedal"])).toEqual([]);
  });

  it("an octave coupler plays the key an octave higher", () => {
    expect(held("Manual", "C3", ["Oberwerk/Regal 8"], ["Oberwerk to Manual 4"])).toEqual(
      held("Oberwerk", "C4", ["Oberwerk/Regal 8"]),
    );
  });

  it("unison off silences a manual's own stops and leaves what is coupled to it", () => {
    const both = ["Manual/Gedackt 8", "Oberwerk/Regal 8"];
    expect(held("Manual", "C3", both, ["Oberwerk to Manual"], ["Manual"])).toEqual(held("Oberwerk", "C3", both));
  });

  it("a pipe that two stops ask for speaks once", () => {
    const octave = held("Manual", "C3", ["Manual/Gedackt 8"]);
    expect(held("Manual", "C2", ["Manual/Flöte 4"])).toEqual(octave);
  });
});
