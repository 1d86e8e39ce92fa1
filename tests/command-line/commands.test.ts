import { readFileSync } from "node:fs";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { TRADITIONS } from "../../shared-model/music/texture.ts";
import { TEXTURES } from "../../shared-model/music/textures/catalogue.ts";
import { RULES } from "../../shared-model/rules/index.ts";
import { DEMO_ORGANS } from "../instruments/demo-organs.ts";
import { Desk, demoPath, tooWide } from "./run-command.ts";
import { GOOD_REGISTRATION, SMALL_ORGAN } from "./small-organ.ts";

let desk: Desk;
beforeEach(() => {
  desk = new Desk().put("organ.yaml", SMALL_ORGAN).put("mine.yaml", GOOD_REGISTRATION);
});
afterEach(() => desk.clear());

const HERE = ["mine.yaml", "organ.yaml"];

describe("the tour", () => {
  test.each([["tour"], ["help"], ["--help"], ["-h"]])("%s shows around", async (word) => {
    const { status, out, err } = await desk.run(word);
    expect([status, err]).toEqual([0, ""]);
    for (const command of [
      "open",
      "read",
      "validate",
      "textures",
      "propose",
      "check",
      "cards",
      "plan",
      "carry",
      "survey",
      "suits",
      "visit",
      "rules",
      "schema",
    ]) {
      expect(out).toMatch(new RegExp(`^  ${command} +\\S`, "m"));
    }
    expect(tooWide(out)).toEqual([]);
  });

  test("every command that the tour shows can be run as it stands", async () => {
    const { out } = await desk.run("help");
    const shown = [...out.matchAll(/^ {2}registrant (.+)$/gm)].map((match) => (match[1] ?? "").split(" "));
    expect(shown.length).toBeGreaterThan(3);
    desk.put("mine.yaml", "registrant: registration/1\ntexture: plenum-manual\ndrawn: {Manual: [Principal, Octave]}\n");
    desk.put("LIST.txt", "Manual\nPrincipal 8'\nGedackt 8'\nOctave 4'\nPedal\nSubbass 16'\n");
    for (const words of shown) {
      const found = words.map((word) => word.replace(/^instruments\/([\w/-]+)\.yaml$/, (_, name) => demoPath(name)));
      const { status, err } = await desk.run(...found, ...(found.includes("--out") ? ["--replace"] : []));
      expect([found.join(" "), status, err]).toEqual([
        found.join(" "),
        expect.any(Number),
        expect.not.stringContaining("Usage"),
      ]);
      expect(status).not.toBe(2);
    }
  });

  test("help, the version and the way each command is called", async () => {
    expect((await desk.run("--help")).out).toBe((await desk.run("help")).out);
    const { version } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8"));
    expect((await desk.run("--version")).out).toBe(`${version}\n`);
    for (const command of [
      "open",
      "read",
      "validate",
      "textures",
      "propose",
      "check",
      "cards",
      "card",
      "survey",
      "rules",
      "schema",
    ]) {
      const { status, out } = await desk.run(command, "--help");
      expect([command, status]).toEqual([command, 0]);
      expect(out.replace(/\s+/g, " ")).toContain(`Usage: registrant ${command}`);
      expect(tooWide(out)).toEqual([]);
    }
  });
});

describe("usage errors are told with the nearest names, with status 2", () => {
  test.each([
    [["propos"], 'There is no command "propos". Did you mean propose?'],
    [["frobnicate"], 'There is no command "frobnicate". "registrant help" lists the commands.'],
    [["--json"], "Options stand behind a command"],
    [["plan", "organ.yaml"], "plan needs PIECE.yaml."],
    [["plan", "organ.yaml", "p.yaml", "--assistant", "behind"], "It is one of left, right or none."],
    [["survey"], "survey needs ORGAN.yaml."],
    [["survey", "organ.yaml", "--tradition", "spanisch"], "Did you mean spanish?"],
    [["survey", "no-such-organ.yaml"], "no-such-organ.yaml: There is no such file."],
    [["carry"], "carry needs ORGAN.yaml."],
    [["carry", "organ.yaml", "p.yaml"], "carry needs --to with the file of the organ that the piece is carried to."],
    [["carry", "organ.yaml", "p.yaml", "--to", "o.yaml", "--replace"], "--replace goes with --out FILE.yaml."],
    [["propose"], "propose needs ORGAN.yaml."],
    [["propose", "organ.yaml"], "propose needs --texture with the id of a texture"],
    [["propose", "organ.yaml", "--texture"], "--texture needs the id of a texture behind it."],
    [["propose", "organ.yaml", "--texture", "--json"], "--texture needs the id of a texture behind it."],
    [["propose", "organ.yaml", "--textur", "trio"], "propose has no option --textur. Did you mean --texture?"],
    [["propose", "organ.yaml", "--texture", "trio", "--section", "s.yaml"], "Give --texture or --section, not both."],
    [["propose", "organ.yaml", "--texture", "melodie-over-acompaniment"], "Did you mean melody-over-accompaniment"],
    [["propose", "organ.yaml", "--texture", "qqqqqq"], '"registrant textures" lists them.'],
    [["propose", "organ.yaml", "--texture", "trio", "--tradition", "north-germn"], "Did you mean north-german"],
    [
      ["propose", "organ.yaml", "--texture", "trio", "--dynamic", "loud"],
      "It is one of ppp, pp, p, mp, mf, f, ff or fff.",
    ],
    [["propose", "organ.yaml", "--texture", "trio", "--count", "0"], "--count takes a whole number from 1 to 500"],
    [
      ["propose", "organ.yaml", "--texture", "trio", "--count=x"],
      '--count takes a whole number from 1 to 500, not "x".',
    ],
    [["propose", "organ.yaml", "--texture", "trio", "--json=yes"], '--json takes no value; leave "=yes" off.'],
    [["propose", "organ.yaml", "more.yaml", "--texture", "trio"], 'propose does not know what to do with "more.yaml".'],
    [["textures", "--tradition", "frensh"], "Did you mean french-classical"],
    [["schema", "organ"], "It is one of instrument, section, registration or piece."],
    [["rules", "stop-of"], "Did you mean stop-off"],
    [["check", "organ.yaml"], "check needs REGISTRATION.yaml."],
    [["validate"], "validate needs a file."],
  ])("%j", async (words, said) => {
    const { status, out, err } = await desk.run(...words);
    expect([status, out]).toEqual([2, ""]);
    expect(err).toContain(said);
    expect(
      tooWide(
        err
          .split("\n")
          .filter((line) => /^Usage|^ {7}/.test(line))
          .join("\n"),
      ),
    ).toEqual([]);
    expect(desk.files()).toEqual(HERE);
  });
});

