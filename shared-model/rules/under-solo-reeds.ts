import { hasAnyKind, kindBits, type PartSound } from "../acoustics/part-sound.ts";
import { compareFeet, type Foot, footOf } from "../pitch/foot.ts";
import { isOneSilent } from "./balance.ts";
import { agree, allNamed, named, soundsAt } from "./naming.ts";
import { FEET_2, FEET_4 } from "./pitches.ts";
import type { PairRule, PartContext } from "./rule.ts";
import { GREAT_REED_SOLOS } from "./schools.ts";

const FOUR_UNDER_SOFT = 60;
const TOO_BRIGHT = 150;
const TOO_THIN = 160;

const SOFT_REEDS = kindBits([
  "voix-humaine",
  "regal",
  "cromorne",
  "oboe",
  "clarinet",
  "musette",
  "schalmei",
  "dulcian",
]);
const GREAT_REEDS = kindBits(["tuba", "horizontal-trumpet"]);

/** What lies under the solo by the trade's habit. */
type Ground = "one soft eight" | "eights and fours" | "principals";

function wanted(solo: PartSound, context: PartContext): Ground | null {
  const { texture } = context.section;
  if (hasAnyKind(solo, GREAT_REEDS) || (texture !== null && GREAT_REED_SOLOS.has(texture) && solo.chorusReed !== 0))
    return "principals";
  if (solo.chorusReed !== 0 || solo.cornets > 0 || solo.tierces > 0) return "eights and fours";
  if (hasAnyKind(solo, SOFT_REEDS)) return "one soft eight";
  const flutesOnly = (solo.principal | solo.string | solo.celeste | solo.reed | solo.mutation | solo.compound) === 0;
  return flutesOnly && solo.flute !== 0 ? "one soft eight" : null;
}

function weighed(solo: PartSound, ground: PartSound, context: PartContext): number {
  if (isOneSilent(solo, ground)) return 0;
  const asked = wanted(solo, context);
  if (asked === null) return 0;
  if (asked === "principals") return ground.principal === 0 && ground.reed === 0 ? -TOO_THIN : 0;
  if (ground.mixtures > 0 || (ground.plain & FEET_2) !== 0) return -TOO_BRIGHT;
  return asked === "one soft eight" && (ground.plain & FEET_4) !== 0 ? -FOUR_UNDER_SOFT : 0;
}

export const underSoloReeds: PairRule = {
  id: "under-solo-reeds",
  conventions: [40],
  reads: "pair",
  statement:
    "Under a soft reed or a flute lies one stopped or soft open 8; under a trumpet, cornet or tierce 8, or 8 and 4; under a tuba or chamade a chorus of principals.",
  why: "The accompaniment is measured by the solo: what carries a tuba drowns a vox humana.",
  source: "bedos-1766",
  severity: "note",
  yieldsToPrescription: true,
  applies: (first, second) => first.part.role === "melody" && second.part.role === "accompaniment",
  most: () => 0,
  weigh: weighed,
  words: (_solo, _ground, _soloContext, groundContext, heard, points) => {
    const [solo, under] = [named(heard.first.stops), named(heard.second.stops)];
    if (points === -TOO_THIN) {
      const principal = heard.second.undrawn.find((each) => each.stop.kinds.includes("principal"));
      return {
        text: `${solo} ${agree(heard.first.stops, "wants", "want")} principals under ${agree(heard.first.stops, "it", "them")}; ${under} on the ${groundContext.keyboard.name} ${agree(heard.second.stops, "is", "are")} too thin.`,
        remedy: principal
          ? `Draw ${principal.label}.`
          : `The ${groundContext.keyboard.name} has no principals: choose a milder solo.`,
      };
    }
    const isTooHigh = (foot: Foot | null): boolean =>
      foot !== null &&
      (points === -FOUR_UNDER_SOFT ? compareFeet(foot, footOf(4)) === 0 : compareFeet(foot, footOf(4)) > 0);
    const high = heard.second.stops.filter(
      (each) => each.stop.ranks > 1 || isTooHigh(soundsAt(each.stop, groundContext)),
    );
    // What an octave coupler brings down the line has no length of its own here.
    const bright = high.length > 0 ? high : heard.second.stops;
    return {
      text: `${named(bright)} on the ${groundContext.keyboard.name} ${agree(bright, "is", "are")} too bright under ${solo}.`,
      remedy: `Take ${allNamed(bright)} off.`,
      stops: bright.map((each) => each.stop.id),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Positif: Cromorne 8 | Grand-Orgue: Bourdon 8, Flûte 4",
        plays: "melody on Positif, accompaniment on Grand-Orgue",
        says: "Flûte 4 on the Grand-Orgue is too bright under Cromorne 8.",
      },
      {
        organ: "Solo: Tuba 8 | Great: Stopped Diapason 8 (Open Diapason 8)",
        plays: "melody on Solo, accompaniment on Great",
        says: "Tuba 8 wants principals under it; Stopped Diapason 8 on the Great is too thin.",
      },
      {
        organ: "Récit: Cornet V | Positif: Bourdon 8, Doublette 2",
        plays: "melody on Récit, accompaniment on Positif",
        says: "Doublette 2 on the Positif is too bright under Cornet V.",
      },
    ],
    silent: [
      {
        organ: "Positif: Cromorne 8 | Grand-Orgue: Bourdon 8, Montre 8",
        plays: "melody on Positif, accompaniment on Grand-Orgue",
      },
      {
        organ: "Great: Trumpet 8 | Choir: Stopped Diapason 8, Flute 4",
        plays: "melody on Great, accompaniment on Choir",
      },
    ],
  },
};
