import { describe, expect, test } from "vitest";
import { changed, changesFrom, changeWords, type Standing } from "../../shared-model/check/change.ts";
import { checkRegistration } from "../../shared-model/check/check.ts";
import { improvements } from "../../shared-model/check/improve.ts";
import { prepare } from "../../shared-model/judging/prepare.ts";
import type { Problem } from "../../shared-model/judging/problem.ts";
import { sectionOf } from "../../shared-model/music/section.ts";
import type { Texture } from "../../shared-model/music/texture.ts";
import { textureFor } from "../../shared-model/music/textures/catalogue.ts";
import { organFrom } from "../../shared-model/rules/example-organ.ts";
import { randomInstrument } from "../instruments/random-instruments.ts";
import { Draw } from "../instruments/seeded-random.ts";

const problemOn = (organ: string, texture: string): Problem =>
  prepare(organFrom(organ, [], []).instrument, sectionOf(textureFor(texture, "neutral") as Texture));

const standing = (drawn: readonly string[], keyboards: Readonly<Record<string, string>>): Standing => ({
  state: {
    drawn: new Set(drawn),
    couplers: new Set(),
    tremulants: new Set(),
    boxes: new Map(),
    unisonOff: new Set(),
  },
  placings: Object.entries(keyboards).map(([part, keyboard]) => ({ part, keyboard, octave: 0 })),
});

const VILLAGE =
  "Great: Open Diapason 8, Flute 4 | Swell: Gedackt 8, Nazard 2 2/3, Flageolet 2 | Pedal: Subbass 16, Bass Flute 8";
const PLAYED = { melody: "Swell", accompaniment: "Great", bass: "Pedal" };

/** Errors and points as a check of the whole registration tells them. */
function checked(problem: Problem, { state, placings }: Standing): { errors: number; score: number } | null {
  const keyboards = Object.fromEntries(placings.map(({ part, keyboard }) => [part, keyboard]));
  const octaves = Object.fromEntries(placings.map(({ part, octave }) => [part, octave]));
  const result = checkRegistration(problem, { state, keyboards, octaves });
  if ("unplayable" in result) return null;
  const errors = result.judgement.reasons.filter((each) => each.severity === "error");
  return { errors: errors.length, score: result.judgement.score };
}

describe("what would improve a registration", () => {
  test("a mutation without its ground gets the ground first", () => {
    const problem = problemOn(VILLAGE, "melody-over-accompaniment");
    const drawn = ["Swell/Nazard 2 2/3", "Swell/Flageolet 2", "Great/Open Diapason 8", "Pedal/Subbass 16"];
    const [first] = improvements(problem, standing(drawn, PLAYED));
    expect(first && changeWords(problem, first.change)).toBe("Draw Gedackt 8");
    expect(first?.errorsLess).toBeGreaterThan(0);
    expect(first?.standing.state.drawn.has("Swell/Gedackt 8")).toBe(true);
  });

  test("a stop that no part hears is put in", () => {
    const problem = problemOn("Great: Open Diapason 8 | Choir: Dulciana 8", "plenum-manual");
    const all = improvements(problem, standing(["Great/Open Diapason 8", "Choir/Dulciana 8"], { plenum: "Great" }));
    expect(all.map((each) => changeWords(problem, each.change))).toContain("Put in Dulciana 8");
  });

  test("a stop that is off is never offered, and one that is drawn goes first", () => {
    const organ = organFrom("Great: Open Diapason 8, Flute 8 | Pedal: Subbass 16", [], []).instrument;
    const instrument = {
      ...organ,
      divisions: organ.divisions.map((division) => ({
        ...division,
        stops: division.stops.map((stop) => ({ ...stop, off: stop.name === "Flute" })),
      })),
    };
    const problem = prepare(instrument, sectionOf(textureFor("plenum-manual", "neutral") as Texture));
    const drawn = standing(["Great/Open Diapason 8", "Great/Flute 8"], { plenum: "Great" });
    const [first] = improvements(problem, drawn);
    expect(first?.change).toEqual({ what: "put-in", stop: "Great/Flute 8" });
    const others = improvements(problem, standing(["Great/Open Diapason 8"], { plenum: "Great" }), 50);
    expect(others.some((each) => each.change.what === "draw" && each.change.stop === "Great/Flute 8")).toBe(false);
  });

  test("changes are said as at the bench", () => {
    const problem = problemOn("Great: Flute 8 | Swell [box]: Flute 8 | Pedal: Subbass 16", "melody-over-accompaniment");
    expect(changeWords(problem, { what: "draw", stop: "Swell/Flute 8" })).toBe("Draw Flute 8 of the Swell");
    expect(changeWords(problem, { what: "box", box: "Swell", position: "closed" })).toBe("Close the box of the Swell");
    expect(changeWords(problem, { what: "keyboard", part: "melody", keyboard: "Swell" })).toBe(
      "Play the melody on the Swell",
    );
    expect(changeWords(problem, { what: "octave", part: "melody", octave: -1 })).toBe(
      "Play the melody an octave lower",
    );
  });
});

describe("every single change is looked at", () => {
  for (let seed = 1; seed <= 8; seed++) {
    test(`the best few are the best of all, by checks of each: random organ of seed ${seed}`, () => {
      const draw = new Draw(seed * 31);
      const instrument = randomInstrument(seed * 911, { stops: 16, manuals: 2 });
      const section = sectionOf(textureFor("melody-over-accompaniment", "neutral") as Texture);
      const problem = prepare(instrument, section);
      const manuals = instrument.divisions.filter((each) => each.kind === "manual").map((each) => each.name);
      const pedal = instrument.divisions.find((each) => each.kind === "pedal")?.name;
      const drawn = standing(
        problem.stops.filter((stop) => !stop.off && draw.chance(0.3)).map((stop) => stop.id),
        {
          melody: manuals.at(-1) ?? "",
          accompaniment: manuals[0] ?? "",
          ...(pedal !== undefined && { bass: pedal }),
        },
      );
      const now = checked(problem, drawn);
      const all = changesFrom(problem, drawn).map((change) => checked(problem, changed(problem, drawn, change)));
      const better = all
        .filter((each) => each !== null)
        .filter((each) => now && (each.errors < now.errors || (each.errors === now.errors && each.score > now.score)))
        .sort((a, b) => a.errors - b.errors || b.score - a.score);
      const found = improvements(problem, drawn, better.length);
      expect(found.map((each) => each.score)).toEqual(better.map((each) => each.score));
      expect(found.map((each) => (now?.errors ?? 0) - each.errorsLess)).toEqual(better.map((each) => each.errors));
      for (const each of found) expect(checked(problem, each.standing)?.score).toBe(each.score);
    });
  }
});
