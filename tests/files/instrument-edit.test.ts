import { describe, expect, test } from "vitest";
import type { InstrumentEdit } from "../../shared-model/files/instrument-change.ts";
import { editInstrumentFile } from "../../shared-model/files/instrument-edit.ts";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import type { VisitTopic } from "../../shared-model/stoplist/visit-topic.ts";

const FILE = `# Our organ, as found in 1998
registrant:   instrument/1
name: "St. Example, Sampleford"
builders-shop: kept though unknown   # and its comment

divisions:
  - name: Great
    kind: manual
    keyboard: 1
    compass: C2-G6      # new keys
    stops:
      # the front
      - Principal 8     # tin
      - {name: Gedackt,   pitch: 8, colour: "dark"}  # spaces kept
      # a gift
      - name: Mixtur
        ranks: 4

        strength: 4   # loud
        composition: {C2: [1 1/3, 1, 2/3, 1/2]}
      - 'Trumpet 8'
  - name: Swell
    kind: manual
    keyboard: 2
    enclosed: true
    compass:
      low: C2    # bottom
      high: G6
    stops: [Oboe 8, Viola 8, {name: Zz, same-as: Great/Gedackt 8}]
  - {name: Pedal, kind: pedal, stops: [Subbass 16]}

# coupled by hand
couplers:
  - Swell to Great   # old
  - {coupler: Great to Pedal, fixed: true}
tremulants: [Swell]
aids: {generals: 4, divisionals: {Swell: 3}, colour: red}
`;

const edited = (...edits: InstrumentEdit[]): string => {
  const { text, troubles } = editInstrumentFile(FILE, edits);
  if (text === null) throw new Error(troubles.map(troubleLine).join("\n"));
  return text;
};

/** Lines taken away and put in, as `- old` and `+ new`; between them all is as it was. */
function changes(before: string, after: string): string[] {
  const [old, now] = [before.split("\n"), after.split("\n")];
  const rows = old.map(() => new Array<number>(now.length + 1).fill(0));
  rows.push(new Array<number>(now.length + 1).fill(0));
  for (let i = old.length - 1; i >= 0; i -= 1) {
    for (let j = now.length - 1; j >= 0; j -= 1) {
      const same = old[i] === now[j] ? (rows[i + 1]?.[j + 1] ?? 0) + 1 : 0;
      (rows[i] as number[])[j] = Math.max(same, rows[i + 1]?.[j] ?? 0, rows[i]?.[j + 1] ?? 0);
    }
  }
  const told: string[] = [];
  let [i, j] = [0, 0];
  while (i < old.length || j < now.length) {
    if (i < old.length && j < now.length && old[i] === now[j]) [i, j] = [i + 1, j + 1];
    else if (j >= now.length || (i < old.length && (rows[i + 1]?.[j] ?? 0) >= (rows[i]?.[j + 1] ?? 0)))
      told.push(`- ${old[i++]}`);
    else told.push(`+ ${now[j++]}`);
  }
  return told;
}

test("the file that the edits start from is sound", () => {
  expect(readInstrumentFile(FILE, "s.yaml").troubles.map((trouble) => trouble.severity)).not.toContain("error");
});

test("without edits every byte stays", () => expect(edited()).toBe(FILE));

test("what was set by ear is cleared again, and nothing is left of it", () => {
  const ear: readonly InstrumentEdit[] = [
    { edit: "set-room", room: "dry" },
    { edit: "set-room", room: "live" },
    { edit: "set-brightness", stop: "Great/Mixtur", brightness: 5 },
  ];
  const set = readInstrumentFile(edited(...ear), "s.yaml").instrument;
  expect([set?.room, set?.roomByEar]).toEqual(["live", true]);
  const cleared = edited(
    ...ear,
    { edit: "set-brightness", stop: "Great/Mixtur", brightness: null },
    { edit: "set-room", room: null },
  );
  expect(cleared).toBe(FILE);
});

