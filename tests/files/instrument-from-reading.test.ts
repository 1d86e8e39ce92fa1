import { describe, expect, it, test } from "vitest";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { instrumentFileFromReading } from "../../shared-model/files/instrument-from-reading.ts";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import type { Foot } from "../../shared-model/pitch/foot.ts";
import { footFromText } from "../../shared-model/pitch/foot.ts";
import { pitchName } from "../../shared-model/pitch/reading.ts";
import { readStoplist } from "../../shared-model/stoplist/reading/read-stoplist.ts";
import type { ReadDivision, Reading, ReadStop } from "../../shared-model/stoplist/reading/reading.ts";

const foot = (text: string): Foot => footFromText(text) as Foot;

function stop(name: string, pitch: string | null, line: number, more: Partial<ReadStop> = {}): ReadStop {
  return {
    name,
    pitch: pitch === null ? null : foot(pitch),
    printed: pitch,
    ranks: null,
    half: null,
    line,
    composition: null,
    from: null,
    borrowed: null,
    row: null,
    prepared: false,
    remark: null,
    ...more,
  };
}

const division = (name: string | null, stops: readonly ReadStop[], more: Partial<ReadDivision> = {}): ReadDivision => ({
  name,
  kind: "manual",
  keyboard: null,
  low: null,
  high: null,
  missing: [],
  enclosed: false,
  stops,
  ...more,
});

const list = (divisions: readonly ReadDivision[], more: Partial<Reading> = {}): Reading => ({
  name: "Sampleford, St. Example",
  builder: null,
  year: null,
  divisions,
  couplers: [],
  unisonOff: [],
  tremulants: [],
  questions: [],
  ...more,
});

