import { describe, expect, test } from "vitest";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import { footText } from "../../shared-model/pitch/foot.ts";
import { keyText } from "../../shared-model/pitch/key.ts";
import type { Instrument, Stop } from "../../shared-model/stoplist/instrument.ts";

const HEAD = "registrant: instrument/1\nname: St. Example, Sampleford\n";

function organ(rest: string): Instrument {
  const { instrument, troubles } = readInstrumentFile(HEAD + rest, "s.yaml");
  if (!instrument) throw new Error(troubles.map(troubleLine).join("\n"));
  return instrument;
}

const oneManual = (...stops: string[]): string =>
  `divisions:\n  - name: Great\n    kind: manual\n    keyboard: 1\n    stops:\n${stops.map((stop) => `      - ${stop}\n`).join("")}`;

/** The troubles as lines without the file's name: `line 8, column 9: error: ...`. */
const told = (text: string): string[] =>
  readInstrumentFile(text, "s.yaml").troubles.map((trouble) => troubleLine(trouble).replace(/^s\.yaml, /, ""));
const toldOf = (...stops: string[]): string[] => told(HEAD + oneManual(...stops));

const stopsOf = (instrument: Instrument): readonly Stop[] => instrument.divisions.flatMap((division) => division.stops);
const onlyStop = (...stops: string[]): Stop => stopsOf(organ(oneManual(...stops)))[0] as Stop;

/** `C2-B3 2 1; C4-G6 4 2`: the pitches that sound, stretch by stretch. */
function sounding(stop: Stop): string {
  const stretches = new Map<string, string[]>();
  for (const use of stop.uses) {
    const keys = `${keyText(use.from)}-${keyText(use.to)}`;
    stretches.set(keys, [...(stretches.get(keys) ?? []), footText(use.pitch)]);
  }
  return [...stretches].map(([keys, feet]) => `${keys} ${feet.join(" ")}`).join("; ");
}

test("a whole organ becomes the model", () => {
  const instrument = organ(`place: Sampleford
builder: A. Maker
year: 1782
a4: 465
temperament: mean tone
room: live
divisions:
  - name: Hauptwerk
    kind: manual
    keyboard: 1
    compass: {low: C2, high: C6, missing: [C#2]}
    stops: [Principal 8, Mixtur IV 1 1/3, {name: Trompete, pitch: 8, off: "ciphers on F#4"}]
  - name: Schwellwerk
    kind: manual
    keyboard: 2
    compass: C2-C6
    enclosed: true
    stops: [Gedackt 8, Vox coelestis 8]
  - name: Pedal
    kind: pedal
    stops: [Subbaß 16]
couplers:
  - schwellwerk to HAUPTWERK 4
  - {coupler: Hauptwerk to Pedal, fixed: true, through: true}
tremulants: [Schwellwerk, all]
unison-off: [Schwellwerk]
aids: {generals: 8, divisionals: {Hauptwerk: 4}, levels: 2, crescendo-pedal: true, ventils: [Pedal]}
toys: [Zimbelstern]
`);
  const { divisions, ranks, ...rest } = instrument;
  expect(rest).toEqual({
    name: "St. Example, Sampleford",
    place: "Sampleford",
    builder: "A. Maker",
    year: 1782,
    history: null,
    a4: 465,
    temperament: "mean tone",
    room: "live",
    roomByEar: true,
    couplers: [
      {
        name: "Schwellwerk to Hauptwerk 4",
        from: "Schwellwerk",
        to: "Hauptwerk",
        pitch: 4,
        through: false,
        fixed: false,
      },
      { name: "Hauptwerk to Pedal", from: "Hauptwerk", to: "Pedal", pitch: 8, through: true, fixed: true },
    ],
    tremulants: ["Schwellwerk", "all"],
    unisonOff: ["Schwellwerk"],
    aids: { generals: 8, divisionals: { Hauptwerk: 4 }, levels: 2, crescendoPedal: true, ventils: ["Pedal"] },
    toys: ["Zimbelstern"],
  });
  expect(divisions.map(({ stops, ...division }) => [division, stops.map((stop) => stop.id)])).toEqual([
    [
      { name: "Hauptwerk", kind: "manual", keyboard: 1, compass: { low: 36, high: 84, missing: [37] }, box: null },
      ["Hauptwerk/Principal 8", "Hauptwerk/Mixtur 1 1/3", "Hauptwerk/Trompete 8"],
    ],
    [
      {
        name: "Schwellwerk",
        kind: "manual",
        keyboard: 2,
        compass: { low: 36, high: 84, missing: [] },
        box: "Schwellwerk",
      },
      ["Schwellwerk/Gedackt 8", "Schwellwerk/Vox coelestis 8"],
    ],
    [
      { name: "Pedal", kind: "pedal", keyboard: null, compass: { low: 36, high: 65, missing: [] }, box: null },
      ["Pedal/Subbaß 16"],
    ],
  ]);
  const used = new Set(stopsOf(instrument).flatMap((stop) => stop.uses.map((use) => use.rank)));
  expect(new Set(ranks.map((rank) => rank.id))).toEqual(used);
});

