import { afterEach, beforeEach, expect, test } from "vitest";
import { Desk, tooWide } from "./run-command.ts";

const ORGAN = `registrant: instrument/1
name: Village church, Nether Ambling
divisions:
  - {name: Great, kind: manual, keyboard: 1, compass: {low: C2, high: F5}, stops: [Open Diapason 8, Stopped Diapason 8, Principal 4, Fifteenth 2, Mixture III]}
  - {name: Pedal, kind: pedal, stops: [Bourdon 16, Bass Flute 8]}
couplers: [Great to Pedal]
`;
const piece = (name: string, ...sections: readonly string[]): string =>
  `registrant: piece/1\nname: ${name}\norgan: Somewhere else\nsections:\n${sections.map((each) => `  - {${each}}\n`).join("")}`;

let desk: Desk;
beforeEach(() => {
  desk = new Desk()
    .put("organ.yaml", ORGAN)
    .put("heights.yaml", piece("Heights", "name: Opening, texture: plenum-manual, ranges: {plenum: [C2, C6]}"))
    .put(
      "verses.yaml",
      piece(
        "Verses",
        "name: First, texture: plenum-manual",
        "name: Middle, texture: plenum-manual, ranges: {plenum: [C2, C6]}",
      ),
    )
    .put("praise.yaml", piece("Praise", "name: All, texture: plenum-manual"));
});
afterEach(() => desk.clear());

test("pieces stand in the order in which they suit the organ, whatever organ they were registered on, with reasons", async () => {
  const { status, out } = await desk.run("suits", "organ.yaml", "heights.yaml", "verses.yaml", "praise.yaml");
  expect(status).toBe(0);
  expect(tooWide(out)).toEqual([]);
  expect(out.match(/^\d\. \w+/gm)).toEqual(["1. Praise", "2. Verses", "3. Heights"]);
  const words = out.replace(/\s+/g, " ");
  expect(words).toMatch(/3\. Heights 0 of 100 Not for this organ\. Out of reach: Opening \(.+\)\./);
  expect(words).toMatch(/Only in part\. Out of reach: Middle \(.+\)\./);
});

test("a section of many bars counts more than one of few, where all say how long they are", async () => {
  const of = (bars: string, others: string) =>
    piece(
      "Long",
      `texture: plenum-manual, bars: ${bars}, beats-in-bar: 4`,
      `texture: trio, bars: ${others}, beats-in-bar: 4`,
    );
  const suits = async (text: string): Promise<number> => {
    desk.put("long.yaml", text);
    return JSON.parse((await desk.run("suits", "organ.yaml", "long.yaml", "--json")).out).pieces[0].suits;
  };
  expect(await suits(of("1-30", "31-40"))).toBeGreaterThan(await suits(of("1-10", "11-40")));
});

test("a piece that is named twice, or is none, is told in a sentence", async () => {
  expect(await desk.run("suits", "organ.yaml", "heights.yaml", "heights.yaml")).toMatchObject({
    status: 2,
    out: "",
    err: "heights.yaml stands twice; keep one of the two.\n",
  });
  expect((await desk.run("suits", "organ.yaml", "organ.yaml")).err).toContain("a piece file is wanted here");
});

test("the sheet for a visit asks for the level only where there are pistons, warns, and goes on one page", async () => {
  const { out } = await desk.run("visit", "organ.yaml");
  expect(tooWide(out)).toEqual([]);
  for (const words of ["Ask the keeper", "full organ beside the pipes hurts hearing", "do not go into the organ"])
    expect(out.replace(/\s+/g, " ")).toContain(words);
  expect(out).not.toContain("Which memory level may I use?");
  expect(out).toContain("Does the chorus still speak clearly with its mixture");
  expect(out).toContain("Do the bass and the hands reach the room together?");
  desk.put("chest.yaml", ORGAN.replace(", Mixture III", "").replace("[Bourdon 16, Bass Flute 8]", "[]"));
  desk.put("seen.yaml", `${ORGAN}console: {left: [Pedal]}\n`);
  expect((await desk.run("visit", "seen.yaml")).out.replace(/\s+/g, " ")).toContain(
    "On which side does each division draw (in the file Pedal left), and how far must the hand go?",
  );
  const many = Array.from({ length: 20 }, (_, at) => `{name: Gedackt ${at}, pitch: 8, kind: stopped-flute}`).join(", ");
  desk.put("many.yaml", ORGAN.replace("Open Diapason 8", `${many}, Open Diapason 8`));
  expect((await desk.run("visit", "many.yaml")).out).toContain("Are there pistons (the file names none)?");
  desk.put("uncoupled.yaml", ORGAN.replace("couplers: [Great to Pedal]\n", ""));
  expect((await desk.run("visit", "uncoupled.yaml")).out).toContain("Which couplers are there (the list names none)");
  const chest = (await desk.run("visit", "chest.yaml")).out;
  expect(chest).not.toMatch(/mixture|Do the bass and the hands/);
  desk.put("organ.yaml", `${ORGAN}aids: {generals: 8, levels: 4}\n`);
  expect((await desk.run("visit", "organ.yaml")).out).toContain("Which memory level may I use?");
  expect((await desk.run("visit", "organ.yaml", "--pdf", "v.pdf")).out).toBe("v.pdf: 1 page, A4.\n");
});
