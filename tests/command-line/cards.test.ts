import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { Desk } from "./run-command.ts";
import { GOOD_REGISTRATION, SMALL_ORGAN } from "./small-organ.ts";

let desk: Desk;
beforeEach(() => {
  desk = new Desk().put("organ.yaml", SMALL_ORGAN).put("good.yaml", GOOD_REGISTRATION);
});
afterEach(() => desk.clear());

const HERE = ["good.yaml", "organ.yaml"];

/** Nothing sounds at 8' for anybody, so a rule forbids it. */
const WRONG = `registrant: registration/1
texture: plenum-manual
keyboards: {plenum: Hauptwerk}
drawn: {Hauptwerk: [Mixtur]}
`;

describe("cards and card, as text", () => {
  test.each(["cards", "card"])("%s prints the cue card of a registration", async (command) => {
    const { status, out, err } = await desk.run(command, "organ.yaml", "good.yaml");
    expect([status, err]).toEqual([0, ""]);
    expect(out).toContain("OBERWERK\n  Rohrflöte 8\n  Flöte 4\n");
  });

  test("a card of a wrong registration says so, with status 1", async () => {
    const { status, out } = await desk.put("wrong.yaml", WRONG).run("card", "organ.yaml", "wrong.yaml");
    expect(status).toBe(1);
    expect(out).toContain("WRONG ");
  });
});

/** Two verses on the small organ; the second has no registration yet. */
const PIECE = `registrant: piece/1
name: Two verses
organ: St. Anna, Lehmkuhle
tempo: {bpm: 60, beat: quarter}
sections:
  - name: Verse 1
    bars: 1-16
    texture: melody-over-accompaniment
    registration:
      keyboards: {melody: Oberwerk, accompaniment: Hauptwerk, bass: Pedal}
      drawn: {Oberwerk: [Rohrflöte 8, Sesquialtera], Hauptwerk: [Gedackt 8], Pedal: [Subbass 16, Octavbass 8]}
  - name: Verse 2
    bars: 17-32
    texture: hymn-verse
    before: {what: rest, beats: 4}
`;

describe("cards of a piece", () => {
  beforeEach(() => desk.put("piece.yaml", PIECE));

  test("as text: what is registered stays, what is open is planned and told", async () => {
    const { status, out, err } = await desk.run("cards", "organ.yaml", "piece.yaml");
    expect(status).toBe(0);
    expect(err).toContain(
      'piece.yaml: 1 section without a registration: planned for these cards only; "registrant plan',
    );
    expect(out).toMatch(/^Two verses\nSt\. Anna, Lehmkuhle\n/);
    expect(out).toMatch(/\n1 {2}bar 1\nVerse 1: /);
    expect(out).toMatch(/\nOberwerk \(right hand\): Rohrflöte 8,\n {2}Sesquialtera/);
    expect(out).toMatch(/\n2 {2}bar 17, rest of 4 beats, f\nVerse 2: /);
  });

  test("as PDF, whole or a part of it", async () => {
    const whole = await desk.run("cards", "organ.yaml", "piece.yaml", "--pdf", "all.pdf");
    expect([whole.status, whole.out]).toEqual([0, "all.pdf: 3 pages, A5.\n"]);
    const one = await desk.run("cards", "organ.yaml", "piece.yaml", "--pdf", "one.pdf", "--part", "overview");
    expect([one.status, one.out]).toEqual([0, "one.pdf: 1 page, A5.\n"]);
  });

  const REFUSED: readonly (readonly [string, readonly string[], RegExp])[] = [
    [
      "a part that there is not",
      ["--pdf", "c.pdf", "--part", "score"],
      /^There is no part of a piece's cards "score"\. It is/,
    ],
    ["a part without paper", ["--part", "changes"], /^--part goes with --pdf; without it all is printed as text\.\n/],
    ["a part that this piece has not", ["--pdf", "c.pdf", "--part", "pistons"], /The piece has no such part: there is/],
  ];
  test.each(REFUSED)("%s is refused, and nothing is written", async (_, words, says) => {
    const { status, out, err } = await desk.run("cards", "organ.yaml", "piece.yaml", ...words);
    expect([status, out, desk.files()]).toEqual([2, "", [...HERE, "piece.yaml"]]);
    expect(err).toMatch(says);
  });

  test("a part of a single registration is refused", async () => {
    const { status, err } = await desk.run("cards", "organ.yaml", "good.yaml", "--part", "changes", "--pdf", "c.pdf");
    expect([status, err]).toEqual([2, "--part is for pieces; good.yaml holds a single registration.\n"]);
  });

  test("a piece that was registered on another organ is refused, with what to do", async () => {
    desk.put("piece.yaml", PIECE.replace("St. Anna, Lehmkuhle", "St. Bodo, Anderswo"));
    const { status, out, err } = await desk.run("cards", "organ.yaml", "piece.yaml", "--pdf", "c.pdf");
    expect([status, out, desk.files()]).toEqual([2, "", [...HERE, "piece.yaml"]]);
    expect(err).toBe(
      "piece.yaml: It is registered for St. Bodo, Anderswo, not for St. Anna, Lehmkuhle. " +
        'Plan it for this organ first ("registrant plan ... --out"), then print its cards.\n',
    );
  });
});

