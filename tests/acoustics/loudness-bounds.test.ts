import { describe, expect, test } from "vitest";
import { Blend } from "../../shared-model/acoustics/blend.ts";
import { strengthOf } from "../../shared-model/acoustics/hearing.ts";
import { loudnessBoundsOf, strengthAtLeast, strengthAtMost } from "../../shared-model/acoustics/loudness-bounds.ts";
import { silence } from "../../shared-model/acoustics/part-sound.ts";
import { yardstickIn } from "../../shared-model/acoustics/yardstick.ts";
import { Draw } from "../instruments/seeded-random.ts";
import { soundsOf } from "./listening.ts";

const STOPS = [
  "Aeoline 8",
  "Gedackt 8",
  "Principal 8",
  "Oktave 4",
  "Superoktave 2",
  "Mixtur IV",
  "Trompete 8",
  "Bourdon 16",
  "Nasat 2 2/3",
  "Oboe 8",
  "Cornet V",
  "Flöte 4",
];
const BOXES = ["open", "half", "closed"] as const;
const blendOf = (stop: string, box: (typeof BOXES)[number]): Blend =>
  soundsOf({ organ: `Swell [box]: ${stop}`, plays: "plenum on Swell", boxes: { Swell: box } })[0]?.blend as Blend;

describe("the bounds of loudness", () => {
  const blends = STOPS.flatMap((stop) => BOXES.map((box) => blendOf(stop, box)));
  test("hold whatever sounds together, in the open or shut away", () => {
    const draw = new Draw(5);
    for (let round = 0; round < 400; round++) {
      const some = blends.filter(() => draw.chance(draw.between(1, 9) / 10));
      const whole = Blend.of(some);
      if (!whole) continue;
      const sum = silence();
      for (const blend of some) {
        const each = loudnessBoundsOf(blend, false);
        sum.loudestStop = Math.max(sum.loudestStop, each.loudestStop);
        sum.powers += each.powers;
        sum.sones += each.sones;
      }
      expect(strengthAtLeast(sum)).toBeLessThanOrEqual(strengthOf(whole));
      expect(strengthAtMost(sum)).toBeGreaterThanOrEqual(strengthOf(whole));
    }
  });

  test("of one stop lie close about it", () => {
    for (const blend of blends) {
      const sound = { ...silence(), ...loudnessBoundsOf(blend, false) };
      expect(strengthOf(blend) - strengthAtLeast(sound)).toBeLessThan(60);
      expect(strengthAtMost(sound) - strengthOf(blend)).toBeLessThan(300);
    }
  });
});

test("the yardstick of a room is its principal 8", () => {
  expect(yardstickIn("medium")).toBe(strengthOf(blendOf("Principal 8", "open")));
  expect(yardstickIn("live")).toBeGreaterThan(yardstickIn("medium"));
  expect(yardstickIn("dry")).toBeLessThan(yardstickIn("medium"));
});
