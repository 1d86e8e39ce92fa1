import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { P } from "../../shared-model/acoustics/pitch-set.ts";
import { type CheckedRegistration, checkRegistration } from "../../shared-model/check/check.ts";
import { soundingPipes } from "../../shared-model/console/sounding.ts";
import type { ConsoleState } from "../../shared-model/console/state.ts";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { judge } from "../../shared-model/judging/judge.ts";
import { prepare } from "../../shared-model/judging/prepare.ts";
import { partsFromHand, sectionOf } from "../../shared-model/music/section.ts";
import type { Texture } from "../../shared-model/music/texture.ts";
import { textureById } from "../../shared-model/music/textures/catalogue.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { randomInstrument } from "../instruments/random-instruments.ts";

const { instrument } = readInstrumentFile(
  `
registrant: instrument/1
name: Test organ
divisions:
  - {name: Great, kind: manual, keyboard: 1, stops: [Open Diapason 8, Stopped Diapason 8, Principal 4]}
  - {name: Swell, kind: manual, keyboard: 2, enclosed: true, stops: [Oboe 8, Salicional 8]}
  - {name: Pedal, kind: pedal, stops: [Bourdon 16, Bass Flute 8]}
couplers: [Swell to Great, Great to Swell, Great to Pedal, Swell to Swell 4]
unison-off: [Swell]
`,
  "organ.yaml",
);
const ORGAN = instrument as Instrument;
const SOLO = prepare(ORGAN, sectionOf(textureById("melody-over-accompaniment") as Texture, {}));
const PEDAL = ["Pedal/Bourdon 16", "Pedal/Bass Flute 8"];

const standing = (drawn: readonly string[], couplers: readonly string[], off: readonly string[]): ConsoleState => ({
  drawn: new Set(drawn),
  couplers: new Set(couplers),
  tremulants: new Set(),
  boxes: new Map(),
  unisonOff: new Set(off),
});

function checked(state: ConsoleState, keyboards: Readonly<Record<string, string>> | null = null): CheckedRegistration {
  const result = checkRegistration(SOLO, { state, keyboards, octaves: {} });
  if ("unplayable" in result) throw new Error(result.unplayable);
  return result;
}

const ON_SWELL = { melody: "Swell", accompaniment: "Great", bass: "Pedal" };
const errorsIn = ({ findings }: CheckedRegistration) => findings.filter((each) => each.severity === "error");
const heardIn = ({ judgement }: CheckedRegistration, part: string) =>
  judgement.parts.find((each) => each.placing.part === part)?.heard;

describe("a keyboard with its unison off", () => {
  const drawn = ["Swell/Oboe 8", "Great/Stopped Diapason 8", ...PEDAL];

  test("does not sound its own stops; the remedy turns it on, and is right", () => {
    const silent = checked(standing(drawn, [], ["Swell"]), ON_SWELL);
    expect(heardIn(silent, "melody")).toEqual([]);
    expect(errorsIn(silent).map(({ text, remedy, stops }) => [text, remedy, stops])).toEqual([
      [
        "The unison of the Swell is off, so the melody does not hear what is drawn there.",
        "Turn the unison of the Swell on.",
        ["Swell/Oboe 8"],
      ],
    ]);
    expect(silent.findings.filter((each) => each.rule === "nothing-idle")).toEqual([]);
    expect(errorsIn(checked(standing(drawn, [], []), ON_SWELL))).toEqual([]);
  });

  test("sounds them an octave higher through its octave coupler, and nowhere else", () => {
    const octave = checked(standing(drawn, ["Swell to Swell 4"], ["Swell"]), ON_SWELL);
    const melody = octave.judgement.parts.find((each) => each.placing.part === "melody");
    expect([melody?.heard, melody?.sound.plain]).toEqual([["Swell/Oboe 8"], P["4"]]);
    const both = checked(standing(drawn, ["Swell to Swell 4"], []), ON_SWELL);
    expect(both.judgement.parts.find((each) => each.placing.part === "melody")?.sound.plain).toBe(
      (P["8"] as number) | (P["4"] as number),
    );
  });

  test("still lends them to another keyboard", () => {
    const lent = checked(standing(drawn, ["Swell to Great"], ["Swell"]), {
      melody: "Great",
      accompaniment: "Great",
      bass: "Pedal",
    });
    expect(heardIn(lent, "melody")).toEqual(["Great/Stopped Diapason 8", "Swell/Oboe 8"]);
  });

  test("still plays what is coupled to it; its own stops are then named as drawn for nothing", () => {
    const borrowed = checked(standing(drawn, ["Great to Swell"], ["Swell"]), ON_SWELL);
    expect(heardIn(borrowed, "melody")).toEqual(["Great/Stopped Diapason 8"]);
    expect(
      borrowed.findings.filter((each) => each.rule === "nothing-idle").map(({ text, remedy }) => [text, remedy]),
    ).toEqual([
      [
        "Oboe 8 is drawn, and the unison of the Swell is off.",
        "Turn the unison of the Swell on, or take the stop off.",
      ],
    ]);
  });

  test("is no place for a part whose keyboard is left open; where nobody plays it, a note says so", () => {
    const open = checked(standing(["Swell/Oboe 8", "Great/Stopped Diapason 8", ...PEDAL], [], ["Swell"]));
    expect(open.placings.some((each) => each.keyboard === "Swell")).toBe(false);
    expect(open.findings.map((each) => each.text)).toContain(
      "The unison of the Swell is off, and no part plays there.",
    );
  });
});

describe("what a part hears of random organs", () => {
  test("is what sounds when one of its keys is held, unisons off or on", () => {
    let silenced = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e6 }),
        fc.infiniteStream(fc.double({ min: 0, max: 1, noNaN: true })),
        (seed, chances) => {
          const organ = randomInstrument(seed, { manner: "romantic", manuals: 2, stops: 8 });
          const share = (part: number) => (chances.next().value as number) < part;
          const stops = organ.divisions.flatMap((division) => division.stops);
          const state: ConsoleState = {
            drawn: new Set(stops.filter((stop) => !stop.off && share(0.5)).map((stop) => stop.id)),
            couplers: new Set(organ.couplers.filter(() => share(0.4)).map((coupler) => coupler.name)),
            tremulants: new Set(),
            boxes: new Map(),
            unisonOff: new Set(
              organ.divisions.filter((each) => each.kind === "manual" && share(0.5)).map((each) => each.name),
            ),
          };
          for (const keyboard of organ.divisions.filter((division) => division.kind === "manual")) {
            const { low, high } = keyboard.compass;
            const section = {
              name: null,
              bars: null,
              texture: null,
              tradition: "neutral" as const,
              dynamic: null,
              tempo: null,
              parts: partsFromHand([{ role: "plenum", hands: "both", low, high }]),
            };
            const [part] = section.parts;
            const judged = judge(prepare(organ, section), state, [
              { part: part?.id ?? "", keyboard: keyboard.name, octave: 0 },
            ]);
            const keys = Array.from({ length: high - low + 1 }, (_, index) => low + index);
            const sounding = stops.filter((stop) =>
              keys.some(
                (key) =>
                  soundingPipes(
                    organ,
                    { ...state, drawn: new Set(state.drawn.has(stop.id) ? [stop.id] : []) },
                    keyboard,
                    key,
                  ).length > 0,
              ),
            );
            if (state.unisonOff.has(keyboard.name)) silenced += 1;
            expect(judged?.parts[0]?.heard).toEqual(sounding.map((stop) => stop.id));
          }
        },
      ),
      { numRuns: 40, seed: 1 },
    );
    expect(silenced).toBeGreaterThan(10);
  });
});
