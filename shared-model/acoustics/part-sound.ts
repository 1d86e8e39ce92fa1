import { KINDS, type Kind } from "../stoplist/kind.ts";
import { Blend } from "./blend.ts";
import { countPitches, type PitchSet } from "./pitch-set.ts";

/**
 * What one part sounds like: everything a rule about one part may read, as sets and counts. Made by adding voices one
 * by one, so the search extends a registration by a stop in a few operations; the order of adding never matters.
 *
 * Pitches are those that sound for a written key: a 4' stop played an octave lower counts as 8'.
 * `zones` are stretches of the part's range over which no stop begins or ends; a zone set is a bit per stretch.
 */
export interface PartSound {
  /** Stops heard, each knob once. */
  stops: number;
  /** Pitches of plain stops (all families), without what is inside compounds. */
  plain: PitchSet;
  principal: PitchSet;
  /** Flutes of all kinds, wide mutations included. */
  flute: PitchSet;
  /** Stopped flutes (Bourdon, Gedackt, half-stopped ones too). */
  stopped: PitchSet;
  string: PitchSet;
  celeste: PitchSet;
  reed: PitchSet;
  chorusReed: PitchSet;
  soloReed: PitchSet;
  shortReed: PitchSet;
  /** Plain flue stops that sound no octave: fifths, thirds, sevenths. */
  mutation: PitchSet;
  /** Pitches inside compounds (cornets, sesquialteras, mixtures), as in the middle of the range. */
  compound: PitchSet;
  /** Pitches inside mixtures, cymbals and rauschpfeifes only. */
  mixture: PitchSet;
  mixtures: number;
  cornets: number;
  /** Sesquialteras and tertians. */
  tierceCompounds: number;
  /** Stops that hold a third, plain or compound; `tierceMixtures` counts mixtures that hold one. */
  tierces: number;
  tierceMixtures: number;
  /** Kinds heard: `hasKind`. */
  kindsLow: number;
  kindsHigh: number;
  /** Plain voices heard, each pitch of each stop once: more than the pitches when a pitch is doubled (`doubledIn`). */
  plainVoices: number;
  principalVoices: number;
  /** Zones in which an octave stop of that pitch speaks (cornets with such a rank count). */
  cover32: number;
  cover16: number;
  cover8: number;
  cover4: number;
  cover2: number;
  /** Zones in which anything of the octave series speaks. */
  cover: number;
  /** Zones in which anything speaks at all. */
  speaks: number;
  /** Zones in which a mixture speaks. */
  crowned: number;
  /** Zones in which a plain mutation or compound of the 8' series speaks, of the 16' series, and a mixture. */
  mutation8: number;
  mutation16: number;
  mutation32: number;
  /** Bits of the shared ranks heard, and how many voices ask for one: more than the ranks when keys rob each other (`robbedIn`). */
  ranksLow: number;
  ranksHigh: number;
  sharedVoices: number;
  /** Stops that do not speak over the whole range. */
  short: number;
  /** Stops heard that are marked off. */
  dead: number;
  /** Between which bounds its loudness lies (loudness-bounds.ts), boxes included; 0 where no rule follows it. */
  loudestStop: number;
  powers: number;
  sones: number;
  /** 1 when a tremulant shakes any of it. */
  tremulant: number;
  /** Stops heard that stand in a box. */
  enclosed: number;
  /** 0 all open, 1 a half shut box among those heard, 2 a closed one. */
  shut: number;
  /** What reaches the ear of it, for hearing.ts; `null` where nothing sounds or nobody listens. */
  blend: Blend | null;
}

/** What one drawn stop (or tremulant, or box) adds to a part: the same fields, ready to be added. */
export interface Voice extends Readonly<PartSound> {}

/** Silence: the start of every sum. */
export const silence = (): PartSound => ({
  stops: 0,
  plain: 0,
  principal: 0,
  flute: 0,
  stopped: 0,
  string: 0,
  celeste: 0,
  reed: 0,
  chorusReed: 0,
  soloReed: 0,
  shortReed: 0,
  mutation: 0,
  compound: 0,
  mixture: 0,
  mixtures: 0,
  cornets: 0,
  tierceCompounds: 0,
  tierces: 0,
  tierceMixtures: 0,
  kindsLow: 0,
  kindsHigh: 0,
  plainVoices: 0,
  principalVoices: 0,
  cover32: 0,
  cover16: 0,
  cover8: 0,
  cover4: 0,
  cover2: 0,
  cover: 0,
  speaks: 0,
  crowned: 0,
  mutation8: 0,
  mutation16: 0,
  mutation32: 0,
  ranksLow: 0,
  ranksHigh: 0,
  sharedVoices: 0,
  short: 0,
  dead: 0,
  loudestStop: 0,
  powers: 0,
  sones: 0,
  tremulant: 0,
  enclosed: 0,
  shut: 0,
  blend: null,
});

