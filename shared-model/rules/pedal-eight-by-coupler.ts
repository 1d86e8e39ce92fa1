import { footOf } from "../pitch/foot.ts";
import { agree, idsOf, named, soundingAt } from "./naming.ts";
import type { AdviceRule, HeardStop } from "./rule.ts";

export const pedalEightByCoupler: AdviceRule = {
  id: "pedal-eight-by-coupler",
  conventions: [11],
  reads: "advice",
  statement: "Where the pedal's 8 comes from a coupled manual, everything drawn there comes along.",
  why: "A coupler knows no stops: a solo or a mixture drawn later on that manual sounds in the feet too.",
  source: "common practice",
  severity: "note",
  advise: (_sound, context, heard) => {
    if (context.part.hands !== "feet" || context.keyboard.kind !== "pedal") return null;
    // A pull-down has never had anything of its own, and its player knows it.
    if (context.keyboard.stops.every((stop) => stop.off)) return null;
    // A floating division on the pedal's keys is the pedal's own.
    const manuals = context.reach.filter((division) => division.kind === "manual").map((division) => division.name);
    const isOfAManual = (each: HeardStop): boolean => manuals.includes(each.stop.division);
    const eights = soundingAt(heard.stops, footOf(8), context);
    if (eights.length === 0 || !eights.every(isOfAManual)) return null;
    const from = eights[0]?.stop.division;
    const along = heard.stops.filter((each) => each.stop.division === from);
    const others = along.filter((each) => !eights.includes(each));
    return {
      text:
        others.length === 0
          ? `The ${context.keyboard.name} has its 8 from the ${from}: ${named(eights)}.`
          : `The ${context.keyboard.name} has its 8 from the ${from}, and ${named(others)} ${agree(others, "comes", "come")} along.`,
      remedy: `What is drawn later on the ${from} sounds in the ${context.keyboard.name} too.`,
      stops: idsOf(along),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Hauptwerk: Gedackt 8 | Pedal: Subbass 16",
        plays: "bass on Pedal",
        couplers: ["Hauptwerk to Pedal"],
        says: "The Pedal has its 8 from the Hauptwerk: Gedackt 8.",
      },
      {
        organ: "Hauptwerk: Gedackt 8, Flöte 4 | Pedal: Subbass 16",
        plays: "accompaniment on Hauptwerk, bass on Pedal",
        couplers: ["Hauptwerk to Pedal"],
        says: "The Pedal has its 8 from the Hauptwerk, and Flöte 4 comes along.",
      },
    ],
    silent: [
      {
        organ: "Hauptwerk: Gedackt 8 | Pedal: Subbass 16, Oktave 8",
        plays: "bass on Pedal",
        couplers: ["Hauptwerk to Pedal"],
      },
      { organ: "Hauptwerk: Gedackt 8 | Pedal: Subbass 16", plays: "bass on Pedal" },
    ],
  },
};
