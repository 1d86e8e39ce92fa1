import { footOf } from "../pitch/foot.ts";
import { KIND_GROUPS } from "../stoplist/kind.ts";
import { agree, draw, idsOf, named, soundingAt, The, the, undrawnAt } from "./naming.ts";
import { FEET_16, FEET_32 } from "./pitches.ts";
import { mayReach } from "./reach-facts.ts";
import type { PartRule } from "./rule.ts";

const UNSUPPORTED = 500;

export const thirtyTwoNeedsSixteen: PartRule = {
  id: "thirty-two-needs-sixteen",
  conventions: [8],
  reads: "part",
  statement: "A 32 sounds over a 16, never without one.",
  why: "Its pitch is felt more than heard; the 16 is what the ear follows.",
  source: "common practice",
  severity: "warning",
  yieldsToPrescription: true,
  applies: (context) => mayReach(context, FEET_32),
  most: () => 0,
  weigh: (sound) => ((sound.plain & FEET_32) !== 0 && (sound.plain & FEET_16) === 0 ? -UNSUPPORTED : 0),
  atMost: (now, all) => ((now.plain & FEET_32) !== 0 && (all.plain & FEET_16) === 0 ? -UNSUPPORTED : 0),
  words: (_sound, context, heard) => {
    const deep = soundingAt(heard.stops, footOf(32), context);
    return {
      text: `${named(deep)} ${agree(deep, "has", "have")} no 16' over ${agree(deep, "it", "them")} in ${the(context)}.`,
      remedy: draw(
        undrawnAt(heard, footOf(16), context, [...KIND_GROUPS.foundation, ...KIND_GROUPS.reed]),
        `${The(context)} has no 16' for it.`,
      ),
      stops: idsOf(deep),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Pedal: Untersatz 32, Oktave 8 (Subbass 16)",
        plays: "bass on Pedal",
        says: "Untersatz 32 has no 16' over it in the Pedal.",
      },
      {
        organ: "Pédale: Bombarde 32, Trompette 8, Clairon 4",
        plays: "bass on Pédale",
        says: "Bombarde 32 has no 16' over it in the Pédale.",
      },
    ],
    silent: [
      { organ: "Pedal: Untersatz 32, Subbass 16, Oktave 8", plays: "bass on Pedal" },
      { organ: "Pedal: Subbass 16, Quinte 10 2/3, Oktave 8", plays: "bass on Pedal" },
    ],
  },
};
