import type { Strength } from "../../shared-model/stoplist/instrument.ts";
import type { Family, Kind } from "../../shared-model/stoplist/kind.ts";

/** The manners of building that the generator knows; each draws on its own part of the table. */
export type Manner = "baroque" | "romantic" | "unit" | "divided" | "poor";

/** One kind of stop that a random organ may have, with the usual pitches (feet as `8` or `8/3`) and common-practice strength. */
export interface Voice {
  readonly name: string;
  readonly family: Family;
  readonly kinds: readonly [Kind, ...Kind[]];
  readonly strength: Strength;
  readonly manual: readonly string[];
  readonly pedal: readonly string[];
  /** How often beside the others: 1 rare to 6 nearly always. */
  readonly weight: number;
  readonly manners: readonly Manner[];
  /** Pitches sounding together on the lowest key of a compound. */
  readonly compound?: readonly string[];
  /** Where it usually begins when it lacks its bass (a key as the model numbers it). */
  readonly begins?: number;
}

const ALL: readonly Manner[] = ["baroque", "romantic", "unit", "divided", "poor"];
const OLD: readonly Manner[] = ["baroque", "divided", "poor"];
const LATE: readonly Manner[] = ["romantic", "unit"];

function voice(
  name: string,
  family: Family,
  kinds: readonly [Kind, ...Kind[]],
  strength: Strength,
  manual: string,
  pedal: string,
  weight: number,
  manners: readonly Manner[],
  more: Pick<Voice, "compound" | "begins"> = {},
): Voice {
  const list = (text: string): string[] => (text === "" ? [] : text.split(" "));
  return { name, family, kinds, strength, manual: list(manual), pedal: list(pedal), weight, manners, ...more };
}

