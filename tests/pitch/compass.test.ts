import fc from "fast-check";
import { Note } from "tonal";
import { describe, expect, test } from "vitest";
import { compassText, keyCount, readCompass, readKey } from "../../shared-model/pitch/compass.ts";
import { keyFromText, keyText } from "../../shared-model/pitch/key.ts";

/** Rows "meaning: prints parted by bars". */
const printed = (table: string): [print: string, meaning: string][] =>
  table
    .trim()
    .split("\n")
    .flatMap((row) => {
      const [meaning, prints] = row.split(/: (.*)/s) as [string, string];
      return prints.split(" | ").map((print): [string, string] => [print, meaning.trim()]);
    });

const read = (text: string): string | null => {
  const reading = readCompass(text);
  if (!reading) return null;
  return compassText(reading.compass) + (reading.count === undefined ? "" : ` = ${reading.count}`);
};

describe("a printed key", () => {
  test.each(
    printed(`
      C2: C | C2 | CC | low C | bottom C | großes C | großen C | gross C | groot C | ut1 | do1 | Do1 | Do 1 | UT1 | ut₁
      C3: c | C3 | c0 | tenor C | tenor c | Tenor C | T.C. | TC | kleines c | ut2 | Do2 | Do 13
      C4: c1 | c' | c’ | c‘ | c′ | c\` | c´ | c¹ | C4 | middle C | Middle c | eingestrichenes c | ut3 | Ut 3 | do3 | Do 25 | Do 21
      C5: c2 | c'' | c" | c″ | c² | C5 | treble C | ut4
      C6: c3 | c''' | c’’’ | c‘‘‘ | c‴ | c″′ | c³ | C6 | ut5 | Do5
      G6: g3 | g''' | G6 | sol5 | G'''
      C7: c4 | c'''' | c⁗ | C7
      C1: C, | CCC | C1 | C₁ | contra C | Kontra-C | do-1
      F1: F, | FF | FFF | F1 | Kontra F | fa-1
      G1: GG | G1 | G,
      F#4: fis1 | fis' | f#' | f♯1 | F#4 | F♯4 | fa#3 | fa♯3 | fa dièse 3 | Fa diesis 3
      Eb4: es1 | es' | Eb4 | E♭4 | mib3 | mi bémol 3
      C#4: cis1 | cis' | des1 | C#4 | do#3 | Do# 26
      Ab3: as | gis
      Bb3: bes | ais
      B3: b | h | B3 | si2
      B2: B | H
      G2: gamut G | G
      G3: fiddle G | Sol 20 | g | tenor G
    `),
  )("%j is %s", (print, name) => expect(readKey(print)).toBe(keyFromText(name)));

  test.each([
    "",
    " ",
    "x",
    "c1x",
    "c1 x",
    "x c1",
    "cc1",
    "C'",
    "sol",
    "UT",
    "Do 22",
    "middle",
    "tenor",
    "c'1",
    "1c",
    "C-",
    "C 2 3",
    "J4",
    "12",
    "c".repeat(1000),
  ])("%j is none", (print) => expect(readKey(print)).toBeNull());

  test("scientific names are read as a general music-theory library reads them", () => {
    for (const letter of "CDEFGAB") {
      for (const bend of ["", "#", "b"]) {
        for (let octave = 1; octave <= 7; octave++) {
          const name = `${letter}${bend}${octave}`;
          expect([name, readKey(name)]).toEqual([name, Note.midi(name)]);
        }
      }
    }
  });
});

