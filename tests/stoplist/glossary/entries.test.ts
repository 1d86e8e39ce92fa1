import { describe, expect, test } from "vitest";
import { GLOSSARY, type GlossaryEntry, spellingsOf } from "../../../shared-model/stoplist/glossary/glossary.ts";
import { foldedSpelling } from "../../../shared-model/stoplist/glossary/spelling.ts";
import { FAMILIES, type Family, KINDS, type Kind } from "../../../shared-model/stoplist/kind.ts";

/** In which families the first kind of an entry may stand. */
const FAMILIES_OF: Readonly<Record<Kind, readonly Family[]>> = {
  principal: ["principal", "hybrid"],
  "stopped-flute": ["flute-stopped", "flute-half-stopped"],
  "open-flute": ["flute-open", "hybrid"],
  "harmonic-flute": ["flute-open"],
  string: ["string", "hybrid"],
  "soft-string": ["string", "hybrid"],
  quintadena: ["flute-stopped"],
  celeste: ["celeste"],
  twelfth: ["principal", "mutation"],
  nasard: ["mutation"],
  quint: ["mutation"],
  tierce: ["mutation"],
  larigot: ["mutation", "principal"],
  septieme: ["mutation", "mixture"],
  none: ["mutation"],
  mixture: ["mixture"],
  cymbal: ["mixture"],
  rauschpfeife: ["mixture"],
  sesquialtera: ["mixture"],
  tertian: ["mixture"],
  cornet: ["cornet"],
  trumpet: ["reed-chorus"],
  "horizontal-trumpet": ["reed-chorus"],
  tuba: ["reed-chorus"],
  cornett: ["reed-chorus"],
  oboe: ["reed-solo"],
  clarinet: ["reed-solo"],
  bassoon: ["reed-chorus", "reed-solo"],
  horn: ["reed-solo"],
  cromorne: ["reed-short"],
  dulcian: ["reed-short"],
  regal: ["reed-short"],
  schalmei: ["reed-short"],
  "voix-humaine": ["reed-short"],
  musette: ["reed-short"],
  percussion: ["percussion"],
  effect: ["effect"],
};

/**
 * Spellings under which different things are printed: each of these leads to a question unless the place parts
 * them.
 */
const SHARED_NAMES = [
  "Barpijp",
  "Basse",
  "Basso",
  "Carillon",
  "Clarin",
  "Copel",
  "Coppel",
  "Copula",
  "Cornet",
  "Cornett",
  "Cornetto",
  "Dulc.",
  "Dulcet",
  "Hohlpfeife",
  "Koppel",
  "Kornet",
  "Kornett",
  "Kornettbass",
  "Pifaro",
  "Sesquialtera",
  "Tenoroon",
  "Tertia",
  "Trom.",
  "Violon",
  "Violoncello",
  "Vox angelica",
];

const meaning = (entry: GlossaryEntry): string => `${entry.family} ${entry.kinds.toSorted().join(" ")}`;

describe("entries", () => {
  test("there are more than 450, each with a name of its own", () => {
    expect(new Set(GLOSSARY.map((entry) => entry.name)).size).toBe(GLOSSARY.length);
    expect(GLOSSARY.length).toBeGreaterThanOrEqual(450);
  });

  test("each says what it is, how it is made and on what evidence", () => {
    const wanting = GLOSSARY.filter(
      (entry) =>
        entry.kinds.length === 0 ||
        !entry.kinds.every((kind) => KINDS.includes(kind)) ||
        !FAMILIES.includes(entry.family) ||
        entry.construction.length < 4 ||
        (entry.evidence === "read") !== (entry.source !== null),
    );
    expect(wanting.map((entry) => entry.name)).toEqual([]);
  });

  test("kinds and families agree", () => {
    const odd = GLOSSARY.filter((entry) => !FAMILIES_OF[entry.kinds[0] as Kind].includes(entry.family));
    expect(odd.map((entry) => `${entry.name}: ${meaning(entry)}`)).toEqual([]);
  });

  test("whatever sounds has a usual pitch, whatever is a device has none", () => {
    const wanting = GLOSSARY.filter(({ usualPitches: { manual, pedal }, family }) =>
      family === "effect" ? manual.length + pedal.length > 0 : manual.length + pedal.length === 0,
    );
    expect(wanting.map((entry) => entry.name)).toEqual([]);
  });

  test("only compounds have a composition, and one that holds a third says so", () => {
    for (const entry of GLOSSARY) {
      const isCompound = entry.family === "mixture" || entry.family === "cornet";
      if (!isCompound) expect([entry.name, entry.composition, entry.tierce]).toEqual([entry.name, null, false]);
      else if (entry.composition) {
        const third = entry.composition.some((foot) => foot.under % 5 === 0);
        expect([entry.name, entry.tierce]).toEqual([entry.name, third]);
      }
    }
  });

  test("no two things share a spelling but those named here", () => {
    const bySpelling = new Map<string, Set<string>>();
    for (const entry of GLOSSARY) {
      for (const spelling of spellingsOf(entry)) {
        const folded = foldedSpelling(spelling);
        bySpelling.set(folded, (bySpelling.get(folded) ?? new Set()).add(meaning(entry)));
      }
    }
    const shared = [...bySpelling].filter(([, meanings]) => meanings.size > 1).map(([folded]) => folded);
    expect(shared.sort()).toEqual(SHARED_NAMES.map(foldedSpelling).sort());
  });

  test("traps are sentences", () => {
    const traps = GLOSSARY.flatMap((entry) => entry.traps);
    expect(traps.length).toBeGreaterThan(200);
    expect(traps.filter((trap) => !/^[\p{Lu}\d].*[.!]$/u.test(trap))).toEqual([]);
  });

  test("no spelling is blank or carries a foot mark", () => {
    const spellings = GLOSSARY.flatMap(spellingsOf);
    expect(spellings.filter((spelling) => spelling.trim() === "" || /\d['’′]/.test(spelling))).toEqual([]);
  });
});
