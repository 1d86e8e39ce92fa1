import type { Foot } from "../pitch/foot.ts";
import type { Compass, Key } from "../pitch/key.ts";
import type { Family, Kind } from "./kind.ts";
import type { VisitAnswers } from "./visit-topic.ts";

/** Strength by ear in five steps: 1 very soft, 2 soft, 3 middling (a principal 8), 4 strong, 5 very strong. */
export type Strength = 1 | 2 | 3 | 4 | 5;
/** Brightness by ear in five steps: 1 dull, 2 rather dull, 3 as usual for its kind, 4 rather bright, 5 bright. */
export type Brightness = 1 | 2 | 3 | 4 | 5;

/** A row of pipes (or tongues), apart from the knobs that draw it: one rank may serve several stops. */
export interface Rank {
  readonly id: string;
  /**
   * Nominal length of the first pipe: the pitch of a stop that plays it on C2 (key 36). A rank that begins in the tenor
   * is laid out so too, its lowest numbers unused; one that goes below C2 begins an octave longer.
   */
  readonly longest: Foot;
  /** How many pipes, 1 to 122, counted from there; those that no key plays are counted with the others. */
  readonly pipes: number;
}

/** How one stop uses a rank over a stretch of keys. */
export interface RankUse {
  readonly rank: string;
  /**
   * As a knob prints it, nominal on C2 whatever the lowest key of the stretch: 8 where every key plays its own note, so an
   * Oboe 8 from tenor C has 8 here, though its longest pipe is 4 feet long.
   */
  readonly pitch: Foot;
  /** First and last key of the stretch, both sounding. */
  readonly from: Key;
  readonly to: Key;
}

/** Which half of a divided stop; `null` for an undivided one. */
export type Half = "bass" | "treble" | null;

/** A knob (or pair of knobs drawn as one) that brings on pipes. */
export interface Stop {
  /** Unique in the instrument: `division/name pitch half`, as written. */
  readonly id: string;
  readonly division: string;
  /** As the organ's own jamb or list names it, without the pitch. */
  readonly name: string;
  /** Nominal pitch; `null` for compounds that print none and for effects. */
  readonly pitch: Foot | null;
  readonly half: Half;
  readonly kinds: readonly Kind[];
  readonly family: Family;
  readonly strength: Strength;
  readonly brightness: Brightness;
  /** What somebody has set by ear: it stands in the file. What does not is usual for such a stop. */
  readonly byEar: { readonly strength: boolean; readonly brightness: boolean };
  /** Number of ranks sounding together on a key, 1 for a plain stop; 0 for an effect without pitch. */
  readonly ranks: number;
  /** Every rank it draws, by stretch of keys: the breaks of a mixture, the borrowed bass of a short rank. */
  readonly uses: readonly RankUse[];
  /** Lowest and highest key that speaks. */
  readonly from: Key;
  readonly to: Key;
  /** Whether its highest compound ranks hold a third (17th, 24th). Known only from a composition or the glossary. */
  readonly tierce: boolean;
  /** Dead, out of tune or ciphering: never proposed. */
  readonly off: boolean;
  readonly note: string | null;
}

export interface Division {
  /** As the organ names it; unique in the instrument. */
  readonly name: string;
  readonly kind: "manual" | "pedal" | "floating";
  /** Manuals count from the lowest (1). `null` for the pedal and for a floating division. */
  readonly keyboard: number | null;
  readonly compass: Compass;
  /** The box it stands in: boxes of one name move together. `null` when it stands open. */
  readonly box: string | null;
  readonly stops: readonly Stop[];
}

/** What a coupler does: the keys of division `to` also play division `from`, at the unison (8), an octave up (4) or down (16). */
export interface Coupler {
  /** `X to Y`, `X to Y 4`, `X to Y 16`; the contract's name, by divisions, whatever words the list printed. */
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly pitch: 16 | 8 | 4;
  /** Whether it carries on what is coupled to `from` in its turn (keys that move keys do, relays usually do not). */
  readonly through: boolean;
  /** Always on, with no knob (a pull-down pedal). */
  readonly fixed: boolean;
}

/** What makes changes easier at the console. A mechanical organ may have none of it. */
export interface ConsoleAids {
  readonly generals: number;
  readonly divisionals: Readonly<Record<string, number>>;
  /** Memory levels the player may use. */
  readonly levels: number;
  readonly crescendoPedal: boolean;
  /** Divisions whose upper windchest (reeds and mixtures) is shut off by a ventil. */
  readonly ventils: readonly string[];
}

/** Whether the console has a piston, general or of a division. */
export const hasPistons = ({ generals, divisionals }: ConsoleAids): boolean =>
  generals > 0 || Object.values(divisionals).some((count) => count > 0);

/** How the console is laid out for the hands, as far as somebody has looked and measured. */
export interface ConsoleBuild {
  /** How stops are moved; `null` when not stated. */
  readonly action: "electric" | "mechanical" | "tabs" | null;
  /** Divisions whose knobs stand at the player's left and right. */
  readonly left: readonly string[];
  readonly right: readonly string[];
  /** In cm. */
  readonly distances: {
    /** From the keys to the nearest knobs. */
    readonly keysToBlock?: number | undefined;
    readonly knobPitch?: number | undefined;
    /** From one division to the next in a jamb. */
    readonly blockToBlock?: number | undefined;
    readonly jambToJamb?: number | undefined;
  };
}

/** The room's say: a live room carries less upperwork. */
export type Room = "dry" | "medium" | "live";

export interface Instrument {
  readonly name: string;
  readonly place: string | null;
  readonly builder: string | null;
  readonly year: number | null;
  readonly history: string | null;
  /** Hertz of A4, 370 to 500. */
  readonly a4: number;
  readonly temperament: string | null;
  readonly room: Room;
  /** Whether the file says what the room is like; else it is taken for a medium one. */
  readonly roomByEar: boolean;
  /** Printed order: this order settles the order of equal proposals. */
  readonly divisions: readonly Division[];
  readonly ranks: readonly Rank[];
  readonly couplers: readonly Coupler[];
  /** Each a division's name, or `all` for one that shakes the whole organ. */
  readonly tremulants: readonly string[];
  /** Divisions whose own sound can be silenced on their own keyboard while couplers still carry it. */
  readonly unisonOff: readonly string[];
  readonly aids: ConsoleAids;
  /** Absent where the file says nothing of it. */
  readonly console?: ConsoleBuild;
  /** What was learnt on a visit: for people to read, nothing is reckoned with it. Absent where nothing is answered. */
  readonly visit?: VisitAnswers;
  /** Nightingale, star, drum: named for the record, never proposed. */
  readonly toys: readonly string[];
}
