import { agree, idsOf, named, the } from "./naming.ts";
import { reachesOff } from "./reach-facts.ts";
import type { PartRule } from "./rule.ts";

export const stopOff: PartRule = {
  id: "stop-off",
  conventions: [29],
  reads: "part",
  statement: "A stop marked off is never drawn.",
  why: "It is dead, out of tune or ciphers, and whoever marked it knows the organ.",
  source: "common practice",
  severity: "error",
  yieldsToPrescription: false,
  applies: reachesOff,
  most: () => 0,
  forbids: (sound) => sound.dead > 0,
  weigh: () => 0,
  words: (_sound, context, heard) => {
    const dead = heard.stops.filter((each) => each.stop.off);
    const note = dead.length === 1 ? dead[0]?.stop.note : null;
    return {
      text: `${named(dead)} on ${the(context)} ${agree(dead, "is", "are")} marked off${note ? ` (${note})` : ""}.`,
      remedy: `Leave ${agree(dead, "it", "them")} out, or take the mark off when ${agree(dead, "it is", "they are")} mended.`,
      stops: idsOf(dead),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Hauptwerk: Trompete 8 off",
        plays: "melody on Hauptwerk",
        says: "Trompete 8 on the Hauptwerk is marked off.",
      },
      {
        organ: "Great: Open Diapason 8, Principal 4 off, Fifteenth 2 off",
        plays: "plenum on Great",
        says: "Principal 4 and Fifteenth 2 on the Great are marked off.",
      },
    ],
    silent: [
      { organ: "Hauptwerk: Principal 8 (Trompete 8 off)", plays: "melody on Hauptwerk" },
      { organ: "Great: Open Diapason 8, Principal 4", plays: "plenum on Great" },
    ],
  },
};
