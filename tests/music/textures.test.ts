import { describe, expect, it } from "vitest";
import { type Part, ROLES, type Texture, TRADITIONS } from "../../shared-model/music/texture.ts";
import {
  nearestTextureIds,
  TEXTURES,
  textureById,
  textureFor,
  texturesOf,
} from "../../shared-model/music/textures/catalogue.ts";
import { keyText } from "../../shared-model/pitch/key.ts";

/** Every texture in every shape that a tradition gives it. */
const SHAPES: readonly Texture[] = [...new Set([...TEXTURES, ...TRADITIONS.flatMap((known) => texturesOf(known))])];

const part = (id: string, of: string): Part => {
  const found = textureById(id)?.parts.find((known) => known.id === of);
  if (!found) throw new Error(`${id} has no ${of}`);
  return found;
};

describe("the catalogue of textures", () => {
  it("has the whole list of the trade's textures", () => {
    expect(TEXTURES.map(({ id }) => id).join(" ")).toBe(
      [
        "melody-over-accompaniment melody-in-tenor melody-in-pedal solo-in-bass trio two-voices dialogue plenum",
        "plenum-manual fugue flutes recorder-consort meditation pastorale solo-and-echo trumpet-tune fanfare toccata",
        "hymn-introduction hymn-verse hymn-verse-manual hymn-verse-quiet hymn-verse-last hymn-solo-verse",
        "choir-accompaniment chant continuo crescendo sustained",
        "plein-jeu grand-jeu grand-choeur fugue-grave fond-d-orgue concert-de-flutes petites-flutes petits-oiseaux",
        "flute-allemande recit-de-cornet recit-de-cromorne recit-de-tierce recit-de-nasard recit-de-trompette",
        "voix-humaine fifre flageolet musette noel tierce-en-taille cromorne-en-taille trompette-en-taille",
        "basse-de-trompette basse-de-cromorne basse-et-dessus-de-trompette duo trio-two-trebles trio-three-keyboards",
        "quatuor fugue-a-5 plain-chant-en-basse plain-chant-en-taille dialogue-with-echo voice-accompaniment",
        "voice-accompaniment-soft",
        "ripieno mezzo-ripieno canzona canzona-adagio elevation concerto-cornetti fiffaro ricercar",
        "motets-accompaniment",
        "organo-pleno chorale-in-soprano chorale-in-tenor chorale-in-pedal chorale-alto-in-pedal chorale-fantasia",
        "chorale-trio chorale-prelude-plain ornamented-chorale cornet-solo nasat-solo tierce-solo bicinium",
        "echo-fantasia partita-variation",
        "diapasons middling-chorus full-organ cornet-voluntary trumpet-voluntary hautboy-solo vox-humana-solo",
        "cremona-solo swell-echo flute-solo corno-duet",
        "great-diapasons full-swell soft-eights swell-strings psalm-accompaniment solo-tuba solo-clarinet",
        "lleno falsas batalla treble-solo bass-solo two-trebles two-basses ecos",
        "fonds-8 fonds-8-4 fonds-16-8-4 fonds-et-anches-8 anches-prepared grand-choeur-symphonic",
        "plein-jeu-symphonic toccata-symphonic scherzo-flutes voix-celeste recit-cantabile solo-hautbois",
        "solo-clarinette solo-flute-harmonique celeste-with-pedal-melody",
        "adagio vox-coelestis terraced-crescendo full-romantic fugue-romantic",
      ].join(" "),
    );
  });

  it("has every id once", () => {
    expect(new Set(TEXTURES.map(({ id }) => id)).size).toBe(TEXTURES.length);
    for (const { id } of TEXTURES) expect(id).toMatch(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/);
  });

  it("tells a beginner in one sentence, never the same twice", () => {
    const sentences = SHAPES.map(({ plain }) => plain);
    expect(new Set(sentences).size).toBe(sentences.length);
    for (const sentence of sentences) {
      expect(sentence).toMatch(/^[A-Z][^.!?]*\.$/);
      expect(sentence).toMatch(/\b(hands?|feet)\b|tune stand/);
      expect(sentence.length).toBeLessThanOrEqual(140);
    }
  });

  it("keeps ranges on the keys and above their lowest key, all of them defaults", () => {
    for (const { id, parts } of SHAPES) {
      for (const { low, high, stated } of parts) {
        expect(low, id).toBeGreaterThanOrEqual(0);
        expect(high, id).toBeLessThanOrEqual(127);
        expect(low, id).toBeLessThan(high);
        expect(stated, id).toBe(false);
      }
    }
  });

  it("names parts by role, numbered where a role occurs twice, and colours by one of them", () => {
    for (const { id, parts, colourOf } of SHAPES) {
      for (const role of ROLES) {
        const ids = parts.filter((known) => known.role === role).map((known) => known.id);
        expect(ids, id).toEqual(ids.length === 1 ? [role] : ids.map((_, index) => `${role}-${index + 1}`));
      }
      expect(
        parts.map((known) => known.id),
        id,
      ).toContain(colourOf);
    }
  });

  it("keeps parts apart mutually, and every solo apart from the other hand", () => {
    for (const { id, parts, traditions } of SHAPES) {
      for (const one of parts) {
        expect(one.apartFrom, id).not.toContain(one.id);
        for (const other of one.apartFrom) {
          expect(parts.find((known) => known.id === other)?.apartFrom, `${id} ${other}`).toContain(one.id);
        }
      }
      const solo = parts.find((known) => known.role === "melody" && known.hands !== "feet");
      const hand = parts.find((known) => known.role === "accompaniment");
      if (solo && hand && !traditions.includes("spanish")) expect(solo.apartFrom, id).toContain(hand.id);
    }
  });

  it("likens every texture of a school to a neutral one, and no neutral one", () => {
    for (const { id, like, traditions } of SHAPES) {
      if (traditions[0] === "neutral") expect(like, id).toBeNull();
      else expect(textureById(like ?? "")?.traditions[0], id).toBe("neutral");
    }
  });

  it("has two ladders", () => {
    expect(TEXTURES.filter(({ ladder }) => ladder).map(({ id }) => id)).toEqual(["crescendo", "terraced-crescendo"]);
  });

  it("states the default ranges of the trade", () => {
    const range = (id: string, of: string): string => `${keyText(part(id, of).low)}-${keyText(part(id, of).high)}`;
    expect(range("melody-over-accompaniment", "melody")).toBe("C4-A5");
    expect(range("melody-over-accompaniment", "accompaniment")).toBe("G3-G4");
    expect(range("melody-over-accompaniment", "bass")).toBe("C2-C4");
    expect(range("trio", "voice-2")).toBe("C3-C5");
    expect(range("trio", "bass")).toBe("C2-D4");
    expect(range("toccata", "plenum")).toBe("C2-C6");
    expect(range("tierce-en-taille", "melody")).toBe("A2-D5");
    expect(range("cornet-voluntary", "accompaniment")).toBe("G1-C5");
    expect(range("treble-solo", "melody")).toBe("C#4-A5");
    expect(range("plain-chant-en-taille", "cantus-firmus")).toBe("C3-E4");
  });

  it("lets a chant and a pedal melody sound where the school wants them", () => {
    expect(part("chorale-alto-in-pedal", "cantus-firmus").sounding).toBe(4);
    expect(part("celeste-with-pedal-melody", "melody").sounding).toBe(4);
    expect(part("chorale-in-pedal", "cantus-firmus").sounding).toBe(8);
  });
});