describe("a stop in the short form", () => {
  const parts = (text: string): string => {
    const { name, pitch, ranks, half } = onlyStop(text);
    return [name, pitch ? footText(pitch) : "-", ranks, half ?? "-"].join(" | ");
  };
  test.each([
    ["Principal 8", "Principal | 8 | 1 | -"],
    ["Nasat 2 2/3", "Nasat | 8/3 | 1 | -"],
    ["Tierce 1 3/5'", "Tierce | 8/5 | 1 | -"],
    ["Quinte 2⅔", "Quinte | 8/3 | 1 | -"],
    ["Mixtur IV", "Mixtur | - | 4 | -"],
    ["Mixtur IV 1 1/3", "Mixtur | 4/3 | 4 | -"],
    ["Mixtur III-V 2", "Mixtur | 2 | 5 | -"],
    ["Dulzian 8 bass", "Dulzian | 8 | 1 | bass"],
    ["Cornet V treble", "Cornet | - | 5 | treble"],
    ["Open Diapason I 8", "Open Diapason I | 8 | 1 | -"],
    ["Voix céleste II 8", "Voix céleste | 8 | 2 | -"],
  ])("%s", (text, expected) => expect(parts(text)).toBe(expected));

  test("two stops printed alike have two ids", () => {
    const stops = stopsOf(organ(oneManual("Gedackt 8", "Gedackt 8", "Mixtur IV", "Mixtur VI")));
    expect(stops.map((stop) => stop.id)).toEqual([
      "Great/Gedackt 8",
      "Great/Gedackt 8 (2)",
      "Great/Mixtur IV",
      "Great/Mixtur VI",
    ]);
  });
});

describe("which keys speak, at which pitch", () => {
  test.each([
    ["Principal 8", "C2-G6 8"],
    ["Dulzian 8 bass", "C2-B3 8"],
    ["Dulzian 8 treble", "C4-G6 8"],
    ["{name: Flute, pitch: 8, from: C3, to: C6}", "C3-C6 8"],
    ["{name: Mixtur, composition: {C4: [2, 1 1/3], C2: [1, 2/3]}}", "C2-B3 1 2/3; C4-G6 2 4/3"],
    ["{name: Sesquialtera, ranks: 2}", "C2-G6 8/3 8/5"],
    ["{name: Cornet, ranks: 5, from: C2}", "C2-G6 8 4 8/3 2 8/5"],
    ["{name: Cornet, ranks: 5}", "C4-G6 8 4 8/3 2 8/5"],
    ["{name: Zz, kind: mixture, ranks: 3}", "C2-B4 4/3 1 2/3; C5-B5 2 4/3 1; C6-G6 4 8/3 2"],
    ["Zimbelstern", ""],
  ])("%s", (text, expected) => expect(sounding(onlyStop(text))).toBe(expected));

  test("the division says where its halves meet", () => {
    const text = oneManual("Dulzian 8 bass", "Clarín 8 treble").replace(
      "kind: manual",
      "kind: manual\n    divided-at: C#4",
    );
    expect(stopsOf(organ(text)).map(sounding)).toEqual(["C2-C4 8", "C#4-G6 8"]);
  });

  test("no pipe of a mixture is shorter than 1/8 foot at the C where a stretch begins", () => {
    for (const text of ["Mixtur VI", "Mixtur III", "Scharf IV", "Zimbel III", "Terzzimbel III"]) {
      for (const use of onlyStop(text).uses) {
        const feet = (use.pitch.over / use.pitch.under) * 2 ** -Math.floor((use.from - 36) / 12);
        expect([text, keyText(use.from), feet >= 1 / 8]).toEqual([text, keyText(use.from), true]);
      }
    }
  });
});

