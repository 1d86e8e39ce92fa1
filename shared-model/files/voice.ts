import { compareFeet, type Foot, footText } from "../pitch/foot.ts";
import { pitchName } from "../pitch/reading.ts";
import { type GlossaryEntry, type Understanding, understandName } from "../stoplist/glossary/glossary.ts";
import type { Strength } from "../stoplist/instrument.ts";
import type { Family, Kind } from "../stoplist/kind.ts";
import { compoundKind } from "./composition.ts";
import { CUSTOM_OF_KIND, kindAtPitch } from "./kind-custom.ts";
import { isOctave } from "./pitch-text.ts";
import type { Reporter } from "./reporter.ts";
import { startOf } from "./shape.ts";
import type { CountsRanks, StopEntry } from "./stop-entry.ts";

/** What a stop is, all doubts settled. */
export interface Voice {
  readonly kinds: readonly Kind[];
  readonly family: Family;
  readonly strength: Strength;
  readonly pitch: Foot | null;
  /** Whether a compound of that name holds a third by custom. */
  readonly tierce: boolean;
  /** What the glossary knows of the name; `null` when it does not know it. */
  readonly entry: GlossaryEntry | null;
}

/** What pipes taken from elsewhere say about the stop that draws them. */
export interface Lender {
  readonly kinds: readonly Kind[] | null;
  readonly family: Family | null;
  readonly strength: Strength | null;
}

/** Asks the glossary, each question once: large organs repeat their names. */
export class Names {
  readonly #known = new Map<string, Understanding>();

  understand(name: string, pedal: boolean, pitch: Foot | null, ranks: number | null, base: Foot | null): Understanding {
    const key = [name, pedal, pitch && footText(pitch), ranks, base && footText(base)].join("\n");
    const known = this.#known.get(key);
    if (known) return known;
    const understanding = understandName(name, { pedal, pitch, ranks, ...(base ? { base } : {}) });
    this.#known.set(key, understanding);
    return understanding;
  }

  /** For {@link readStopEntry}: ranks stand behind compounds, and behind undulating stops that hold both their ranks. */
  countsRanks(pedal: boolean): CountsRanks {
    return (name, pitch, ranks, kinds) => {
      const meant = kinds ?? this.#kindsOf(name, pedal, pitch, ranks);
      return meant !== null && (compoundKind(meant) !== null || (ranks > 1 && meant.includes("celeste")));
    };
  }

  #kindsOf(name: string, pedal: boolean, pitch: Foot | null, ranks: number): readonly Kind[] | null {
    const understanding = this.understand(name, pedal, pitch, ranks, null);
    return understanding.sure ? understanding.kinds : null;
  }

  /** The longest octave length at which the division has a principal: interval names count from it. */
  baseOf(entries: readonly StopEntry[], pedal: boolean): Foot | null {
    const feet = entries.flatMap((entry) => {
      if (!entry.pitch || !isOctave(entry.pitch)) return [];
      const kinds = entry.kinds ?? this.#kindsOf(entry.name, pedal, entry.pitch, 1);
      return kinds?.includes("principal") ? [entry.pitch] : [];
    });
    return feet.toSorted(compareFeet)[0] ?? null;
  }
}

function reportDoubt(entry: StopEntry, doubt: Extract<Understanding, { sure: false }>, reporter: Reporter): void {
  const choices = [...new Set(doubt.choices.map((choice) => choice.name))];
  const kinds = [...new Set(doubt.choices.flatMap((choice) => choice.kinds.slice(0, 1)))];
  const offset = startOf(entry.node, "name");
  if (doubt.why === "ambiguous") reporter.report({ code: "name-ambiguous", stop: entry.said, choices, kinds }, offset);
  else reporter.report({ code: "name-unknown", stop: entry.said, nearest: choices, kinds }, offset);
}

/** At octaves a shared rank says what its stop is; at a mutation's pitch the name does, and else the pitch. */
function lentKinds(lent: readonly Kind[], pitch: Foot | null, understanding: Understanding): readonly Kind[] {
  if (!pitch || isOctave(pitch)) return lent;
  return understanding.sure ? understanding.kinds : [...new Set(lent.map((kind) => kindAtPitch(kind, pitch)))];
}

/**
 * The family of the pipes where another stop or a rank says what they are: a rank that gives its kind alone is of that
 * kind's usual family, whatever the names of the stops that draw it. `null` where the pipes' word does not hold.
 */
function familyLent(lender: Lender | null, kinds: readonly Kind[]): Family | null {
  if (lender?.kinds !== kinds || !kinds[0]) return null;
  return lender.family ?? CUSTOM_OF_KIND[kinds[0]].family;
}

/** Whether a stop of these kinds makes no sense without a pitch. */
const needsPitch = (kinds: readonly Kind[]): boolean =>
  compoundKind(kinds) === null && !kinds.includes("effect") && !kinds.includes("percussion");

/** Where a stop stands and what is known around it. */
export interface StopPlace {
  readonly pedal: boolean;
  readonly base: Foot | null;
  readonly lender: Lender | null;
  /** The pitch of the stop whose pipes it shares at the same pitch. */
  readonly lentPitch: Foot | null;
}

/** What the stop is: the file's word first, then that of the rank it shares, then the glossary's. `null` after an error. */
export function voiceOf(entry: StopEntry, place: StopPlace, names: Names, reporter: Reporter): Voice | null {
  const printed = entry.pitch ?? place.lentPitch;
  const understanding = names.understand(entry.name, place.pedal, printed, entry.ranks, place.base);
  const { lender } = place;
  const kinds =
    entry.kinds ??
    (lender?.kinds ? lentKinds(lender.kinds, printed, understanding) : null) ??
    (understanding.sure ? understanding.kinds : null);
  if (!kinds?.[0]) {
    if (!understanding.sure) reportDoubt(entry, understanding, reporter);
    return null;
  }
  const asNamed = understanding.sure && understanding.kinds.includes(kinds[0]) ? understanding : null;
  const custom = CUSTOM_OF_KIND[kinds[0]];
  const compound = compoundKind(kinds) !== null;
  const implied = understanding.sure && !compound && needsPitch(kinds) ? understanding.pitch : null;
  const pitch = printed ?? implied;
  if (!pitch && needsPitch(kinds) && !entry.composition) {
    reporter.report({ code: "pitch-missing", stop: entry.said }, startOf(entry.node, "name"));
    return null;
  }
  if (!printed && implied) {
    reporter.report(
      { code: "pitch-implied", stop: entry.said, pitch: pitchName(implied) },
      startOf(entry.node, "name"),
    );
  }
  return {
    kinds,
    family: entry.family ?? familyLent(lender, kinds) ?? asNamed?.family ?? custom.family,
    strength: entry.strength ?? lender?.strength ?? asNamed?.strength ?? custom.strength,
    pitch,
    tierce: asNamed?.tierce ?? false,
    entry: understanding.sure ? understanding.entry : null,
  };
}
