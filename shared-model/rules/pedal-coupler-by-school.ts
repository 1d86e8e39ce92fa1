import type { Dynamic, Tradition } from "../music/texture.ts";
import type { PartContext, PlacingRule } from "./rule.ts";
import { listed } from "./rule.ts";

/** What each coupler to the pedal costs in a school whose pedal stands alone. */
const ALONE: Readonly<Partial<Record<Tradition, number>>> = {
  "north-german": -100,
  "central-german": -40,
  "english-18c": -60,
};
const NOT_COUPLED = -60;
const STRONG: ReadonlySet<Dynamic> = new Set(["mf", "f", "ff", "fff"]);

const toPedal = (context: PartContext): readonly string[] =>
  context.couplers.filter((each) => each.to === context.keyboard.name).map((each) => each.name);

/** Whether the school couples the hands' keyboard to the pedal, and this organ can. */
function isExpected(context: PartContext): boolean {
  const { tradition, dynamic } = context.section;
  const school =
    tradition === "english-cathedral" ||
    tradition === "french-symphonic" ||
    (tradition === "german-romantic" && dynamic !== null && STRONG.has(dynamic));
  return (
    school &&
    context.part.role === "bass" &&
    context.instrument.couplers.some((each) => each.to === context.keyboard.name && !each.fixed)
  );
}

const SCHOOL: Readonly<Partial<Record<Tradition, string>>> = {
  "north-german": "The north German pedal stands alone",
  "central-german": "The central German pedal stands alone where it can",
  "english-18c": "The English organ of the time had no pedal to couple to",
  "english-cathedral": "English practice couples the manual that is played to the pedal",
  "french-symphonic": "The French symphonic school couples the keyboards in use to the pedal",
  "german-romantic": "From mf the German romantic school couples the manual to the pedal",
};

export const pedalCouplerBySchool: PlacingRule = {
  id: "pedal-coupler-by-school",
  conventions: [32],
  reads: "placing",
  statement:
    "The pedal is coupled as the school does it: alone in the German baroque, coupled to the manual played in England and France since the 19th century.",
  why: "A German pedal was built as a full organ of its own, a later one as the manual's foundation.",
  source: "common practice",
  severity: "note",
  weigh: (context) => {
    // A recipe names its own couplers, and these are weighed with it.
    if (context.prescription !== null || context.keyboard.kind !== "pedal") return 0;
    const each = ALONE[context.section.tradition];
    if (each !== undefined) return each * toPedal(context).length;
    return isExpected(context) && toPedal(context).length === 0 ? NOT_COUPLED : 0;
  },
  words: (context) => {
    const school = SCHOOL[context.section.tradition] ?? "The school couples otherwise";
    const on = toPedal(context);
    if (on.length > 0)
      return {
        text: `${school}; ${listed(on)} ${on.length === 1 ? "is" : "are"} on.`,
        remedy: `Take ${listed(on)} off if the ${context.keyboard.name} has what the bass needs.`,
      };
    const couplers = context.instrument.couplers.filter((each) => each.to === context.keyboard.name && !each.fixed);
    return {
      text: `${school}; no coupler brings one to the ${context.keyboard.name}.`,
      remedy: `Draw ${couplers[0]?.name}.`,
    };
  },
  examples: {
    speaks: [
      {
        organ: "Hauptwerk: Principal 8 | Pedal: Subbass 16, Oktave 8",
        plays: "plenum on Hauptwerk, bass on Pedal",
        tradition: "north-german",
        couplers: ["Hauptwerk to Pedal"],
        says: "The north German pedal stands alone; Hauptwerk to Pedal is on.",
      },
      {
        organ: "Hauptwerk: Principal 8 | Oberwerk: Gedackt 8 | Pedal: Subbass 16",
        plays: "plenum on Hauptwerk, bass on Pedal",
        tradition: "central-german",
        couplers: ["Oberwerk to Pedal"],
        says: "The central German pedal stands alone where it can; Oberwerk to Pedal is on.",
      },
    ],
    silent: [
      {
        organ: "Hauptwerk: Principal 8 | Pedal: Subbass 16, Oktave 8",
        plays: "plenum on Hauptwerk, bass on Pedal",
        tradition: "north-german",
      },
      {
        organ: "Great: Open Diapason 8 | Pedal: Bourdon 16",
        plays: "plenum on Great, bass on Pedal",
        tradition: "english-cathedral",
        couplers: ["Great to Pedal"],
      },
    ],
  },
};
