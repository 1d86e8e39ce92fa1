import { Interval, Note } from "tonal";
import { describe, expect, test } from "vitest";
import { type Foot, footOf, footText } from "../../shared-model/pitch/foot.ts";
import {
  belongsTo,
  displacement,
  harmonicOf,
  intervalName,
  keyFrequency,
  lengthAtInterval,
  seriesOf,
  soundingFrequency,
  soundingKey,
} from "../../shared-model/pitch/harmonics.ts";
import { keyFromText, keyText } from "../../shared-model/pitch/key.ts";
import { readPitch } from "../../shared-model/pitch/reading.ts";
import { USUAL_PITCHES } from "../../shared-model/pitch/usual.ts";

const foot = (text: string): Foot => readPitch(text).foot as Foot;

/** A table as theory books print it: one column per pitch, words parted by two blanks. */
const columns = (table: string): string[][] => {
  const rows = table
    .trim()
    .split("\n")
    .map((row) => row.trim().split(/ {2,}/));
  return (rows[0] as string[]).slice(1).map((_, at) => rows.map((row) => row[at + 1] as string));
};

describe("the harmonic series", () => {
  test.each(
    columns(`
      pitch   2 2/3  1 3/5  1 1/3  5 1/3  3 1/5  1 1/7  10 2/3  6 2/5  2 2/7  8/9  16  8  4  2  1   2/3  64  21 1/3
      of      8      8      8      16     16     8      32      32     16     8    16  8  8  8  8   8    64  64
      number  3      5      6      3      5      7      3       5      7      9    1   1  2  4  8   12   1   3
    `),
  )("%s' belongs to %s' as its number %s", (pitch, base, number) => {
    expect(seriesOf(foot(pitch))).toEqual({ base: foot(base), number: Number(number) });
    expect(belongsTo(foot(pitch), foot(base))).toBe(true);
  });

  test("no unison has 3', 7' or 1 1/2' in its series", () => {
    expect([seriesOf(footOf(3)), seriesOf(footOf(7)), seriesOf(footOf(3, 2))]).toEqual([null, null, null]);
  });

  test("a pedal's series may be asked from 16' on, a positive's from 4'", () => {
    expect(seriesOf(foot("2 2/3"), footOf(16))).toEqual({ base: footOf(16), number: 6 });
    expect(seriesOf(foot("1 1/3"), footOf(4))).toEqual({ base: footOf(4), number: 3 });
    expect(() => seriesOf(foot("1 1/3"), footOf(3))).toThrow(RangeError);
  });

  test("the base is the shortest unison that fits: half of it does not", () => {
    for (const pitch of USUAL_PITCHES) {
      const { base } = seriesOf(pitch, footOf(1)) as { base: Foot };
      expect(belongsTo(pitch, base)).toBe(true);
      if (base.over > 1) expect(belongsTo(pitch, footOf(base.over / 2))).toBe(false);
    }
  });

  test("a deeper stop is a fraction of the unison", () => {
    expect(harmonicOf(foot("16"))).toEqual({ over: 1, under: 2 });
    expect(harmonicOf(foot("10 2/3"))).toEqual({ over: 3, under: 4 });
    expect(harmonicOf(foot("5 1/3"))).toEqual({ over: 3, under: 2 });
  });
});