describe("each edit changes only its own lines", () => {
  const cases: readonly (readonly [string, InstrumentEdit, readonly string[]])[] = [
    [
      "a stop in the short form is renamed",
      { edit: "rename-stop", stop: "Great/Principal 8", name: "Diapason" },
      ["-       - Principal 8     # tin", "+       - Diapason 8     # tin"],
    ],
    [
      "a stop in the long form is renamed, and what points to it",
      { edit: "rename-stop", stop: "Great/Gedackt 8", name: "Bordun" },
      [
        '-       - {name: Gedackt,   pitch: 8, colour: "dark"}  # spaces kept',
        '+       - {name: Bordun,   pitch: 8, colour: "dark"}  # spaces kept',
        "-     stops: [Oboe 8, Viola 8, {name: Zz, same-as: Great/Gedackt 8}]",
        "+     stops: [Oboe 8, Viola 8, {name: Zz, same-as: Great/Bordun 8}]",
      ],
    ],
    [
      "a stop gets a name that no one knows: its kind is written down",
      { edit: "rename-stop", stop: "Great/Trumpet 8", name: "Xyzzq" },
      ["-       - 'Trumpet 8'", "+       - {name: Xyzzq, pitch: 8, kind: trumpet}"],
    ],
    [
      "a division is renamed wherever it is named",
      { edit: "rename-division", division: "Swell", name: "Récit" },
      [
        "-   - name: Swell",
        "+   - name: Récit",
        "-   - Swell to Great   # old",
        "+   - Récit to Great   # old",
        "- tremulants: [Swell]",
        "- aids: {generals: 4, divisionals: {Swell: 3}, colour: red}",
        "+ tremulants: [Récit]",
        "+ aids: {generals: 4, divisionals: {Récit: 3}, colour: red}",
      ],
    ],
    [
      "a division that stops point to is renamed",
      { edit: "rename-division", division: "Great", name: "Main, old" },
      [
        "-   - name: Great",
        "+   - name: Main, old",
        "-     stops: [Oboe 8, Viola 8, {name: Zz, same-as: Great/Gedackt 8}]",
        '+     stops: [Oboe 8, Viola 8, {name: Zz, same-as: "Main, old/Gedackt 8"}]',
        "-   - Swell to Great   # old",
        "-   - {coupler: Great to Pedal, fixed: true}",
        "+   - Swell to Main, old   # old",
        '+   - {coupler: "Main, old to Pedal", fixed: true}',
      ],
    ],
    [
      "the organ is renamed",
      { edit: "set-name", name: "St. Example" },
      ['- name: "St. Example, Sampleford"', "+ name: St. Example"],
    ],
    [
      "a tremulant more",
      { edit: "set-tremulants", tremulants: ["Swell", "Great"] },
      ["- tremulants: [Swell]", "+ tremulants: [Swell, Great]"],
    ],
    ["no tremulant is left", { edit: "set-tremulants", tremulants: [] }, ["- tremulants: [Swell]"]],
    [
      "a stop has no pipes of its own",
      { edit: "set-same-as", stop: "Swell/Viola 8", lender: "Great/Gedackt 8" },
      [
        "-     stops: [Oboe 8, Viola 8, {name: Zz, same-as: Great/Gedackt 8}]",
        "+     stops: [Oboe 8, {name: Viola, pitch: 8, same-as: Great/Gedackt 8}, {name: Zz, same-as: Great/Gedackt 8}]",
      ],
    ],
    [
      "a short stop is marked off",
      { edit: "mark-off", stop: "Great/Trumpet 8", note: "ciphers on F#4, C5" },
      ["-       - 'Trumpet 8'", '+       - {name: Trumpet, pitch: 8, off: "ciphers on F#4, C5"}'],
    ],
    [
      "a stop in brackets is marked off",
      { edit: "mark-off", stop: "Swell/Viola 8", note: null },
      [
        "-     stops: [Oboe 8, Viola 8, {name: Zz, same-as: Great/Gedackt 8}]",
        "+     stops: [Oboe 8, {name: Viola, pitch: 8, off: true}, {name: Zz, same-as: Great/Gedackt 8}]",
      ],
    ],
    ["a long stop is marked off", { edit: "mark-off", stop: "Great/Mixtur", note: "dead" }, ["+         off: dead"]],
    [
      "a strength is changed",
      { edit: "set-strength", stop: "Great/Mixtur", strength: 5 },
      ["-         strength: 4   # loud", "+         strength: 5   # loud"],
    ],
    [
      "a strength is left to the glossary",
      { edit: "set-strength", stop: "Great/Mixtur", strength: null },
      ["-         strength: 4   # loud"],
    ],
    [
      "a stop without strength has none to lose",
      { edit: "set-strength", stop: "Great/Principal 8", strength: null },
      [],
    ],
    [
      "a brightness is set",
      { edit: "set-brightness", stop: "Great/Mixtur", brightness: 2 },
      ["+         brightness: 2"],
    ],
    [
      "a brightness that nobody set has none to lose",
      { edit: "set-brightness", stop: "Great/Mixtur", brightness: null },
      [],
    ],
    ["a room is set", { edit: "set-room", room: "live" }, ["+ room: live"]],
    ["a room that nobody set is forgotten", { edit: "set-room", room: null }, []],
    [
      "a stop is added at its place",
      { edit: "add-stop", division: "Great", stop: "Octave 4", at: 1 },
      ["+       - Octave 4"],
    ],
    [
      "a stop is added at the top",
      { edit: "add-stop", division: "Great", stop: { name: "Bourdon", pitch: 16, off: true }, at: 0 },
      ["+       - {name: Bourdon, pitch: 16, off: true}"],
    ],
    ["a stop is added at the end", { edit: "add-stop", division: "Great", stop: "Clarion 4" }, ["+       - Clarion 4"]],
    [
      "a stop is added in brackets",
      { edit: "add-stop", division: "Pedal", stop: "Posaune 16" },
      [
        "-   - {name: Pedal, kind: pedal, stops: [Subbass 16]}",
        "+   - {name: Pedal, kind: pedal, stops: [Subbass 16, Posaune 16]}",
      ],
    ],
    [
      "a stop is removed with its lines",
      { edit: "remove-stop", stop: "Great/Mixtur" },
      [
        "-       - name: Mixtur",
        "-         ranks: 4",
        "- ",
        "-         strength: 4   # loud",
        "-         composition: {C2: [1 1/3, 1, 2/3, 1/2]}",
      ],
    ],
    [
      "the last stop in brackets is removed",
      { edit: "remove-stop", stop: "Pedal/Subbass 16" },
      ["-   - {name: Pedal, kind: pedal, stops: [Subbass 16]}", "+   - {name: Pedal, kind: pedal, stops: []}"],
    ],
    [
      "a stop moves up, with the comment above it",
      { edit: "move-stop", stop: "Great/Mixtur", division: "Great", at: 1 },
      [
        '-       - {name: Gedackt,   pitch: 8, colour: "dark"}  # spaces kept',
        '+       - {name: Gedackt,   pitch: 8, colour: "dark"}  # spaces kept',
      ],
    ],
    [
      "a stop moves down",
      { edit: "move-stop", stop: "Great/Principal 8", division: "Great", at: 1 },
      ["-       - Principal 8     # tin", "+       - Principal 8     # tin"],
    ],
    [
      "a stop moves within brackets",
      { edit: "move-stop", stop: "Swell/Oboe 8", division: "Swell", at: 1 },
      [
        "-     stops: [Oboe 8, Viola 8, {name: Zz, same-as: Great/Gedackt 8}]",
        "+     stops: [Viola 8, Oboe 8, {name: Zz, same-as: Great/Gedackt 8}]",
      ],
    ],
    [
      "a stop moves to another division",
      { edit: "move-stop", stop: "Swell/Oboe 8", division: "Great", at: 0 },
      [
        "+       - Oboe 8",
        "-     stops: [Oboe 8, Viola 8, {name: Zz, same-as: Great/Gedackt 8}]",
        "+     stops: [Viola 8, {name: Zz, same-as: Great/Gedackt 8}]",
      ],
    ],
    ["a box is taken away", { edit: "set-enclosed", division: "Swell", box: false }, ["-     enclosed: true"]],
    [
      "a box is named",
      { edit: "set-enclosed", division: "Swell", box: "north" },
      ["-     enclosed: true", "+     enclosed: north"],
    ],
    ["a box is put around", { edit: "set-enclosed", division: "Great", box: true }, ["+     enclosed: true"]],
    [
      "a compass on one line",
      { edit: "set-compass", division: "Great", compass: { low: 36, high: 84, missing: [] } },
      ["-     compass: C2-G6      # new keys", "+     compass: C2-C6      # new keys"],
    ],
    [
      "a compass with gaps",
      { edit: "set-compass", division: "Great", compass: { low: 36, high: 84, missing: [37] } },
      ["-     compass: C2-G6      # new keys", "+     compass: {low: C2, high: C6, missing: [C#2]}      # new keys"],
    ],
    [
      "a compass by lines",
      { edit: "set-compass", division: "Swell", compass: { low: 36, high: 84, missing: [37] } },
      ["-       high: G6", "+       high: C6", "+       missing: [C#2]"],
    ],
    [
      "a compass where none was",
      { edit: "set-compass", division: "Pedal", compass: { low: 36, high: 62, missing: [] } },
      [
        "-   - {name: Pedal, kind: pedal, stops: [Subbass 16]}",
        "+   - {name: Pedal, kind: pedal, stops: [Subbass 16], compass: C2-D4}",
      ],
    ],
    [
      "a coupler is added",
      { edit: "add-coupler", coupler: { from: "Swell", to: "Swell", pitch: 4 }, through: true },
      ["+   - {coupler: Swell to Swell 4, through: true}"],
    ],
    [
      "a coupler is removed",
      { edit: "remove-coupler", coupler: "Great to Pedal" },
      ["-   - {coupler: Great to Pedal, fixed: true}"],
    ],
    [
      "the side of the knobs where none was said",
      { edit: "set-side", division: "Swell", side: "left" },
      ["+ console: {left: [Swell]}"],
    ],
    ["how the stops are moved", { edit: "set-action", action: "tabs" }, ["+ console: {action: tabs}"]],
    [
      "aids are changed, and what else stands there is kept",
      {
        edit: "set-aids",
        aids: { generals: 8, divisionals: { Swell: 3 }, levels: 2, crescendoPedal: true, ventils: [] },
      },
      [
        "- aids: {generals: 4, divisionals: {Swell: 3}, colour: red}",
        "+ aids: {generals: 8, divisionals: {Swell: 3}, colour: red, levels: 2, crescendo-pedal: true}",
      ],
    ],
  ];
  test.each(cases)("%s", (_, edit, expected) => expect(changes(FILE, edited(edit))).toEqual(expected));

  test("so they do in a file with the line ends of Windows and no end mark on its last line", () => {
    const windows = FILE.trimEnd().replace(/\n/g, "\r\n");
    for (const [name, edit, expected] of cases) {
      const { text } = editInstrumentFile(windows, [edit]);
      const back = text?.replace(/\r\n/g, "\n") ?? "";
      expect([name, /[^\r]\n/.test(text ?? "")]).toEqual([name, false]);
      expect([name, changes(FILE.trimEnd(), back)]).toEqual([name, expected]);
    }
  });
});