describe("a printed compass", () => {
  test.each(
    printed(`
      C2-G6: C-g''' | C–g3 | C - g''' | C—g³ | C-g‘‘‘ | C-g’’’ | C-g\`\`\` | C-g″′ | C..g3 | C to g3 | C bis g3 | CC-g3 | CC to g3 | CC to g'''
      C2-G6: ut1 à sol5 | Ut1-Sol5 | de ut1 à sol5 | do1–sol5 | da Do1 a Sol5 | C2-G6 | C2–G6 | c2-g6 | C-G3 | C-G''' | (C-g3) | Compass: C-g3
      C2-G6: Manualumfang C–g3 | Umfang: C–g''' | von C bis g''' | étendue ut1 à sol5 | omvang C-g3 | C2-g3
      C2-F4: C–f1 | C-f' | C-f’ | Tastenumfang C-f’ | Pedalumfang C-f' | C-F1 | ut1–fa3
      C2-C6: C-c3 | C–c''' | Do1-Do5 | Do1–Do5 | C-C6 | C bis c'''
      C2-C7: C – c4 | C-c'''' | C2-C7
      C2-C6 without C#2: C, D – c3 | CD-c3 | C D – c''' | C,D-c3 | C–c3 without C# | C–c3 ohne Cis | C–c3 sans ut# | C-c3 zonder Cis | C2-C6 without C#2
      C2-C6 without C#2, Eb2, F#2, G#2: CDEFGA–c''' | C/E-c3 | C/E – c''' | C, D, E, F, G, A – c3 | C–c3 short octave | C-c''' (short octave) | E–c3, kurze Oktave
      C2-C6 without C#2, Eb2, F#2, G#2: Do1-Do5 ottava corta | Do1–Do5 con prima ottava corta | C2-C6 without C#2, Eb2, F#2, G#2
      C2-A5 without C#2, Eb2, F#2, G#2: C/E-a2 | CDEFGA-a''
      F2-A5 without F#2, G#2, G#5: FGA-g2a2
      F1-A3 without F#1: FF,GG-a
      G1-E6 without G#1, Bb1, B1, C#2: GG, AA, C, D – e3 | GG/BB–e3
      G1-D6: GG–d3 | GG to d'''
      F1-F6: F,–f3 | FF–f3 | F1-F6
      C4-C6: c1-c3 | c'–c''' | ut3 à ut5 | middle C – c3
      C2-B3: C–h | C-b
      G3-C6: g–c3 | fiddle G – c3
      C2-G6 = 56: C-g3, 56 notes | CC to g3, 56 notes | CC to G, 56 notes | 56 notes | UT à SOL, 56 notes | 56 notes, UT à SOL | C–g''' (56 Tasten)
      C2-F4 = 30: C-f1 30 keys | 30 notes | CCC to F, 30 notes | UT à FA (30 notes) | 30 Tasten | C–f, 30 notes
      C2-C7 = 61: 61 keys | C-c4, 61 notes | 61 toetsen | 61 tasti
      C2-C6 without C#2, Eb2, F#2, G#2 = 45: C-c3, 45 keys | CDEFGA-c3 45 keys | Do1–Do5, 45 tasti
      C2-C6 without C#2 = 48: C–c3, 48 notes
      C2-C6 = 51: C-c3, 51 Tasten
    `),
  )("%j is %s", (print, meaning) => expect(read(print)).toBe(meaning));

  test.each([
    "",
    "C",
    "-",
    "C-",
    "-c3",
    "C-c3x",
    "C-c3 x",
    "C-c3-d3",
    "C-c3 c3 c3",
    "g3-C",
    "C-C",
    "C-D",
    "C-G",
    "CC-f",
    "CC to G",
    "C-C4",
    "UT à SOL",
    "C/D-c3",
    "C-c9",
    "C-c3 without",
    "C-c3 without x",
    "C-c3 without d4",
    "56",
    "5 notes",
    "99 notes",
    "notes",
    "56 ranks",
    "8 - 4",
    "II-III",
    "C-c3, 56 notes, 61 keys",
    "C".repeat(1000),
    "C-c3 ".repeat(50),
    "Hautbois 8",
  ])("%j is none, and no default is taken", (print) => expect(read(print)).toBeNull());

  test("a count that contradicts the ends shows", () => {
    const reading = readCompass("C-c3, 51 Tasten");
    expect([reading?.count, reading && keyCount(reading.compass)]).toEqual([51, 49]);
  });

  test("what is written is read back as the same compass", () => {
    const compasses = fc
      .tuple(
        fc.integer({ min: 24, max: 60 }),
        fc.integer({ min: 12, max: 36 }),
        fc.array(fc.integer({ min: 1, max: 9 }), { maxLength: 3 }),
      )
      .map(([low, span, gaps]) => ({
        low,
        high: low + span,
        missing: [...new Set(gaps.map((gap) => low + gap))].sort((a, b) => a - b),
      }))
      .filter((compass) => keyCount(compass) >= 10);
    fc.assert(
      fc.property(compasses, (compass) => {
        expect(readCompass(compassText(compass))).toEqual({ compass });
      }),
      { seed: 5, numRuns: 500 },
    );
  });

  test("any text gives a compass in range or nothing, never an exception", () => {
    const signs = fc.constantFrom(
      ..."CDEFGABHcdefgabh#'–-, /123".split(""),
      "ut",
      "Sol",
      " to ",
      " without ",
      "56 notes",
      "CC",
      "es",
      "short octave",
    );
    fc.assert(
      fc.property(
        fc.array(signs, { maxLength: 12 }).map((list) => list.join("")),
        (text) => {
          const compass = readCompass(text)?.compass;
          if (!compass) return;
          expect(compass.low).toBeGreaterThanOrEqual(12);
          expect(compass.high).toBeLessThanOrEqual(108);
          for (const key of compass.missing) expect(key > compass.low && key < compass.high).toBe(true);
          expect(keyText(compass.low)).not.toContain("undefined");
        },
      ),
      { seed: 6, numRuns: 5000 },
    );
  });
});
