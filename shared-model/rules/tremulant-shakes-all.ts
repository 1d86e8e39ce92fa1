import { named } from "./naming.ts";
import type { PairRule } from "./rule.ts";

const SHAKEN_TOO = 150;
/** The chords waver and the tune does not: the tremulant was meant for the other keyboard. */
const SHAKEN_ALONE = 200;

export const tremulantShakesAll: PairRule = {
  id: "tremulant-shakes-all",
  conventions: [24],
  reads: "pair",
  statement:
    "A tremulant is for the solo: it leaves the accompaniment in peace, unless a source wants both shaken, and never shakes the accompaniment alone.",
  why: "Chords that waver with the tune hide what the tremulant was drawn for.",
  source: "boyvin-1690",
  severity: "note",
  yieldsToPrescription: false,
  applies: (first, second) =>
    first.part.role === "melody" && second.part.role === "accompaniment" && first.instrument.tremulants.length > 0,
  most: () => 0,
  weigh: (solo, ground, { prescription }) => {
    if (ground.tremulant === 0 || solo.stops === 0) return 0;
    if (solo.tremulant === 0) return -SHAKEN_ALONE;
    const asked = prescription?.tremulant;
    return asked === "required" || asked === "welcome" ? 0 : -SHAKEN_TOO;
  },
  words: (solo, _ground, soloContext, groundContext, heard) => {
    if (solo.tremulant === 0) {
      return {
        text: `The tremulant shakes the accompaniment of ${named(heard.second.stops)}, and not the solo of ${named(heard.first.stops)}.`,
        remedy: "Take the tremulant off.",
      };
    }
    const whole = soloContext.instrument.tremulants.includes("all");
    const quiet = soloContext.instrument.divisions.find(
      (each) =>
        each.kind === "manual" &&
        each !== soloContext.keyboard &&
        !soloContext.instrument.tremulants.includes(each.name),
    );
    return {
      text: `The tremulant shakes the accompaniment of ${named(heard.second.stops)} with the solo of ${named(heard.first.stops)}.`,
      remedy: whole
        ? "It is on the wind of the whole organ: use it only where the chords may waver too."
        : quiet
          ? `Play the accompaniment on the ${quiet.name}, which has no tremulant.`
          : `Take the tremulant of the ${groundContext.keyboard.name} off.`,
    };
  },
  examples: {
    speaks: [
      {
        organ: "Positif: Cromorne 8 | Grand-Orgue: Bourdon 8",
        plays: "melody on Positif, accompaniment on Grand-Orgue",
        tremulants: ["all"],
        says: "The tremulant shakes the accompaniment of Bourdon 8 with the solo of Cromorne 8.",
      },
      {
        organ: "Swell: Oboe 8 | Great: Stopped Diapason 8",
        plays: "melody on Swell, accompaniment on Great",
        tremulants: ["Swell", "Great"],
        says: "The tremulant shakes the accompaniment of Stopped Diapason 8 with the solo of Oboe 8.",
      },
      {
        organ: "Swell: Stopped Diapason 8 | Great: Clarabella 8",
        plays: "melody on Great, accompaniment on Swell",
        tremulants: ["Swell"],
        says: "The tremulant shakes the accompaniment of Stopped Diapason 8, and not the solo of Clarabella 8.",
      },
    ],
    silent: [
      {
        organ: "Swell: Oboe 8 | Great: Stopped Diapason 8",
        plays: "melody on Swell, accompaniment on Great",
        tremulants: ["Swell"],
      },
      { organ: "Swell: Oboe 8 | Great: Stopped Diapason 8", plays: "melody on Swell, accompaniment on Great" },
    ],
  },
};
