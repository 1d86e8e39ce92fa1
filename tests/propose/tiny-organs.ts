import type { Tradition } from "../../shared-model/music/texture.ts";
import { organFrom } from "../../shared-model/rules/example-organ.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";

/** An organ small enough for every one of its states to be judged, in the notation of the rules' examples. */
export interface TinyOrgan {
  readonly what: string;
  readonly organ: string;
  readonly couplers: readonly string[];
  readonly tremulants: readonly string[];
  /** The pedal has no stops and hangs on the first coupler, which nobody can take off. */
  readonly pulldown?: true;
  /** All enclosed divisions stand in one box. */
  readonly sharedBox?: true;
  readonly texture: string;
  readonly tradition: Tradition;
}

export const TINY_ORGANS: readonly TinyOrgan[] = [
  {
    what: "a coupler and a box",
    organ: "Great: Open Diapason 8, Flute 4 | Swell [box]: Oboe 8, Gedackt 8 | Pedal: Subbass 16",
    couplers: ["Swell to Great"],
    tremulants: [],
    texture: "melody-over-accompaniment",
    tradition: "neutral",
  },
  {
    what: "a tremulant and a pedal that needs a coupler for its 8",
    organ: "Hauptwerk: Gedackt 8, Flöte 4 | Oberwerk: Quintadena 8, Nasat 2 2/3 | Pedal: Subbass 16",
    couplers: ["Hauptwerk to Pedal"],
    tremulants: ["Oberwerk"],
    texture: "melody-over-accompaniment",
    tradition: "north-german",
  },
  {
    what: "halves on one keyboard",
    organ:
      "Organo: Violón 8 bass, Violón 8 treble, Octava 4 bass, Octava 4 treble, Corneta V treble, Bajoncillo 4 bass, " +
      "Clarín 8 treble, Lleno III treble, Quincena 2 bass",
    couplers: [],
    tremulants: ["Organo"],
    texture: "treble-solo",
    tradition: "spanish",
  },
  {
    what: "a pedal that hangs on the manual",
    organ:
      "Manual: Principal 8, Gedackt 8, Octave 4, Flöte 4, Nasat 2 2/3, Superoctave 2, Mixtur III | Pedal: Subbass 16",
    couplers: ["Manual to Pedal"],
    tremulants: ["Manual"],
    pulldown: true,
    texture: "hymn-verse",
    tradition: "central-german",
  },
  {
    what: "octave couplers and a box",
    organ: "Swell [box]: Salicional 8, Voix Celeste 8, Principal 4, Oboe 8 | Great: Flute 8 | Pedal: Bourdon 16",
    couplers: ["Swell to Swell 4", "Swell to Pedal"],
    tremulants: ["Swell"],
    texture: "swell-strings",
    tradition: "english-cathedral",
  },
  {
    what: "shared rows of pipes and one tremulant for all",
    organ:
      "Great: Gedackt 8 {flute}, Flöte 4 {flute}, Principal 8 | Positiv: Gedackt 8 {flute}, Octave 4 | " +
      "Pedal: Subbass 16",
    couplers: ["Positiv to Great"],
    tremulants: ["all"],
    texture: "two-voices",
    tradition: "neutral",
  },
  {
    what: "one box around both manuals",
    organ: "Choir [box]: Aeoline 8, Flute 4 | Swell [box]: Principal 8, Gedackt 8 | Pedal: Octave 8",
    couplers: [],
    tremulants: [],
    sharedBox: true,
    texture: "recit-de-cornet",
    tradition: "french-classical",
  },
  {
    what: "two manuals coupled for a chorus",
    organ:
      "Grand-Orgue: Montre 8, Prestant 4, Fourniture III | Positif: Bourdon 8, Nasard 2 2/3, Doublette 2 | Pédale: Flûte 8, Trompette 8",
    couplers: ["Positif to Grand-Orgue"],
    tremulants: [],
    texture: "plein-jeu",
    tradition: "french-classical",
  },
];

/** @throws RangeError in words when the notation is not kept. */
export function tinyInstrument({ organ, couplers, tremulants, pulldown, sharedBox }: TinyOrgan): Instrument {
  const { instrument } = organFrom(organ, couplers, tremulants);
  return {
    ...instrument,
    divisions: instrument.divisions.map((each) => ({
      ...each,
      stops: pulldown && each.kind === "pedal" ? [] : each.stops,
      box: sharedBox && each.box !== null ? "box" : each.box,
    })),
    couplers: instrument.couplers.map((each, index) => (pulldown && index === 0 ? { ...each, fixed: true } : each)),
  };
}