/** Common practice throughout: names, pitches and strengths that an organist would not wonder at. */
export const VOICES: readonly Voice[] = [
  voice("Principal", "principal", ["principal"], 3, "8 16 4", "16 8 32", 6, ALL),
  voice("Octave", "principal", ["principal"], 3, "4 8 2", "8 4", 6, ALL),
  voice("Superoctave", "principal", ["principal"], 3, "2 1", "4", 4, ALL),
  voice("Open Diapason", "principal", ["principal"], 4, "8 16", "16", 3, LATE),
  voice("Fifteenth", "principal", ["principal"], 3, "2", "4", 3, LATE),
  voice("Twenty-second", "principal", ["principal"], 3, "1", "", 1, OLD),
  voice("Gedackt", "flute-stopped", ["stopped-flute"], 2, "8 4 16", "8 16", 6, ALL),
  voice("Rohrflöte", "flute-half-stopped", ["stopped-flute"], 2, "8 4 2", "8", 4, ALL),
  voice("Bourdon", "flute-stopped", ["stopped-flute"], 2, "16 8", "16 8 32", 4, ALL),
  voice("Subbass", "flute-stopped", ["stopped-flute"], 2, "", "16 32", 6, ALL),
  voice("Hohlflöte", "flute-open", ["open-flute"], 2, "8 4", "8 4", 3, ALL),
  voice("Waldflöte", "flute-open", ["open-flute"], 2, "2 4", "2", 3, ALL),
  voice("Blockflöte", "flute-open", ["open-flute"], 2, "4 2", "4 2", 3, OLD),
  voice("Sifflöte", "flute-open", ["open-flute"], 2, "1", "", 2, OLD),
  voice("Traversflöte", "flute-open", ["harmonic-flute", "open-flute"], 2, "8 4", "", 2, LATE),
  voice("Flûte harmonique", "flute-open", ["harmonic-flute"], 3, "8 4", "", 2, LATE),
  voice("Piccolo", "flute-open", ["harmonic-flute", "open-flute"], 3, "2 1", "", 2, LATE),
  voice("Quintadena", "flute-stopped", ["quintadena"], 2, "8 16", "16", 2, OLD),
  voice("Gemshorn", "hybrid", ["soft-string", "open-flute"], 2, "8 4 2", "16 8", 2, ALL),
  voice("Viola da Gamba", "string", ["string"], 2, "8 16", "8", 3, LATE),
  voice("Salicional", "string", ["soft-string"], 1, "8 4", "16 8", 3, LATE),
  voice("Aeoline", "string", ["soft-string"], 1, "8", "", 2, LATE),
  voice("Violone", "string", ["string"], 3, "16", "16 8", 2, LATE),
  voice("Dulciana", "string", ["soft-string"], 1, "8 16", "16", 2, LATE),
  voice("Vox coelestis", "celeste", ["celeste"], 1, "8", "", 3, LATE, { begins: 48 }),
  voice("Unda maris", "celeste", ["celeste"], 2, "8", "", 1, LATE, { begins: 48 }),
  voice("Fiffaro", "celeste", ["celeste"], 2, "8", "", 2, ["divided"], { begins: 60 }),
  voice("Quinte", "mutation", ["quint", "twelfth"], 3, "8/3 4/3", "32/3 16/3", 3, ALL),
  voice("Twelfth", "mutation", ["twelfth"], 3, "8/3", "", 2, LATE),
  voice("Nasat", "mutation", ["nasard"], 2, "8/3", "", 3, ALL),
  voice("Grossnasat", "mutation", ["nasard"], 2, "16/3", "32/3", 1, ["baroque", "romantic"]),
  voice("Terz", "mutation", ["tierce"], 2, "8/5", "16/5", 3, ALL),
  voice("Larigot", "mutation", ["larigot"], 2, "4/3", "", 2, ALL),
  voice("Decimanona", "mutation", ["principal", "larigot"], 3, "4/3", "", 3, ["divided"]),
  voice("Septime", "mutation", ["septieme"], 2, "8/7", "", 1, LATE),
  voice("None", "mutation", ["none"], 2, "8/9", "", 1, LATE),
  voice("Mixtur", "mixture", ["mixture"], 4, "4/3", "8/3", 5, ALL, { compound: ["4/3", "1", "2/3", "1/2"] }),
  voice("Scharf", "mixture", ["mixture"], 4, "1", "", 3, OLD, { compound: ["1", "2/3", "1/2"] }),
  voice("Grossmixtur", "mixture", ["mixture"], 4, "2", "4", 2, ["baroque", "romantic"], {
    compound: ["2", "4/3", "1", "2/3", "1/2"],
  }),
  voice("Terzmixtur", "mixture", ["mixture"], 4, "8/5", "", 1, LATE, { compound: ["8/5", "4/3", "1"] }),
  voice("Zimbel", "mixture", ["cymbal"], 4, "1/2", "", 2, OLD, { compound: ["1/2", "1/3"] }),
  voice("Rauschpfeife", "mixture", ["rauschpfeife"], 3, "8/3", "8/3", 2, OLD, { compound: ["8/3", "2"] }),
  voice("Sesquialtera", "mixture", ["sesquialtera"], 3, "8/3", "", 3, ALL, { compound: ["8/3", "8/5"] }),
  voice("Terzian", "mixture", ["tertian"], 3, "8/5", "", 1, OLD, { compound: ["8/5", "4/3"] }),
  voice("Cornet", "cornet", ["cornet"], 4, "8", "", 3, ALL, { compound: ["8", "4", "8/3", "2", "8/5"], begins: 60 }),
  voice("Kornett", "cornet", ["cornet"], 3, "8/3", "", 1, ["baroque", "romantic"], {
    compound: ["8/3", "2", "8/5"],
    begins: 55,
  }),
  voice("Trompete", "reed-chorus", ["trumpet"], 4, "8 16 4", "8 16", 5, ALL),
  voice("Clairon", "reed-chorus", ["trumpet"], 4, "4", "4", 2, ["baroque", "romantic"]),
  voice("Posaune", "reed-chorus", ["trumpet"], 5, "16", "16 32", 3, ["baroque", "romantic"]),
  voice("Trompeta real", "reed-chorus", ["horizontal-trumpet", "trumpet"], 5, "8", "", 1, ["divided"]),
  voice("Tuba", "reed-chorus", ["tuba"], 5, "8", "", 1, ["romantic"]),
  voice("Oboe", "reed-solo", ["oboe"], 3, "8", "", 3, LATE),
  voice("Clarinette", "reed-solo", ["clarinet"], 3, "8 16", "", 2, LATE),
  voice("Fagott", "reed-solo", ["bassoon"], 3, "16 8", "16", 2, ["baroque", "romantic"]),
  voice("Corno", "reed-solo", ["horn"], 3, "8", "", 1, LATE),
  voice("Krummhorn", "reed-short", ["cromorne"], 3, "8", "", 3, OLD),
  voice("Dulzian", "reed-short", ["dulcian"], 3, "16 8", "16", 3, OLD),
  voice("Regal", "reed-short", ["regal"], 3, "8 16 4", "", 2, OLD),
  voice("Schalmei", "reed-short", ["schalmei"], 3, "4 8", "4", 2, ["baroque", "romantic"]),
  voice("Vox humana", "reed-short", ["voix-humaine"], 2, "8", "", 2, ["baroque", "romantic"]),
  voice("Cornett", "reed-short", ["cornett"], 3, "", "2", 2, ["baroque"]),
  voice("Glockenspiel", "percussion", ["percussion"], 3, "4", "", 1, ["baroque", "romantic"], { begins: 60 }),
  voice("Vogelgesang", "effect", ["effect"], 1, "", "", 0, ALL),
];

/** Ranks that a unit organ draws its stops from. */
export const UNIT_RANKS: readonly {
  readonly id: string;
  readonly longest: string;
  readonly pipes: number;
  readonly kinds: readonly [Kind, ...Kind[]];
  readonly family: Family;
  readonly strength: Strength;
  /** What its stops may be called, and at which pitch. */
  readonly stops: readonly (readonly [name: string, pitch: string])[];
}[] = [
  {
    id: "flute",
    longest: "16",
    pipes: 97,
    kinds: ["stopped-flute"],
    family: "flute-stopped",
    strength: 2,
    stops: [
      ["Bourdon", "16"],
      ["Gedeckt", "8"],
      ["Flute", "4"],
      ["Nazard", "8/3"],
      ["Piccolo", "2"],
      ["Larigot", "4/3"],
    ],
  },
  {
    id: "principal",
    longest: "8",
    pipes: 85,
    kinds: ["principal"],
    family: "principal",
    strength: 3,
    stops: [
      ["Diapason", "8"],
      ["Octave", "4"],
      ["Twelfth", "8/3"],
      ["Fifteenth", "2"],
    ],
  },
  {
    id: "string",
    longest: "8",
    pipes: 73,
    kinds: ["soft-string"],
    family: "string",
    strength: 1,
    stops: [
      ["Salicional", "8"],
      ["Salicet", "4"],
    ],
  },
  {
    id: "reed",
    longest: "16",
    pipes: 85,
    kinds: ["trumpet"],
    family: "reed-chorus",
    strength: 4,
    stops: [
      ["Fagotto", "16"],
      ["Trumpet", "8"],
      ["Clarion", "4"],
    ],
  },
];
