import type { Foot } from "../pitch/foot.ts";
import type { Half } from "../stoplist/instrument.ts";
import type { Kind, KindGroup } from "../stoplist/kind.ts";
import type { Dynamic, Place, Role, Tradition } from "./texture.ts";

/** A stop as a recipe names it: by what it is, never by its name. */
export interface Wanted {
  /** Absent: any kind. */
  readonly kind?: Kind | KindGroup;
  /** Absent: any pitch of that kind. */
  readonly pitch?: Foot;
  readonly half?: Exclude<Half, null>;
  /** All stops of that kind and pitch in the division, not just one. */
  readonly every?: boolean;
}

/** Where a school plays a part. `any-other`: another keyboard than the parts that it must differ from. */
export type KeyboardKind = "main" | "positive" | "choir" | "swell" | "recit" | "echo" | "solo" | "pedal" | "any-other";

export interface PrescribedPart {
  readonly role: Role;
  readonly place?: Place;
  readonly keyboard: KeyboardKind;
  /** The sound is that keyboard's own: what another plays is a different one, whatever it draws. */
  readonly onlyThere?: true;
  /** Complete without it. */
  readonly optional?: boolean;
  readonly half?: Exclude<Half, null>;
  readonly must: readonly Wanted[];
  /** From each inner list at least one. */
  readonly oneOf?: readonly (readonly Wanted[])[];
  /** Welcome. */
  readonly may?: readonly Wanted[];
  /** Against the recipe. */
  readonly not?: readonly Wanted[];
  readonly octave?: -1 | 0 | 1;
  /** Semitones by which the source asks the part to be played away from the written keys. */
  readonly transpose?: number;
  readonly note?: string;
}

/** A coupler by kinds of keyboard: `from` sounds on the keys of `to`. */
export interface PrescribedCoupler {
  readonly from: KeyboardKind;
  readonly to: KeyboardKind;
  readonly pitch: 16 | 8 | 4;
}

/** One way in which a school registers a texture: a published recipe with its source. */
export interface Prescription {
  /** Unique and for ever: `texture.tradition.number`. */
  readonly id: string;
  readonly texture: string;
  readonly tradition: Tradition;
  /** A short name for this way among several, such as "petit plein jeu". */
  readonly way?: string;
  readonly dynamic?: Dynamic;
  /** Ids of `SOURCES`, or `common practice`. */
  readonly sources: readonly string[];
  /** `read`: seen by the project; `memory`: known from the literature, not seen; `common practice`. */
  readonly evidence: "read" | "memory" | "common practice";
  readonly parts: readonly PrescribedPart[];
  readonly tremulant: "required" | "welcome" | "may" | "no";
  readonly couplers: readonly PrescribedCoupler[];
  readonly couplersMay?: readonly PrescribedCoupler[];
  readonly note?: string;
}

/** What replaces a wanted stop that the organ lacks, nearest first. */
export interface StandIn {
  readonly for: Wanted;
  /** Only for a part played by the feet. */
  readonly pedal?: boolean;
  readonly use: readonly {
    /** All of them together; empty: the note says how to do without. */
    readonly stops: readonly Wanted[];
    /** Doing without is a way by itself: the thing is welcome rather than needed. */
    readonly leaveOut?: true;
    /** 1 hardly heard, to 5 another colour that does the job. */
    readonly cost: 1 | 2 | 3 | 4 | 5;
    readonly note?: string;
  }[];
}
