import { describe, expect, test } from "vitest";
import { EAR } from "../../shared-model/acoustics/band-tables.ts";
import type { Blend } from "../../shared-model/acoustics/blend.ts";
import { colourDistance, sonesOf, strengthOf } from "../../shared-model/acoustics/hearing.ts";
import { brightnessOf, loudnessOf, sharpnessOf } from "../../shared-model/acoustics/loudness.ts";
import { BAND_COUNT, EXCITATION_UNIT } from "../../shared-model/acoustics/pipe.ts";
import type { Example } from "../../shared-model/rules/rule.ts";
import { balanceIn, soundsOf } from "./listening.ts";

// What the trade agrees on, as inequalities: common practice. Levels and spectra are the defaults of the glossary.

const solo = (tune: string, chords: string, box?: "half" | "closed"): Example => ({
  organ: `Solo: ${tune} | Choir [box]: ${chords}`,
  plays: "melody on Solo, accompaniment on Choir",
  boxes: box ? { Choir: box } : {},
});
/** How far a solo stands out, its colour counted in, in phon: 6 is clear, -6 is buried. */
function stands(example: Example): number {
  const { prominence, colour } = balanceIn(example);
  return prominence / 100 + 1.2 * Math.min(10, colour / 100);
}
const blendOf = (stops: string, plays = "plenum on Great", boxes: Example["boxes"] = {}): Blend =>
  soundsOf({ organ: `Great [box]: ${stops}`, plays, boxes })[0]?.blend as Blend;

describe("a solo", () => {
  test.each([
    ["Oboe 8", "Stopped Diapason 8"],
    ["Hohlflöte 8, Waldflöte 4, Nasat 2 2/3", "Gedackt 8"],
    ["Cornet V", "Salicional 8"],
    ["Krummhorn 8", "Rohrflöte 8"],
    ["Trompete 8", "Principal 8, Oktave 4"],
  ])("%s is clear over %s", (tune, chords) => {
    expect(stands(solo(tune, chords))).toBeGreaterThan(6);
    expect(balanceIn(solo(tune, chords)).margin).toBeGreaterThan(1300);
  });

  test.each([
    ["Gedackt 8", "Principal 8, Oktave 4, Superoktave 2"],
    ["Salicional 8", "Cornet V"],
    ["Principal 8, Oktave 4", "Principal 8, Oktave 4"],
  ])("%s is buried under %s", (tune, chords) => {
    expect(stands(solo(tune, chords))).toBeLessThan(-6);
  });

  test("an Oboe over two principals is weak, neither clear nor buried", () => {
    const weak = stands(solo("Oboe 8", "Principal 8, Oktave 4"));
    expect(weak).toBeLessThan(0);
    expect(weak).toBeGreaterThan(-6);
  });

  test("an open flute stands clear of a string in its shut box, and not of the same string in the open", () => {
    expect(stands(solo("Hohlflöte 8", "Gambe 8", "closed"))).toBeGreaterThan(6);
    expect(stands(solo("Hohlflöte 8", "Gambe 8"))).toBeLessThan(0);
  });

  test("loudness over a stopped flute rises from a flute to a Trumpet to the full chorus", () => {
    const leads = ["Oboe 8", "Trompete 8", "Principal 8, Oktave 4, Superoktave 2, Mixtur IV, Trompete 8"].map(
      (tune) => balanceIn(solo(tune, "Gedackt 8")).lead,
    );
    expect(leads).toEqual([...leads].sort((a, b) => a - b));
    expect(leads[0]).toBeLessThan(1000);
    expect(leads[1]).toBeGreaterThan(1200);
  });
});

describe("the voices of a trio", () => {
  const trio = (one: string, other: string): Example => ({
    organ: `Great: ${one} | Swell: ${other}`,
    plays: "voice on Great, left-hand voice on Swell",
  });
  test.each([
    ["Principal 8, Oktave 4", "Hohlflöte 8, Waldflöte 4, Nasat 2 2/3", 300],
    ["Krummhorn 8", "Hohlflöte 8, Waldflöte 4, Waldflöte 2", 900],
  ])("%s and %s are equal and different", (one, other, colour) => {
    const balance = balanceIn(trio(one, other));
    expect(Math.abs(balance.lead)).toBeLessThan(600);
    expect(balance.colour).toBeGreaterThan(colour as number);
  });
  test("a Trumpet and a stopped flute are not equal", () => {
    expect(balanceIn(trio("Trompete 8", "Gedackt 8")).lead).toBeGreaterThan(1200);
    expect(balanceIn(trio("Gedackt 8", "Trompete 8")).lead).toBeLessThan(-1200);
  });
});

describe("a pedal", () => {
  const under = (bass: string, hands: string, role: "plenum" | "accompaniment"): Example => ({
    organ: `Great: ${hands} | Pedal: ${bass}`,
    plays: `bass on Pedal, ${role} on Great`,
  });
  test("of Subbass and flute carries under flutes and does not outweigh them", () => {
    const { lead, margin } = balanceIn(under("Subbass 16, Gedackt 8", "Hohlflöte 8, Gedackt 8", "accompaniment"));
    expect(lead).toBeLessThan(0);
    expect(lead).toBeGreaterThan(-2600);
    expect(margin).toBeGreaterThan(1000);
  });
  test("of Principal and Posaune 16 outweighs a stopped flute, and is right under a chorus", () => {
    expect(balanceIn(under("Principal 16, Posaune 16", "Gedackt 8", "accompaniment")).lead).toBeGreaterThan(800);
    const full = balanceIn(
      under("Principal 16, Oktave 8, Oktave 4, Posaune 16", "Principal 8, Oktave 4, Oktave 2, Mixtur IV", "plenum"),
    );
    expect(full.lead).toBeLessThan(0);
    expect(full.margin).toBeGreaterThan(1000);
  });
  test("of a Subbass alone is lost under a chorus with its Trumpet", () => {
    const { lead, margin } = balanceIn(
      under("Subbass 16", "Principal 8, Oktave 4, Oktave 2, Mixtur IV, Trompete 8", "plenum"),
    );
    expect(lead).toBeLessThan(-2600);
    expect(margin).toBeLessThan(0);
  });
});