test("marked off and on again, the stop is read as before", () => {
  const before = readInstrumentFile(FILE, "s.yaml").instrument;
  const after = edited(
    { edit: "mark-off", stop: "Great/Principal 8", note: null },
    { edit: "mark-on", stop: "Great/Principal 8" },
  );
  expect(readInstrumentFile(after, "s.yaml").instrument).toEqual(before);
});

test("a renamed division keeps the box that another shares with it", () => {
  const file =
    "registrant: instrument/1\nname: A\ndivisions:\n  - {name: Swell, kind: manual, keyboard: 1, enclosed: true}\n  - {name: Solo, kind: manual, keyboard: 2, enclosed: Swell}\n";
  const { text } = editInstrumentFile(file, [{ edit: "rename-division", division: "Swell", name: "Récit" }]);
  expect(text).toBe(file.replaceAll("Swell", "Récit"));
});

test("several edits are made one after the other", () => {
  const text = edited(
    { edit: "rename-division", division: "Great", name: "Hauptwerk" },
    { edit: "mark-off", stop: "Hauptwerk/Trumpet 8", note: "dead" },
    { edit: "remove-coupler", coupler: "Hauptwerk to Pedal" },
  );
  const { instrument } = readInstrumentFile(text, "s.yaml");
  expect(instrument?.couplers.map((coupler) => coupler.name)).toEqual(["Swell to Hauptwerk"]);
  expect(instrument?.divisions[0]?.stops.find((stop) => stop.off)?.id).toBe("Hauptwerk/Trumpet 8");
});