describe("what a stop is", () => {
  const voice = (text: string): string => {
    const { kinds, family, strength, tierce } = onlyStop(text);
    return [kinds.join("+"), family, strength, tierce].join(" ");
  };
  test.each([
    ["{name: Zz, pitch: 8, kind: cromorne}", "cromorne reed-short 3 false"],
    ["{name: Zz, pitch: 8, kind: [principal, string], strength: 5}", "principal+string principal 5 false"],
    ["{name: Zz, kind: mixture, composition: {C2: [2, 1 3/5]}}", "mixture mixture 4 true"],
    ["{name: Zz, kind: mixture, composition: {C2: [2, 1 3/5]}, tierce: false}", "mixture mixture 4 false"],
    ["{name: Principal, pitch: 8, family: hybrid, strength: 1}", "principal hybrid 1 false"],
  ])("%s", (text, expected) => expect(voice(text)).toBe(expected));
});

describe("strength and brightness by ear", () => {
  const ear = (text: string): readonly unknown[] => {
    const { strength, brightness, byEar } = onlyStop(text);
    return [strength, brightness, byEar.strength, byEar.brightness];
  };
  test.each([
    ["Gedackt 8", [2, 3, false, false]],
    ["{name: Gedackt, pitch: 8, strength: 4}", [4, 3, true, false]],
    ["{name: Gedackt, pitch: 8, brightness: 1}", [2, 1, false, true]],
    ["{name: Gedackt, pitch: 8, strength: 2, brightness: 5}", [2, 5, true, true]],
  ])("%s", (text, expected) => expect(ear(text)).toEqual(expected));
});

test("divisions share a box by its name, whatever its case", () => {
  const instrument = organ(`divisions:
  - {name: Swell, kind: manual, keyboard: 1, enclosed: true, stops: [Gedackt 8]}
  - {name: Solo, kind: manual, keyboard: 2, enclosed: swell, stops: [Gedackt 8]}
  - {name: Echo, kind: floating, enclosed: North, stops: [Gedackt 8]}
`);
  expect(instrument.divisions.map((division) => division.box)).toEqual(["Swell", "Swell", "North"]);
});