describe("strength and colour", () => {
  const chorus = ["Aeoline 8", "Gedackt 8", "Principal 8", "Principal 8, Oktave 4", "Principal 8, Oktave 4, Oktave 2"];
  const fuller = [...chorus, `${chorus[4]}, Mixtur IV`, `${chorus[4]}, Mixtur IV, Trompete 8`];
  test("a crescendo rises stop by stop", () => {
    const strengths = fuller.map((stops) => strengthOf(blendOf(stops)));
    expect(strengths).toEqual([...strengths].sort((a, b) => a - b));
    expect((strengths.at(-1) as number) - (strengths[0] as number)).toBeGreaterThan(1500);
  });

  test("a principal with a stopped flute beside it is hardly louder and has the same colour", () => {
    const [alone, both] = [blendOf("Principal 8"), blendOf("Principal 8, Gedackt 8")];
    expect(strengthOf(both) - strengthOf(alone)).toBeLessThan(100);
    expect(colourDistance(alone, both)).toBeLessThan(150);
  });

  test.each([
    ["Gedackt 8", "Rohrflöte 8", 200, 450],
    ["Principal 8", "Hohlflöte 8", 400, 800],
    ["Principal 8", "Gedackt 8", 600, 1000],
    ["Gedackt 8", "Oboe 8", 1100, 1700],
    ["Trompete 8", "Oboe 8", 200, 500],
    ["Principal 8", "Krummhorn 8", 900, 1500],
  ])("%s and %s lie as far apart as the ear has them", (one, other, least, most) => {
    const distance = colourDistance(blendOf(one), blendOf(other));
    expect(distance).toBeGreaterThan(least as number);
    expect(distance).toBeLessThan(most as number);
    expect(colourDistance(blendOf(other), blendOf(one))).toBe(distance);
    expect(colourDistance(blendOf(one), blendOf(one))).toBe(0);
  });

  const chordOf = (blend: Blend): Float64Array =>
    Float64Array.from(
      { length: BAND_COUNT },
      (_, b) =>
        [0, 1, 2].reduce((sum, at) => sum + (blend.atAlike[at * BAND_COUNT + b] as number), 0) / EXCITATION_UNIT,
    );

  test("a shut box softens by 4 to 20 phon and dulls, a half open one by less", () => {
    const at = (position: "open" | "half" | "closed") =>
      blendOf("Principal 8, Oktave 4, Oboe 8", "plenum on Great", { Great: position });
    const [open, half, shut] = [at("open"), at("half"), at("closed")];
    const fall = strengthOf(open) - strengthOf(shut);
    expect(fall).toBeGreaterThan(400);
    expect(fall).toBeLessThan(2000);
    expect(strengthOf(half)).toBeGreaterThan(strengthOf(shut));
    expect(strengthOf(half)).toBeLessThan(strengthOf(open));
    expect(sharpnessOf(EAR, chordOf(shut))).toBeLessThan(sharpnessOf(EAR, chordOf(open)) - 0.05);
  });

  test("a mixture brightens principals more than a 2 does", () => {
    const [bare, two, mixture] = ["", ", Oktave 2", ", Mixtur IV"].map((more) =>
      brightnessOf(EAR, chordOf(blendOf(`Principal 8, Oktave 4${more}`))),
    ) as [number, number, number];
    expect(two).toBeGreaterThan(bare + 0.3);
    expect(mixture).toBeGreaterThan(two);
  });

  test("the tables agree with the formulas", () => {
    for (const stops of ["Aeoline 8", "Gedackt 8, Flöte 4", "Principal 8, Oktave 4, Mixtur IV, Trompete 8"]) {
      const blend = blendOf(stops);
      const means = [0, 1, 2].map((moment) =>
        loudnessOf(
          EAR,
          blend.atPlayed.slice(moment * BAND_COUNT, (moment + 1) * BAND_COUNT).map((each) => each / EXCITATION_UNIT),
        ),
      );
      const mean = means.reduce((sum, each) => sum + each, 0) / 3;
      expect(Math.abs(sonesOf(blend) / mean - 1)).toBeLessThan(0.001);
    }
  });
});

describe("sums", () => {
  test("do not depend on the order of the stops, nor on what was asked before", () => {
    const [one, other] = [
      blendOf("Principal 8, Oktave 4, Mixtur IV, Gedackt 8"),
      blendOf("Gedackt 8, Mixtur IV, Principal 8, Oktave 4"),
    ];
    strengthOf(one);
    expect([...other.atPlayed]).toEqual([...one.atPlayed]);
    expect(other.key).toBe(one.key);
  });

  test("a pipe that two stops ask for speaks once", () => {
    const unit = (stops: string) =>
      soundsOf({ organ: `Great: ${stops}`, plays: "voice on Great", ranges: { voice: "C4-C4" } })[0]?.blend as Blend;
    const once = unit("Gedackt 8 {flute} (Bordun 8 {flute})");
    const twice = unit("Gedackt 8 {flute}, Bordun 8 {flute}");
    expect([...twice.atPlayed]).toEqual([...once.atPlayed]);
    expect(strengthOf(unit("Gedackt 8, Bordun 8"))).toBeGreaterThan(strengthOf(once));
  });
});
