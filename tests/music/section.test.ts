import { describe, expect, it } from "vitest";
import { nearestTexture, partsFromHand, sectionOf } from "../../shared-model/music/section.ts";
import type { Texture } from "../../shared-model/music/texture.ts";
import { TEXTURES, textureById } from "../../shared-model/music/textures/catalogue.ts";
import { NEUTRAL_TEXTURES } from "../../shared-model/music/textures/neutral.ts";
import { type Key, keyFromText } from "../../shared-model/pitch/key.ts";

const key = (text: string): Key => keyFromText(text) as Key;
const texture = (id: string): Texture => textureById(id) as Texture;

describe("sectionOf", () => {
  it("takes what the texture implies where the section says nothing", () => {
    const section = sectionOf(texture("toccata"));
    expect(section).toMatchObject({
      texture: "toccata",
      tradition: "neutral",
      tempo: "fast",
      dynamic: "f",
      name: null,
    });
    expect(section.parts).toEqual(texture("toccata").parts);
    expect(sectionOf(texture("plein-jeu")).tradition).toBe("french-classical");
    expect(sectionOf(texture("sustained")).tradition).toBe("neutral");
  });

  it("takes the shape of the section's tradition", () => {
    const section = sectionOf(texture("voix-humaine"), { tradition: "french-symphonic" });
    expect(section.parts.map(({ id }) => id)).toEqual(["plenum", "bass"]);
  });

  it("marks a stated range, and leaves the others as defaults", () => {
    const { parts } = sectionOf(texture("trio"), { ranges: { "voice-1": [key("D4"), key("B5")] } });
    expect(parts.map(({ id, low, high, stated }) => [id, low, high, stated])).toEqual([
      ["voice-1", 62, 83, true],
      ["voice-2", 48, 72, false],
      ["bass", 36, 62, false],
    ]);
  });

  it("takes dynamic, tempo, sounding pitch, name and bars from the section", () => {
    const section = sectionOf(texture("melody-in-pedal"), {
      dynamic: "mp",
      tempo: "slow",
      sounding: { "cantus-firmus": 4 },
      name: "Verse 2",
      bars: "1-16",
    });
    expect(section).toMatchObject({ dynamic: "mp", tempo: "slow", name: "Verse 2", bars: "1-16" });
    expect(section.parts[0]?.sounding).toBe(4);
    expect(sectionOf(texture("meditation"), { dynamic: null }).dynamic).toBeNull();
  });

  it("says which part it does not know, and that a range runs downwards", () => {
    expect(() => sectionOf(texture("trio"), { ranges: { voice: [60, 72] } })).toThrow(
      'The texture trio has no part "voice". Its parts are voice-1, voice-2, bass.',
    );
    expect(() => sectionOf(texture("trio"), { sounding: { toString: 4 } as Record<string, 4> })).toThrow(
      'no part "toString"',
    );
    expect(() => sectionOf(texture("trio"), { ranges: { bass: [62, 36] } })).toThrow(
      "The range of the part bass runs downwards, from D4 to C2: write its lowest key first.",
    );
  });
});

describe("partsFromHand", () => {
  it("numbers roles in order, states every range and keeps solos apart", () => {
    const parts = partsFromHand([
      { role: "voice", hands: "right", low: key("C4"), high: key("A5") },
      { role: "voice", hands: "left", low: key("C3"), high: key("G4"), sounding: 4 },
      { role: "bass", hands: "feet", low: key("C2"), high: key("D4") },
    ]);
    expect(
      parts.map(({ id, stated, sounding, place, apartFrom }) => ({ id, stated, sounding, place, apartFrom })),
    ).toEqual([
      { id: "voice-1", stated: true, sounding: 8, place: null, apartFrom: ["voice-2"] },
      { id: "voice-2", stated: true, sounding: 4, place: null, apartFrom: ["voice-1"] },
      { id: "bass", stated: true, sounding: 8, place: "bass", apartFrom: [] },
    ]);
  });
});

describe("nearestTexture", () => {
  it("finds every neutral texture, or one of exactly its shape, from its own parts", () => {
    for (const known of NEUTRAL_TEXTURES) {
      if (known.ladder) continue;
      const found = nearestTexture(known.parts);
      expect(found.traditions).toContain("neutral");
      expect(found.parts.map(({ id, hands }) => [id, hands])).toEqual(known.parts.map(({ id, hands }) => [id, hands]));
    }
  });

  it("finds the shape of what a person writes", () => {
    const shape = (...written: Parameters<typeof partsFromHand>[0]): string =>
      nearestTexture(partsFromHand(written)).id;
    const melody = { role: "melody", hands: "right", low: key("E4"), high: key("G5") } as const;
    const chords = { role: "accompaniment", hands: "left", low: key("C3"), high: key("C5") } as const;
    const bass = { role: "bass", hands: "feet", low: key("C2"), high: key("B3") } as const;
    expect(shape(melody, chords, bass)).toBe("melody-over-accompaniment");
    expect(shape(bass, chords, melody)).toBe("melody-over-accompaniment");
    expect(shape(melody, chords)).toBe("melody-over-accompaniment");
    const above = { ...chords, hands: "right", low: key("C4"), high: key("E5") } as const;
    expect(shape({ ...melody, hands: "left", low: key("C3"), high: key("G4") }, above)).toBe("melody-in-tenor");
    expect(shape({ ...melody, hands: "left", low: key("C2"), high: key("C4") }, above)).toBe("solo-in-bass");
    expect(shape({ ...melody, low: key("A4"), high: key("C6") }, { ...chords, high: key("F5") })).toBe("pastorale");
    expect(
      shape({ ...melody, hands: "left", low: key("C3"), high: key("G4") }, { ...chords, hands: "right" }, bass),
    ).toBe("melody-in-tenor");
    expect(shape({ role: "plenum", hands: "both", low: key("C2"), high: key("C6") })).toBe("plenum-manual");
    expect(
      shape(
        { role: "cantus-firmus", hands: "feet", low: key("C3"), high: key("C4") },
        { ...chords, hands: "both", low: key("C2"), high: key("A5") },
      ),
    ).toBe("melody-in-pedal");
  });

  it("always answers with a neutral texture that is no ladder", () => {
    for (const { parts } of [...TEXTURES, { parts: [] }]) {
      const found = nearestTexture(parts);
      expect(found.traditions).toContain("neutral");
      expect(found.ladder).toBe(false);
    }
  });
});