test("a card of a proposal that there is not is refused", async () => {
  desk.put(
    "tiny.yaml",
    "registrant: instrument/1\nname: T\ndivisions: [{name: M, kind: manual, keyboard: 1, stops: [Gedackt 8]}]\n",
  );
  const { status, out, err } = await desk.run("propose", "tiny.yaml", "--texture", "flutes", "--card", "99");
  expect([status, out]).toEqual([2, ""]);
  expect(err).toMatch(/^There is no proposal 99; there (?:is|are) \d+\.\n$/);
});

describe("textures", () => {
  test("lists every texture once, under its traditions", async () => {
    const { status, out } = await desk.run("textures");
    expect(status).toBe(0);
    for (const { id } of TEXTURES) expect(out).toMatch(new RegExp(`^${id}$`, "m"));
    expect(tooWide(out)).toEqual([]);
  });

  test("of one tradition, and in JSON", async () => {
    for (const tradition of TRADITIONS) {
      const { out } = await desk.run("textures", "--tradition", tradition, "--json");
      const { textures } = JSON.parse(out);
      expect(textures.length).toBeGreaterThan(0);
      for (const each of textures) expect(each.traditions).toContain(tradition);
    }
    const all = JSON.parse((await desk.run("textures", "--json")).out).textures;
    expect(all.map((each: { id: string }) => each.id)).toEqual(TEXTURES.map((texture) => texture.id));
  });
});

describe("schema and rules", () => {
  test.each(["instrument", "section", "registration"])("the schema of %s is a JSON Schema", async (kind) => {
    const { status, out } = await desk.run("schema", kind);
    expect(status).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ type: "object", $schema: expect.stringContaining("json-schema.org") });
  });

  test("the rules are all there, and one can be looked up", async () => {
    const { out } = await desk.run("rules");
    for (const { id } of RULES) expect(out).toContain(`### ${id}\n`);
    const one = await desk.run("rules", "stop-off");
    expect(one.out).toMatch(/^### stop-off\n/);
    expect(one.out).not.toContain("### steps-audible");
  });
});

describe("validate", () => {
  test("the demo organs are right", async () => {
    const { status, out, err } = await desk.run("validate", ...DEMO_ORGANS.map(demoPath));
    expect([status, err]).toEqual([0, ""]);
    expect(out.match(/: right\. It holds /g)).toHaveLength(DEMO_ORGANS.length);
  });

  test("a registration by itself, and beside its organ", async () => {
    const alone = await desk.run("validate", "mine.yaml");
    expect([alone.status, alone.out]).toEqual([
      0,
      "mine.yaml: right. It holds a registration (name its organ beside it to have the stops looked up).\n",
    ]);
    desk.put("mine.yaml", GOOD_REGISTRATION.replace("Subbass", "Subbas"));
    expect((await desk.run("validate", "mine.yaml")).status).toBe(0);
    const beside = await desk.run("validate", "organ.yaml", "mine.yaml");
    expect(beside.status).toBe(2);
    expect(beside.err).toMatch(/^mine\.yaml, line 4, column \d+: error: No stop "Subbas 16"/);
  });

  test("a section, and every trouble with line and column, in JSON too", async () => {
    desk.put("section.yaml", "registrant: section/1\ntexture: triio\ntempo: quick\n");
    const { status, err } = await desk.run("validate", "section.yaml");
    expect(status).toBe(2);
    expect(err).toMatch(/^section\.yaml, line 3, column 8: error: tempo: /);
    const { out } = await desk.run("validate", "organ.yaml", "section.yaml", "--json");
    expect(JSON.parse(out).files).toMatchObject([
      { file: "organ.yaml", kind: "instrument", valid: true, troubles: [] },
      { file: "section.yaml", kind: "section", valid: false, troubles: [{ severity: "error", line: 3, column: 8 }] },
    ]);
  });

  test("a missing file does not hide the others", async () => {
    const { status, out, err } = await desk.run("validate", "organ.yaml", "missing.yaml");
    expect([status, err]).toEqual([2, "missing.yaml: There is no such file.\n"]);
    expect(out).toMatch(/^organ\.yaml: right/);
  });
});