describe("shared pipes", () => {
  const unit = (...stops: string[]): string =>
    `${oneManual(...stops)}ranks:\n  - {id: gedackt, longest: 16, pipes: 97, kind: stopped-flute, strength: 2}\n`;

  test("several stops draw one rank at their pitches", () => {
    const [bordun, flute, nasard] = stopsOf(
      organ(
        unit(
          "{name: Bordun, pitch: 16, rank: gedackt}",
          "{name: Zz, pitch: 4, rank: gedackt}",
          "{name: Yy, pitch: 2 2/3, rank: gedackt}",
        ),
      ),
    );
    expect([bordun, flute, nasard].map((stop) => [stop?.kinds, stop?.uses])).toEqual([
      [["stopped-flute"], [{ rank: "gedackt", pitch: { over: 16, under: 1 }, from: 36, to: 91 }]],
      [["stopped-flute"], [{ rank: "gedackt", pitch: { over: 4, under: 1 }, from: 36, to: 91 }]],
      [["nasard"], [{ rank: "gedackt", pitch: { over: 8, under: 3 }, from: 36, to: 91 }]],
    ]);
  });

  test("a rank that gives its kind alone gives the family too, whatever its stops are called", () => {
    const stops = stopsOf(
      organ(
        unit(
          "{name: Bordun, pitch: 16, rank: gedackt}",
          "{name: Rohrflöte, pitch: 8, rank: gedackt}",
          "{name: Rohrflöte, pitch: 4}",
        ),
      ),
    );
    expect(stops.map((stop) => stop.family)).toEqual(["flute-stopped", "flute-stopped", "flute-half-stopped"]);
  });

  test("where the rank has no pipes the stop ends, and a note names the silent keys", () => {
    const text = HEAD + unit("{name: Flute, pitch: 2, rank: gedackt}", "{name: Untersatz, pitch: 32, rank: gedackt}");
    const { instrument, troubles } = readInstrumentFile(text, "s.yaml");
    expect(stopsOf(instrument as Instrument).map(sounding)).toEqual(["C2-G6 2", "C3-G6 32"]);
    expect(troubles.map(troubleLine)).toEqual([
      "s.yaml, line 9, column 44: note: The rank gedackt has no pipes for the keys C2 to B2 of Untersatz 32; they are silent.",
    ]);
    const short = text.replace("pipes: 97", "pipes: 85");
    expect(stopsOf(readInstrumentFile(short, "s.yaml").instrument as Instrument).map(sounding)).toEqual([
      "C2-C6 2",
      "C3-G6 32",
    ]);
  });

  test("a duplexed stop has the pipes, the pitch and the nature of the other", () => {
    const instrument = organ(
      `${oneManual("{name: Trumpet, pitch: 8, strength: 5}")}  - name: Pedal\n    kind: pedal\n    stops:\n      - {name: Zz, same-as: great/trumpet 8}\n`,
    );
    const [trumpet, duplexed] = stopsOf(instrument);
    expect(duplexed).toMatchObject({
      id: "Pedal/Zz 8",
      kinds: trumpet?.kinds,
      strength: 5,
      from: 36,
      to: 65,
      ranks: 1,
    });
    expect(duplexed?.uses).toEqual([{ ...trumpet?.uses[0], to: 65 }]);
  });

  test("a short stop borrows its bass", () => {
    const [gedackt, flute] = stopsOf(
      organ(oneManual("Gedackt 8", "{name: Traversflöte, pitch: 8, from: C3, bass-from: Gedackt}")),
    );
    expect(flute?.uses.map((use) => [use.rank, keyText(use.from), keyText(use.to)])).toEqual([
      [gedackt?.uses[0]?.rank, "C2", "B2"],
      ["Great/Traversflöte 8", "C3", "G6"],
    ]);
    expect([flute?.from, flute?.to]).toEqual([36, 91]);
  });

  test("stops that borrow from each other in a circle are told", () => {
    expect(toldOf("{name: Gedackt, same-as: Flute}", "{name: Flute, same-as: Gedackt}")).toEqual([
      "line 8, column 9: error: Gedackt borrows its pipes from itself, directly or by way of others. Name a stop that has pipes of its own.",
    ]);
  });
});

