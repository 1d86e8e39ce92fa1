import { type Foot, footFromText } from "../../pitch/foot.ts";
import type { Strength } from "../instrument.ts";
import type { Family, Kind } from "../kind.ts";

/** Languages in which a name is spelled, by their usual two letters; `la` is the Latin of old lists. */
export type Language =
  | "en"
  | "de"
  | "nl"
  | "fr"
  | "it"
  | "es"
  | "la"
  | "pt"
  | "ca"
  | "da"
  | "sv"
  | "no"
  | "fi"
  | "pl"
  | "cs"
  | "hu";

/** What the same name means under a printed pitch, number of ranks or place; what is left out stays as in the entry. */
export interface Variant {
  /** Printed pitches to which it applies; empty for any. */
  readonly pitches: readonly Foot[];
  /** Least and greatest number of ranks to which it applies, `null` for any. */
  readonly ranks: readonly [number, number] | null;
  /** True: only in a pedal; false: only on a manual; `null`: both. */
  readonly pedal: boolean | null;
  readonly kinds: readonly Kind[] | null;
  readonly family: Family | null;
  readonly strength: Strength | null;
  readonly tierce: boolean | null;
}

/** One thing that is built and drawn, with every name under which it is printed. */
export interface GlossaryEntry {
  /** The commonest name; unique in the glossary. A remark in round brackets parts two things of one name. */
  readonly name: string;
  /** Other spellings, abbreviations and translations by language. */
  readonly also: Readonly<Partial<Record<Language, readonly string[]>>>;
  readonly family: Family;
  readonly kinds: readonly Kind[];
  /** How the pipes are made, in a few words. */
  readonly construction: string;
  /** Lengths at which it is usually built, commonest first: by themselves they do not fill in a missing pitch. */
  readonly usualPitches: {
    readonly manual: readonly Foot[];
    readonly pedal: readonly Foot[];
  };
  /** Strength at its usual pitch; a judgement, not a measurement. */
  readonly strength: Strength;
  /** What it is for and what it needs: `chorus`, `solo`, `accompaniment`, `celeste-needs-partner`, `bass-only` ... */
  readonly traits: readonly string[];
  /** How the name misleads, a sentence each. */
  readonly traps: readonly string[];
  /** Usual ranks of a compound at its lowest key, on an 8 ft base; `null` for single ranks and where custom is open. */
  readonly composition: readonly Foot[] | null;
  /** Whether a compound of this name holds a third by custom. */
  readonly tierce: boolean;
  /** Steps above the base for interval names (8, 12, 15, 19, 22 ...), else `null`. */
  readonly interval: number | null;
  /** Whether it lives in the treble only by custom. */
  readonly treble: boolean;
  /** The pitch any organist fills in when none is printed; `null` where the printed pitch must be asked for. */
  readonly implied: {
    readonly manual: Foot | null;
    readonly pedal: Foot | null;
  };
  /** Number of ranks that picks this entry among others of the same name, `null` when any will do. */
  readonly ranks: readonly [number, number] | null;
  readonly variants: readonly Variant[];
  /** `read`: stands in the named source; else from general knowledge or the custom of the trade. */
  readonly evidence: "read" | "from memory" | "common practice";
  readonly source: string | null;
}

/** A {@link Variant} as the tables write it. */
interface WrittenVariant {
  readonly pitches?: string;
  readonly ranks?: readonly [number, number];
  readonly pedal?: boolean;
  readonly kinds?: readonly Kind[];
  readonly family?: Family;
  readonly strength?: Strength;
  readonly tierce?: boolean;
}

/** An entry as the tables write it: lengths as rational text with spaces between (`8 4 8/3`), absences left out. */
export interface WrittenEntry {
  readonly also?: GlossaryEntry["also"];
  readonly family: Family;
  readonly kinds: readonly Kind[];
  readonly construction: string;
  readonly manual?: string;
  readonly pedal?: string;
  readonly strength: Strength;
  readonly traits?: readonly string[];
  readonly traps?: readonly string[];
  readonly composition?: string;
  readonly tierce?: boolean;
  readonly interval?: number;
  readonly implied?: string;
  readonly impliedPedal?: string;
  readonly ranks?: readonly [number, number];
  readonly variants?: readonly WrittenVariant[];
  readonly evidence?: GlossaryEntry["evidence"];
  readonly source?: string;
}

const footIn = (text: string): Foot => {
  const foot = footFromText(text);
  if (!foot) throw new RangeError(`The glossary's tables hold a length that cannot be read: "${text}".`);
  return foot;
};

const feetIn = (text: string | undefined): readonly Foot[] => (text ? text.split(" ").map(footIn) : []);

/**
 * An entry from its written form. The trait `treble-only` makes it one of the treble; a source means that it was read
 * there.
 *
 * @throws RangeError when a length of the table cannot be read.
 */
export function described(name: string, written: WrittenEntry): GlossaryEntry {
  const traits = written.traits ?? [];
  return {
    name,
    also: written.also ?? {},
    family: written.family,
    kinds: written.kinds,
    construction: written.construction,
    usualPitches: {
      manual: feetIn(written.manual),
      pedal: feetIn(written.pedal),
    },
    strength: written.strength,
    traits,
    traps: written.traps ?? [],
    composition: written.composition ? feetIn(written.composition) : null,
    tierce: written.tierce ?? false,
    interval: written.interval ?? null,
    treble: traits.includes("treble-only"),
    implied: {
      manual: written.implied ? footIn(written.implied) : null,
      pedal: written.impliedPedal ? footIn(written.impliedPedal) : null,
    },
    ranks: written.ranks ?? null,
    variants: (written.variants ?? []).map((variant) => ({
      pitches: feetIn(variant.pitches),
      ranks: variant.ranks ?? null,
      pedal: variant.pedal ?? null,
      kinds: variant.kinds ?? null,
      family: variant.family ?? null,
      strength: variant.strength ?? null,
      tierce: variant.tierce ?? null,
    })),
    evidence: written.evidence ?? (written.source ? "read" : "from memory"),
    source: written.source ?? null,
  };
}
