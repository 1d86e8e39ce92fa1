import type { Tradition } from "../music/texture.ts";
import { agree, idsOf, named, ofKinds } from "./naming.ts";
import { type AdviceRule, listed } from "./rule.ts";
import { BEFORE_1800 } from "./schools.ts";

const MUSIC: Readonly<Partial<Record<Tradition, string>>> = {
  "french-classical": "French classical music",
  "italian-renaissance": "Italian music of the time",
  "north-german": "North German music",
  "central-german": "Central German music",
  "english-18c": "English music of the 18th century",
  spanish: "Spanish music of the time",
};
/** Schools of the 18th century and before that knew a box, in echoes. */
const HAD_BOXES: ReadonlySet<Tradition> = new Set(["english-18c", "spanish"]);

export const anachronism: AdviceRule = {
  id: "anachronism",
  conventions: [27],
  reads: "advice",
  statement: "Celestes, boxes and octave couplers in music older than they are: not wrong, but worth knowing.",
  why: "The organ at hand decides; whoever plays should know what the composer had.",
  source: "common practice",
  severity: "note",
  advise: (sound, context, heard) => {
    const { tradition } = context.section;
    if (!BEFORE_1800.has(tradition)) return null;
    const music = MUSIC[tradition] ?? "This music";
    const celestes = tradition === "italian-renaissance" ? [] : ofKinds(heard.stops, ["celeste"]);
    if (celestes.length > 0) {
      return {
        text: `${music} did not know ${named(celestes)}: ${agree(celestes, "it is", "they are")} younger.`,
        stops: idsOf(celestes),
      };
    }
    const octaves = context.couplers.filter((each) => each.pitch !== 8).map((each) => each.name);
    if (octaves.length > 0)
      return {
        text: `${music} did not know octave couplers: ${listed(octaves)} ${octaves.length === 1 ? "is" : "are"} younger.`,
      };
    if (sound.shut > 0 && !HAD_BOXES.has(tradition)) {
      return {
        text: `${music} did not know the box that the ${context.keyboard.name} plays from.`,
        remedy: "Leave it open, unless the organ is too strong otherwise.",
      };
    }
    return null;
  },
  examples: {
    speaks: [
      {
        organ: "Récit: Gambe 8, Voix céleste 8",
        plays: "plenum on Récit",
        tradition: "french-classical",
        says: "French classical music did not know Voix céleste 8: it is younger.",
      },
      {
        organ: "Swell [box]: Gedackt 8",
        plays: "accompaniment on Swell",
        tradition: "central-german",
        boxes: { Swell: "half" },
        says: "Central German music did not know the box that the Swell plays from.",
      },
    ],
    silent: [
      { organ: "Organo: Principale 8, Voce umana 8", plays: "plenum on Organo", tradition: "italian-renaissance" },
      {
        organ: "Swell [box]: Gedackt 8",
        plays: "accompaniment on Swell",
        tradition: "english-18c",
        boxes: { Swell: "half" },
      },
    ],
  },
};
