import { hasAnyKind, kindBits } from "../acoustics/part-sound.ts";
import { agree, idsOf, leaveOut, named, ofKinds, the } from "./naming.ts";
import type { PartRule } from "./rule.ts";
import { BEFORE_1800, isChorus } from "./schools.ts";

const OLD_CHORUS = 150;
const NEUTRAL_CHORUS = 40;
const KEEN = kindBits(["string"]);

export const stringsBySchool: PartRule = {
  id: "strings-by-school",
  conventions: [35],
  reads: "part",
  falling: true,
  statement: "A keen string gives edge to romantic fonds and does not blend into a baroque chorus.",
  why: "Its overtones lie over the principals instead of joining them.",
  source: "romantic-8ft-page",
  severity: "note",
  yieldsToPrescription: true,
  applies: (context) =>
    isChorus(context) && (context.section.tradition === "neutral" || BEFORE_1800.has(context.section.tradition)),
  most: () => 0,
  weigh: (sound, context) => {
    if (!hasAnyKind(sound, KEEN) || sound.mixtures === 0) return 0;
    return context.section.tradition === "neutral" ? -NEUTRAL_CHORUS : -OLD_CHORUS;
  },
  words: (_sound, context, heard) => {
    const strings = ofKinds(heard.stops, ["string"]);
    return {
      text: `${named(strings)} ${agree(strings, "does", "do")} not blend into the chorus of ${the(context)}.`,
      remedy: leaveOut(strings),
      stops: idsOf(strings),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Hauptwerk: Principal 8, Viola da Gamba 8, Oktave 4, Oktave 2, Mixtur IV",
        plays: "plenum on Hauptwerk",
        texture: "organo-pleno",
        tradition: "central-german",
        says: "Viola da Gamba 8 does not blend into the chorus of the Hauptwerk.",
      },
      {
        organ: "Great: Open Diapason 8, Viola da Gamba 8, Principal 4, Fifteenth 2, Mixture III",
        plays: "plenum on Great",
        texture: "plenum",
        says: "Viola da Gamba 8 does not blend into the chorus of the Great.",
      },
    ],
    silent: [
      {
        organ: "Manual I: Principal 8, Viola da Gamba 8, Oktave 4, Oktave 2, Mixtur IV",
        plays: "plenum on Manual I",
        texture: "full-romantic",
        tradition: "german-romantic",
      },
      {
        organ: "Hauptwerk: Viola da Gamba 8, Gedackt 8",
        plays: "plenum on Hauptwerk",
        texture: "organo-pleno",
        tradition: "central-german",
      },
    ],
  },
};
