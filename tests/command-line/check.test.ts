import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { checkForm, sumOf } from "./json-contract.ts";
import { Desk, tooWide } from "./run-command.ts";
import { GOOD_REGISTRATION, SMALL_ORGAN } from "./small-organ.ts";

let desk: Desk;
beforeEach(() => {
  desk = new Desk().put("organ.yaml", SMALL_ORGAN).put("good.yaml", GOOD_REGISTRATION);
});
afterEach(() => desk.clear());

const POOR = `registrant: registration/1
texture: melody-over-accompaniment
drawn: {Oberwerk: [Flöte 4], Hauptwerk: [Mixtur], Pedal: [Subbass 16]}
couplers: [Oberwerk to Hauptwerk]
boxes: {Oberwerk: closed}
`;

/** Nothing sounds at 8' for anybody, so a rule forbids it. */
const WRONG = `registrant: registration/1
texture: plenum-manual
keyboards: {plenum: Hauptwerk}
drawn: {Hauptwerk: [Mixtur]}
`;

describe("check", () => {
  test("a good registration is done with status 0", async () => {
    const { status, out, err } = await desk.run("check", "organ.yaml", "good.yaml");
    expect([status, err]).toEqual([0, ""]);
    expect(out).toMatch(/^St\. Anna, Lehmkuhle: melody-over-accompaniment, neutral\n/);
    expect(out).toMatch(/ {2}melody +Oberwerk +Rohrflöte 8, Flöte 4, Sesquialtera/);
    expect(out).toMatch(
      /\n(?:0 errors, \d+ warnings?, \d+ notes?\.|Nothing is wrong with it\.) Score \d+(?:\.\d+)?\.\nBalance is a guess [\s\S]+\.\n$/,
    );
  });

  test("an error finding gives status 1, in words and in JSON", async () => {
    desk.put("wrong.yaml", WRONG);
    const plain = await desk.run("check", "organ.yaml", "wrong.yaml");
    expect(plain.status).toBe(1);
    expect(plain.out).toMatch(/^ERROR {4}\S/m);
    const { status, out } = await desk.run("check", "organ.yaml", "wrong.yaml", "--json");
    const json = checkForm.parse(JSON.parse(out));
    expect([status, json.findings[0]?.severity]).toEqual([1, "error"]);
  });

  test.each([
    ["good", GOOD_REGISTRATION],
    ["poor", POOR],
    ["wrong", WRONG],
  ])("the JSON of a %s registration keeps its form, and its reasons sum to the score", async (_, text) => {
    const { out } = await desk.put("mine.yaml", text).run("check", "organ.yaml", "mine.yaml", "--json");
    const json = checkForm.parse(JSON.parse(out));
    expect(sumOf(json.reasons)).toBe(Math.round(json.score * 100));
  });

  test("keyboards that the file leaves open are found and told", async () => {
    const open = GOOD_REGISTRATION.replace(/^keyboards.*\n/m, "");
    desk.put("open.yaml", open);
    const { out } = await desk.run("check", "organ.yaml", "open.yaml");
    expect(out).toContain("The file leaves keyboards open; the parts are put where they sound best:");
    const [left, named] = await Promise.all(
      ["open.yaml", "good.yaml"].map(async (file) => (await desk.run("check", "organ.yaml", file, "--json")).out),
    );
    expect(checkForm.parse(JSON.parse(left ?? "")).keyboards).toEqual({
      melody: "Oberwerk",
      accompaniment: "Hauptwerk",
      bass: "Pedal",
    });
    expect(left).toBe(named);
  });

  test("it says once that strengths are guessed, and does not where somebody has listened", async () => {
    const guess = /Balance is a guess from the names of the stops/g;
    const { out } = await desk.run("check", "organ.yaml", "good.yaml");
    expect(out.match(guess)).toHaveLength(1);
    const heard = SMALL_ORGAN.replaceAll(
      /^ {6}- ([^\d\n]+) (\d+)$/gm,
      "      - {name: $1, pitch: $2, strength: 3}",
    ).replace("- Sesquialtera II", "- {name: Sesquialtera, ranks: 2, brightness: 4}");
    const listened = await desk.put("heard.yaml", heard).run("check", "heard.yaml", "good.yaml");
    expect(listened.out).toContain("Score");
    expect(listened.out).not.toMatch(guess);
  });

  test("a remedy that is followed takes its finding away", async () => {
    const before = await desk.put("mine.yaml", WRONG).run("check", "organ.yaml", "mine.yaml", "--json");
    const [first] = checkForm.parse(JSON.parse(before.out)).findings;
    const stop = /^Draw (.+)\.$/.exec(first?.remedy ?? "")?.[1];
    expect(stop).toBe("Principal 8");
    const mended = WRONG.replace("[Mixtur]", `[Mixtur, ${stop}]`);
    const after = await desk.put("mine.yaml", mended).run("check", "organ.yaml", "mine.yaml", "--json");
    expect(after.status).toBe(0);
    expect(checkForm.parse(JSON.parse(after.out)).findings.map((each) => each.text)).not.toContain(first?.text);
  });

  test("a unison that is off is judged as off, and shown", async () => {
    const organ = `${SMALL_ORGAN}\nunison-off: [Oberwerk]\n`;
    const off = `${GOOD_REGISTRATION}\nunison-off: [Oberwerk]\n`;
    desk.put("electric.yaml", organ).put("off.yaml", off);
    const { status, out, err } = await desk.run("check", "electric.yaml", "off.yaml");
    expect([status, err]).toEqual([1, ""]);
    expect(out).toMatch(/^ {2}melody +Oberwerk +nothing$/m);
    expect(out).toMatch(/^ {2}unison off +Oberwerk$/m);
    expect(out).toContain("> Turn the unison of the Oberwerk on.");
  });

  test("the plain text is as wide as a terminal, with remedies and, when asked, all reasons", async () => {
    const short = await desk.put("poor.yaml", POOR).run("check", "organ.yaml", "poor.yaml");
    const long = await desk.run("check", "organ.yaml", "poor.yaml", "--reasons");
    expect(tooWide(long.out)).toEqual([]);
    expect(short.out).toMatch(/^ {9}> Draw \S/m);
    expect(long.out.startsWith(short.out)).toBe(true);
    expect(long.out.length).toBeGreaterThan(short.out.length);
  });

  test.each([
    [
      "a stop that the organ has not",
      "drawn: {Oberwerk: [Trompete 8]}",
      /^mine\.yaml, line 3, column \d+: error: No stop "Trompete 8"/,
    ],
    ["a division that the organ has not", "drawn: {Schwellwerk: [Oboe 8]}", /There is no division "Schwellwerk" here/],
    [
      "a coupler that the organ has not",
      "couplers: [Pedal to Hauptwerk]",
      /There is no coupler|No coupler "Pedal to Hauptwerk"/,
    ],
    ["a part that the music has not", "keyboards: {tune: Oberwerk}", /part "tune"/],
    ["hands on the pedal", "keyboards: {melody: Pedal}", /^mine\.yaml: The melody is for the right hand/],
  ])("%s is refused with status 2", async (_, line, words) => {
    desk.put("mine.yaml", `registrant: registration/1\ntexture: melody-over-accompaniment\n${line}\n`);
    const { status, out, err } = await desk.run("check", "organ.yaml", "mine.yaml", "--json");
    expect([status, out]).toEqual([2, ""]);
    expect(err).toMatch(words);
  });
});
