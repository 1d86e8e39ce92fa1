import { readdirSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { readForm } from "./json-contract.ts";
import { Desk } from "./run-command.ts";

const CLEAR = `St. Anna, Lehmkuhle

I. Hauptwerk C-f3
Principal 8'
Gedackt 8'
Quinte 3'
Mixtur 4fach 1 1/3'

II. Oberwerk
Rohrflöte 8'
Flöte 4'
Oboe 8'

Pedal
Subbass 16'
Octavbass 8'

Koppeln: II/I, I/P
Tremulant Oberwerk
`;

/** Two words that no glossary has. */
const UNSURE = CLEAR.replace("Oboe 8'", "Gnurpfeife 8'");

let desk: Desk;
beforeEach(() => {
  desk = new Desk().put("list.txt", CLEAR).put("unsure.txt", UNSURE);
});
afterEach(() => desk.clear());

const LISTS = ["list.txt", "unsure.txt"];

describe("read", () => {
  test("prints the instrument file, which is read without an error", async () => {
    const { status, out, err } = await desk.run("read", "list.txt");
    expect([status, err]).toEqual([0, ""]);
    const { instrument } = readInstrumentFile(out, "organ.yaml");
    expect(instrument?.divisions.map((division) => [division.name, division.stops.length])).toEqual([
      ["Hauptwerk", 4],
      ["Oberwerk", 3],
      ["Pedal", 2],
    ]);
    expect(instrument?.couplers.map((coupler) => coupler.name)).toEqual([
      "Oberwerk to Hauptwerk",
      "Hauptwerk to Pedal",
    ]);
  });

  test("the JSON keeps its form: what sounds beside what is printed", async () => {
    const { status, out } = await desk.run("read", "list.txt", "--json");
    const json = readForm.parse(JSON.parse(out));
    expect(status).toBe(0);
    expect(json.divisions[0]?.stops[2]).toEqual({
      name: "Quinte",
      pitch: "8/3",
      printed: "3",
      ranks: null,
      half: null,
      line: 6,
    });
    expect(json.divisions.map((division) => [division.kind, division.keyboard])).toEqual([
      ["manual", 1],
      ["manual", 2],
      ["pedal", null],
    ]);
    expect(json.couplers).toEqual([
      { from: "Oberwerk", to: "Hauptwerk", pitch: 8 },
      { from: "Hauptwerk", to: "Pedal", pitch: 8 },
    ]);
    expect(json.tremulants).toEqual(["Oberwerk"]);
    expect(json.questions).toEqual([]);
  });

  test("says what it is unsure of, with the line, and is done", async () => {
    const { status, err } = await desk.run("read", "unsure.txt");
    expect(status).toBe(0);
    expect(err).toMatch(/^unsure\.txt, line 12: .*Gnurpfeife/);
  });

  test("--out writes the file and says what is in it", async () => {
    const { status, out } = await desk.run("read", "list.txt", "--out", "organ.yaml");
    expect([status, out]).toEqual([0, "organ.yaml: 3 divisions, 9 stops, 2 couplers.\n"]);
    expect(desk.read("organ.yaml")).toMatch(/^registrant: instrument\/1\n/);
    expect(desk.files()).toEqual([...LISTS, "organ.yaml"].sort());
  });

  test("--out onto a file that is there is refused, and the file stays", async () => {
    desk.put("organ.yaml", "mine\n");
    const { status, err } = await desk.run("read", "list.txt", "--out", "organ.yaml");
    expect([status, err]).toEqual([2, "organ.yaml: It is there already. With --replace it is written over.\n"]);
    expect(desk.read("organ.yaml")).toBe("mine\n");
  });

  test("--replace writes it over, through a link too, and leaves nothing beside it", async () => {
    desk.put("real.yaml", "mine\n");
    symlinkSync("real.yaml", join(desk.folder, "organ.yaml"));
    const { status } = await desk.run("read", "list.txt", "--out", "organ.yaml", "--replace");
    expect(status).toBe(0);
    expect(desk.read("real.yaml")).toMatch(/^registrant: instrument\/1\n/);
    expect(
      readdirSync(desk.folder, { withFileTypes: true })
        .find((each) => each.name === "organ.yaml")
        ?.isSymbolicLink(),
    ).toBe(true);
    expect(desk.files()).toEqual([...LISTS, "organ.yaml", "real.yaml"].sort());
  });

  test("--strict with an open question writes nothing: status 1", async () => {
    const { status, out, err } = await desk.run("read", "unsure.txt", "--out", "organ.yaml", "--strict");
    expect([status, out]).toEqual([1, ""]);
    expect(err).toMatch(/line 12: .*\n(?:.*\n)*unsure\.txt: .*so with --strict nothing is written\.\n$/);
    expect(desk.files()).toEqual(LISTS);
    const json = await desk.run("read", "unsure.txt", "--strict", "--json");
    expect(json.status).toBe(1);
    expect(readForm.parse(JSON.parse(json.out)).questions).not.toEqual([]);
  });

  test("--strict without a question writes", async () => {
    const { status } = await desk.run("read", "list.txt", "--out", "organ.yaml", "--strict");
    expect([status, desk.files()]).toEqual([0, [...LISTS, "organ.yaml"].sort()]);
  });

  test("old encodings are read", async () => {
    const latin = Buffer.from(CLEAR, "latin1");
    const wide = Buffer.from(`\ufeff${CLEAR}`, "utf16le");
    const old = await desk.put("latin.txt", latin).run("read", "latin.txt");
    expect(old.out).toContain("Rohrflöte 8");
    expect(old.err).toMatch(/^latin\.txt: The text is not in UTF-8; it is read as Windows-1252/);
    expect((await desk.put("wide.txt", wide).run("read", "wide.txt")).out).toContain("Rohrflöte 8");
  });

  test.each([
    ["a folder that is not there", ["--out", "nowhere/organ.yaml"], /nowhere\/organ\.yaml: There is no such folder/],
    ["a folder", ["--out", "."], /^\.: It is a folder/],
    ["--replace without --out", ["--replace"], /--replace goes with --out/],
  ])("%s is refused", async (_, words, said) => {
    const { status, err } = await desk.run("read", "list.txt", ...words);
    expect(status).toBe(2);
    expect(err).toMatch(said);
    expect(desk.files()).toEqual(LISTS);
  });
});
