import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { readRegistrationFile } from "../../shared-model/files/registration-file.ts";
import { DEMO_ORGANS, demoOrgan } from "../instruments/demo-organs.ts";
import { proposeForm, sumOf } from "./json-contract.ts";
import { Desk, demoPath, tooWide } from "./run-command.ts";
import { SMALL_ORGAN } from "./small-organ.ts";

let desk: Desk;
beforeEach(() => {
  desk = new Desk().put("organ.yaml", SMALL_ORGAN);
});
afterEach(() => desk.clear());

const proposed = async (...words: readonly string[]) => {
  const { status, out, err } = await desk.run("propose", ...words, "--json");
  return { status, err, json: proposeForm.parse(JSON.parse(out)) };
};

describe("the JSON", () => {
  test.each(["melody-over-accompaniment", "plenum-manual", "flutes", "two-voices"])(
    "of %s keeps its form",
    async (id) => {
      const { status, err, json } = await proposed("organ.yaml", "--texture", id);
      expect([status, err]).toEqual([0, ""]);
      expect([json.instrument, json.texture, json.tradition]).toEqual(["St. Anna, Lehmkuhle", id, "neutral"]);
      expect(json.missing).toEqual([]);
      expect(json.proposals.map((each) => each.place)).toEqual(json.proposals.map((_, index) => index + 1));
      for (const each of json.proposals) expect(sumOf(each.reasons)).toBe(Math.round(each.score * 100));
    },
  );

  test("tells all that sounds for a part, coupled stops too", async () => {
    const { json } = await proposed("organ.yaml", "--texture", "hymn-verse", "--count", "20", "--every");
    const coupled = json.proposals.find((each) => each.couplers.includes("Hauptwerk to Pedal"));
    const bass = coupled?.parts.find((part) => part.keyboard === "Pedal");
    expect(bass?.stops.map((stop) => stop.division)).toContain("Hauptwerk");
  });

  test("names stops that would do as well beside the one drawn, as the text does; they score the same", async () => {
    desk.put(
      "twins.yaml",
      SMALL_ORGAN.replace("      - Gedackt 8\n", "      - Gedackt 8\n      - Lieblich Gedackt 8\n"),
    );
    const asked = ["twins.yaml", "--texture", "melody-over-accompaniment", "--count", "1"];
    const { json } = await proposed(...asked);
    const [best] = json.proposals;
    const stops = best?.parts.find((part) => part.part === "accompaniment")?.stops;
    expect(stops).toEqual([{ division: "Hauptwerk", name: "Gedackt", pitch: "8", or: ["Lieblich Gedackt 8"] }]);
    expect(best?.drawn.Hauptwerk).toEqual(["Gedackt 8"]);
    const { out } = await desk.run("propose", ...asked);
    expect(out).toMatch(/accompaniment +Hauptwerk +Gedackt 8 \(or Lieblich Gedackt 8\)$/m);
    const other = { ...best?.drawn, Hauptwerk: stops?.[0]?.or };
    const keyboards = Object.fromEntries((best?.parts ?? []).map((part) => [part.part, part.keyboard]));
    const { tremulants, boxes } = best ?? {};
    const texture = json.texture;
    const pasted = { registrant: "registration/1", texture, keyboards, drawn: other, tremulants, boxes };
    desk.put("other.yaml", JSON.stringify(pasted));
    expect(JSON.parse((await desk.run("check", "twins.yaml", "other.yaml", "--json")).out).score).toBe(best?.score);
  });

  test.each(DEMO_ORGANS)("of %s can be pasted into a registration file", async (name) => {
    const { json } = await proposed(demoPath(name), "--texture", "melody-over-accompaniment", "--count", "4");
    expect(json.proposals.length).toBeGreaterThan(0);
    for (const { drawn, couplers, tremulants, boxes, parts, score } of json.proposals) {
      const keyboards = Object.fromEntries(parts.map((part) => [part.part, part.keyboard]));
      const octaves = Object.fromEntries(parts.map((part) => [part.part, part.octave]));
      const pasted = {
        registrant: "registration/1",
        texture: json.texture,
        keyboards,
        octaves,
        drawn,
        couplers,
        tremulants,
        boxes,
      };
      const text = JSON.stringify(pasted);
      expect(readRegistrationFile(text, "pasted.yaml", demoOrgan(name)).troubles).toEqual([]);
      const { status, out } = await desk.put("pasted.yaml", text).run("check", demoPath(name), "pasted.yaml", "--json");
      expect([status, JSON.parse(out).score]).toEqual([0, score]);
    }
  });
});