describe("intervals", () => {
  test.each(
    columns(`
      pitch  8       4       2 2/3    2          1 3/5        1 1/3       1 1/7              1              8/9           4/5            2/3           1/2          2/5           1/3           1/4
      name   unison  octave  twelfth  fifteenth  seventeenth  nineteenth  flat twenty-first  twenty-second  twenty-third  twenty-fourth  twenty-sixth  twenty-ninth  thirty-first  thirty-third  thirty-sixth
    `),
  )("%s' over 8' is the %s", (pitch, name) => expect(intervalName(foot(pitch))).toBe(name));

  test.each([
    ["5 1/3", "8", "fifth"],
    ["3 1/5", "8", "tenth"],
    ["6 2/5", "8", "third"],
    ["4 4/7", "8", "flat seventh"],
    ["5 1/3", "16", "twelfth"],
    ["3 1/5", "16", "seventeenth"],
    ["1 1/3", "4", "twelfth"],
    ["16", "8", "octave below"],
    ["32", "8", "fifteenth below"],
    ["10 2/3", "8", "fourth below"],
    ["8/11", "8", "11th harmonic"],
    ["8/13", "8", "13th harmonic"],
  ])("%s' over %s' is the %s", (pitch, unison, name) => expect(intervalName(foot(pitch), foot(unison))).toBe(name));

  test("diatonic numbers are those of a general music-theory library", () => {
    const steps = Array.from({ length: 50 }, (_, at) => at + 1).filter((number) => lengthAtInterval(number) !== null);
    const heard = steps.map((number) => displacement(lengthAtInterval(number) as Foot).keys);
    expect(heard.map((keys) => (keys === 0 ? 1 : Interval.num(Interval.fromSemitones(keys))))).toEqual(steps);
    expect(steps).toEqual([1, 8, 12, 15, 17, 19, 21, 22, 23, 24, 26, 29, 30, 31, 33, 36, 38, 40, 43, 47, 50]);
  });

  test.each([
    [8, "4"],
    [12, "2 2/3"],
    [15, "2"],
    [17, "1 3/5"],
    [19, "1 1/3"],
    [22, "1"],
    [26, "2/3"],
    [29, "1/2"],
    [33, "1/3"],
    [36, "1/4"],
  ])("a stop named by the interval %i on 8' is %s'", (steps, pitch) =>
    expect(lengthAtInterval(steps)).toBe(foot(pitch)),
  );

  test("on a 16' or 4' base the lengths follow, and no stop is named by a second", () => {
    expect(footText(lengthAtInterval(12, footOf(16)) as Foot)).toBe("16/3");
    expect(footText(lengthAtInterval(15, footOf(4)) as Foot)).toBe("1");
    expect(lengthAtInterval(2)).toBeNull();
  });
});

describe("what a key sounds", () => {
  // Deviations of harmonics from equal temperament as acoustics textbooks print them, in cents.
  test.each(
    columns(`
      harmonic   2  3   4   5    6   7    9   10   11   13   15   19
      semitones  12  19  24  28   31  34   38  40   42   44   47   51
      cents      0  2   0   -14  2   -31  4   -14  -49  41   -12  -2
    `),
  )("harmonic %s lies %s semitones up, %s cents off", (harmonic, semitones, cents) => {
    const lies = displacement(footOf(8, Number(harmonic)));
    expect([lies.keys, Math.round(lies.cents) + 0]).toEqual([Number(semitones), Number(cents)]);
  });

  test.each([
    ["C4", "8", "C4"],
    ["C4", "16", "C3"],
    ["C2", "32", "C0"],
    ["C4", "4", "C5"],
    ["C4", "2 2/3", "G5"],
    ["C4", "1 3/5", "E6"],
    ["C4", "1 1/3", "G6"],
    ["C4", "1 1/7", "Bb6"],
    ["C4", "8/9", "D7"],
    ["C4", "5 1/3", "G4"],
    ["C2", "10 2/3", "G1"],
    ["F#3", "2 2/3", "C#5"],
  ])("%s on %s' sounds %s", (key, pitch, sounds) =>
    expect(keyText(soundingKey(keyFromText(key) as number, foot(pitch)).key)).toBe(sounds),
  );

  test("octaves are exact, a twelfth is 1.955 cents sharp", () => {
    expect(soundingKey(60, foot("2"))).toEqual({ key: 84, cents: 0 });
    expect(soundingKey(60, foot("2 2/3")).cents).toBeCloseTo(1.955, 3);
  });

  test("key names, numbers and frequencies are those of a general music-theory library", () => {
    for (let key = 12; key <= 120; key++) {
      expect(Note.midi(keyText(key))).toBe(key);
      expect(keyFrequency(key)).toBeCloseTo(Note.freq(keyText(key)) as number, 8);
    }
  });

  test.each([
    ["C2", "8", 440, 65.406],
    ["C4", "8", 440, 261.626],
    ["A4", "8", 415, 415],
    ["A4", "4", 415, 830],
    ["A4", "2 2/3", 440, 1320],
    ["A4", "1 3/5", 440, 2200],
    ["A4", "1 1/7", 466, 3262],
    ["A4", "16", 392, 196],
    ["A4", "5 1/3", 440, 660],
    ["C2", "16", 440, 32.703],
  ])("%s on %s' at %d Hz sounds %d Hz", (key, pitch, a4, hertz) =>
    expect(soundingFrequency(keyFromText(key) as number, foot(pitch), a4)).toBeCloseTo(hertz, 3),
  );

  test("A4 is at home between 370 and 500 Hz", () => {
    expect([keyFrequency(69, 370), keyFrequency(69, 500)]).toEqual([370, 500]);
    for (const a4 of [369.9, 500.1, 0, -440, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => keyFrequency(69, a4)).toThrow(RangeError);
    }
  });
});
