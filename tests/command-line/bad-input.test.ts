import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { Desk } from "./run-command.ts";

let desk: Desk;
beforeEach(() => {
  desk = new Desk();
});
afterEach(() => desk.clear());

const organ = (rest: string): string => `registrant: instrument/1\nname: Test\n${rest}`;
const BOMB = organ(
  `${["a", "b", "c", "d", "e", "f", "g", "h"]
    .map(
      (name, at, all) =>
        `${name}: &${name} [${Array(9)
          .fill(at === 0 ? "x" : `*${all[at - 1]}`)
          .join(", ")}]`,
    )
    .join("\n")}\ndivisions: *h\n`,
);

/** A pseudo-random but fixed row of bytes, no text in any encoding. */
const BINARY = Uint8Array.from({ length: 4096 }, (_, index) => (index * index * 31 + index * 7) % 256);

const BAD: readonly (readonly [what: string, content: string | Uint8Array, says: RegExp])[] = [
  ["an empty file", "", /line 1, column 1: error: The file is empty\./],
  ["blanks only", " \n\n\t\n", /The file is empty\./],
  ["binary", BINARY, /line \d+, column \d+: error: (?:This is not a text file|The text is not in UTF-8)/],
  ["5 MB of text", "a: b\n".repeat(1_000_000), /longer than \d+ characters, more than any organ needs/],
  ["more than 5 MB", "a: b\n".repeat(1_000_001), /bad\.yaml: It is longer than 5 MB/],
  ["a YAML alias bomb", BOMB, /line \d+, column \d+: error: More than 20 uses of \*names/],
  ["lists within lists", `a: ${"[".repeat(100_000)}`, /Lists stand within lists/],
  ["no YAML", "divisions: [Great, {", /line 1, column \d+: error: /],
  ["another kind of file", "registrant: section/1\ntexture: trio\n", /an instrument file is wanted here/],
  ["a newer form", "registrant: instrument/9\n", /newer form/],
  [
    "duplicate divisions",
    organ(
      "divisions:\n  - {name: Great, kind: manual, stops: [Principal 8]}\n  - {name: great, kind: manual, stops: [Octave 4]}\n",
    ),
    /line 5, column \d+: error: A second division is named "great"; the first is on line 4/,
  ],
  [
    "a coupler to nowhere",
    organ("divisions:\n  - {name: Great, kind: manual, stops: [Principal 8]}\ncouplers: [Swell to Great]\n"),
    /line 5, column \d+: error: There is no division "Swell" here/,
  ],
  [
    "a stop at 7'",
    organ("divisions:\n  - {name: Great, kind: manual, stops: [Principal 7]}\n"),
    /line 4, column \d+: error: Principal 7: no organ pipe rank speaks at 7'; did you mean 8\?/,
  ],
  [
    "ranks with no pipes",
    organ(
      "divisions:\n  - {name: Great, kind: manual, stops: [{name: Gedackt, pitch: 8, rank: wood}]}\nranks: [{id: wood, longest: 8, pipes: 0}]\n",
    ),
    /line 5, column \d+: error: pipes: should be the number of pipes, a whole number from 1 to 122, not 0/,
  ],
  ["no divisions", organ("divisions: []\n"), /The organ has no division/],
];

describe.each([
  ["propose", ["propose", "bad.yaml", "--texture", "trio"]],
  ["validate", ["validate", "bad.yaml"]],
  ["check", ["check", "bad.yaml", "bad.yaml"]],
])("an organ that is no organ, given to %s", (command, words) => {
  test.each(BAD)("%s", async (what, content, says) => {
    // Told apart by what it says it is, a section is right in itself.
    if (command === "validate" && what === "another kind of file") return;
    desk.put("bad.yaml", content);
    const { status, out, err } = await desk.run(...words);
    expect([status, out]).toEqual([2, ""]);
    expect(err).toMatch(says);
    expect(err).not.toMatch(/undefined|\bat .*\.ts:|TypeError|RangeError/);
    expect(desk.files()).toEqual(["bad.yaml"]);
  });
});

describe("a printed list where an organ's file is wanted", () => {
  const list = "Dear Anna,\nhere is our list:\n\nOpen Diapason 8\nPrincipal 4\n\nOne manual, no pedal.\n";

  test.each([[["survey", "list.txt"]], [["visit", "list.txt"]], [["propose", "list.txt", "--texture", "trio"]]])(
    "is told by %s how it becomes one",
    async (words) => {
      desk.put("list.txt", list);
      expect(await desk.run(...words)).toMatchObject({
        status: 2,
        out: "",
        err: "list.txt: This is a printed stoplist; read it first: registrant read list.txt --out organ.yaml\n",
      });
    },
  );

  test("is none where only the first line of an organ's file is missing", async () => {
    desk.put("organ.yaml", "name: A\ndivisions:\n  - {name: Great, kind: manual, stops: [Principal 8, Octave 4]}\n");
    const { status, err } = await desk.run("survey", "organ.yaml");
    expect(status).toBe(2);
    expect(err).toMatch(/line 1, column 1: error: /);
  });
});

describe("lists that are no lists, given to read", () => {
  test.each<readonly [string, string | Uint8Array, RegExp]>([
    ["an empty file", "", /^bad\.txt: The file is empty\.\n$/],
    ["binary", BINARY, /^bad\.txt: This is not a text file/],
    ["5 MB of text", "Principal 8'\n".repeat(384_615), /^bad\.txt, line 1: .*far too long/],
    ["more than 5 MB", "Principal 8'\n".repeat(400_000), /^bad\.txt: It is longer than 5 MB/],
    ["words that are no stops", "Lorem ipsum dolor sit amet, consectetur.\n", /^bad\.txt, line \d+: /],
  ])("%s", async (_, content, says) => {
    desk.put("bad.txt", content);
    const { status, out, err } = await desk.run("read", "bad.txt", "--out", "organ.yaml");
    expect([status, out]).toEqual([2, ""]);
    expect(err).toMatch(says);
    expect(desk.files()).toEqual(["bad.txt"]);
  });

  test("one line of half a million letters ends", async () => {
    desk.put("bad.txt", "Principal 8' ".repeat(40_000));
    const { status, err } = await desk.run("read", "bad.txt");
    expect([0, 2]).toContain(status);
    expect(err).not.toBe("");
  });
});

describe("what is no file", () => {
  test.each([
    ["missing", ["propose", "none.yaml", "--texture", "trio"], "none.yaml: There is no such file.\n"],
    ["a folder", ["read", "folder"], "folder: It is a folder; name a file in it.\n"],
    ["a device", ["read", "/dev/null"], "/dev/null: It is no plain file; save it to one first.\n"],
    [
      "below a file",
      ["read", "plain.txt/list.txt"],
      "plain.txt/list.txt: There is no such file: a part of the path before it is no folder.\n",
    ],
  ])("%s", async (_, words, says) => {
    mkdirSync(join(desk.folder, "folder"));
    desk.put("plain.txt", "Principal 8\n");
    const { status, out, err } = await desk.run(...words);
    expect([status, out, err]).toEqual([2, "", says]);
  });
});