describe("trouble in words", () => {
  const cases: readonly (readonly [string, string, readonly string[]])[] = [
    [
      "an unknown name",
      oneManual("Nazzard 2 2/3", "Gedackt 8").replace("Nazzard", "Xyzzq"),
      [
        "line 8, column 9: error: What sort of stop Xyzzq 2 2/3 is, is not known. Say what it is, on the stop, such as kind: stopped-flute (the schema lists all kinds).",
      ],
    ],
    [
      "a pitch that no rank has",
      oneManual("Principal 7"),
      ["line 8, column 19: error: Principal 7: no organ pipe rank speaks at 7'; did you mean 8?"],
    ],
    [
      "an old rounding",
      oneManual("{name: Quinte, pitch: 3}"),
      ["line 8, column 31: error: Quinte 3: no organ pipe rank speaks at 3'; did you mean 2 2/3?"],
    ],
    [
      "no pitch",
      oneManual("Gedackt"),
      [
        "line 8, column 9: error: Gedackt has no pitch, and its name alone does not tell it. Write it behind the name, such as 8 or 2 2/3.",
      ],
    ],
    [
      "a strength below all",
      oneManual("{name: Gedackt, pitch: 8, strength: -2}"),
      [
        "line 8, column 45: error: strength: should be 1 (very soft) to 5 (very strong), a whole number from 1 to 5, not -2.",
      ],
    ],
    [
      "a brightness above all",
      oneManual("{name: Gedackt, pitch: 8, brightness: 6}"),
      ["line 8, column 47: error: brightness: should be 1 (dull) to 5 (bright), a whole number from 1 to 5, not 6."],
    ],
    [
      "an unknown kind",
      oneManual("{name: Gedackt, pitch: 8, kind: stopped-flut}"),
      ['line 8, column 41: error: kind: does not know "stopped-flut". Did you mean stopped-flute?'],
    ],
    [
      "an unknown half",
      oneManual("{name: Gedackt, pitch: 8, half: left}"),
      ['line 8, column 41: error: half: does not know "left". It takes bass or treble.'],
    ],
    [
      "a rank without pipes",
      `${oneManual("Gedackt 8")}ranks:\n  - {id: a, longest: 8, pipes: 0}\n`,
      ["line 10, column 32: error: pipes: should be the number of pipes, a whole number from 1 to 122, not 0."],
    ],
    [
      "a misspelt rank",
      `${oneManual("{name: Gedackt, pitch: 8, rank: gedakt}")}ranks:\n  - {id: gedackt, longest: 8, pipes: 61}\n`,
      [
        'line 8, column 41: error: No rank "gedakt"; ranks: has gedackt.',
        "line 10, column 10: note: No stop draws the rank gedackt.",
      ],
    ],
    [
      "a coupler to nowhere",
      `${oneManual("Gedackt 8")}couplers: [Great to Pedal, Graet to Great 4]\n`,
      [
        'line 9, column 12: error: There is no division "Pedal" here. The only one is Great.',
        'line 9, column 28: error: There is no division "Graet" here. Did you mean Great?',
      ],
    ],
    [
      "a coupler to itself",
      `${oneManual("Gedackt 8")}couplers: [Great to Great, Great to Great 4]\n`,
      [
        "line 9, column 12: error: Great is coupled to itself at the unison, which does nothing. Write 4 or 16 behind it for an octave coupler.",
      ],
    ],
    [
      "two divisions of one name",
      `${oneManual("Gedackt 8")}  - {name: great, kind: pedal, stops: [Subbass 16]}\n`,
      ['line 9, column 12: error: A second division is named "great"; the first is on line 4. Give each its own name.'],
    ],
    [
      "a key outside the compass",
      oneManual("{name: Gedackt, pitch: 8, from: C1}"),
      [
        "line 8, column 41: note: Gedackt 8 names the key C1, outside the keyboard of Great (C2-G6); it ends where the keyboard ends.",
      ],
    ],
    [
      "a key that is none",
      oneManual("{name: Gedackt, pitch: 8, from: H2}"),
      [
        'line 8, column 41: error: "H2" is not a key. Write C2 for the lowest C of most keyboards, C4 for middle C, F#4 or Eb5.',
      ],
    ],
    [
      "every stop off",
      oneManual("{name: Gedackt, pitch: 8, off: true}"),
      ["line 4, column 3: note: Every stop is marked off, so nothing can be drawn."],
    ],
    [
      "only a pedal",
      "divisions:\n  - {name: Pedal, kind: pedal, stops: [Subbass 16]}\n",
      ["line 4, column 3: note: The organ has no keyboard for the hands; only music for the pedal can be registered."],
    ],
    [
      "an unknown key",
      oneManual("{name: Gedackt, pitch: 8, strenght: 2}"),
      ['line 8, column 35: note: A stop has no key "strenght"; it is kept and not used. Did you mean strength?'],
    ],
    [
      "no kind of division",
      "divisions:\n  - name: Great\n    stops: [Gedackt 8]\n",
      [
        "line 4, column 5: error: The division Great lacks kind: (manual, pedal or floating). Add a line kind: with it.",
      ],
    ],
    [
      "no divisions",
      "divisions: []\n",
      [
        "line 3, column 12: error: The organ has no division. Add one under divisions: with a name, a kind and its stops.",
      ],
    ],
    [
      "a keyboard left to be counted",
      "divisions:\n  - {name: Great, kind: manual, stops: [Gedackt 8]}\n",
      [
        "line 4, column 12: note: Great has no keyboard: number; it is counted as manual 1. Manuals count from the lowest.",
      ],
    ],
    [
      "a duplicate key",
      `${oneManual("Gedackt 8")}place: A\nplace: B\n`,
      [
        'line 10, column 1: error: "place" stands here a second time; the first is on line 9. Take one of the two away.',
      ],
    ],
    [
      "ranks left to custom",
      oneManual("{name: Zz, kind: mixture}"),
      [
        "line 8, column 16: note: The number of ranks of Zz is not said; 4 are assumed (1 1/3, 1, 2/3, 1/2). Write ranks: or composition: if you know better.",
      ],
    ],
  ];
  test.each(cases)("%s", (_, rest, expected) => expect(told(HEAD + rest)).toEqual(expected));

  const whole: readonly (readonly [string, string, readonly string[]])[] = [
    [
      "empty",
      "",
      [
        "line 1, column 1: error: The file is empty. Its first line says what it is: registrant: and instrument/1, section/1, registration/1 or piece/1.",
      ],
    ],
    [
      "only a comment",
      "# later\n",
      [
        "line 1, column 1: error: The file is empty. Its first line says what it is: registrant: and instrument/1, section/1, registration/1 or piece/1.",
      ],
    ],
    [
      "no YAML",
      "registrant: instrument/1\nname: [a\n",
      ["line 3, column 1: error: A bracket [ or { before this is not closed. Write its ] or }."],
    ],
    [
      "binary",
      "registrant: \u0000\u0001",
      [
        "line 1, column 13: error: This is not a text file: it holds the sign number 0, which no text has. Choose a YAML file.",
      ],
    ],
    [
      "not UTF-8",
      "registrant: instrument/1\nname: Fl\uFFFDte\n",
      [
        "line 2, column 9: error: The text is not in UTF-8, so some letters are lost here. Save the file again as UTF-8.",
      ],
    ],
    [
      "a newer form",
      "registrant: instrument/2\nname: A\n",
      [
        'line 1, column 13: error: This file is of a newer form, "instrument/2"; this version of the program knows forms up to 1. Get a newer version, or write registrant: instrument/1 if the file keeps to that form.',
      ],
    ],
    [
      "another kind of file",
      "registrant: section/1\n",
      [
        'line 1, column 13: error: registrant: says "section/1", but an instrument file is wanted here. If it is one, write registrant: instrument/1.',
      ],
    ],
    [
      "no version",
      "name: A\n",
      [
        "line 1, column 1: error: The first line must say what this file is. For an instrument file write registrant: instrument/1.",
      ],
    ],
    [
      "a mere list",
      "- a\n",
      [
        "line 1, column 1: error: An instrument file is written as keys with values, each on its own line as key: value.",
      ],
    ],
  ];
  test.each(whole)("the file: %s", (_, text, expected) => expect(told(text)).toEqual(expected));
});