describe("what is stated of the console's jambs", () => {
  const saidBy = (console: string, ...edits: InstrumentEdit[]): string | undefined => {
    const { text, troubles } = editInstrumentFile(`${FILE}${console}`, edits);
    if (text === null) throw new Error(troubles.map(troubleLine).join("\n"));
    expect(text.startsWith(FILE)).toBe(true);
    return text.slice(FILE.length);
  };
  const to = (division: string, side: "left" | "right" | null): InstrumentEdit => ({
    edit: "set-side",
    division,
    side,
  });

  test.each<[string, string, InstrumentEdit, string]>([
    [
      "a division goes to the other side, and measures and remarks stay",
      "console:\n  left: [Swell, Pedal]  # seen\n  right: [Great]\n  jamb-to-jamb: 120 # by eye\n",
      to("Swell", "right"),
      "console:\n  left: [Pedal]  # seen\n  right: [Great, Swell]\n  jamb-to-jamb: 120 # by eye\n",
    ],
    [
      "the last of a side",
      "console: {left: [Swell], right: [Great]}\n",
      to("Swell", null),
      "console: {right: [Great]}\n",
    ],
    ["the last that is said at all", "console: {left: [Swell]}\n", to("Swell", null), ""],
    [
      "the only one changes sides",
      "console: {left: [Swell]}\n",
      to("Swell", "right"),
      "console: {left: [], right: [Swell]}\n",
    ],
    [
      "the action is unsaid, and what others wrote stays",
      "console:\n  action: tabs\n  colour: red\n",
      { edit: "set-action", action: null },
      "console:\n  colour: red\n",
    ],
    ["what is so already", "console: {left: [Swell]}\n", to("Swell", "left"), "console: {left: [Swell]}\n"],
  ])("%s", (_, console, edit, expected) => expect(saidBy(console, edit)).toBe(expected));

  test("said for each division, one after the other, it is read back", () => {
    const text = `${FILE}${saidBy("", to("Pedal", "left"), to("Great", "right"), to("Swell", "left"), { edit: "set-action", action: "mechanical" })}`;
    expect(readInstrumentFile(text, "s.yaml").instrument?.console).toMatchObject({
      action: "mechanical",
      left: ["Swell", "Pedal"],
      right: ["Great"],
    });
  });
});