describe("cards in PDF", () => {
  const pdf = (name: string): Buffer => readFileSync(join(desk.folder, name));

  test("writes the file and says how many pages of what", async () => {
    const run = await desk.run("cards", "organ.yaml", "good.yaml", "--pdf", "cards.pdf", "--paper", "a6");
    expect(run).toEqual({ status: 0, out: "cards.pdf: 1 page, A6.\n", err: "" });
    expect(pdf("cards.pdf").subarray(0, 8).toString("latin1")).toBe("%PDF-1.7");
    expect(desk.files()).toEqual(["cards.pdf", ...HERE]);
  });

  test("A5 when no paper is named; two A6 on an A4", async () => {
    const usual = await desk.run("cards", "organ.yaml", "good.yaml", "--pdf", "usual.pdf");
    expect(usual.out).toBe("usual.pdf: 1 page, A5.\n");
    const cut = ["--paper", "a6", "--sheet", "a4"];
    const sheet = await desk.run("cards", "organ.yaml", "good.yaml", "--pdf", "sheet.pdf", ...cut);
    expect(sheet.out).toBe("sheet.pdf: 1 page, A4.\n");
  });

  test("of a proposal", async () => {
    const words = ["propose", "organ.yaml", "--texture", "plenum-manual", "--card", "1", "--pdf", "one.pdf"];
    expect(await desk.run(...words)).toEqual({ status: 0, out: "one.pdf: 1 page, A5.\n", err: "" });
    expect(pdf("one.pdf").length).toBeGreaterThan(5000);
  });

  test("a wrong registration is printed, with its error, and status 1", async () => {
    const { status } = await desk.put("wrong.yaml", WRONG).run("card", "organ.yaml", "wrong.yaml", "--pdf", "w.pdf");
    expect([status, desk.files()]).toEqual([1, ["good.yaml", "organ.yaml", "w.pdf", "wrong.yaml"]]);
  });

  test("a file that is there stays as it is, unless it is to be replaced", async () => {
    desk.put("cards.pdf", "my notes");
    const words = ["cards", "organ.yaml", "good.yaml", "--pdf", "cards.pdf"];
    const refused = await desk.run(...words);
    expect([refused.status, refused.out, desk.read("cards.pdf")]).toEqual([2, "", "my notes"]);
    expect(refused.err).toBe("cards.pdf: It is there already. With --replace it is written over.\n");
    expect((await desk.run(...words, "--replace")).status).toBe(0);
    expect(pdf("cards.pdf").subarray(0, 5).toString("latin1")).toBe("%PDF-");
  });

  test("letters that the type does not have are named", async () => {
    desk.put("far.yaml", SMALL_ORGAN.replace("St. Anna", "聖安娜"));
    const { status, err } = await desk.run("cards", "far.yaml", "good.yaml", "--pdf", "far.pdf");
    expect(status).toBe(0);
    expect(err).toBe(
      "The type of the cards has no letter for 聖 安 娜: an empty box stands there. Write it in by hand.\n",
    );
  });

  const BAD: readonly (readonly [string, readonly string[], RegExp])[] = [
    [
      "an unknown paper",
      ["--pdf", "c.pdf", "--paper", "a3"],
      /^There is no size of paper "a3"\. It is one of a6, a5, /,
    ],
    ["an unknown sheet", ["--pdf", "c.pdf", "--sheet", "a9"], /^There is no size of paper "a9"\./],
    ["paper for a text", ["--paper", "a5"], /^--paper goes with --pdf; without it text is printed\.\n$/],
    ["a sheet for one card", ["--pdf", "c.pdf", "--sheet", "a5"], /^No two cards of A5 go on a sheet of A5\. Leave /],
    ["no file behind --pdf", ["--pdf"], /^--pdf needs a file behind it\./],
    ["a folder for a file", ["--pdf", "."], /^\.: It is a folder; name a file in it\.\n$/],
    [
      "a folder that there is not",
      ["--pdf", "none/c.pdf"],
      /^none\/c\.pdf: There is no such folder to write it to\.\n$/,
    ],
  ];
  test.each(BAD)("%s is refused with status 2, and nothing is written", async (_, words, says) => {
    const { status, out, err } = await desk.run("cards", "organ.yaml", "good.yaml", ...words);
    expect([status, out, desk.files()]).toEqual([2, "", HERE]);
    expect(err).toMatch(says);
  });

  test("an organ that the registration was not drawn on is refused, and nothing is written", async () => {
    const other = SMALL_ORGAN.replaceAll("Oberwerk", "Brustwerk");
    const { status, err } = await desk
      .put("other.yaml", other)
      .run("cards", "other.yaml", "good.yaml", "--pdf", "c.pdf");
    expect([status, desk.files()]).toEqual([2, ["good.yaml", "organ.yaml", "other.yaml"]]);
    expect(err).toMatch(
      /^good\.yaml, line 3, column \d+: error: There is no division "Oberwerk" here\. The divisions are Hauptwerk, Brustwerk and Pedal\.$/m,
    );
  });

  test("--pdf beside a list of proposals asks which of them", async () => {
    const { status, err } = await desk.run("propose", "organ.yaml", "--texture", "plenum-manual", "--pdf", "c.pdf");
    expect([status, err, desk.files()]).toEqual([
      2,
      "--pdf prints a card; say with --card which proposal it is for.\n",
      HERE,
    ]);
  });
});
