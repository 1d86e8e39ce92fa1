import { describe, expect, test } from "vitest";
import { BANDS } from "../../shared-model/acoustics/bands.ts";
import type { Blend } from "../../shared-model/acoustics/blend.ts";
import { balanceOf, strengthOf } from "../../shared-model/acoustics/hearing.ts";
import { BAND_COUNT } from "../../shared-model/acoustics/pipe.ts";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { type Judgement, judge } from "../../shared-model/judging/judge.ts";
import { problemOf } from "../../shared-model/judging/problem.ts";
import { sectionOf } from "../../shared-model/music/section.ts";
import type { Texture } from "../../shared-model/music/texture.ts";
import { textureById } from "../../shared-model/music/textures/catalogue.ts";
import { RULES } from "../../shared-model/rules/index.ts";

/** A tune on the Swell over one stop of the Great, on an organ whose file says this of them. */
function judged(tune: string, chords: string, head = ""): Judgement {
  const { instrument } = readInstrumentFile(
    `registrant: instrument/1
name: St. Brannoc, Harrowmere
${head}divisions:
  - {name: Great, kind: manual, keyboard: 1, stops: [${chords}]}
  - {name: Swell, kind: manual, keyboard: 2, stops: [${tune}]}
`,
    "organ.yaml",
  );
  if (!instrument) throw new RangeError("The organ of the test cannot be read.");
  const section = sectionOf(textureById("melody-over-accompaniment") as Texture, {});
  // By the conventions alone: a recipe that is followed would silence them.
  const problem = problemOf(instrument, section, [], [], RULES);
  const state = {
    drawn: new Set(problem.stops.map((stop) => stop.id)),
    couplers: new Set<string>(),
    tremulants: new Set<string>(),
    boxes: new Map(),
    unisonOff: new Set<string>(),
  };
  const judgement = judge(problem, state, [
    { part: "melody", keyboard: "Swell", octave: 0 },
    { part: "accompaniment", keyboard: "Great", octave: 0 },
  ]);
  if (!judgement) throw new RangeError("The keyboards are coupled in a ring.");
  return judgement;
}

const pointsOf = (judgement: Judgement, rule: string): number =>
  judgement.reasons.filter((each) => each.rule === rule).reduce((sum, each) => sum + each.points, 0);
const blends = ({ parts }: Judgement): readonly [Blend, Blend] => {
  const [first, second] = parts.map((part) => part.sound.blend);
  return [first as Blend, second as Blend];
};

/** Level in dB of what lies above 2 kHz against what lies below, at e'. */
function height(blend: Blend): number {
  const e = blend.atAlike.slice(BAND_COUNT, 2 * BAND_COUNT);
  const sum = (high: boolean) => e.reduce((all, each, b) => all + ((BANDS[b] as number) > 2000 === high ? each : 0), 0);
  return 10 * Math.log10(sum(true) / sum(false));
}

describe("strength by ear", () => {
  const oboe = (strength: number) => judged(`{name: Oboe, pitch: 8, strength: ${strength}}`, "Open Diapason 8");
  test("a soft Oboe is covered by a diapason, a strong one stands clear", () => {
    const points = [1, 2, 3, 4, 5].map((strength) => pointsOf(oboe(strength), "solo-clear"));
    expect(points).toEqual([...points].sort((a, b) => a - b));
    expect(points[0]).toBeLessThan(-200);
    expect(points[4]).toBe(300);
  });
  test("each step is heard", () => {
    const strengths = [1, 2, 3, 4, 5].map((strength) => strengthOf(blends(oboe(strength))[0]));
    for (const [index, each] of strengths.slice(1).entries()) {
      expect(each - (strengths[index] as number)).toBeGreaterThan(250);
    }
  });
});

describe("brightness by ear", () => {
  const flute = (brightness: number) => judged(`{name: Clarabella, pitch: 8, brightness: ${brightness}}`, "Gedackt 8");
  test("raises the upper partials and leaves the level where it is", () => {
    const heights = [1, 2, 3, 4, 5].map((brightness) => height(blends(flute(brightness))[0]));
    for (const [index, each] of heights.slice(1).entries())
      expect(each).toBeGreaterThan((heights[index] as number) + 1);
    const strengths = [1, 5].map((brightness) => strengthOf(blends(flute(brightness))[0])) as [number, number];
    expect(Math.abs(strengths[1] - strengths[0])).toBeLessThan(700);
  });
  test("parts two flutes that sounded alike", () => {
    const colour = (brightness: number): number =>
      balanceOf(...blends(judged(`{name: Gedackt, pitch: 8, brightness: ${brightness}}`, "Gedackt 8"))).colour;
    expect(colour(3)).toBe(0);
    expect(colour(5)).toBeGreaterThan(150);
  });
});

describe("the room", () => {
  const inRoom = (room: string) => blends(judged("Oboe 8", "Open Diapason 8", `room: ${room}\n`))[1];
  test("gives back more of the height the more it lives, and sounds louder", () => {
    const rooms = ["dry", "medium", "live"].map(inRoom);
    const heights = rooms.map(height);
    expect(heights).toEqual([...heights].sort((a, b) => a - b));
    const strengths = rooms.map(strengthOf);
    expect(strengths).toEqual([...strengths].sort((a, b) => a - b));
    expect(new Set(strengths).size).toBe(3);
  });
});