describe("what is asked for", () => {
  test("--count says how many, and --every gives them in order of score", async () => {
    const { json } = await proposed("organ.yaml", "--texture", "melody-over-accompaniment", "--count", "5", "--every");
    const scores = json.proposals.map((each) => each.score);
    expect(scores).toHaveLength(5);
    expect(scores).toEqual(scores.toSorted((a, b) => b - a));
  });

  test("eight where nobody says otherwise", async () => {
    const { json } = await proposed("organ.yaml", "--texture", "melody-over-accompaniment");
    expect(json.proposals).toHaveLength(8);
  });

  test("tradition and dynamic are taken whatever their case", async () => {
    const words = ["organ.yaml", "--texture", "plenum-manual", "--tradition", "North-German", "--dynamic", "FF"];
    expect((await proposed(...words)).json.tradition).toBe("north-german");
  });

  test("a section file, with its ranges; a word on the command line goes before the file's", async () => {
    desk.put(
      "section.yaml",
      "registrant: section/1\ntexture: melody-over-accompaniment\ntradition: north-german\nranges: {melody: [C4, C5]}\n",
    );
    expect((await proposed("organ.yaml", "--section", "section.yaml")).json.tradition).toBe("north-german");
    const other = await proposed("organ.yaml", "--section", "section.yaml", "--tradition", "central-german");
    expect(other.json.tradition).toBe("central-german");
  });

  test("parts of one's own are served by the texture of their shape", async () => {
    desk.put(
      "section.yaml",
      `registrant: section/1
parts:
  - {part: melody, role: melody, hands: right, low: C4, high: A5}
  - {part: accompaniment, role: accompaniment, hands: left, low: C3, high: C5}
  - {part: bass, role: bass, hands: feet, low: C2, high: C4}
`,
    );
    const { json } = await proposed("organ.yaml", "--section", "section.yaml", "--count", "2");
    expect(json.texture).toBe("melody-over-accompaniment");
    expect(json.proposals[0]?.parts.map((part) => part.part)).toEqual(["melody", "accompaniment", "bass"]);
  });

  test("the card of one proposal", async () => {
    const { status, out } = await desk.run("propose", "organ.yaml", "--texture", "plenum-manual", "--card", "1");
    expect(status).toBe(0);
    expect(out).toContain("HAUPTWERK\n  Principal 8\n");
    expect(out).toContain("St. Anna, Lehmkuhle");
  });
});

describe("the plain text", () => {
  test.each(["melody-over-accompaniment", "plenum-manual"])(
    "of %s is as wide as a terminal and names the stops",
    async (id) => {
      for (const name of DEMO_ORGANS) {
        const { out } = await desk.run("propose", demoPath(name), "--texture", id, "--reasons", "--count", "3");
        expect(tooWide(out)).toEqual([]);
      }
      const { out } = await desk.run("propose", "organ.yaml", "--texture", id, "--count", "1");
      expect(out).toMatch(/^St\. Anna, Lehmkuhle: .*\n\n 1 {2}\S.* {2}\d+(?:\.\d+)?\n/);
      expect(out).toMatch(/Principal 8|Gedackt 8/);
    },
  );

  test("says what weighs most for and against each, and all with their sources when asked", async () => {
    const words = ["propose", "organ.yaml", "--texture", "melody-over-accompaniment", "--count", "1"];
    const [short, long] = [await desk.run(...words), await desk.run(...words, "--reasons")];
    expect(long.out.length).toBeGreaterThan(short.out.length);
    expect(long.out).toMatch(/\[[^\]]*common\s+practice[^\]]*\]/);
  });
});

describe("what is far behind the best", () => {
  const FAR = "More than 15 points behind the best";
  const birds = [demoPath("weidenquell"), "--texture", "petits-oiseaux", "--tradition", "french-classical"];

  test("stands under words that say so, once", async () => {
    const { proposals } = (await proposed(...birds)).json;
    const far = proposals.findIndex(({ score }) => (proposals[0]?.score ?? 0) - score > 15);
    expect(far).toBeGreaterThan(0);
    const parts = (await desk.run("propose", ...birds)).out.split(FAR);
    expect(parts).toHaveLength(2);
    expect(parts[0]).toMatch(new RegExp(`^ ${far}  `, "m"));
    expect(parts[1]).toMatch(new RegExp(`^ ${far + 1}  `, "m"));
  });

  test("is not spoken of where there is nothing", async () => {
    const { out } = await desk.run("propose", demoPath("zinnrode"), "--texture", "melody-over-accompaniment");
    expect(out).not.toContain(FAR);
  });
});

