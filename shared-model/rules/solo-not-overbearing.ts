import { heardTogether, isOneSilent } from "./balance.ts";
import { ratioWords } from "./loudness-words.ts";
import { agree, named } from "./naming.ts";
import type { PairRule, PartContext } from "./rule.ts";
import { GREAT_REED_SOLOS } from "./schools.ts";

/** Hundredths of a phon that a solo may stand above its accompaniment, and one of a great reed: 10 are twice as loud. */
const SHOUTS = 1400;
const GREAT_REED_SHOUTS = 1800;
const TRIFLE = 100;
const MOST = 300;
/** Share of the accompaniment's loudness, in hundredths, under which it is drowned rather than outweighed. */
const HARDLY_LEFT = 40;

const limit = (context: PartContext): number =>
  context.section.texture !== null && GREAT_REED_SOLOS.has(context.section.texture) ? GREAT_REED_SHOUTS : SHOUTS;

export const soloNotOverbearing: PairRule = {
  id: "solo-not-overbearing",
  conventions: [15],
  reads: "pair",
  listens: true,
  statement: "A solo leads its accompaniment without shouting it down.",
  why: "The tune needs its harmony: both are one piece of music.",
  source: "common practice",
  severity: "note",
  yieldsToPrescription: true,
  applies: (first, second) => first.part.role === "melody" && second.part.role === "accompaniment",
  most: () => 0,
  weigh: (solo, ground, context) => {
    if (isOneSilent(solo, ground)) return 0;
    const over = heardTogether(solo, ground).lead - limit(context);
    return over <= TRIFLE ? 0 : -Math.min(MOST, over >> 1);
  },
  words: (solo, ground, soloContext, groundContext, heard) => {
    const [more] = heard.second.undrawn;
    const calm =
      solo.enclosed > 0 && solo.shut < 2
        ? `Shut the box of the ${soloContext.keyboard.name} a little`
        : `Take a stop off the ${soloContext.keyboard.name}`;
    const [tune, chords] = [named(heard.first.stops), named(heard.second.stops)];
    const { lead, otherKept } = heardTogether(solo, ground);
    const how =
      otherKept < HARDLY_LEFT || lead > GREAT_REED_SHOUTS
        ? `${agree(heard.first.stops, "drowns", "drown")} ${chords} on the ${groundContext.keyboard.name}`
        : `${agree(heard.first.stops, "is", "are")} rather strong for ${chords} on the ${groundContext.keyboard.name}: ${ratioWords(lead)}`;
    return {
      text: `${tune} on the ${soloContext.keyboard.name} ${how}.`,
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
      {
        organ: "Great: Trumpet 8 | Swell [box]: Stopped Diapason 8",
        plays: "melody on Great, accompaniment on Swell",
        boxes: { Swell: "open" },
        says: "Trumpet 8 on the Great is rather strong for Stopped Diapason 8 on the Swell: about three times as loud.",
      },
    ],
    silent: [
      {
        organ: "Solo: Tuba 8 | Great: Open Diapason 8, Principal 4, Fifteenth 2",
        plays: "melody on Solo, accompaniment on Great",
      },
      {
        organ: "Great: Trumpet 8 | Swell [box]: Stopped Diapason 8, Flute 4",
        plays: "melody on Great, accompaniment on Swell",
        boxes: { Swell: "open" },
      },
    ],
  },
};
