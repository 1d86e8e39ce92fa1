import { describe, expect, test } from "vitest";
import { footOf } from "../../shared-model/pitch/foot.ts";
import {
  faultsOf,
  isMet,
  keyboardsOf,
  type PublishedCase,
  type PublishedPart,
  plainestDrawn,
} from "./published-case.ts";

const part = (asked: Partial<PublishedPart> & Pick<PublishedPart, "division">): PublishedPart => ({
  role: "plenum",
  part: null,
  keyboard: asked.division,
  voice: null,
  optional: false,
  must: [],
  may: [],
  mustNot: [],
  oneOf: [],
  lowest: null,
  ...asked,
});

/** An invented organ of one manual (Bordun 16, Prinzipal 8, Oktave 4, Gedackt 8, Nasat, Mixtur) and a pedal. */
const asCase = (...parts: PublishedPart[]): PublishedCase => ({
  id: "invented",
  texture: "plenum",
  tradition: "neutral",
  dynamic: null,
  instrument: "invented",
  source: { id: "none", author: "nobody", title: "none", year: null, where: "", address: null, evidence: "memory" },
  where: "",
  evidence: "memory",
  confidence: "low",
  fit: "own",
  term: "",
  parts,
  written: [],
  added: null,
  tremulant: "unstated",
  couplers: [],
  exclusions: "implied",
  reading: null,
  pitches: new Map([
    [
      "Manual",
      new Map([
        ["Bordun", footOf(16)],
        ["Prinzipal", footOf(8)],
        ["Gedackt", footOf(8)],
        ["Oktave", footOf(4)],
        ["Nasat", footOf(8, 3)],
        ["Mixtur", null],
      ]),
    ],
    ["Pedal", new Map([["Subbass", footOf(16)]])],
  ]),
});

const drawn = (divisions: Record<string, string[]>) =>
  new Map(Object.entries(divisions).map(([division, stops]) => [division, new Set(stops)]));

describe("a case is met", () => {
  const chorus = asCase(
    part({
      division: "Manual",
      must: ["Prinzipal", "Oktave"],
      may: ["Mixtur"],
      mustNot: ["Nasat"],
      oneOf: [["Gedackt", "Bordun"]],
    }),
  );

  test("by all of must and one of each list", () => {
    expect(isMet(chorus, drawn({ Manual: ["Prinzipal", "Oktave", "Gedackt"] }))).toBe(true);
  });
  test("also by both of a list and by what is welcome", () => {
    expect(isMet(chorus, drawn({ Manual: ["Prinzipal", "Oktave", "Gedackt", "Bordun", "Mixtur"] }))).toBe(true);
  });
  test("not without a stop of must", () => {
    expect(faultsOf(chorus, drawn({ Manual: ["Prinzipal", "Gedackt"] }))).toEqual(["Manual: Oktave is missing"]);
  });
  test("not without any of a list", () => {
    expect(faultsOf(chorus, drawn({ Manual: ["Prinzipal", "Oktave"] }))).toEqual([
      "Manual: none of Gedackt, Bordun is drawn",
    ]);
  });
  test("not with a stop that is shut out, which is outside the list too", () => {
    expect(faultsOf(chorus, drawn({ Manual: ["Prinzipal", "Oktave", "Gedackt", "Nasat"] }))).toEqual([
      "Manual: Nasat is outside the list",
      "Manual: Nasat is shut out",
    ]);
  });
  test("not with a stop of no list", () => {
    expect(isMet(chorus, drawn({ Manual: ["Prinzipal", "Oktave", "Gedackt", "Trompete"] }))).toBe(false);
  });
  test("not by an empty console", () => {
    expect(isMet(chorus, new Map())).toBe(false);
  });
  test("whatever is drawn in divisions that it does not name", () => {
    expect(isMet(chorus, drawn({ Manual: ["Prinzipal", "Oktave", "Gedackt"], Pedal: ["Subbass"] }))).toBe(true);
  });
  test("not with its second division silent, even where the source can do without it", () => {
    const withPedal = asCase(...chorus.parts, part({ division: "Pedal", optional: true, must: ["Subbass"] }));
    expect(faultsOf(withPedal, drawn({ Manual: ["Prinzipal", "Oktave", "Gedackt"] }))).toEqual([
      "Pedal: Subbass is missing",
    ]);
  });
});

describe("the lowest pitch", () => {
  const eight = asCase(
    part({ division: "Manual", may: ["Bordun", "Prinzipal", "Oktave", "Nasat", "Mixtur"], lowest: footOf(8) }),
  );

  test("holds when it is the deepest drawn", () => {
    expect(isMet(eight, drawn({ Manual: ["Prinzipal", "Oktave"] }))).toBe(true);
  });
  test("fails when something deeper is drawn", () => {
    expect(faultsOf(eight, drawn({ Manual: ["Bordun", "Prinzipal"] }))).toEqual(["Manual: 16 ft is deeper than 8 ft"]);
  });
  test("fails when it is not reached", () => {
    expect(faultsOf(eight, drawn({ Manual: ["Oktave", "Nasat"] }))).toEqual([
      "Manual: nothing drawn sounds as deep as 8 ft",
    ]);
  });
  test("is not given by a compound that prints no pitch, nor by silence", () => {
    expect(isMet(eight, drawn({ Manual: ["Mixtur"] }))).toBe(false);
    expect(isMet(eight, drawn({ Manual: [] }))).toBe(false);
  });
});

describe("two halves of one keyboard", () => {
  const halves = asCase(
    part({ division: "Manual", must: ["Bordun"], mustNot: ["Mixtur"] }),
    part({ division: "Manual", must: ["Prinzipal"], may: ["Oktave"], lowest: footOf(8) }),
  );

  test("welcome each other's stops, and each answers for its own lowest pitch", () => {
    expect(faultsOf(halves, drawn({ Manual: ["Bordun", "Prinzipal", "Oktave"] }))).toEqual([]);
  });
  test("do not welcome what neither names", () => {
    expect(faultsOf(halves, drawn({ Manual: ["Bordun", "Prinzipal", "Mixtur"] }))).toEqual([
      "Manual: Mixtur is outside the list",
      "Manual: Mixtur is shut out",
    ]);
  });
});

describe("the plainest registration", () => {
  test("takes must, the first of each list, and the first welcome stop only where the part had nothing", () => {
    const published = asCase(
      part({
        division: "Manual",
        part: "melody",
        must: ["Prinzipal"],
        may: ["Mixtur"],
        oneOf: [["Gedackt", "Bordun"]],
      }),
      part({ division: "Pedal", part: "bass", keyboard: "Manual", may: ["Subbass"] }),
    );
    expect(plainestDrawn(published)).toEqual(drawn({ Manual: ["Prinzipal", "Gedackt"], Pedal: ["Subbass"] }));
    expect(keyboardsOf(published)).toEqual({ melody: "Manual", bass: "Manual" });
  });
  test("takes what is added for a part that the source passes over", () => {
    const published: PublishedCase = {
      ...asCase(part({ division: "Manual", part: "melody", must: ["Prinzipal"] })),
      added: { part: "bass", division: "Pedal", stops: ["Subbass"] },
    };
    expect(plainestDrawn(published)).toEqual(drawn({ Manual: ["Prinzipal"], Pedal: ["Subbass"] }));
    expect(keyboardsOf(published)).toEqual({ melody: "Manual", bass: "Pedal" });
  });
});