/** Writes into `out` what `sound` becomes when `voice` joins it. `out` may be `sound` itself. */
export function addVoice(sound: PartSound, voice: Voice, out: PartSound): void {
  addFacts(sound, voice, out);
  out.blend = Blend.of([sound.blend, voice.blend].filter((each) => each !== null));
}

/** As {@link addVoice} without the blend, which is read of kept sets only: for the sums that a search passes through. */
export function addFacts(sound: PartSound, voice: Voice, out: PartSound): void {
  out.stops = sound.stops + voice.stops;
  out.plainVoices = sound.plainVoices + voice.plainVoices;
  out.principalVoices = sound.principalVoices + voice.principalVoices;
  out.sharedVoices = sound.sharedVoices + voice.sharedVoices;
  out.plain = sound.plain | voice.plain;
  out.principal = sound.principal | voice.principal;
  out.flute = sound.flute | voice.flute;
  out.stopped = sound.stopped | voice.stopped;
  out.string = sound.string | voice.string;
  out.celeste = sound.celeste | voice.celeste;
  out.reed = sound.reed | voice.reed;
  out.chorusReed = sound.chorusReed | voice.chorusReed;
  out.soloReed = sound.soloReed | voice.soloReed;
  out.shortReed = sound.shortReed | voice.shortReed;
  out.mutation = sound.mutation | voice.mutation;
  out.compound = sound.compound | voice.compound;
  out.mixture = sound.mixture | voice.mixture;
  out.mixtures = sound.mixtures + voice.mixtures;
  out.cornets = sound.cornets + voice.cornets;
  out.tierceCompounds = sound.tierceCompounds + voice.tierceCompounds;
  out.tierces = sound.tierces + voice.tierces;
  out.tierceMixtures = sound.tierceMixtures + voice.tierceMixtures;
  out.kindsLow = sound.kindsLow | voice.kindsLow;
  out.kindsHigh = sound.kindsHigh | voice.kindsHigh;
  out.cover32 = sound.cover32 | voice.cover32;
  out.cover16 = sound.cover16 | voice.cover16;
  out.cover8 = sound.cover8 | voice.cover8;
  out.cover4 = sound.cover4 | voice.cover4;
  out.cover2 = sound.cover2 | voice.cover2;
  out.cover = sound.cover | voice.cover;
  out.speaks = sound.speaks | voice.speaks;
  out.crowned = sound.crowned | voice.crowned;
  out.mutation8 = sound.mutation8 | voice.mutation8;
  out.mutation16 = sound.mutation16 | voice.mutation16;
  out.mutation32 = sound.mutation32 | voice.mutation32;
  out.ranksLow = sound.ranksLow | voice.ranksLow;
  out.ranksHigh = sound.ranksHigh | voice.ranksHigh;
  out.short = sound.short + voice.short;
  out.dead = sound.dead + voice.dead;
  out.loudestStop = Math.max(sound.loudestStop, voice.loudestStop);
  out.powers = sound.powers + voice.powers;
  out.sones = sound.sones + voice.sones;
  out.tremulant = sound.tremulant | voice.tremulant;
  out.enclosed = sound.enclosed + voice.enclosed;
  out.shut = Math.max(sound.shut, voice.shut);
}

/** How many plain stops double a pitch that the part already has. */
export const doubledIn = (sound: PartSound): number => sound.plainVoices - countPitches(sound.plain);
/** How many stops ask for a shared rank that another stop of the part plays too. */
export const robbedIn = (sound: PartSound): number =>
  sound.sharedVoices - countPitches(sound.ranksLow) - countPitches(sound.ranksHigh);

const KIND_INDEX: ReadonlyMap<Kind, number> = new Map(KINDS.map((kind, index) => [kind, index]));

/** The bits of some kinds, for `kindsLow` and `kindsHigh`. */
export function kindBits(kinds: readonly Kind[]): { readonly low: number; readonly high: number } {
  let [low, high] = [0, 0];
  for (const kind of kinds) {
    const index = KIND_INDEX.get(kind) as number;
    if (index < 31) low |= 1 << index;
    else high |= 1 << (index - 31);
  }
  return { low, high };
}

/** Whether any of the kinds is heard. Make the bits once, outside the rule's `weigh`. */
export const hasAnyKind = (sound: PartSound, kinds: { readonly low: number; readonly high: number }): boolean =>
  (sound.kindsLow & kinds.low) !== 0 || (sound.kindsHigh & kinds.high) !== 0;
