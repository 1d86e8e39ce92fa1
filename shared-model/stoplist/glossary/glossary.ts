import { type Foot, footOf } from "../../pitch/foot.ts";
import { entriesAbbreviated, type SpelledOut, spelledOut } from "./abbreviations.ts";
import { EFFECTS } from "./effects.ts";
import type { GlossaryEntry } from "./entry.ts";
import { FLUTES } from "./flutes.ts";
import { MIXTURES } from "./mixtures.ts";
import { MUTATIONS } from "./mutations.ts";
import { neighboursOf, type PairIndex, pairIndex } from "./neighbours.ts";
import { fitting, impliedPitch, type Meaning, meaningOf, type NamePlace } from "./place.ts";
import { PRINCIPALS } from "./principals.ts";
import { type Reading, readingsOf } from "./qualifiers.ts";
import { REEDS } from "./reeds.ts";
import { SHORT_REEDS } from "./short-reeds.ts";
import { foldedSpelling, heardSpelling, plainSpelling } from "./spelling.ts";
import { STOPPED_FLUTES } from "./stopped-flutes.ts";
import { STRINGS } from "./strings.ts";

export type { GlossaryEntry } from "./entry.ts";
export { intervalPitch, type NamePlace } from "./place.ts";

/** Every entry, family by family. Where one name leads to several, the earlier is the commoner. */
export const GLOSSARY: readonly GlossaryEntry[] = [
  ...PRINCIPALS,
  ...FLUTES,
  ...STOPPED_FLUTES,
  ...STRINGS,
  ...REEDS,
  ...SHORT_REEDS,
  ...MUTATIONS,
  ...MIXTURES,
  ...EFFECTS,
];

/** What a printed name was taken for, or why it must be asked about. */
export type Understanding =
  | {
      readonly sure: true;
      readonly entry: GlossaryEntry;
      readonly kinds: Meaning["kinds"];
      readonly family: Meaning["family"];
      readonly strength: Meaning["strength"];
      readonly tierce: boolean;
      /** The pitch of firm custom when none is printed; `null` when one is printed or custom is silent. */
      readonly pitch: Foot | null;
    }
  | {
      readonly sure: false;
      readonly why: "unknown" | "ambiguous";
      /** Nearest first, at most five; may be empty for a name like nothing known. */
      readonly choices: readonly GlossaryEntry[];
    };

/** Remarks in round brackets belong to the glossary, not to the name. */
const printedName = (entry: GlossaryEntry): string => entry.name.replace(/\s*\([^)]*\)$/, "");

/** Every spelling under which an entry is printed, its own name first. */
export const spellingsOf = (entry: GlossaryEntry): readonly string[] => [
  ...new Set([printedName(entry), ...Object.values(entry.also).flat()]),
];

interface Index {
  readonly plain: ReadonlyMap<string, readonly GlossaryEntry[]>;
  readonly folded: ReadonlyMap<string, readonly GlossaryEntry[]>;
  readonly heard: ReadonlyMap<string, readonly GlossaryEntry[]>;
  readonly words: readonly SpelledOut[];
  readonly pairs: PairIndex;
}

let built: Index | null = null;

/** Built when first asked for: a session that reads no names does not pay for it. */
function index(): Index {
  if (built) return built;
  const maps = [plainSpelling, foldedSpelling, heardSpelling].map((spell) => {
    const map = new Map<string, GlossaryEntry[]>();
    for (const entry of GLOSSARY) {
      for (const spelling of spellingsOf(entry)) {
        const key = spell(spelling);
        const there = map.get(key);
        if (!there) map.set(key, [entry]);
        else if (!there.includes(entry)) there.push(entry);
      }
    }
    return map;
  }) as [Map<string, GlossaryEntry[]>, Map<string, GlossaryEntry[]>, Map<string, GlossaryEntry[]>];
  const named = GLOSSARY.flatMap((entry) => spellingsOf(entry).map((spelling) => ({ spelling, entry })));
  const words = named.map(({ spelling, entry }) => spelledOut(spelling, entry));
  built = { plain: maps[0], folded: maps[1], heard: maps[2], words, pairs: pairIndex(named) };
  return built;
}

/** A name longer than this is no stop's name. */
const LONGEST_NAME = 80;
const hasAccent = (text: string): boolean => /[^\x20-\x7e]/.test(text);

