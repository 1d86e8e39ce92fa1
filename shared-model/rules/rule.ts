import type { Phons } from "../acoustics/hearing.ts";
import type { PartSound } from "../acoustics/part-sound.ts";
import type { PrescribedPart, Prescription } from "../music/prescription.ts";
import type { Dynamic, Part, Role, Tempo, Tradition } from "../music/texture.ts";
import type { Coupler, Division, Instrument, Stop } from "../stoplist/instrument.ts";

/** Whole hundredths of a point, so that sums are exact in any order. 100 is one point. */
export type Points = number;

/** What a whole section asks, apart from its parts. */
export interface SectionFacts {
  readonly texture: string | null;
  readonly tradition: Tradition;
  readonly dynamic: Dynamic | null;
  readonly tempo: Tempo | null;
  /** Roles that occur, bass among them only where the section has one. */
  readonly roles: ReadonlySet<Role>;
  /** Whether feet play anything. */
  readonly feet: boolean;
}

/** One part with its fixed facts: all that is settled before a stop is drawn. */
export interface PartContext {
  readonly instrument: Instrument;
  readonly section: SectionFacts;
  readonly part: Part;
  /** The division whose keyboard it is played on. */
  readonly keyboard: Division;
  readonly octave: -1 | 0 | 1;
  /** Couplers on that bring other divisions to this keyboard, fixed ones left out. */
  readonly couplers: readonly Coupler[];
  /** Whether the keyboard's own unison is off. */
  readonly unisonOff: boolean;
  /** Every division that sounds on the keyboard, its own first unless that is silenced. */
  readonly reach: readonly Division[];
  /** All zones of the part's range: a cover equal to this has no hole. */
  readonly zones: number;
  /** How many keys the zones of a set hold. */
  keysIn(zones: number): number;
  /** The recipe in whose light the state is judged, and its part for this one; `null` when it has none. */
  readonly prescription: Prescription | null;
  readonly prescribed: PrescribedPart | null;
  /** Whether a tremulant that reaches this part can be drawn here. */
  readonly canShake: boolean;
  /** Whether any stop of `reach` stands in a box. */
  readonly canShade: boolean;
  /** Strength of all that sounds here when every stop is drawn and every box open, in hundredths of a phon. */
  readonly fullest: Phons;
}

/** A stop as a part hears it: for the words of a rule, not for its points. */
export interface HeardStop {
  readonly stop: Stop;
  /** As the organ names it, with pitch: `Gedackt 8`. */
  readonly label: string;
  /** Keys of the part's range on which it is silent, written; empty when it speaks everywhere. */
  readonly silent: readonly number[];
}

/** What a rule's words may name besides numbers. */
export interface Heard {
  /** Stops that this part hears, in printed order. */
  readonly stops: readonly HeardStop[];
  /** Stops that its keyboard could draw besides, in printed order: remedies name one of these. */
  readonly undrawn: readonly HeardStop[];
}

/** One sentence with this organ's own stop names; a remedy names a stop that this organ has, or says that there is none. */
export interface Words {
  readonly text: string;
  readonly remedy?: string;
  /** Ids of the stops concerned; all of the part's when left out. */
  readonly stops?: readonly string[];
}

/** A tiny registration that a rule speaks about (with the exact sentence) or is silent about. See example.ts for the notation. */
export interface Example {
  /** `Oberwerk: Nasat 2 2/3 (Gedackt 8) | Pedal: Subbass 16`; brackets hold stops of the organ that are not drawn. */
  readonly organ: string;
  /** `melody on Oberwerk, accompaniment on Hauptwerk`. */
  readonly plays: string;
  readonly texture?: string;
  readonly tradition?: Tradition;
  readonly tempo?: Tempo;
  readonly dynamic?: Dynamic;
  readonly couplers?: readonly string[];
  readonly tremulants?: readonly string[];
  /** By division. */
  readonly boxes?: Readonly<Record<string, "open" | "half" | "closed">>;
  /** `{melody: "C4-A5"}`. */
  readonly ranges?: Readonly<Record<string, string>>;
  readonly octaves?: Readonly<Record<string, -1 | 0 | 1>>;
  /** The exact sentence, in `speaks` only. */
  readonly says?: string;
}

interface RuleCommon {
  /** A statement in kebab case; equals the file's name; for ever. */
  readonly id: string;
  /** Numbers of the trade's conventions (practice) that it holds. */
  readonly conventions: readonly number[];
  /** The convention in one sentence. */
  readonly statement: string;
  readonly why: string;
  /** Ids of `SOURCES`, or `common practice`. */
  readonly source: string;
  /** How `check` shows it when it speaks against a state. */
  readonly severity: "error" | "warning" | "note";
  /** Registrations about which it speaks, and nearest misses about which it is silent: its tests and its documentation. */
  readonly examples: { readonly speaks: readonly Example[]; readonly silent: readonly Example[] };
}

/**
 * A convention about what one part sounds like.
 *
 * `weigh` must read nothing but its arguments, must return a whole number, and must never exceed `most`; `most` should
 * be reached by ordinary registrations, since a maximum that nothing reaches slows the search. It must not read the
 * sound's blend unless it says that it `listens`: the search leaves that out until a set is kept.
 */