describe("files made to harm", () => {
  const first = (text: string): string | undefined => readInstrumentFile(text, "s.yaml").troubles[0]?.code;
  test.each([
    ["brackets within brackets", "[".repeat(2_000_000), "too-deep"],
    ["dashes within dashes", "- ".repeat(1_000_000), "too-deep"],
    ["a row of brackets", `a: [${"[],".repeat(600_000)}]`, "too-long"],
    ["more than two million letters", "a".repeat(2_200_000), "too-large"],
    [
      "names of names",
      `registrant: instrument/1\na: &a [x, x]\n${Array.from({ length: 30 }, (_, n) => `b${n}: &b${n} [*${n ? `b${n - 1}` : "a"}, *${n ? `b${n - 1}` : "a"}]\n`).join("")}`,
      "alias-too-many",
    ],
    ["a name that holds itself", "registrant: instrument/1\nname: &a [*a]\n", "alias-unknown"],
    ["40,000 doubled keys", `registrant: instrument/1\n${"a: 1\n".repeat(40_000)}`, "duplicate-key"],
    [
      "stops without end",
      `${HEAD}divisions:\n  - {name: A, kind: manual, keyboard: 1, stops: [${"x,".repeat(2500)}]}`,
      "value-wrong",
    ],
  ])("%s", (_, text, code) => expect(first(text)).toBe(code));

  test("errors without end are cut off with a word", () => {
    const { troubles } = readInstrumentFile(
      HEAD + oneManual(...Array.from({ length: 900 }, (_, n) => `Qqq${n} 8`)),
      "s.yaml",
    );
    expect([troubles.length, troubles.at(-1)?.code]).toEqual([201, "too-many-troubles"]);
  });

  test("a division may bear the name of something that every object has", () => {
    const instrument = organ(
      "divisions:\n  - {name: __proto__, kind: manual, keyboard: 1, stops: [Gedackt 8]}\naids: {divisionals: {__proto__: 3}}\n",
    );
    expect(instrument.divisions[0]?.stops[0]?.id).toBe("__proto__/Gedackt 8");
  });
});