test("a list becomes a file, with its open questions at their stops", () => {
  const reading = list(
    [
      division(
        "Hauptwerk",
        [
          stop("Principal", "8", 3),
          stop("Mixtur", "4/3", 4, { ranks: 4 }),
          stop("Sesquialtera", null, 5, { composition: [foot("8/3"), foot("8/5")] }),
          stop("Dulzian", "8", 6, { half: "both" }),
          stop("Vagrantflöte", "4", 7),
          stop("Trompete", "8", 8, { prepared: true, remark: "new: 1980" }),
        ],
        { keyboard: 1, low: 36, high: 84, missing: [37] },
      ),
      division(
        "Pedal",
        [
          stop("Subbass", "16", 11),
          stop("Principal", "8", 12, { borrowed: "from Hauptwerk" }),
          stop("Violon bass", "8", 13, { borrowed: "Ext. 7" }),
        ],
        { kind: "pedal" },
      ),
    ],
    {
      couplers: [
        { from: "Hauptwerk", to: "Pedal", pitch: 8 },
        { from: "Hauptwerk", to: "Hauptwerk", pitch: 4 },
      ],
      tremulants: ["all"],
      builder: "J. Trask & Son: Northmere",
      year: 1902,
      questions: [
        {
          kind: "name",
          line: 7,
          text: "What sort of stop is this?",
          about: "Vagrantflöte",
          stops: ["Vagrantflöte"],
          choices: ["a flute", "a string"],
        },
        { kind: "left-out", line: 20, text: "What does this line say?", about: "N.B.", stops: [], choices: [] },
      ],
    },
  );
  // Which names are like it is for the glossary's own tests.
  const text = instrumentFileFromReading(reading).replace(/# kind: \S+ # or .*; names like it: .*/, "# kind: ...");
  expect(text).toBe(`registrant: instrument/1
name: Sampleford, St. Example
builder: "J. Trask & Son: Northmere"
year: 1902
# Open questions of the list:
# line 20: What does this line say?
divisions:
  - name: Hauptwerk
    kind: manual
    keyboard: 1
    compass: {low: C2, high: C6, missing: [C#2]}
    stops:
      - Principal 8
      - Mixtur IV 1 1/3
      - name: Sesquialtera
        composition: {C2: [2 2/3, 1 3/5]}
      - Dulzian 8 bass
      - Dulzian 8 treble
      - name: Vagrantflöte
        # line 7: What sort of stop is this? (a flute / a string)
        pitch: 4
        # kind: ...
      - name: Trompete
        pitch: 8
        off: prepared for, not built
        note: "new: 1980"
  - name: Pedal
    kind: pedal
    stops:
      - Subbass 16
      - name: Principal
        pitch: 8
        same-as: Hauptwerk/Principal 8
      # line 13: Ext. 7. If it has no pipes of its own, write same-as: Division/Stop.
      - Violon bass 8
couplers:
  - Hauptwerk to Pedal
  - Hauptwerk to Hauptwerk 4
tremulants: [all]
`);
});

const errorsOf = (text: string): string[] =>
  readInstrumentFile(text, "s.yaml")
    .troubles.filter((trouble) => trouble.severity === "error")
    .map(troubleLine);

/** The file with its `# kind:` lines uncommented, as a person would do. */
const answered = (text: string): string => text.replace(/# (kind: \S+) /g, "$1 ");

describe("the file is read without error once the questions are answered", () => {
  test("an unknown name", () => {
    const text = instrumentFileFromReading(list([division("Great", [stop("Vagrantflöte", "4", 2)])]));
    expect(errorsOf(text)).toHaveLength(1);
    expect(errorsOf(text)[0]).toContain("line 7, column 15: error: What sort of stop Vagrantflöte 4 is, is not known.");
    expect(errorsOf(answered(text))).toEqual([]);
  });

  test.each([
    ["no name, no heading", list([division(null, [stop("Gedackt", "8", 1)])], { name: null })],
    ["two divisions of one heading", list([division("Great", [stop("Gedackt", "8", 1)]), division("Great", [])])],
    [
      "signs that YAML takes for its own",
      list([division("- Great: [1] #2", [stop("Gedackt", "8", 1, { remark: 'it\'s: {a} #b, "c"\n- d' })])], {
        name: "*Yes: & no",
      }),
    ],
    [
      "a name that ends in a numeral",
      list([division("Great", [stop("Open Diapason I", "8", 1), stop("Open Diapason II", "8", 2)])]),
    ],
    ["a name that ends in a number", list([division("Organo", [stop("Flautado de 26", "16", 1)])])],
    [
      "a division without stops, as a pull-down",
      list([division("Great", [stop("Gedackt", "8", 1)]), division("Pedal", [], { kind: "pedal" })], {
        couplers: [
          { from: "Great", to: "Pedal", pitch: 8 },
          { from: "Great", to: "Great", pitch: 8 },
        ],
      }),
    ],
    [
      "a stop that begins higher",
      list([division("Swell", [stop("Oboe", "8", 1, { from: 55 })], { low: 43, enclosed: true })]),
    ],
    ["a celeste of two ranks", list([division("Récit", [stop("Voix céleste", "8", 1, { ranks: 2 })])])],
    ["a principal of two ranks", list([division("Great", [stop("Prestant", "8", 1, { ranks: 2 })])])],
    [
      "a tremulant for one division",
      list([division("Great", [stop("Gedackt", "8", 1)])], { tremulants: ["Great", "Great"] }),
    ],
  ])("%s", (_, reading) => expect(errorsOf(answered(instrumentFileFromReading(reading)))).toEqual([]));
});

test("what the list says comes back from the file", () => {
  const reading = list([
    division("Great", [
      stop("Open Diapason I", "8", 1),
      stop("Flautado de 13", "8", 2),
      stop("Mixtur", null, 3, { ranks: 5 }),
      stop("Dulzian", "8", 4, { half: "treble" }),
      stop("Violon bass", "16", 5),
      stop("Prestant", "8", 6, { ranks: 2 }),
      stop("Cornet", null, 7, { ranks: 5, from: 60 }),
    ]),
  ]);
  const { instrument } = readInstrumentFile(instrumentFileFromReading(reading), "s.yaml");
  expect(
    instrument?.divisions[0]?.stops.map((each) => [each.name, each.pitch, each.ranks, each.half, each.from]),
  ).toEqual([
    ["Open Diapason I", foot("8"), 1, null, 36],
    ["Flautado de 13", foot("8"), 1, null, 36],
    ["Mixtur", null, 5, null, 36],
    ["Dulzian", foot("8"), 1, "treble", 60],
    ["Violon bass", foot("16"), 1, null, 36],
    ["Prestant", foot("8"), 2, null, 36],
    ["Cornet", null, 5, null, 60],
  ]);
});

/** Stops of the file that share a row with another, as `Division Stop pitch: pipes at its lowest key`. */
function sharedIn(text: string): readonly string[] {
  const { instrument } = readInstrumentFile(instrumentFileFromReading(readStoplist(text)), "s.yaml");
  const stops = (instrument?.divisions ?? []).flatMap((division) =>
    division.stops.map((each) => ({ division: division.name, each })),
  );
  const count = new Map<string, number>();
  for (const { each } of stops)
    for (const rank of new Set(each.uses.map((use) => use.rank))) count.set(rank, (count.get(rank) ?? 0) + 1);
  return stops.flatMap(({ division, each }) => {
    const [use] = each.uses;
    return use && (count.get(use.rank) ?? 0) > 1
      ? [`${division} ${each.name} ${each.pitch && pitchName(each.pitch)}: ${use.rank}`]
      : [];
  });
}

describe("pipes that the list says are shared are shared in the file", () => {
  it("a division that lends, named in short, and an extension", () => {
    expect(
      sharedIn(`Great Organ
16' Violone (Pedal)
8' Principal
8' Trumpet (Sw.)
Swell Organ
16' Gedeckt (12 ext.)
8' Gedeckt
8' Trumpet
Pedal Organ
16' Violone
16' Gedeckt (Sw)
8' Gedeckt (Sw)
4' Clairon (ext. Trumpet)`),
    ).toEqual([
      "Great Organ Violone 16: Pedal Organ/Violone 16",
      "Great Organ Trumpet 8: trumpet",
      "Swell Organ Gedeckt 16: gedeckt",
      "Swell Organ Gedeckt 8: gedeckt",
      "Swell Organ Trumpet 8: trumpet",
      "Pedal Organ Violone 16: Pedal Organ/Violone 16",
      "Pedal Organ Gedeckt 16: gedeckt",
      "Pedal Organ Gedeckt 8: gedeckt",
      "Pedal Organ Clairon 4: trumpet",
    ]);
  });

  it("an extension in its own division, and one that names a stop of another name", () => {
    expect(
      sharedIn(`SWELL
Bourdon 16
Oboe 8
PEDAL
Open Wood 16
Bourdon 16
Bass Flute 8 (ext. Bourdon)
Octave 8 (ext. Open Wood)
Lieblich Gedeckt 16 (from Sw Bourdon)`),
    ).toEqual([
      "SWELL Bourdon 16: SWELL/Bourdon 16",
      "PEDAL Open Wood 16: open-wood",
      "PEDAL Bourdon 16: bourdon",
      "PEDAL Bass Flute 8: bourdon",
      "PEDAL Octave 8: open-wood",
      "PEDAL Lieblich Gedeckt 16: SWELL/Bourdon 16",
    ]);
  });

  it("leaves to the person what the list does not settle", () => {
    expect(
      sharedIn(`SWELL
Trumpet 8
Oboe 8
PEDAL
Resultant 32 (derived)
Bombarde 16 (ext.)
Fagott 16 (from Choir)`),
    ).toEqual([]);
  });
});
