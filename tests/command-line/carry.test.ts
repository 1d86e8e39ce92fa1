import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { Desk, tooWide } from "./run-command.ts";
import { SMALL_ORGAN } from "./small-organ.ts";

const PIECE = `# For the second Sunday.
registrant: piece/1
name: Two verses
organ: St. Anna, Lehmkuhle
sections:
  - name: One   # as usual
    texture: plenum-manual
    registration:   # drawn by ear
      keyboards: {plenum: Hauptwerk}
      drawn: {Hauptwerk: [Principal 8, Octave 4]}
  - name: Two
    texture: melody-over-accompaniment
    before: {what: rest, beats: 4}
    pinned: true
    registration:
      keyboards: {melody: Oberwerk, accompaniment: Hauptwerk, bass: Pedal}
      drawn: {Oberwerk: [Oboe 8], Hauptwerk: [Gedackt 8], Pedal: [Subbass 16, Octavbass 8]}
      tremulants: [Oberwerk]
`;

const VILLAGE = `registrant: instrument/1
name: Village church, Nether Ambling
divisions:
  - {name: Great, kind: manual, keyboard: 1, stops: [Open Diapason 8, Stopped Diapason 8, Principal 4]}
  - {name: Swell, kind: manual, keyboard: 2, stops: [Lieblich Gedackt 8, Clarinet 8]}
  - {name: Pedal, kind: pedal, stops: [Bourdon 16, Bass Flute 8]}
`;

let desk: Desk;
beforeEach(() => {
  desk = new Desk().put("organ.yaml", SMALL_ORGAN).put("piece.yaml", PIECE).put("village.yaml", VILLAGE);
});
afterEach(() => desk.clear());

const carry = (...words: readonly string[]) => desk.run("carry", "organ.yaml", "piece.yaml", "--to", ...words);

test("what each section was and is stands there in words, in 80 columns", async () => {
  const { status, out, err } = await carry("village.yaml");
  expect([status, err]).toEqual([0, ""]);
  expect(tooWide(out)).toEqual([]);
  const words = out.replace(/\s+/g, " ");
  expect(words).toContain("Two verses, from St. Anna, Lehmkuhle to Village church, Nether Ambling");
  expect(words).toContain("plenum: from the Hauptwerk to the Great; Principal 8 becomes Open Diapason 8");
  expect(words).toContain("melody: from the Oberwerk to the Swell; Oboe 8 becomes Clarinet 8: a reed for a reed");
  expect(words).toContain("-2.5 melody: without tremulant; there is none here");
});

test("as JSON it is one document, with both sides of every section and the changes there", async () => {
  const { out } = await carry("village.yaml", "--json");
  const carried = JSON.parse(out);
  expect(carried).toMatchObject({
    from: "St. Anna, Lehmkuhle",
    to: "Village church, Nether Ambling",
    sections: [
      { number: 1, name: "One", before: { registration: { drawn: { Hauptwerk: ["Principal 8", "Octave 4"] } } } },
      { number: 2, asItWas: false, after: { registration: { keyboards: { melody: "Swell" } } } },
    ],
    plan: { instrument: "Village church, Nether Ambling", changes: [{ into: 2, before: "rest" }] },
  });
});

test("the next best of each section stand there too, with how far behind they are and what they cost", async () => {
  const { out } = await carry("village.yaml", "--json");
  const [one, two] = JSON.parse(out).sections;
  expect([one.asItWas, one.others]).toEqual([true, []]);
  expect(two.others.length).toBeGreaterThan(0);
  for (const other of two.others) {
    expect(other).toMatchObject({
      label: expect.any(String),
      score: expect.any(Number),
      behind: expect.any(Number),
      registration: { keyboards: { melody: expect.any(String) } },
      differences: expect.any(Array),
      remarks: expect.any(Array),
    });
  }
  expect((await carry("village.yaml")).out).toMatch(/^ {4}or -\d/m);
});