export interface PartRule extends RuleCommon {
  readonly reads: "part";
  /** Whether it has a say about such a part at all; asked once, before the search. */
  applies(context: PartContext): boolean;
  /** Highest points it can give this part. */
  most(context: PartContext): Points;
  weigh(sound: PartSound, context: PartContext): Points;
  /** True when drawing one more stop never makes it give more: the search may then follow it stop by stop. */
  readonly falling?: boolean;
  /**
   * The most it can give any sound that holds `now` and nothing beyond `all` (boxes and tremulants among what may come);
   * `null` when it forbids every one of them. Left out: `weigh(now)` for a falling rule, else `most`. Never too low, or the
   * search loses answers; the nearer the truth, the less the search looks into what can come to nothing.
   */
  atMost?(now: PartSound, all: PartSound, context: PartContext): Points | null;
  /**
   * Whether it reads how loud such a part is (`strengthOf` its blend). The search then follows the bounds of
   * loudness-bounds.ts, which `atMost` must read, and weighs the rule last, where they leave a set its chance.
   */
  listens?(of: Pick<PartContext, "part" | "section">): boolean;
  /** Excludes the state from proposals; an error in a check. */
  forbids?(sound: PartSound, context: PartContext): boolean;
  /**
   * Whether it is silent about a part that is drawn as a published prescription says (every stop asked for, none beside):
   * a prescription of the school silences a convention that it contradicts.
   */
  readonly yieldsToPrescription: boolean;
  words(sound: PartSound, context: PartContext, heard: Heard, points: Points): Words;
}

/** A convention about where a part is played: keyboard, octave, couplers. Reads no stops. */
export interface PlacingRule extends RuleCommon {
  readonly reads: "placing";
  weigh(context: PartContext): Points;
  forbids?(context: PartContext): boolean;
  words(context: PartContext, points: Points): Words;
}

/** A convention about two parts heard together: contrast, balance, echo. */
export interface PairRule extends RuleCommon {
  readonly reads: "pair";
  /** Whether it has a say about this pair, in this order; asked once. */
  applies(first: PartContext, second: PartContext): boolean;
  most(first: PartContext, second: PartContext): Points;
  /** The same for the two parts where they are placed, keyboards and couplers included; never below any `weigh` there. */
  mostHere?(first: PartContext, second: PartContext): Points;
  weigh(first: PartSound, second: PartSound, firstContext: PartContext, secondContext: PartContext): Points;
  forbids?(first: PartSound, second: PartSound, firstContext: PartContext, secondContext: PartContext): boolean;
  /** Whether it asks how the two sound together, which takes longer than all else: the search asks it last. */
  readonly listens?: true;
  /** Silent when both parts are drawn as the prescription says. */
  readonly yieldsToPrescription: boolean;
  words(
    first: PartSound,
    second: PartSound,
    firstContext: PartContext,
    secondContext: PartContext,
    heard: { readonly first: Heard; readonly second: Heard },
    points: Points,
  ): Words;
}

/** Advice that moves no points: what to mind on this organ, said beside a registration. */
export interface AdviceRule extends RuleCommon {
  readonly reads: "advice";
  readonly severity: "note";
  /** `null` when it has nothing to say. */
  advise(sound: PartSound, context: PartContext, heard: Heard): Words | null;
}

/** A convention about one registration after another: steps of a ladder, verses of a hymn, variations. */
export interface StepRule extends RuleCommon {
  readonly reads: "steps";
  applies(context: PartContext): boolean;
  /** From the earlier to the later sound of the same part. */
  weigh(earlier: PartSound, later: PartSound, context: PartContext): Points;
  words(earlier: PartSound, later: PartSound, context: PartContext, points: Points): Words;
}

/**
 * How close a part comes to its prescription, and how few stops it takes to make the sound. Its points are reckoned in
 * judging/recipe.ts, because the search follows them stop by stop; the file holds the convention and its examples.
 */
export interface RecipeRule extends RuleCommon {
  readonly reads: "recipe";
}

export type Rule = RecipeRule | PartRule | PlacingRule | PairRule | AdviceRule | StepRule;

/** Words as a sentence lists them: `one`, `one and two`, `one, two and three`; nothing of none. */
export const joined = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? "") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;

/** Names stops as a musician lists them: `Gedackt 8`, `Gedackt 8 and Flöte 4`, `Gedackt 8, Flöte 4 and Nasat 2 2/3`. */
export function listed(labels: readonly string[]): string {
  return labels.length === 0 ? "nothing" : joined(labels);
}

/** As many labels as a sentence lists before it counts the rest. */
const HANDFUL = 6;

/** The same for a sentence that only has to remind: of a long list the first few, `Montre 16, Montre 8, ... and 14 others`. */
export const listedBriefly = (labels: readonly string[]): string =>
  labels.length <= HANDFUL
    ? listed(labels)
    : `${labels.slice(0, HANDFUL - 1).join(", ")} and ${labels.length - HANDFUL + 1} others`;
