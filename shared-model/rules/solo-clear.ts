import { levelOf } from "../acoustics/level.ts";
import { listed, type PairRule } from "./rule.ts";

/** Hundredths of a decibel by which the solo should stand above its accompaniment: common practice, by strengths. */
const CLEAR = 200;
const FULL_MARKS = 300;

export const soloClear: PairRule = {
  id: "solo-clear",
  conventions: [15],
  reads: "pair",
  statement: "A melody stands above its accompaniment in level.",
  why: "A tune that sinks into its chords is no longer a tune.",
  source: "bedos-1766",
  severity: "warning",
  yieldsToPrescription: true,
  applies: (first, second) => first.part.role === "melody" && second.part.role === "accompaniment",
  most: () => FULL_MARKS,
  weigh: (solo, ground) => {
    if (solo.stops === 0 || ground.stops === 0) return 0;
    const lead = levelOf(solo.power) - levelOf(ground.power);
    // One point for each decibel short of clear, down to six points.
    return lead >= CLEAR ? FULL_MARKS : Math.max(-600, FULL_MARKS - (CLEAR - lead));
  },
  words: (_solo, _ground, _soloContext, groundContext, heard, points) => {
    const [solo, ground] = [heard.first, heard.second].map((each) => listed(each.stops.map((one) => one.label)));
    if (points > 0)
      return { text: `${solo} ${heard.first.stops.length === 1 ? "stands" : "stand"} clear of ${ground}.` };
    return {
      text: `${ground} on the ${groundContext.keyboard.name} ${heard.second.stops.length === 1 ? "covers" : "cover"} the solo of ${solo}.`,
      remedy: `Take a stop off the ${groundContext.keyboard.name}, or draw a stronger solo.`,
    };
  },
  examples: {
    speaks: [
      {
        organ: "Swell: Viola 8 | Great: Open Diapason 8, Principal 4",
        plays: "melody on Swell, accompaniment on Great",
        says: "Open Diapason 8 and Principal 4 on the Great cover the solo of Viola 8.",
      },
      {
        organ: "Swell: Aeoline 8 | Great: Open Diapason 8",
        plays: "melody on Swell, accompaniment on Great",
        says: "Open Diapason 8 on the Great covers the solo of Aeoline 8.",
      },
    ],
    silent: [
      { organ: "Swell: Oboe 8 | Great: Stopped Diapason 8", plays: "melody on Swell, plenum on Great" },
      { organ: "Great: Open Diapason 8 | Pedal: Bourdon 16", plays: "plenum on Great, bass on Pedal" },
    ],
  },
};
