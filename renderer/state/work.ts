import type { BoxPosition, Placing } from "../../shared-model/console/state.ts";
import type {
  Before,
  FreeMoment,
  LinkKind,
  Metronome,
  Pace,
  Piece,
  PistonsAllowed,
} from "../../shared-model/music/piece.ts";
import type { Dynamic, Part, Tempo, Tradition } from "../../shared-model/music/texture.ts";
import type { Key } from "../../shared-model/pitch/key.ts";

/** How a person drew the console for one section, in plain values that undo can keep: ids of stops, names of the rest. */
export interface DrawnByHand {
  readonly drawn: readonly string[];
  readonly couplers: readonly string[];
  readonly tremulants: readonly string[];
  readonly boxes: Readonly<Record<string, BoxPosition>>;
  readonly unisonOff: readonly string[];
  /** Part id to the division whose keyboard plays it; parts left out are played where it serves best. */
  readonly keyboards: Readonly<Record<string, string>>;
  readonly octaves: Readonly<Record<string, Placing["octave"]>>;
}

/** How a section is to sound beside another one, which is named by its id; one that is no more is passed over. */
export interface DeskLink {
  readonly kind: LinkKind;
  readonly to: string;
}

/** One section of the piece on the desk: the music as far as it is said, and its registration as far as there is one. */
export interface DeskSection {
  /** Stays the same for as long as the piece is open. */
  readonly id: string;
  readonly name: string | null;
  readonly bars: string | null;
  /** `null` until a texture is chosen. */
  readonly texture: string | null;
  /** Parts written by hand instead of a texture, as a file may have them. */
  readonly parts: readonly Part[] | null;
  readonly tradition: Tradition;
  /** `undefined`: as the texture has it. */
  readonly dynamic: Dynamic | null | undefined;
  readonly tempo: Tempo | null | undefined;
  /** Where its tempo is counted; `tempo` then is the word for it. */
  readonly metronome: Metronome | null;
  /** What the piece says for sections that name no tempo; `null` for nothing. */
  readonly pieceTempo: Tempo | null;
  /** `null`: as the piece has it. */
  readonly beatsInBar: number | null;
  readonly ranges: Readonly<Record<string, readonly [Key, Key]>>;
  readonly sounding: Readonly<Record<string, Part["sounding"]>>;
  /** What happens just before it; `null` when nothing is said. */
  readonly before: Before | null;
  /** Stretches in it in which a hand or the feet rest. */
  readonly moments: readonly FreeMoment[];
  /** Whether its bars were played before, as after da capo. */
  readonly again: boolean;
  readonly links: readonly DeskLink[];
  readonly registration: DrawnByHand | null;
  /** Of a section that grows: what follows its registration, in playing order. */
  readonly steps: readonly DrawnByHand[];
  /** Pinned by the person: a plan leaves it as it is. */
  readonly pinned: boolean;
}

/** The piece on the desk. */
export interface DeskPiece {
  readonly title: string;
  /** Where an assistant stands, as the player sees it. */
  readonly assistant: Piece["assistant"];
  /** The pistons that are the player's to set and press. */
  readonly pistons: PistonsAllowed;
  /** Whether the changes are practised, so that no label has to be read. */
  readonly practised: boolean;
  readonly pace: Pace;
  /** What holds for sections that do not say. */
  readonly tradition: Tradition;
  readonly tempo: Tempo | null;
  readonly metronome: Metronome | null;
  readonly beatsInBar: number | null;
  readonly sections: readonly DeskSection[];
}

/** A printed list being entered. */
export interface Entry {
  /** As pasted. */
  readonly text: string;
  /** Answers by the key of their question. */
  readonly answers: Readonly<Record<string, string>>;
}

/** A piece file's text together with what it says, section by section: what the desk's changes are compared with. */
export interface PieceBase {
  readonly text: string;
  readonly piece: DeskPiece;
}

/** Everything that undo reaches: the one document of the app. */
export interface Work {
  /** Text of the instrument's file; the truth from which all else about the organ is read. `null`: none yet. */
  readonly organ: string | null;
  readonly entry: Entry | null;
  readonly piece: DeskPiece;
  /**
   * The piece's file as it last came from outside, or was first written; `null` while it is in no file. Every save starts
   * from this text and not from the one before, so that what was taken out and comes back has its own bytes again.
   */
  readonly pieceBase: PieceBase | null;
  /** Which section is on the desk. */
  readonly at: number;
}

/**
 * Whether the organ is only looked at: its list still lies beside it, and nothing of it, nor of a piece for it, is written
 * to the library before the person asks.
 */
export const isAtSight = ({ organ, entry }: Work): boolean => organ !== null && entry !== null;

/** A section about which nothing is said yet. */
export const freshSection = (id: string): DeskSection => ({
  id,
  name: null,
  bars: null,
  texture: null,
  parts: null,
  tradition: "neutral",
  dynamic: undefined,
  tempo: undefined,
  metronome: null,
  pieceTempo: null,
  beatsInBar: null,
  ranges: {},
  sounding: {},
  before: null,
  moments: [],
  again: false,
  links: [],
  registration: null,
  steps: [],
  pinned: false,
});

/** A piece about which nothing is said yet, and without a section. */
export const FRESH_PIECE: DeskPiece = {
  title: "",
  assistant: "none",
  pistons: { generals: null, divisionals: null, levels: null },
  practised: true,
  pace: "normal",
  tradition: "neutral",
  tempo: null,
  metronome: null,
  beatsInBar: null,
  sections: [],
};

/** An empty desk: no organ, and a piece of one section. */
export const EMPTY_WORK: Work = {
  organ: null,
  entry: null,
  piece: { ...FRESH_PIECE, sections: [freshSection("1")] },
  pieceBase: null,
  at: 0,
};

/** Nothing drawn. */
export const NOTHING_DRAWN: DrawnByHand = {
  drawn: [],
  couplers: [],
  tremulants: [],
  boxes: {},
  unisonOff: [],
  keyboards: {},
  octaves: {},
};

/** A piece gets a file with its first registration or its name: looking at textures leaves nothing behind. */
export const isBegun = ({ title, sections }: DeskPiece): boolean =>
  title !== "" || sections.some((section) => section.registration !== null);
