import { idsOf, mixturesOf, named, the } from "./naming.ts";
import type { PartRule } from "./rule.ts";

const EACH = 50;
const MOST_COUNTED = 3;

export const lessUpperworkInLiveRoom: PartRule = {
  id: "less-upperwork-in-live-room",
  conventions: [20],
  reads: "part",
  falling: true,
  statement: "In a live room one mixture is enough.",
  why: "The room keeps the high notes sounding into one another.",
  source: "common practice",
  severity: "note",
  yieldsToPrescription: true,
  applies: (context) => context.instrument.room === "live",
  most: () => 0,
  weigh: (sound) => (sound.mixtures < 2 ? 0 : -EACH * Math.min(MOST_COUNTED, sound.mixtures - 1)),
  words: (_sound, context, heard) => {
    const mixtures = mixturesOf(heard.stops);
    return {
      text: `${named(mixtures)} together are much for so live a room.`,
      remedy: `Keep one of them on ${the(context)}.`,
      stops: idsOf(mixtures),
    };
  },
  examples: {
    speaks: [
      {
        organ: "live room | Great: Open Diapason 8, Principal 4, Fifteenth 2, Mixture IV, Cymbal III",
        plays: "plenum on Great",
        says: "Mixture IV and Cymbal III together are much for so live a room.",
      },
      {
        organ: "live room | Hauptwerk: Principal 8, Oktave 4, Mixtur IV, Scharff III, Zimbel II",
        plays: "plenum on Hauptwerk",
        says: "Mixtur IV, Scharff III and Zimbel II together are much for so live a room.",
      },
    ],
    silent: [
      { organ: "live room | Great: Open Diapason 8, Principal 4, Fifteenth 2, Mixture IV", plays: "plenum on Great" },
      { organ: "Great: Open Diapason 8, Principal 4, Fifteenth 2, Mixture IV, Cymbal III", plays: "plenum on Great" },
    ],
  },
};
