import { type Before, beatsOf, LIMBS, type Limb, type PieceSection } from "../music/piece.ts";
import { beatSeconds } from "./motion.ts";
import { MUSIC_VALUES } from "./motion-values.ts";
import { limbsOf } from "./stand.ts";

/** A stretch in the middle of the section before in which a limb rests. */
export interface Rest {
  readonly limb: Limb;
  readonly seconds: number;
  readonly bar: string | null;
}

/** What the music leaves before a section, in seconds; `Infinity` where the player takes as long as is wanted. */
export interface TimeLeft {
  /** What happens, as the piece says, or as is taken where it says nothing. */
  readonly what: Before["what"];
  /** Whether the piece says nothing of it. */
  readonly assumed: boolean;
  /** How long nothing sounds. */
  readonly gap: number;
  /** How long each limb has nothing to play before the section begins. */
  readonly limbs: Readonly<Record<Limb, number>>;
  /** How much longer than its hand's {@link limbs} a thumb can be spared. */
  readonly thumb: number;
  /** How much longer than {@link limbs} says one of two feet can be spared. */
  readonly foot: number;
  /** Who turns a page in that time. */
  readonly turn: "player" | "assistant" | null;
  readonly rests: readonly Rest[];
  /** One beat, for saying it in beats. */
  readonly beat: number;
  /** How long the section before lasts. */
  readonly section: number;
}

/** Beats a minute of a section: as marked, else a guess from its tempo word. */
export function bpmOf({ metronome, section }: Pick<PieceSection, "metronome" | "section">): number {
  if (metronome) return metronome.bpm;
  return MUSIC_VALUES[section.tempo ?? "unsaid"].value;
}

/** Seconds that a section lasts. */
export function sectionSeconds(section: PieceSection): number {
  const beats = beatsOf(section);
  return beats === null ? MUSIC_VALUES.unknownSection.value : beatSeconds(beats, bpmOf(section));
}

const ASSUMED: Before = { what: "rest", beats: MUSIC_VALUES.assumedRest.value, free: null, turnedBy: "player" };

/** The time between a section and the one before it. */
export function timeLeft(earlier: PieceSection, later: PieceSection): TimeLeft {
  const before = later.before ?? ASSUMED;
  const bpm = bpmOf(earlier);
  const beat = beatSeconds(1, bpm);
  const articulation = MUSIC_VALUES.articulation.value;
  const open = before.what === "pause" && before.beats === null;
  const silent = before.what === "rest" || before.what === "page-turn" || before.what === "pause";
  const gap = open ? Number.POSITIVE_INFINITY : silent ? beatSeconds(before.beats ?? 0, bpm) : articulation;
  const section = sectionSeconds(earlier);
  const playing = new Set(earlier.section.parts.flatMap((part) => limbsOf(part.hands)));
  const limb = (which: Limb): number => {
    if (!playing.has(which)) return Math.max(gap, section);
    const free = before.free?.[which];
    return Math.max(gap, articulation, free === undefined ? 0 : beatSeconds(free, bpm));
  };
  return {
    what: before.what,
    assumed: later.before === null,
    gap: Math.max(gap, articulation),
    limbs: Object.fromEntries(LIMBS.map((each) => [each, limb(each)])) as Record<Limb, number>,
    thumb: beatSeconds(MUSIC_VALUES.thumb.value, bpm),
    foot: beatSeconds(MUSIC_VALUES.foot.value, bpm),
    turn: before.what === "page-turn" ? before.turnedBy : null,
    rests: earlier.moments.map(({ limb: which, beats, bar }) => ({
      limb: which,
      seconds: beatSeconds(beats, bpm),
      bar,
    })),
    beat,
    section,
  };
}
