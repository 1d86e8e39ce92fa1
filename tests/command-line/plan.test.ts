import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { Desk, tooWide } from "./run-command.ts";
import { SMALL_ORGAN } from "./small-organ.ts";

const PIECE = `# For the second Sunday.
registrant: piece/1
name: Two verses
tempo: {bpm: 72}
sections:
  - name: One   # as usual
    texture: plenum-manual
  - name: Two
    texture: flutes
    before: {what: rest, beats: 4}
`;

let desk: Desk;
beforeEach(() => {
  desk = new Desk().put("organ.yaml", SMALL_ORGAN).put("piece.yaml", PIECE);
});
afterEach(() => desk.clear());

test("a plan tells sections, changes and what was given up, in 80 columns", async () => {
  const { status, out } = await desk.run("plan", "organ.yaml", "piece.yaml");
  expect(status).toBe(0);
  expect(tooWide(out)).toEqual([]);
  expect(out).toMatch(/^ 1 {2}One/m);
  expect(out).toMatch(/-> a rest of 4 beats \(3\.3 s\): /);
  expect(out).toContain("Times are reckoned from general motion times");
});

test("as JSON it is one document", async () => {
  const { out } = await desk.run("plan", "organ.yaml", "piece.yaml", "--json", "--count", "3");
  const plan = JSON.parse(out);
  expect(plan).toMatchObject({ piece: "Two verses", choice: 3, sections: [{ number: 1, name: "One" }, { number: 2 }] });
  expect(plan.changes).toHaveLength(1);
  expect(plan.changes[0]).toMatchObject({ into: 2, step: 0, before: "rest", assumed: false });
});

test("compared with another way to plan, and with another file of it, it says what differs", async () => {
  const { status, out } = await desk.run("plan", "organ.yaml", "piece.yaml", "--compare", "best-sound");
  expect([status, tooWide(out)]).toEqual([0, []]);
  expect(out).toMatch(/^here {3}[\d.]+ points; .*\nother {2}[\d.]+ points; /m);
  expect(out).toMatch(/The other is planned for the best sound, whatever the work\./);
  await desk.run("plan", "organ.yaml", "piece.yaml", "--out", "planned.yaml");
  const same = await desk.run("plan", "organ.yaml", "planned.yaml", "--compare", "planned.yaml");
  expect(same.out).toMatch(/The other is as planned\.yaml has it\. Both are registered alike, with the same\s+work\./);
  const json = await desk.run("plan", "organ.yaml", "planned.yaml", "--compare", "least-work", "--json");
  expect(JSON.parse(json.out)).toMatchObject({ sections: [{ name: "One" }, { name: "Two" }] });
  const { status: bad, err } = await desk.run("plan", "organ.yaml", "piece.yaml", "--compare", "loudest");
  expect([bad, err.includes("best-sound")]).toEqual([2, true]);
});

