import { describe, expect, test } from "vitest";
import { EAR } from "../../shared-model/acoustics/band-tables.ts";
import { BANDS } from "../../shared-model/acoustics/bands.ts";
import { excitationOf, type Line } from "../../shared-model/acoustics/excitation.ts";
import { loudnessOf } from "../../shared-model/acoustics/loudness.ts";
import { compassTrim, partialsOf, type Tone } from "../../shared-model/acoustics/partials.ts";
import { THIRD_OCTAVES, zwickerSones } from "./zwicker.ts";

/** Lines as third-octave levels, by filters with steep skirts. */
function thirdOctaves(lines: readonly Line[]): readonly number[] {
  return THIRD_OCTAVES.map((centre) => {
    const power = lines.reduce((sum, { hz, db }) => {
      const away = (hz / centre - centre / hz) / (2 ** (1 / 6) - 2 ** (-1 / 6));
      return sum + 10 ** (db / 10) / (1 + away ** 6);
    }, 0);
    return power > 0 ? 10 * Math.log10(power) : -100;
  });
}

describe("the oracle", () => {
  test("gives the first signal of the standard's Annex B.2", () => {
    const levels = [
      -60, -60, 78, 79, 89, 72, 80, 89, 75, 87, 85, 79, 86, 80, 71, 70, 72, 71, 72, 74, 69, 65, 67, 77, 68, 58, 45, 30,
    ];
    expect(zwickerSones(levels, "free")).toBeCloseTo(83.296, 1);
  });

  test.each([
    [250, 80, 14.655],
    [1000, 60, 4.019],
    [4000, 40, 1.549],
    [1000, 40, 1],
  ])("gives a tone of %i Hz and %i dB %f sones", (hz, db, sones) => {
    expect(Math.abs(zwickerSones(thirdOctaves([{ hz, db }]), "free") / sones - 1)).toBeLessThan(0.05);
  });
});

describe("the model's ear against it", () => {
  /** Levels of c' by tone, with those of `stop-tone.ts` in mind. */
  const pipe =
    (tone: Tone, db: number, feet: number) =>
    (key: number): readonly Line[] => {
      const hz = (440 * 2 ** ((key - 69) / 12) * 8) / feet;
      return partialsOf(tone, hz, db + compassTrim(hz));
    };
  const REGISTRATIONS: readonly (readonly [string, readonly ((key: number) => readonly Line[])[]])[] = [
    ["stopped 8", [pipe("stopped-flute", 61, 8)]],
    ["open flute 8", [pipe("open-flute", 63, 8)]],
    ["string 8", [pipe("string", 54, 8)]],
    ["stopped 8, flute 4", [pipe("stopped-flute", 61, 8), pipe("open-flute", 62, 4)]],
    ["principal 8", [pipe("principal", 65, 8)]],
    ["principal 8 4", [pipe("principal", 65, 8), pipe("principal", 64, 4)]],
    ["principal 8 4 2", [pipe("principal", 65, 8), pipe("principal", 64, 4), pipe("principal", 62, 2)]],
    ["cromorne 8", [pipe("cromorne", 60, 8)]],
    ["oboe 8", [pipe("oboe", 61, 8)]],
    ["trumpet 8", [pipe("chorus-reed", 70, 8)]],
    ["trumpet 8 4", [pipe("chorus-reed", 70, 8), pipe("chorus-reed", 69, 4)]],
  ];
  const CHORD = [55, 64, 72];
  const heard = REGISTRATIONS.map(([name, stops]) => {
    const lines = stops.flatMap((stop) => CHORD.flatMap(stop));
    return {
      name,
      ours: loudnessOf(EAR, excitationOf(lines, BANDS, "diffuse")),
      theirs: zwickerSones(thirdOctaves(lines), "diffuse"),
    };
  });

  test("registrations stand in the same order of loudness, near equals aside", () => {
    const faults = heard.flatMap((one) =>
      heard
        .filter((other) => one.ours > 1.2 * other.ours && one.theirs < other.theirs)
        .map((other) => `${one.name} against ${other.name}`),
    );
    expect(faults).toEqual([]);
  });

  test("the two methods give sones of one size: theirs are known to be fewer for rich sounds", () => {
    for (const { name, ours, theirs } of heard) {
      expect(theirs / ours, name).toBeGreaterThan(0.65);
      expect(theirs / ours, name).toBeLessThan(1.1);
    }
  });

  test("stops added one by one are as loud as the whole mixture, within 2 per cent", () => {
    for (const [name, stops] of REGISTRATIONS) {
      const sum = new Float64Array(BANDS.length);
      for (const stop of stops) {
        for (const key of CHORD) {
          excitationOf(stop(key), BANDS, "diffuse").forEach((each, b) => {
            sum[b] = (sum[b] as number) + each;
          });
        }
      }
      const whole = excitationOf(
        stops.flatMap((stop) => CHORD.flatMap(stop)),
        BANDS,
        "diffuse",
      );
      expect(Math.abs(loudnessOf(EAR, sum) / loudnessOf(EAR, whole) - 1), name).toBeLessThan(0.02);
    }
  });
});
