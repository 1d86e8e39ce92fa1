import type { Dynamic, Tradition } from "../music/texture.ts";
import { divisionKinds } from "../stoplist/keyboard-kind.ts";
import { listed, type PartContext, type PlacingRule } from "./rule.ts";
import { isChorus } from "./schools.ts";

/** What each coupler between the hands' keyboards costs in a school of choruses in contrast. */
const APART: Readonly<Partial<Record<Tradition, number>>> = { "north-german": -80, "english-18c": -80 };
const NOT_COUPLED = -50;
const STRONG: ReadonlySet<Dynamic> = new Set(["mf", "f", "ff", "fff"]);

const toKeyboard = (context: PartContext): readonly string[] =>
  context.couplers
    .filter((each) => each.to === context.keyboard.name && each.from !== each.to)
    .map((each) => each.name);

function couples(tradition: Tradition, dynamic: Dynamic | null): boolean {
  if (tradition === "german-romantic") return dynamic !== null && STRONG.has(dynamic);
  return tradition === "french-classical" || tradition === "english-cathedral" || tradition === "french-symphonic";
}

/** Couplers at the unison that bring another keyboard to this main one. */
const available = (context: PartContext): readonly string[] =>
  context.instrument.couplers
    .filter((each) => each.to === context.keyboard.name && each.from !== each.to && each.pitch === 8 && !each.fixed)
    .map((each) => each.name);

const SCHOOL: Readonly<Partial<Record<Tradition, string>>> = {
  "north-german": "North German choruses stand in contrast, uncoupled",
  "english-18c": "The English organ of the time did not couple its manuals",
  "french-classical": "The French classical chorus couples the Positif to the main keyboard",
  "english-cathedral": "English practice since the 19th century couples the Swell to the Great",
  "french-symphonic": "The French symphonic school couples all keyboards to the main one",
  "german-romantic": "From mf the German romantic school couples the manuals",
};

export const manualCouplerBySchool: PlacingRule = {
  id: "manual-coupler-by-school",
  conventions: [33],
  reads: "placing",
  statement: "Keyboards are coupled for a chorus as the school does it, and only into a solo, never out of it.",
  why: "Some schools set choruses against each other, others build one of all.",
  source: "common practice",
  severity: "note",
  weigh: (context) => {
    // A recipe names its own couplers, and these are weighed with it.
    if (context.prescription !== null || context.keyboard.kind !== "manual" || !isChorus(context)) return 0;
    const { tradition, dynamic } = context.section;
    const each = APART[tradition];
    if (each !== undefined) return each * toKeyboard(context).length;
    if (!couples(tradition, dynamic) || toKeyboard(context).length > 0) return 0;
    const main = divisionKinds(context.instrument).get(context.keyboard.name)?.has("main") === true;
    return main && available(context).length > 0 ? NOT_COUPLED : 0;
  },
  words: (context) => {
    const school = SCHOOL[context.section.tradition] ?? "The school couples otherwise";
    const on = toKeyboard(context);
    if (on.length > 0)
      return {
        text: `${school}; ${listed(on)} ${on.length === 1 ? "is" : "are"} on.`,
        remedy: `Take ${listed(on)} off.`,
      };
    return { text: `${school}; the ${context.keyboard.name} stands alone.`, remedy: `Draw ${available(context)[0]}.` };
  },
  examples: {
    speaks: [
      {
        organ: "Hauptwerk: Principal 8, Oktave 4 | Rückpositiv: Principal 4",
        plays: "plenum on Hauptwerk",
        tradition: "north-german",
        couplers: ["Rückpositiv to Hauptwerk"],
        says: "North German choruses stand in contrast, uncoupled; Rückpositiv to Hauptwerk is on.",
      },
      {
        organ: "Great: Open Diapason 8, Principal 4 | Swell: Open Diapason 8",
        plays: "plenum on Great",
        tradition: "english-18c",
        couplers: ["Swell to Great"],
        says: "The English organ of the time did not couple its manuals; Swell to Great is on.",
      },
    ],
    silent: [
      {
        organ: "Hauptwerk: Principal 8, Oktave 4 | Rückpositiv: Principal 4",
        plays: "plenum on Hauptwerk",
        tradition: "north-german",
      },
      {
        organ: "Grand-Orgue: Montre 8 | Positif: Montre 4",
        plays: "plenum on Grand-Orgue",
        tradition: "french-classical",
        couplers: ["Positif to Grand-Orgue"],
      },
    ],
  },
};
