import { agree, idsOf, named } from "./naming.ts";
import { type HeardStop, listed, type RecipeRule, type Words } from "./rule.ts";

/** What is set at the console though no part hears it. */
export interface Idle {
  /** Drawn stops that no keyboard played brings to a part; in printed order. */
  readonly stops: readonly HeardStop[];
  /** Names of couplers that are on, of divisions that are shaken, of boxes that are not open. */
  readonly couplers: readonly string[];
  readonly tremulants: readonly string[];
  readonly boxes: readonly string[];
  /** Divisions whose unison is off though no part plays there. */
  readonly unisonOff: readonly string[];
  /** Drawn stops that no part hears because the unison of the keyboard that a part plays is off. */
  readonly silenced: readonly HeardStop[];
}

/** A sentence for each sort of thing that is set for nobody; empty when all of it is heard. */
export function idleWords(idle: Idle): readonly Words[] {
  const words: Words[] = [];
  const { stops, couplers, tremulants, boxes, unisonOff, silenced } = idle;
  if (stops.length > 0) {
    words.push({
      text: `${named(stops)} ${agree(stops, "is drawn, and no part hears it", "are drawn, and no part hears them")}.`,
      remedy: `Take ${agree(stops, "it", "them")} off, or play a part on the ${stops[0]?.stop.division}.`,
      stops: idsOf(stops),
    });
  }
  if (couplers.length > 0) {
    words.push({
      text: `${listed(couplers)} ${agree(couplers, "is on, and brings", "are on, and bring")} no part a stop.`,
      remedy: `Take ${agree(couplers, "it", "them")} off.`,
      stops: [],
    });
  }
  if (tremulants.length > 0) {
    const whose = tremulants.includes("all") ? "The tremulant" : `The tremulant of the ${listed(tremulants)}`;
    words.push({ text: `${whose} is on, and shakes no stop that is heard.`, remedy: "Take it off.", stops: [] });
  }
  if (boxes.length > 0) {
    words.push({
      text: `The box of the ${listed(boxes)} is set, and no part plays from it.`,
      remedy: "Leave it open.",
      stops: [],
    });
  }
  for (const division of new Set(silenced.map((each) => each.stop.division))) {
    const there = silenced.filter((each) => each.stop.division === division);
    words.push({
      text: `${named(there)} ${agree(there, "is", "are")} drawn, and the unison of the ${division} is off.`,
      remedy: `Turn the unison of the ${division} on, or take ${agree(there, "the stop", "the stops")} off.`,
      stops: idsOf(there),
    });
  }
  if (unisonOff.length > 0) {
    const text = `The unison of the ${listed(unisonOff)} is off, and no part plays there.`;
    words.push({ text, remedy: "Turn it on.", stops: [] });
  }
  return words;
}

export const nothingIdle: RecipeRule = {
  id: "nothing-idle",
  conventions: [9],
  reads: "recipe",
  statement: "Every stop, coupler, tremulant, box and unison off that is set serves some part.",
  why: "What is drawn for nothing is in the way of the next change, and often a slip of the hand.",
  source: "common practice",
  severity: "note",
  examples: {
    speaks: [
      {
        organ: "Hauptwerk: Gedackt 8 | Oberwerk: Principal 4",
        plays: "plenum on Hauptwerk",
        says: "Principal 4 is drawn, and no part hears it.",
      },
      {
        organ: "Great: Open Diapason 8 | Swell: Oboe 8, Mixture III",
        plays: "plenum on Great",
        says: "Oboe 8 and Mixture III are drawn, and no part hears them.",
      },
    ],
    silent: [
      {
        organ: "Hauptwerk: Gedackt 8 | Oberwerk: Principal 4",
        plays: "plenum on Hauptwerk",
        couplers: ["Oberwerk to Hauptwerk"],
      },
      { organ: "Great: Open Diapason 8 | Swell: (Oboe 8)", plays: "plenum on Great" },
    ],
  },
};
