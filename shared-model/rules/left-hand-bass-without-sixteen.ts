import { footOf } from "../pitch/foot.ts";
import { agree, idsOf, leaveOut, named, soundingBelow, the } from "./naming.ts";
import { FEET_16 } from "./pitches.ts";
import type { PartRule } from "./rule.ts";
import { isLeftHandBass } from "./schools.ts";

const DEEP = 250;

export const leftHandBassWithoutSixteen: PartRule = {
  id: "left-hand-bass-without-sixteen",
  conventions: [13],
  reads: "part",
  falling: true,
  statement: "A bass in the left hand has no 16, unless a source asks for it on a keyboard of its own.",
  why: "Its upper notes are a tenor; an octave down they growl under the right hand.",
  source: "bedos-1766",
  severity: "note",
  yieldsToPrescription: true,
  applies: isLeftHandBass,
  most: () => 0,
  weigh: (sound) => ((sound.plain & FEET_16) === 0 ? 0 : -DEEP),
  words: (_sound, context, heard) => {
    const deep = soundingBelow(heard.stops, footOf(8), context);
    return {
      text: `${named(deep)} on ${the(context)} ${agree(deep, "makes", "make")} the left hand's bass heavy and slow.`,
      remedy: leaveOut(deep),
      stops: idsOf(deep),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Hauptwerk: Bordun 16, Principal 8",
        plays: "left-hand bass on Hauptwerk",
        says: "Bordun 16 on the Hauptwerk makes the left hand's bass heavy and slow.",
      },
      {
        organ: "Great: Double Diapason 16, Open Diapason 8 | Swell: Oboe 8",
        plays: "right-hand voice on Swell, left-hand voice on Great",
        texture: "two-voices",
        says: "Double Diapason 16 on the Great makes the left hand's bass heavy and slow.",
      },
    ],
    silent: [
      { organ: "Hauptwerk: Principal 8 (Bordun 16)", plays: "left-hand bass on Hauptwerk" },
      { organ: "Pedal: Subbass 16, Oktave 8", plays: "bass on Pedal" },
    ],
  },
};