test("a file without couplers, aids and stops gets them", () => {
  const bare = "registrant: instrument/1\nname: A\ndivisions:\n  - name: Great\n    kind: manual\n    keyboard: 1\n";
  const { text } = editInstrumentFile(bare, [
    { edit: "add-stop", division: "Great", stop: "Gedackt 8" },
    { edit: "add-coupler", coupler: { from: "Great", to: "Great", pitch: 4 } },
    { edit: "set-aids", aids: { generals: 2, divisionals: {}, levels: 0, crescendoPedal: false, ventils: [] } },
  ]);
  expect(text).toBe(`${bare}    stops:\n      - Gedackt 8\ncouplers:\n  - Great to Great 4\naids: {generals: 2}\n`);
});

describe("edits that are refused leave the file alone and say why", () => {
  const refused = (edit: InstrumentEdit, file = FILE): (string | null)[] => {
    const { text, troubles } = editInstrumentFile(file, [edit], "s.yaml");
    return [text, ...troubles.filter((trouble) => trouble.severity === "error").map(troubleLine)];
  };
  test.each<[string, InstrumentEdit, ...string[]]>([
    [
      "a stop that is gone",
      { edit: "mark-on", stop: "Great/Principle 8" },
      's.yaml, line 1, column 1: error: The file has no stop "Great/Principle 8" any more, so nothing was changed. Did you mean Great/Principal 8?',
    ],
    [
      "a coupler that is gone",
      { edit: "remove-coupler", coupler: "Swell to Pedal" },
      's.yaml, line 1, column 1: error: The file has no coupler "Swell to Pedal" any more, so nothing was changed. Did you mean Swell to Great or Great to Pedal?',
    ],
    [
      "a second division of one name",
      { edit: "rename-division", division: "Swell", name: "great" },
      's.yaml, line 22, column 11: error: A second division is named "great"; the first is on line 7. Give each its own name.',
      "s.yaml, line 34, column 5: error: Great is coupled to itself at the unison, which does nothing. Write 4 or 16 behind it for an octave coupler.",
    ],
    [
      "a stop that others borrow from",
      { edit: "remove-stop", stop: "Great/Gedackt 8" },
      's.yaml, line 28, column 50: error: No stop "Gedackt 8" in the Great. Look up its stops for the name that is meant.',
    ],
    [
      "a stop of no pitch",
      { edit: "add-stop", division: "Great", stop: "Gedackt 7" },
      "s.yaml, line 22, column 17: error: Gedackt 7: no organ pipe rank speaks at 7'; did you mean 8?",
    ],
  ])("%s", (_, edit, ...expected) => expect(refused(edit)).toEqual([null, ...expected]));

  test("a file with errors", () => {
    expect(refused({ edit: "mark-on", stop: "Great/Principal 8" }, FILE.replace("Principal 8", "Principal 7"))).toEqual(
      [null, "s.yaml, line 13, column 19: error: Principal 7: no organ pipe rank speaks at 7'; did you mean 8?"],
    );
  });

  test("stops that two divisions share by a *name", () => {
    const shared =
      "registrant: instrument/1\nname: A\ndivisions:\n  - {name: I, kind: manual, keyboard: 1, stops: &s [Gedackt 8]}\n  - {name: II, kind: manual, keyboard: 2, stops: *s}\n";
    expect(refused({ edit: "mark-off", stop: "II/Gedackt 8", note: null }, shared)).toEqual([
      null,
      "s.yaml, line 1, column 1: error: II/Gedackt 8 is written in a way that can only be changed in the file itself, by hand.",
    ]);
  });
});

