import type { PartSound } from "../acoustics/part-sound.ts";
import { footOf } from "../pitch/foot.ts";
import { KIND_GROUPS } from "../stoplist/kind.ts";
import { agree, draw, idsOf, leaveOut, named, ofKinds, reedsOf, soundingAt, The, the, undrawnAt } from "./naming.ts";
import { FEET_4, FEET_8, FEET_16 } from "./pitches.ts";
import type { PartContext, PartRule } from "./rule.ts";
import { GERMAN_BAROQUE, ROMANTIC } from "./schools.ts";

const NO_GROUND = 100;
const CHORUS_WITHOUT_FONDS = 200;
const MONTRE_IN_GRAND_JEU = 60;

/** French pieces in which a reed is one voice among several, on Bourdon and Prestant. */
const FRENCH_VOICES: ReadonlySet<string> = new Set([
  "fugue-grave",
  "fugue-a-5",
  "quatuor",
  "duo",
  "trio-two-trebles",
  "trio-three-keyboards",
]);

type Lack = "none" | "bourdon-and-prestant" | "diapason" | "flute" | "fonds" | "montre";

function lack(sound: PartSound, context: PartContext): Lack {
  if (sound.reed === 0) return "none";
  const flues = sound.principal | sound.flute | sound.string;
  const { tradition, texture } = context.section;
  const { role } = context.part;
  if (tradition === "french-classical") {
    if (texture === "grand-jeu")
      return (sound.principal & FEET_8) !== 0 && (sound.chorusReed & FEET_8) !== 0 ? "montre" : "none";
    if (texture === null || !FRENCH_VOICES.has(texture)) return "none";
    return (flues & (FEET_8 | FEET_4)) === 0 ? "bourdon-and-prestant" : "none";
  }
  if (tradition === "english-18c") return (flues & FEET_8) === 0 ? "diapason" : "none";
  if (GERMAN_BAROQUE.has(tradition)) {
    return (sound.shortReed & FEET_8) !== 0 && (flues & (FEET_8 | FEET_4)) === 0 ? "flute" : "none";
  }
  // A romantic solo reed may sing alone; a chorus of reeds stands on its 8' fonds.
  return role === "plenum" && (sound.chorusReed & (FEET_16 | FEET_8 | FEET_4)) !== 0 && (flues & FEET_8) === 0
    ? "fonds"
    : "none";
}

export const reedOnItsGround: PartRule = {
  id: "reed-on-its-ground",
  conventions: [34],
  reads: "part",
  statement:
    "A reed stands on the flues that its school puts under it: Bourdon and Prestant, a diapason, a flute, the fonds. A romantic or French solo reed may sing alone.",
  why: "The flue rounds the tone and helps the speech.",
  source: "boyvin-1690",
  severity: "note",
  yieldsToPrescription: true,
  applies: ({ part, section }) =>
    part.hands !== "feet" &&
    section.tradition !== "spanish" &&
    section.tradition !== "italian-renaissance" &&
    (part.role === "plenum" || !(section.tradition === "neutral" || ROMANTIC.has(section.tradition))),
  most: () => 0,
  weigh: (sound, context) => {
    const what = lack(sound, context);
    return what === "none"
      ? 0
      : what === "fonds"
        ? -CHORUS_WITHOUT_FONDS
        : what === "montre"
          ? -MONTRE_IN_GRAND_JEU
          : -NO_GROUND;
  },
  words: (sound, context, heard) => {
    const what = lack(sound, context);
    const reeds = reedsOf(heard.stops);
    const place = `on ${the(context)}`;
    if (what === "montre") {
      const montres = soundingAt(ofKinds(heard.stops, ["principal"]), footOf(8), context);
      return {
        text: `${named(montres)} ${place} ${agree(montres, "thickens", "thicken")} the grand jeu: its reeds stand on Bourdon and Prestant.`,
        remedy: leaveOut(montres),
        stops: idsOf(montres),
      };
    }
    const ground = {
      none: "",
      "bourdon-and-prestant": "a Bourdon or a Prestant",
      diapason: "a diapason",
      flute: "a flute",
      fonds: "an 8' flue",
      montre: "",
    }[what];
    const serving =
      undrawnAt(
        heard,
        footOf(8),
        context,
        what === "diapason"
          ? ["stopped-flute", "principal"]
          : what === "fonds"
            ? KIND_GROUPS.foundation
            : ["stopped-flute", "open-flute"],
      ) ?? (what === "fonds" || what === "diapason" ? undefined : undrawnAt(heard, footOf(4), context));
    return {
      text: `${named(reeds)} ${place} ${agree(reeds, "speaks", "speak")} without ${ground} under ${agree(reeds, "it", "them")}.`,
      remedy: draw(serving, `${The(context)} has none to draw.`),
      stops: idsOf(reeds),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Great: Trumpet 8 (Stopped Diapason 8)",
        plays: "melody on Great",
        tradition: "english-18c",
        says: "Trumpet 8 on the Great speaks without a diapason under it.",
      },
      {
        organ: "Rückpositiv: Krummhorn 8 (Gedackt 8)",
        plays: "melody on Rückpositiv",
        tradition: "north-german",
        says: "Krummhorn 8 on the Rückpositiv speaks without a flute under it.",
      },
      {
        organ: "Récit: Trompette 8, Clairon 4 (Flûte harmonique 8)",
        plays: "plenum on Récit",
        tradition: "french-symphonic",
        says: "Trompette 8 and Clairon 4 on the Récit speak without an 8' flue under them.",
      },
      {
        organ: "Grand-Orgue: Montre 8, Bourdon 8, Prestant 4, Trompette 8",
        plays: "plenum on Grand-Orgue",
        texture: "grand-jeu",
        tradition: "french-classical",
        says: "Montre 8 on the Grand-Orgue thickens the grand jeu: its reeds stand on Bourdon and Prestant.",
      },
      {
        organ: "Grand-Orgue: Trompette 8 (Prestant 4)",
        plays: "plenum on Grand-Orgue",
        texture: "fugue-grave",
        tradition: "french-classical",
        says: "Trompette 8 on the Grand-Orgue speaks without a Bourdon or a Prestant under it.",
      },
    ],
    silent: [
      {
        organ: "Récit: Trompette 8",
        plays: "melody on Récit",
        tradition: "french-classical",
        texture: "recit-de-trompette",
      },
      { organ: "Swell: Oboe 8", plays: "melody on Swell" },
      { organ: "Rückpositiv: Krummhorn 8, Rohrflöte 4", plays: "melody on Rückpositiv", tradition: "north-german" },
    ],
  },
};