test("with --practice the hands stay where they will be, and what cannot be practised is said", async () => {
  desk.put(
    "village.yaml",
    VILLAGE.replace(/stops: \[Open.*?\]/, "stops: [Gedackt 8]")
      .replace(/stops: \[Lieblich.*?\]/, "stops: [Flute 8]")
      .replace(/ {2}- \{name: Pedal.*\n/, ""),
  );
  const { status, out } = await carry("village.yaml", "--practice");
  expect(status).toBe(0);
  expect(tooWide(out)).toEqual([]);
  const words = out.replace(/\s+/g, " ");
  expect(words).toContain("Two verses for St. Anna, Lehmkuhle, practised on Village church, Nether Ambling");
  expect(words).toContain("The Hauptwerk is practised on the Great, the Oberwerk on the Swell.");
  expect(words).toContain("Cannot be practised here: - what the feet play: there is no pedal");
  const json = JSON.parse((await carry("village.yaml", "--practice", "--json")).out);
  expect(json).toMatchObject({
    for: "practice",
    practisedOn: { Hauptwerk: "Great", Oberwerk: "Swell" },
    notPractised: ["what the feet play: there is no pedal"],
    sections: [{ after: { registration: { keyboards: { plenum: "Great" } } } }, {}],
  });
  expect(json.sections[1].after.registration.keyboards).toMatchObject({ melody: "Swell", accompaniment: "Great" });
});

test("written out, it is the same piece for the other organ, with its comments, and it is planned and carried on there", async () => {
  const { status, err } = await carry("village.yaml", "--out", "there.yaml");
  expect(status).toBe(0);
  expect(err).toContain("there.yaml: 2 sections registered for Village church, Nether Ambling.\n");
  expect(err).toContain("there.yaml: One pin is taken out");
  const text = desk.read("there.yaml");
  expect(text).toMatch(/^# For the second Sunday\.\nregistrant: piece\/1\nname: Two verses\norgan: Village church, /);
  expect(text).toContain("- name: One   # as usual\n");
  expect(text).toContain("# drawn by ear");
  expect(text).not.toContain("pinned");
  expect(desk.read("piece.yaml")).toBe(PIECE);
  expect((await desk.run("cards", "village.yaml", "there.yaml")).status).toBe(0);
  const back = await desk.run("carry", "village.yaml", "there.yaml", "--to", "organ.yaml", "--json");
  expect(JSON.parse(back.out).sections[1].after.registration.drawn.Oberwerk).toEqual(["Oboe 8"]);
});

test("to the same organ not a byte of the file changes, pins and all", async () => {
  const { status, out } = await carry("organ.yaml", "--out", "same.yaml");
  expect(status).toBe(0);
  expect(out.match(/Set as it was\./g)).toHaveLength(2);
  expect(desk.read("same.yaml")).toBe(PIECE);
});

test("changes are planned for the pistons of the other organ, those of the first are taken out, and whose they are is said", async () => {
  desk.put("piece.yaml", PIECE.replace("sections:", "pistons: {generals: [], levels: [1]}   # as agreed\nsections:"));
  desk.put("village.yaml", `${VILLAGE}aids: {generals: 6, levels: 8}\n`);
  const { err, out } = await carry("village.yaml", "--out", "there.yaml", "--json");
  expect(err).toContain("planned with all that Village church, Nether Ambling has. Ask which are yours there");
  expect(JSON.stringify(JSON.parse(out).plan.memory)).toMatch(/"number":\d/);
  expect(desk.read("there.yaml")).not.toContain("pistons");
  expect((await desk.run("validate", "there.yaml")).status).toBe(0);
  await carry("organ.yaml", "--out", "same.yaml");
  expect(desk.read("same.yaml")).toContain("pistons: {generals: [], levels: [1]}   # as agreed\n");
});

test("a piece that has no registrations yet is planned on its own organ first, and that is told", async () => {
  desk.put("piece.yaml", "registrant: piece/1\nsections:\n  - {texture: plenum-manual}\n");
  const { status, err } = await carry("village.yaml");
  expect(status).toBe(0);
  expect(err).toMatch(/^piece\.yaml: no section has a registration yet: planned for St\. Anna, Lehmkuhle first; /);
});

test("a section without means is said plainly, with status 1, and left open in the file", async () => {
  desk.put(
    "village.yaml",
    VILLAGE.replace(/ {2}- \{name: (?:Swell|Pedal).*\n/g, "").replace("keyboard: 1,", "compass: {low: C2, high: C4},"),
  );
  const { status, out } = await carry("village.yaml", "--out", "there.yaml");
  expect(status).toBe(1);
  expect(out).toMatch(/^ 2 {2}Two .*-> none$/m);
  expect(out).toContain("no means for it here");
  expect(desk.read("there.yaml")).toMatch(/before: \{what: rest, beats: 4\}\n$/);
});

describe("bad input is told in a sentence, and nothing is written", () => {
  test.each([
    [
      "a piece of another organ",
      PIECE.replace("organ: St. Anna, Lehmkuhle", "organ: Dom"),
      /piece\.yaml: It is registered for Dom, not for St\. Anna, Lehmkuhle\. Carry it from the organ/,
    ],
    ["no sections", "registrant: piece/1\nsections: []\n", /The piece has no sections yet/],
    ["another kind of file", VILLAGE, /a piece file is wanted here/],
  ])("%s", async (_, text, says) => {
    desk.put("piece.yaml", text);
    const { status, out, err } = await carry("village.yaml", "--out", "there.yaml");
    expect([status, out]).toEqual([2, ""]);
    expect(err).toMatch(says);
    expect(desk.files()).not.toContain("there.yaml");
  });

  test("a file that stands there already, and an organ that is not there", async () => {
    const { status, err } = await carry("village.yaml", "--out", "piece.yaml");
    expect(status).toBe(2);
    expect(err).toContain("--replace");
    expect(desk.read("piece.yaml")).toBe(PIECE);
    expect(await carry("nowhere.yaml")).toMatchObject({ status: 2, out: "" });
  });
});