describe("what was learnt on a visit", () => {
  const answered = (text: string, ...answers: readonly (readonly [VisitTopic, string | null])[]): string => {
    const edits = answers.map(([topic, answer]): InstrumentEdit => ({ edit: "set-visit", topic, answer }));
    const done = editInstrumentFile(text, edits);
    if (done.text === null) throw new Error(done.troubles.map(troubleLine).join("\n"));
    return done.text;
  };
  const visitOf = (text: string) => readInstrumentFile(text, "s.yaml").instrument?.visit;

  test("goes behind all else in the order in which it is asked, in any number of lines, and is taken back to the last byte", () => {
    const leaving = "Cover on.\n  Shutters open: # always\n\nKey to the 'second' hook.";
    const said = answered(
      FILE,
      ["keys", "Mrs. Tallow, 14 Rope Walk"],
      ["leaving", leaving],
      ["tuner", "T."],
      ["blower", "  "],
    );
    expect(changes(FILE, said)).toEqual([
      "+ visit:",
      "+   keys: Mrs. Tallow, 14 Rope Walk",
      "+   tuner: T.",
      "+   leaving: \"Cover on.\\n  Shutters open: # always\\n\\nKey to the 'second' hook.\"",
    ]);
    expect(visitOf(said)).toEqual({ keys: "Mrs. Tallow, 14 Rope Walk", tuner: "T.", leaving });
    expect(answered(said, ["tuner", null], ["keys", null], ["leaving", ""])).toBe(FILE);
  });

  test("takes the place of what a person wrote, whose remarks and own keys stay", () => {
    const own = `${FILE}visit:   # in May
  keys: |-   # by telephone
    one
    two
  blower: >
    behind
    the console

  seen-with: M.   # ours
  pitch: 438
  guide:          # none yet
  # the end
`;
    expect(visitOf(own)).toEqual({ keys: "one\ntwo", blower: "behind the console", pitch: "438" });
    const said = answered(own, ["keys", "three\nfour"], ["guide", "in the drawer"], ["blower", null], ["tuner", "T."]);
    expect(changes(own, said)).toEqual([
      "-   keys: |-   # by telephone",
      "-     one",
      "-     two",
      "-   blower: >",
      "-     behind",
      "-     the console",
      '+   keys: "three\\nfour"   # by telephone',
      "+   tuner: T.",
      "-   guide:          # none yet",
      "+   guide: in the drawer          # none yet",
    ]);
    expect(readInstrumentFile(said, "s.yaml").troubles.map((each) => each.code)).toContain("key-unknown");
  });

  test("is begun where the key stands empty, and inside brackets", () => {
    for (const end of ["visit:\n", "visit: {}\n", "visit: {mine: 1}\n"])
      expect(visitOf(answered(FILE + end, ["echo", "two\nseconds"]))).toEqual({ echo: "two\nseconds" });
    const all = answered(
      `{registrant: instrument/1, name: N, divisions: [{name: M, kind: manual, stops: [Gedackt 8]}]}\n`,
      ["echo", "a: {b}\nc"],
    );
    expect(visitOf(all)).toEqual({ echo: "a: {b}\nc" });
  });

  test("that is not said in words is an error with its place", () => {
    const { instrument, troubles } = readInstrumentFile(`${FILE}visit: {keys: [a, b]}\n`, "s.yaml");
    expect(instrument).toBeNull();
    expect(troubles.map(troubleLine)).toContain(
      `s.yaml, line ${FILE.split("\n").length}, column 15: error: keys: should be an answer in words, not longer than 5000 letters, not a list.`,
    );
  });

  test("settles the pitch of the organ", () => {
    expect(changes(FILE, edited({ edit: "set-pitch", a4: 438 }))).toEqual(["+ a4: 438"]);
    expect(editInstrumentFile(FILE, [{ edit: "set-pitch", a4: 900 }]).text).toBeNull();
  });
});