test("written out, it is the same piece with registrations, and planned again it says the same", async () => {
  const first = await desk.run("plan", "organ.yaml", "piece.yaml", "--out", "planned.yaml", "--json");
  expect(first.status).toBe(0);
  const text = desk.read("planned.yaml");
  expect(text).toMatch(/^# For the second Sunday\.\nregistrant: piece\/1\nname: Two verses\norgan: /);
  expect(text).toContain("- name: One   # as usual\n    texture: plenum-manual\n    registration:\n");
  expect(desk.read("piece.yaml")).toBe(PIECE);
  expect((await desk.run("validate", "organ.yaml", "planned.yaml")).status).toBe(0);
  const again = await desk.run("plan", "organ.yaml", "planned.yaml", "--out", "again.yaml", "--json");
  expect(desk.read("again.yaml")).toBe(text);
  const sections = (json: string) =>
    JSON.parse(json).sections.map((each: { registration: unknown }) => each.registration);
  expect(sections(again.out)).toEqual(sections(first.out));
});

describe("bad input is told in a sentence, and nothing is written", () => {
  test.each([
    [
      "a stop that is not there",
      PIECE.replace(
        "texture: flutes",
        "texture: flutes\n    pinned: true\n    registration: {drawn: {Hauptwerk: [Bassoon 8]}}",
      ),
      /piece\.yaml, line \d+, column \d+: error: No stop "Bassoon 8"/,
    ],
    [
      "an impossible tempo",
      PIECE.replace("bpm: 72", "bpm: 7000"),
      /bpm: should be beats in a minute, from 10 to 400, not 7000/,
    ],
    [
      "contradictory links",
      PIECE.replace("texture: flutes", "texture: flutes\n    softer-than: One\n    louder-than: One"),
      /Two cannot be both softer than One and louder than it/,
    ],
    ["no sections", "registrant: piece/1\nsections: []\n", /The piece has no sections yet/],
    ["another kind of file", SMALL_ORGAN, /a piece file is wanted here/],
  ])("%s", async (_, text, says) => {
    desk.put("piece.yaml", text);
    const { status, out, err } = await desk.run("plan", "organ.yaml", "piece.yaml", "--out", "planned.yaml");
    expect([status, out]).toEqual([2, ""]);
    expect(err).toMatch(says);
    expect(desk.files()).toEqual(["organ.yaml", "piece.yaml"]);
  });

  test("a section for which the organ has no means: nothing is written, and the file is not at fault", async () => {
    desk.put(
      "piece.yaml",
      PIECE.replace("texture: plenum-manual", "texture: plenum-manual\n    ranges: {plenum: [A0, C8]}"),
    );
    const { status, out, err } = await desk.run("plan", "organ.yaml", "piece.yaml", "--out", "planned.yaml");
    expect([status, out]).toEqual([1, ""]);
    expect(err).toMatch(/^piece\.yaml: One: Nothing on this organ serves for it\. The part goes beyond the keys/);
    expect(desk.files()).toEqual(["organ.yaml", "piece.yaml"]);
  });

  test("what happens before a section, in a word that is none", async () => {
    desk.put("piece.yaml", PIECE.replace(/what: \w+/, "what: nap"));
    const { status, err } = await desk.run("plan", "organ.yaml", "piece.yaml");
    expect(status).toBe(2);
    expect(err).toMatch(/error: what: does not know "nap"\. It takes attacca, rest, fermata, page-turn or pause\.\n$/);
  });

  test("bars out of order are told, and the piece is planned and kept with every byte of them", async () => {
    const text = PIECE.replace("texture: plenum-manual", "texture: plenum-manual\n    bars: 9-16 # as printed").replace(
      "texture: flutes",
      "texture: flutes\n    bars: 1-8",
    );
    desk.put("piece.yaml", text);
    const { out, err } = await desk.run("plan", "organ.yaml", "piece.yaml", "--out", "planned.yaml");
    expect(err).toMatch(
      /piece\.yaml, line \d+, column \d+: note: Two has the bars "1-8", but One before it has "9-16"/,
    );
    expect(out).toContain("Two, bars 1-8");
    expect(desk.read("planned.yaml")).toContain("bars: 9-16 # as printed");
    expect(desk.read("planned.yaml")).toContain("bars: 1-8\n");
  });

  test("a file that stands there already", async () => {
    const { status, err } = await desk.run("plan", "organ.yaml", "piece.yaml", "--out", "piece.yaml");
    expect(status).toBe(2);
    expect(err).toContain("--replace");
    expect(desk.read("piece.yaml")).toBe(PIECE);
  });
});

test("a piece of another organ is planned anew, and keeps what it had until it is written out", async () => {
  const other = PIECE.replace("name: Two verses", "name: Two verses\norgan: Dom").replace(
    "texture: flutes",
    "texture: flutes\n    pinned: true\n    registration: {drawn: {Schwellwerk: [Gedackt 8]}}",
  );
  desk.put("piece.yaml", other);
  const { status, err, out } = await desk.run("plan", "organ.yaml", "piece.yaml");
  expect(status).toBe(0);
  expect(err).toContain("The registrations of this piece were made on Dom, not on");
  expect(out).not.toContain("(pinned)");
  expect(desk.read("piece.yaml")).toBe(other);
});
