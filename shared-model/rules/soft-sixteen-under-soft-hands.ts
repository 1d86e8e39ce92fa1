import type { PartSound } from "../acoustics/part-sound.ts";
import { footOf } from "../pitch/foot.ts";
import type { Division } from "../stoplist/instrument.ts";
import { isOneSilent } from "./balance.ts";
import { agree, idsOf, named, ofKinds, soundingAt } from "./naming.ts";
import { FEET_16 } from "./pitches.ts";
import type { PairRule, PartContext } from "./rule.ts";

/** A murmur: of two basses alike in all else the softer one is drawn. */
const HEAVY = 25;

const SIXTEEN = footOf(16);

const hasSoftSixteen = (division: Division): boolean =>
  division.stops.some(
    (stop) =>
      !stop.off &&
      stop.kinds.includes("stopped-flute") &&
      stop.pitch?.over === SIXTEEN.over &&
      stop.pitch.under === SIXTEEN.under,
  );

/** Soft hands: flutes and strings alone. */
const isSoft = (hands: PartSound): boolean =>
  hands.principal === 0 && hands.reed === 0 && hands.compound === 0 && hands.mutation === 0;

/** A recipe that asks for the principal by name, and not as one of several, knows why. */
function asksForIt({ prescribed }: PartContext): boolean {
  return (
    prescribed?.must.some(
      ({ kind, pitch }) => kind === "principal" && pitch?.over === SIXTEEN.over && pitch.under === SIXTEEN.under,
    ) ?? false
  );
}

function weighed(bass: PartSound, hands: PartSound, bassContext: PartContext): number {
  if (isOneSilent(bass, hands) || !isSoft(hands)) return 0;
  if ((bass.principal & FEET_16) === 0 || asksForIt(bassContext)) return 0;
  return hasSoftSixteen(bassContext.keyboard) ? -HEAVY : 0;
}

export const softSixteenUnderSoftHands: PairRule = {
  id: "soft-sixteen-under-soft-hands",
  conventions: [14],
  reads: "pair",
  statement: "Under flutes and strings the feet take the stopped 16; the open principal 16 waits for a chorus.",
  why: "A stopped 16 carries soft chords without drawing the ear to itself.",
  source: "common practice",
  severity: "note",
  // Recipes often leave free which 16 it is; which one suits the hands is still to be said.
  yieldsToPrescription: false,
  // The hands' own ground: the accompaniment where there is one, else what both hands play.
  applies: (first, second) => {
    if (first.part.role !== "bass" || first.part.hands !== "feet" || first.keyboard.kind !== "pedal") return false;
    const ground = second.section.roles.has("accompaniment") ? "accompaniment" : "plenum";
    return second.part.role === ground && second.part.hands !== "feet";
  },
  most: () => 0,
  weigh: weighed,
  words: (_bass, _hands, bassContext, handsContext, heard) => {
    const deep = soundingAt(ofKinds(heard.first.stops, ["principal"]), SIXTEEN, bassContext);
    const [soft] = soundingAt(ofKinds(heard.first.undrawn, ["stopped-flute"]), SIXTEEN, bassContext);
    return {
      text: `${named(deep)} ${agree(deep, "is", "are")} much under ${named(heard.second.stops)} on the ${handsContext.keyboard.name}.`,
      remedy: soft
        ? `Draw ${soft.label} instead.`
        : `Leave ${named(deep)} for the chorus: the soft 16' is drawn beside it.`,
      stops: idsOf(deep),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Hauptwerk: Gedackt 8 | Pedal: Principal 16, Oktave 8 (Subbass 16)",
        plays: "bass on Pedal, accompaniment on Hauptwerk",
        says: "Principal 16 is much under Gedackt 8 on the Hauptwerk.",
      },
      {
        organ: "Récit: Viole de gambe 8, Voix céleste 8 | Pédale: Contrebasse 16, Flûte 8 (Soubasse 16)",
        plays: "bass on Pédale, plenum on Récit",
        says: "Contrebasse 16 is much under Viole de gambe 8 and Voix céleste 8 on the Récit.",
      },
    ],
    silent: [
      {
        organ: "Hauptwerk: Gedackt 8 | Pedal: Subbass 16, Oktave 8 (Principal 16)",
        plays: "bass on Pedal, accompaniment on Hauptwerk",
      },
      // No softer 16 is there.
      {
        organ: "Hauptwerk: Gedackt 8 | Pedal: Principal 16, Oktave 8",
        plays: "bass on Pedal, accompaniment on Hauptwerk",
      },
      {
        organ: "Hauptwerk: Principal 8, Oktave 4 | Pedal: Principal 16, Oktave 8 (Subbass 16)",
        plays: "bass on Pedal, accompaniment on Hauptwerk",
      },
    ],
  },
};
