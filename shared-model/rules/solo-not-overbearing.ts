import { isOneSilent, leadOf } from "./balance.ts";
import { agree, named } from "./naming.ts";
import type { PairRule, PartContext } from "./rule.ts";
import { GREAT_REED_SOLOS } from "./schools.ts";

/** Hundredths of a decibel that a solo may stand above its accompaniment, and one of a great reed: common practice. */
const SHOUTS = 1000;
const GREAT_REED_SHOUTS = 1300;
const MOST = 300;

const limit = (context: PartContext): number =>
  context.section.texture !== null && GREAT_REED_SOLOS.has(context.section.texture) ? GREAT_REED_SHOUTS : SHOUTS;

export const soloNotOverbearing: PairRule = {
  id: "solo-not-overbearing",
  conventions: [15],
  reads: "pair",
  statement: "A solo leads its accompaniment without shouting it down.",
  why: "The tune needs its harmony: both are one piece of music.",
  source: "common practice",
  severity: "note",
  yieldsToPrescription: true,
  applies: (first, second) => first.part.role === "melody" && second.part.role === "accompaniment",
  most: () => 0,
  weigh: (solo, ground, context) => {
    // 10 dB are ten times the power: most pairs need no logarithm.
    if (isOneSilent(solo, ground) || solo.power <= 10 * ground.power) return 0;
    const over = leadOf(solo, ground) - limit(context);
    return over <= 0 ? 0 : -Math.min(MOST, over);
  },
  words: (solo, ground, soloContext, groundContext, heard) => {
    const [more] = heard.second.undrawn;
    const calm =
      solo.enclosed > 0 && solo.shut < 2
        ? `Shut the box of the ${soloContext.keyboard.name} a little`
        : `Take a stop off the ${soloContext.keyboard.name}`;
    return {
      text: `${named(heard.first.stops)} on the ${soloContext.keyboard.name} ${agree(heard.first.stops, "drowns", "drown")} ${named(heard.second.stops)} on the ${groundContext.keyboard.name}.`,
      remedy:
        ground.shut > 0
          ? `${calm}, or open the box of the accompaniment.`
          : more
            ? `${calm}, or add ${more.label} to the accompaniment.`
            : `${calm}.`,
    };
  },
  examples: {
    speaks: [
      {
        organ: "Solo: Tuba 8 | Great: Dulciana 8 (Open Diapason 8)",
        plays: "melody on Solo, accompaniment on Great",
        says: "Tuba 8 on the Solo drowns Dulciana 8 on the Great.",
      },
      {
        organ: "Great: Trumpet 8, Open Diapason 8 | Swell [box]: Stopped Diapason 8",
        plays: "melody on Great, accompaniment on Swell",
        boxes: { Swell: "closed" },
        says: "Trumpet 8 and Open Diapason 8 on the Great drown Stopped Diapason 8 on the Swell.",
      },
    ],
    silent: [
      {
        organ: "Solo: Tuba 8 | Great: Open Diapason 8, Principal 4, Fifteenth 2",
        plays: "melody on Solo, accompaniment on Great",
      },
      {
        organ: "Great: Trumpet 8 | Swell [box]: Stopped Diapason 8",
        plays: "melody on Great, accompaniment on Swell",
        boxes: { Swell: "open" },
      },
    ],
  },
};
