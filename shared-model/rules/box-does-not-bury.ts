import type { PartSound } from "../acoustics/part-sound.ts";
import { isOneSilent } from "./balance.ts";
import { agree, named } from "./naming.ts";
import type { PairRule } from "./rule.ts";

const BURIED = 200;

const isShutAway = (sound: PartSound): boolean => sound.shut === 2 && sound.enclosed === sound.stops;

export const boxDoesNotBury: PairRule = {
  id: "box-does-not-bury",
  conventions: [25],
  reads: "pair",
  statement: "A solo does not start in a shut box behind an accompaniment that stands open.",
  why: "The box takes the top off the solo's sound, and the chords stand in front of it.",
  source: "common practice",
  severity: "warning",
  yieldsToPrescription: true,
  applies: (first, second) =>
    first.part.role === "melody" && (second.part.role === "accompaniment" || second.part.role === "plenum"),
  most: () => 0,
  weigh: (solo, ground) => (!isOneSilent(solo, ground) && isShutAway(solo) && ground.shut === 0 ? -BURIED : 0),
  words: (_solo, _ground, soloContext, _groundContext, heard) => ({
    text: `${named(heard.first.stops)} ${agree(heard.first.stops, "stands", "stand")} in a shut box behind ${named(heard.second.stops)} in the open.`,
    remedy: `Open the box of the ${soloContext.keyboard.name}, or start with it half open.`,
  }),
  examples: {
    speaks: [
      {
        organ: "Swell [box]: Oboe 8 | Great: Stopped Diapason 8",
        plays: "melody on Swell, accompaniment on Great",
        boxes: { Swell: "closed" },
        says: "Oboe 8 stands in a shut box behind Stopped Diapason 8 in the open.",
      },
      {
        organ: "Récit [box]: Flûte harmonique 8, Hautbois 8 | Positif: Bourdon 8",
        plays: "melody on Récit, accompaniment on Positif",
        boxes: { Récit: "closed" },
        says: "Flûte harmonique 8 and Hautbois 8 stand in a shut box behind Bourdon 8 in the open.",
      },
    ],
    silent: [
      {
        organ: "Swell [box]: Oboe 8 | Great: Stopped Diapason 8",
        plays: "melody on Swell, accompaniment on Great",
        boxes: { Swell: "half" },
      },
      {
        organ: "Swell [box]: Oboe 8 | Choir [box]: Stopped Diapason 8",
        plays: "melody on Swell, accompaniment on Choir",
        boxes: { Swell: "closed", Choir: "closed" },
      },
    ],
  },
};
