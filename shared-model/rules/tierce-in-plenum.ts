import { hasAnyKind, kindBits } from "../acoustics/part-sound.ts";
import { agree, idsOf, leaveOut, named, ofKinds } from "./naming.ts";
import { reachesTierce } from "./reach-facts.ts";
import type { PartContext, PartRule } from "./rule.ts";
import { isChorus } from "./schools.ts";

const AGAINST_THE_SCHOOL = 400;
const IN_A_FUGUE = 100;
const WELCOME = 40;

const PLAIN_OR_COMPOUND = kindBits(["tierce", "sesquialtera", "tertian", "cornet"]);

const forbidding = (context: PartContext): boolean => {
  const { tradition, texture } = context.section;
  return (
    (tradition === "french-classical" && texture === "plein-jeu") ||
    tradition === "italian-renaissance" ||
    tradition === "spanish"
  );
};
const welcoming = (context: PartContext): boolean =>
  context.section.tradition === "central-german" || context.section.tradition === "english-18c";
const isPlainFugue = (context: PartContext): boolean =>
  context.section.texture === "fugue" && context.section.tradition !== "north-german";

export const tierceInPlenum: PartRule = {
  id: "tierce-in-plenum",
  conventions: [5],
  reads: "part",
  statement:
    "The plein jeu, the ripieno and the lleno hold no third; central German and English choruses welcome one; a fugue elsewhere is clearer without.",
  why: "A third in the chorus gives it a reedy edge, which some schools want and others shut out.",
  source: "adlung-1768-plenum",
  severity: "warning",
  yieldsToPrescription: true,
  applies: (context) => isChorus(context) && (forbidding(context) || welcoming(context) || isPlainFugue(context)),
  most: (context) => (welcoming(context) && reachesTierce(context) ? WELCOME : 0),
  weigh: (sound, context) => {
    if (sound.tierces === 0) return 0;
    if (forbidding(context)) return -AGAINST_THE_SCHOOL;
    if (welcoming(context)) return sound.mixtures > 0 || sound.tierceCompounds > 0 ? WELCOME : 0;
    return -IN_A_FUGUE;
  },
  words: (sound, context, heard, points) => {
    const plain = ofKinds(heard.stops, ["tierce", "sesquialtera", "tertian", "cornet"]);
    const thirds =
      hasAnyKind(sound, PLAIN_OR_COMPOUND) && plain.length > 0 ? plain : heard.stops.filter((each) => each.stop.tierce);
    if (points > 0)
      return {
        text: `${named(thirds)} ${agree(thirds, "gives", "give")} the chorus the third that this school welcomes.`,
        stops: idsOf(thirds),
      };
    const where = forbidding(context) ? "this school keeps it out" : "it clouds a fugue";
    return {
      text: `${named(thirds)} ${agree(thirds, "brings", "bring")} a third into the chorus; ${where}.`,
      remedy: leaveOut(thirds),
      stops: idsOf(thirds),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Grand-Orgue: Montre 8, Bourdon 8, Prestant 4, Doublette 2, Tierce 1 3/5, Fourniture IV",
        plays: "plenum on Grand-Orgue",
        texture: "plein-jeu",
        tradition: "french-classical",
        says: "Tierce 1 3/5 brings a third into the chorus; this school keeps it out.",
      },
      {
        organ: "Hauptwerk: Principal 8, Oktave 4, Oktave 2, Sesquialtera II, Mixtur IV",
        plays: "plenum on Hauptwerk",
        texture: "organo-pleno",
        tradition: "central-german",
        says: "Sesquialtera II gives the chorus the third that this school welcomes.",
      },
      {
        organ: "Great: Open Diapason 8, Principal 4, Fifteenth 2, Sesquialtera III",
        plays: "plenum on Great",
        texture: "fugue",
        says: "Sesquialtera III brings a third into the chorus; it clouds a fugue.",
      },
    ],
    silent: [
      {
        organ: "Grand-Orgue: Montre 8, Bourdon 8, Prestant 4, Doublette 2, Fourniture IV (Tierce 1 3/5)",
        plays: "plenum on Grand-Orgue",
        texture: "plein-jeu",
        tradition: "french-classical",
      },
      {
        organ: "Hauptwerk: Principal 8, Oktave 4, Oktave 2, Sesquialtera II, Mixtur IV",
        plays: "plenum on Hauptwerk",
        texture: "organo-pleno",
        tradition: "north-german",
      },
    ],
  },
};