describe("when nothing serves", () => {
  const impossible = (out: string) => proposeForm.parse(JSON.parse(out));

  test("a stated range that no stop covers: what is missing is said, with status 1", async () => {
    desk.put("high.yaml", "registrant: section/1\ntexture: two-voices\nranges: {voice-1: [C2, C7]}\n");
    const { status, out } = await desk.run("propose", "organ.yaml", "--section", "high.yaml", "--json");
    expect(status).toBe(1);
    const { proposals, missing } = impossible(out);
    expect(proposals).toEqual([]);
    expect(missing.map((each) => each.text)).toEqual([
      "voice-1: The part goes beyond the keys of the Hauptwerk: G#6 to C7 are not there.",
      "voice-1: The part goes beyond the keys of the Oberwerk: G#6 to C7 are not there.",
    ]);
    const plain = await desk.run("propose", "organ.yaml", "--section", "high.yaml");
    expect(plain.status).toBe(1);
    expect(plain.out).toContain("Nothing on St. Anna, Lehmkuhle serves for two-voices");
  });

  test("a pedal alone, for the hands", async () => {
    desk.put(
      "pedal.yaml",
      "registrant: instrument/1\nname: Pedal\ndivisions: [{name: Pedal, kind: pedal, stops: [Subbass 16]}]\n",
    );
    const { status, out } = await desk.run("propose", "pedal.yaml", "--texture", "plenum-manual", "--json");
    expect([status, impossible(out).missing[0]?.text]).toEqual([1, "There is no manual on which to play the plenum."]);
  });

  test("every stop off", async () => {
    desk.put(
      "off.yaml",
      SMALL_ORGAN.replace(
        /- (\w.* \d.*|Mixtur IV|Sesquialtera II)$/gm,
        '- {name: "Principal $1", pitch: 8, kind: principal, off: true}',
      ),
    );
    expect(readInstrumentFile(desk.read("off.yaml"), "off.yaml").troubles.map((each) => each.code)).toContain(
      "all-off",
    );
    const { status, out, err } = await desk.run("propose", "off.yaml", "--texture", "plenum-manual", "--json");
    expect(status).toBe(1);
    expect(err).toContain("Every stop is marked off, so nothing can be drawn.");
    expect(impossible(out).missing[0]?.text).toBe("No stop can be drawn on the Hauptwerk: all of them are marked off.");
  });
});

describe("the picture", () => {
  const asked = ["organ.yaml", "--texture", "melody-over-accompaniment"];

  test("is drawn of the first proposal, or of the one that --card names, and never over another file", async () => {
    const first = await desk.run("propose", ...asked, "--picture", "first.svg");
    expect([first.status, first.err]).toEqual([0, ""]);
    expect(first.out).toMatch(/^first\.svg: proposal 1, .+\.$/m);
    const second = await desk.run("propose", ...asked, "--card", "2", "--picture", "second.svg");
    expect(second.out).toMatch(/^second\.svg: proposal 2, .+\.$/m);
    const [one, two] = [desk.read("first.svg"), desk.read("second.svg")];
    expect(one).toMatch(/^<svg [\s\S]*<\/svg>\n$/);
    expect(two).not.toBe(one);
    const again = await desk.run("propose", ...asked, "--picture", "first.svg");
    expect([again.status, again.err]).toEqual([
      2,
      expect.stringContaining("first.svg: It is there already. With --replace it is written over."),
    ]);
    expect((await desk.run("propose", ...asked, "--card", "2", "--picture", "first.svg", "--replace")).status).toBe(0);
    expect(desk.read("first.svg")).toBe(two);
  });

  test("leaves the JSON alone", async () => {
    const { json } = await proposed(...asked, "--picture", "p.svg");
    expect(json.proposals.length).toBeGreaterThan(1);
    expect(desk.read("p.svg")).toContain(json.proposals[0]?.label ?? "?");
  });
});

describe("what was heard", () => {
  test("stands in the JSON in numbers, and the text says where it is a guess", async () => {
    const asked = ["organ.yaml", "--texture", "melody-over-accompaniment", "--count", "1"];
    const { json } = await proposed(...asked);
    const [hearing] = json.proposals.map((each) => each.hearing);
    expect(hearing?.parts.map((each) => each.part)).toEqual(["melody", "accompaniment", "bass"]);
    expect(hearing?.pairs.map(({ first, second }) => `${first} ${second}`)).toEqual([
      "melody accompaniment",
      "melody bass",
      "accompaniment bass",
    ]);
    expect(hearing?.guessed.length).toBeGreaterThan(2);
    expect((await desk.run("propose", ...asked)).out).toContain("Balance is a guess from the names of the stops");
  });
});
