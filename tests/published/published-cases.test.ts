import { describe, expect, test } from "vitest";
import { textureFor } from "../../shared-model/music/textures/catalogue.ts";
import { keyText } from "../../shared-model/pitch/key.ts";
import { faultsOf, keyboardsOf, plainestDrawn } from "./published-case.ts";
import { publishedCases, publishedInstruments } from "./published-cases.ts";
import { registrationOf } from "./published-registration.ts";

const organs = [...publishedInstruments().values()];
const cases = publishedCases();
const organ = (id: string) => {
  const found = publishedInstruments().get(id);
  if (found === undefined) throw new Error(`No organ is called ${id}.`);
  return found;
};
const stop = (id: string, division: string, name: string) => {
  const found = organ(id).stops.get(division)?.get(name);
  if (found === undefined) throw new Error(`${id}, ${division}: no stop is called ${name}.`);
  return found;
};

describe("the organs", () => {
  test("are thirteen, with 446 stops", () => {
    expect(organs).toHaveLength(13);
    expect(organs.flatMap(({ instrument }) => instrument.divisions.flatMap((division) => division.stops))).toHaveLength(
      446,
    );
  });
  test.each(organs.map((each) => [each.id, each] as const))("%s is read without an error", (_, { troubles }) => {
    expect(troubles.filter((trouble) => trouble.severity === "error")).toEqual([]);
  });
  test.each(organs.map((each) => [each.id, each] as const))("%s names the source of its stoplist", (_, { text }) => {
    expect(text).toMatch(/^# Source of the stoplist: \S/);
    expect(text).toMatch(/^# Evidence: (read|from memory)/m);
  });
  test("speak over the keys that their stoplists give", () => {
    const keys = (id: string, division: string, name: string) => {
      const { from, to } = stop(id, division, name);
      return `${keyText(from)}-${keyText(to)}`;
    };
    expect(keys("souvigny-1783", "Positif", "Dessus de Flûte")).toBe("C3-D6");
    expect(keys("souvigny-1783", "Grand-Orgue", "Cornet")).toBe("C4-D6");
    expect(keys("souvigny-1783", "Pédale", "Trompette")).toBe("F1-A3");
    expect(keys("stmaximin-1774", "Récit", "Cornet")).toBe("G3-D6");
    expect(keys("tangermuende-1624", "Oberpositiv", "Zinke")).toBe("F3-C6");
    expect(keys("castile-1700-type", "Teclado", "Bajoncillo")).toBe("C2-C4");
    expect(keys("castile-1700-type", "Teclado", "Clarín")).toBe("C#4-C6");
    expect(keys("redcliffe-1726", "Choir", "Principal")).toBe("G1-D6");
  });
});

// Names that mislead: the word says one thing to a reader of lists and another to the organist of that school.
test.each([
  ["souvigny-1783", "Grand-Orgue", "Quarte", ["open-flute"]],
  ["poitiers-1791", "Grand-Orgue", "Second Huit Pieds", ["principal"]],
  ["poitiers-1791", "Grand-Orgue", "Grande Tierce", ["tierce"]],
  ["stmaximin-1774", "Grand-Orgue", "Gros Nazard", ["quint"]],
  ["brescia-duomo-1608", "Manuale", "Decimanona", ["larigot", "principal"]],
  ["brescia-duomo-1608", "Manuale", "Principale spezzato", ["principal"]],
  ["tangermuende-1624", "Oberpositiv", "Zinke", ["cornett"]],
  ["tangermuende-1624", "Pedal", "Cornettenbaß", ["cornett"]],
  ["tangermuende-1624", "Pedal", "Baßunenbaß", ["trumpet"]],
  ["tangermuende-1624", "Rückpositiv", "Zifelit", ["larigot"]],
  ["weimar-1714", "Unterwerk", "Sesquialtera", ["sesquialtera"]],
  ["freiberg-1714", "Oberwerk", "Echo", ["cornet"]],
  ["freiberg-1714", "Brustwerk", "Tertia", ["tierce"]],
  ["freiberg-1714", "Oberwerk", "Voxhumana", ["voix-humaine"]],
  ["freiberg-1714", "Hauptmanual", "Clarin", ["trumpet"]],
  ["redcliffe-1726", "Great", "Sesquialtera", ["sesquialtera", "mixture"]],
  ["redcliffe-1726", "Choir", "Principal", ["principal"]],
  ["redcliffe-1726", "Choir", "Flute", ["stopped-flute"]],
  ["castile-1700-type", "Teclado", "Violón bajos", ["stopped-flute"]],
  ["castile-1700-type", "Teclado", "Clarín", ["horizontal-trumpet"]],
  ["castile-1700-type", "Teclado", "Dulzaina bajos", ["regal"]],
  ["clotilde-1859", "Pédale", "Octave", ["principal"]],
  ["clotilde-1859", "Récit", "Basson-Hautbois", ["oboe"]],
])("%s, %s: %s is what its organist knows it to be", (id, division, name, kinds) => {
  expect([...stop(id, division, name).kinds].sort()).toEqual([...kinds].sort());
});

describe("the cases", () => {
  test("are fifty-seven, each with an id of its own", () => {
    expect(new Set(cases.map(({ id }) => id)).size).toBe(57);
    expect(cases).toHaveLength(57);
  });
  test.each(cases.map((each) => [each.id, each] as const))("%s names only stops that its divisions have", (_, each) => {
    for (const part of each.parts) {
      const stops = organ(each.instrument).stops.get(part.division);
      const named = [...part.must, ...part.may, ...part.mustNot, ...part.oneOf.flat()];
      expect(named.filter((name) => !stops?.has(name))).toEqual([]);
    }
    const added = organ(each.instrument).stops.get(each.added?.division ?? "");
    expect((each.added?.stops ?? []).filter((name) => !added?.has(name))).toEqual([]);
  });
  test.each(cases.map((each) => [each.id, each] as const))("%s is met by its own plainest registration", (_, each) => {
    expect(faultsOf(each, plainestDrawn(each))).toEqual([]);
  });
  test.each(cases.map((each) => [each.id, each] as const))("%s is not met by an empty console", (_, each) => {
    expect(faultsOf(each, new Map())).not.toEqual([]);
  });
  test.each(cases.map((each) => [each.id, each] as const))(
    "%s uses couplers and keyboards that the organ has",
    (_, each) => {
      const { instrument } = organ(each.instrument);
      const couplers = instrument.couplers.map(({ name }) => name);
      expect(each.couplers.filter((name) => !couplers.includes(name))).toEqual([]);
      const divisions = instrument.divisions.map(({ name }) => name);
      expect(each.parts.filter(({ keyboard }) => !divisions.includes(keyboard))).toEqual([]);
      if (each.tremulant === "required") expect(instrument.tremulants).not.toEqual([]);
    },
  );
  test.each(cases.filter(({ texture }) => texture !== null).map((each) => [each.id, each] as const))(
    "%s gives a keyboard to every required part of its texture and to no other",
    (_, each) => {
      const texture = textureFor(each.texture ?? "", each.tradition);
      const played = Object.keys(keyboardsOf(each));
      const parts = texture?.parts ?? [];
      expect(parts.filter(({ id, optional }) => !optional && !played.includes(id)).map(({ id }) => id)).toEqual([]);
      expect(played.filter((id) => !parts.some((part) => part.id === id))).toEqual([]);
    },
  );
  test("give a texture, or else their parts in writing", () => {
    for (const each of cases) expect(each.written.length > 0, each.id).toBe(each.texture === null);
  });
});

describe("the registration of a case", () => {
  const registration = (id: string) => {
    const found = cases.find((each) => each.id === id);
    if (found === undefined) throw new Error(`No case is called ${id}.`);
    return registrationOf(found, organ(found.instrument));
  };

  test("names stops as the organ does, with pitch and half where a name is not enough", () => {
    expect(registration("fr-bedos-voix-humaine")).toEqual({
      registrant: "registration/1",
      texture: "voix-humaine",
      tradition: "french-classical",
      keyboards: { melody: "Grand-Orgue", accompaniment: "Positif" },
      octaves: {},
      drawn: { "Grand-Orgue": ["Bourdon 8", "Prestant", "Voix humaine"], Positif: ["Montre", "Bourdon"] },
      couplers: [],
      tremulants: ["all"],
    });
    expect(registration("es-medio-registro-bajo").drawn).toEqual({
      Teclado: ["Trompeta real bass", "Flautado de 13 treble"],
    });
  });
  test("takes the first of a list, and writes its parts out where no texture fits", () => {
    expect(registration("ng-scheidt-cf-soprano").drawn.Rückpositiv).toEqual(["Quintadeen", "Holfloit", "Mixtur"]);
    const kauffmann = registration("cg-kauffmann-puer-natus");
    expect(kauffmann.texture).toBeUndefined();
    expect(kauffmann.parts).toEqual([
      { part: "plenum", role: "plenum", hands: "both", low: "C2", high: "C5", sounding: 8 },
    ]);
    expect(kauffmann.octaves).toEqual({ plenum: 1 });
  });
  test("plays the feet on the keyboard that is pulled down", () => {
    expect(registration("fr-boyvin-tierce-en-taille").keyboards).toEqual({
      melody: "Positif",
      accompaniment: "Grand-Orgue",
      bass: "Pédale",
    });
  });
});
