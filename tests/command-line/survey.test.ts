import { expect, test } from "vitest";
import { z } from "zod";
import { Desk, demoPath, tooWide } from "./run-command.ts";

const level = z.enum(["well", "compromise", "not-possible"]);
const form = z.strictObject({
  instrument: z.string(),
  observations: z.array(z.strictObject({ about: z.string(), text: z.string().min(1) })).min(1),
  schools: z.array(
    z.strictObject({
      tradition: z.string(),
      standing: z.enum(["at home", "with compromises", "in part", "not its music"]),
      well: z.int(),
      compromise: z.int(),
      notPossible: z.int(),
      text: z.string().min(1),
      textures: z.array(
        z.strictObject({
          texture: z.string(),
          title: z.string(),
          level,
          label: z.string().nullable(),
          score: z.number().nullable(),
          missing: z.array(z.strictObject({ part: z.string(), what: z.string(), instead: z.string().nullable() })),
          why: z.array(z.string()),
          exact: z.boolean(),
          instead: z.strictObject({ texture: z.string(), label: z.string() }).nullable(),
        }),
      ),
    }),
  ),
});

test("the JSON keeps its form, and its counts are those of its textures", async () => {
  const desk = new Desk();
  const { status, out, err } = await desk.run(
    "survey",
    demoPath("torrevana"),
    "--tradition",
    "italian-renaissance",
    "--json",
  );
  desk.clear();
  expect([status, err]).toEqual([0, ""]);
  const { schools } = form.parse(JSON.parse(out));
  expect(schools.map(({ tradition }) => tradition)).toEqual(["italian-renaissance"]);
  for (const { textures, well, compromise, notPossible } of schools) {
    expect(textures.length).toBe(well + compromise + notPossible);
    for (const each of textures) expect(each.why.length === 0, each.texture).toBe(each.level === "well");
  }
});

test("the text of one school fits 80 columns and names every texture under its level", async () => {
  const desk = new Desk();
  const { status, out } = await desk.run("survey", demoPath("alcorava"), "--tradition", "spanish");
  desk.clear();
  expect(status).toBe(0);
  expect(tooWide(out)).toEqual([]);
  expect(out).toMatch(/^Served well$/m);
  for (const title of ["Lleno", "Falsas", "Batalla", "Medio registro de tiple"]) expect(out).toContain(`\n  ${title}`);
});

test("with --pdf it is printed on one page, and no file is written over", async () => {
  const desk = new Desk();
  const words = ["survey", demoPath("torrevana"), "--tradition", "spanish", "--pdf", "survey.pdf"];
  expect(await desk.run(...words)).toMatchObject({ status: 0, out: "survey.pdf: 1 page, A4.\n" });
  expect((await desk.run(...words)).err).toContain("survey.pdf: It is there already.");
  expect((await desk.run(...words, "--replace", "--json")).err).toContain("keep one of the two");
  expect((await desk.run("survey", demoPath("torrevana"), "--paper", "a4")).err).toContain("--paper goes with --pdf");
  desk.clear();
});