describe("textureFor", () => {
  it("gives an id the shape of the tradition", () => {
    const roles = (id: string, tradition: Parameters<typeof textureFor>[1]): readonly string[] | undefined =>
      textureFor(id, tradition)?.parts.map((known) => known.id);
    expect(roles("voix-humaine", "french-classical")).toEqual(["melody", "accompaniment", "bass"]);
    expect(roles("voix-humaine", "french-symphonic")).toEqual(["plenum", "bass"]);
    expect(roles("full-organ", "english-18c")).toEqual(["plenum"]);
    expect(roles("full-organ", "english-cathedral")).toEqual(["plenum", "bass"]);
    expect(textureFor("full-organ", "neutral")).toBe(textureById("full-organ"));
    expect(textureFor("nothing", "neutral")).toBeNull();
  });
});

describe("texturesOf", () => {
  it("gives a tradition its own", () => {
    expect(texturesOf("neutral").length).toBe(29);
    expect(texturesOf("north-german").map(({ id }) => id)).toEqual(texturesOf("central-german").map(({ id }) => id));
    expect(texturesOf("german-romantic").map(({ id }) => id)).toContain("sustained");
    for (const tradition of TRADITIONS) {
      for (const texture of texturesOf(tradition)) expect(texture.traditions).toContain(tradition);
    }
  });
});

describe("nearestTextureIds", () => {
  it("finds what a slip of the pen meant", () => {
    expect(nearestTextureIds("plain-jeu")).toContain("plein-jeu");
    expect(nearestTextureIds("organo pleno")[0]).toBe("organo-pleno");
    expect(nearestTextureIds("melody over accompanyment")[0]).toBe("melody-over-accompaniment");
    expect(nearestTextureIds("xqzw")).toEqual([]);
    expect(nearestTextureIds("x".repeat(100_000))).toEqual([]);
  });
});
