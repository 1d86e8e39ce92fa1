import type { PartSound } from "../acoustics/part-sound.ts";
import { agree, idsOf, leaveOut, mixturesOf, named, reedsOf, the } from "./naming.ts";
import type { PartContext, PartRule } from "./rule.ts";
import { isChorus } from "./schools.ts";

const PLEIN_JEU = -400;
const OTHER_SCHOOLS = -200;
const NORTH_GERMAN = -80;
const SHORT_REED = -100;
const GRAND_JEU_MIXTURE = -400;

function weighed(sound: PartSound, context: PartContext): number {
  const { tradition, texture } = context.section;
  if (texture === "grand-jeu") return sound.mixtures > 0 ? GRAND_JEU_MIXTURE : 0;
  if (sound.reed === 0) return 0;
  if (tradition === "french-classical") return texture === "plein-jeu" ? PLEIN_JEU : 0;
  if (tradition === "italian-renaissance" || tradition === "spanish") return OTHER_SCHOOLS;
  if (tradition === "north-german" || tradition === "central-german") return NORTH_GERMAN;
  return tradition === "neutral" && sound.shortReed !== 0 ? SHORT_REED : 0;
}

export const reedsInPlenum: PartRule = {
  id: "reeds-in-plenum",
  conventions: [28],
  reads: "part",
  falling: true,
  statement:
    "The plein jeu, the ripieno and the lleno hold no manual reeds, the German plenum seldom; the grand jeu holds no mixtures; English and romantic tuttis have all.",
  why: "Reeds and mixtures cover one another in the old choruses; the full organ of later schools is voiced for both.",
  source: "bedos-1766",
  severity: "warning",
  yieldsToPrescription: true,
  applies: isChorus,
  most: () => 0,
  weigh: weighed,
  words: (_sound, context, heard) => {
    if (context.section.texture === "grand-jeu") {
      const mixtures = mixturesOf(heard.stops);
      return {
        text: `${named(mixtures)} ${agree(mixtures, "does", "do")} not belong in a grand jeu, which is reeds, cornet and prestants.`,
        remedy: leaveOut(mixtures),
        stops: idsOf(mixtures),
      };
    }
    const reeds = reedsOf(heard.stops);
    const chorus =
      context.section.tradition === "french-classical"
        ? "a plein jeu"
        : context.section.tradition === "italian-renaissance"
          ? "a ripieno"
          : context.section.tradition === "spanish"
            ? "a lleno"
            : context.section.tradition === "neutral"
              ? "a flue chorus"
              : "a German plenum, whose reeds are in the feet";
    return {
      text: `${named(reeds)} on ${the(context)} ${agree(reeds, "stands", "stand")} out of ${chorus}.`,
      remedy: leaveOut(reeds),
      stops: idsOf(reeds),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Grand-Orgue: Montre 8, Bourdon 8, Prestant 4, Doublette 2, Fourniture IV, Trompette 8",
        plays: "plenum on Grand-Orgue",
        texture: "plein-jeu",
        tradition: "french-classical",
        says: "Trompette 8 on the Grand-Orgue stands out of a plein jeu.",
      },
      {
        organ: "Grand-Orgue: Bourdon 8, Prestant 4, Trompette 8, Clairon 4, Cornet V from C4, Fourniture IV",
        plays: "plenum on Grand-Orgue",
        texture: "grand-jeu",
        tradition: "french-classical",
        says: "Fourniture IV does not belong in a grand jeu, which is reeds, cornet and prestants.",
      },
      {
        organ: "Hauptwerk: Principal 8, Oktave 4, Oktave 2, Mixtur IV, Trompete 8",
        plays: "plenum on Hauptwerk",
        texture: "organo-pleno",
        tradition: "north-german",
        says: "Trompete 8 on the Hauptwerk stands out of a German plenum, whose reeds are in the feet.",
      },
    ],
    silent: [
      {
        organ: "Grand-Orgue: Bourdon 8, Prestant 4, Trompette 8, Clairon 4, Cornet V from C4",
        plays: "plenum on Grand-Orgue",
        texture: "grand-jeu",
        tradition: "french-classical",
      },
      {
        organ: "Great: Open Diapason 8, Principal 4, Fifteenth 2, Mixture III, Trumpet 8",
        plays: "plenum on Great",
        texture: "full-organ",
        tradition: "english-18c",
      },
      { organ: "Órgano: Flautado 8, Clarín 8", plays: "plenum on Órgano", texture: "batalla", tradition: "spanish" },
    ],
  },
};