/**
 * Entries under this very name, the least forgiving comparison that finds any; an accent in print parts `Violón`
 * from `Violon`.
 */
function entriesNamed(name: string): readonly GlossaryEntry[] {
  const { plain, folded, heard } = index();
  const exact = hasAccent(name) ? plain.get(plainSpelling(name)) : undefined;
  if (exact) return exact;
  const alike = folded.get(foldedSpelling(name));
  if (alike) return alike;
  const ear = heardSpelling(name);
  return ear.length >= 4 ? (heard.get(ear) ?? []) : [];
}

const sameMeaning = (a: Meaning, b: Meaning): boolean =>
  a.family === b.family && a.kinds.length === b.kinds.length && a.kinds.every((kind) => b.kinds.includes(kind));

const MOST_CHOICES = 5;

/**
 * What a stop's name means where it stands. Not sure when nothing of that name is known, or when the name leads to
 * different things that the pitch, the ranks and the kind of division do not part: then the choices are given, never
 * a guess.
 */
export function understandName(name: string, where: NamePlace): Understanding {
  const text = name.trim();
  const place: NamePlace = { ...where, pitch: where.pitch && footOf(where.pitch.over, where.pitch.under) };
  if (text === "" || text.length > LONGEST_NAME) return { sure: false, why: "unknown", choices: [] };
  for (const reading of readingsOf(text, (part) => entriesNamed(part).length > 0)) {
    const entries = entriesNamed(reading.name);
    if (entries.length > 0) return decided(entries, place, reading);
  }
  const abbreviated = entriesAbbreviated(text, index().words);
  if (abbreviated.length > 0) return decided(abbreviated, place, AS_PRINTED);
  return understandPair(text, place) ?? unknown(text);
}

const AS_PRINTED: Pick<Reading, "octaveUnsure" | "bend"> = { octaveUnsure: false, bend: (meaning) => meaning };

function decided(
  entries: readonly GlossaryEntry[],
  place: NamePlace,
  { octaveUnsure, bend }: Pick<Reading, "octaveUnsure" | "bend">,
): Understanding {
  const left = fitting(entries, place);
  const first = left[0] as GlossaryEntry;
  const meaning = meaningOf(first, place);
  const onlyByRanks = first.ranks !== null && place.ranks === null && left.every((one) => one.ranks !== null);
  if (onlyByRanks || left.some((other) => !sameMeaning(meaning, meaningOf(other, place)))) {
    return { sure: false, why: "ambiguous", choices: left.slice(0, MOST_CHOICES) };
  }
  const pitch = place.pitch || octaveUnsure ? null : impliedPitch(first, place);
  return { sure: true, entry: first, ...bend(meaning), pitch };
}

/**
 * Two names on one knob (`Docena/Octava`, `Bassoon & Oboe`): sure when both come to the same, else the two are
 * the choices.
 */
function understandPair(text: string, place: NamePlace): Understanding | null {
  const parts = text.split(/\s*[/&+]\s*|\s+(?:et|und|and|en|y)\s+/i).filter((part) => part !== "");
  if (parts.length !== 2) return null;
  const understood = parts.map((part) => understandName(part, place));
  const [first, second] = understood;
  if (!first?.sure || !second?.sure) return null;
  if (sameMeaning(first, second)) return first;
  return { sure: false, why: "ambiguous", choices: [first.entry, second.entry] };
}

/** The choices are looked for only when they are read: a list of garbage costs nothing until a person is asked. */
function unknown(text: string): Understanding {
  let found: readonly GlossaryEntry[] | null = null;
  return {
    sure: false,
    why: "unknown",
    get choices() {
      found ??= neighboursOf(text, index().pairs, MOST_CHOICES).map((one) => one.entry);
      return found;
    },
  };
}

/**
 * Whether the text by itself is a stop's name, give or take case, accents and old spelling; no qualifier is taken
 * off. A word that is a stop only with ranks beside it (`Echo`) is not.
 */
export const isStopName = (text: string): boolean =>
  text.length <= LONGEST_NAME && text.trim() !== "" && entriesNamed(text.trim()).some((entry) => entry.ranks === null);

/** Known names nearest to a misspelt one, best first, one for each thing that is meant. */
export const nearestNames = (text: string, count = 5): readonly string[] =>
  neighboursOf(text, index().pairs, count).map((one) => one.spelling);
