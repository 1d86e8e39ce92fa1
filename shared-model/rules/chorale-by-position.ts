import type { PartSound } from "../acoustics/part-sound.ts";
import { footOf } from "../pitch/foot.ts";
import { KIND_GROUPS } from "../stoplist/kind.ts";
import { agree, draw, named, The, undrawnAt } from "./naming.ts";
import { FEET_8 } from "./pitches.ts";
import type { PartContext, PartRule } from "./rule.ts";
import { GERMAN_BAROQUE } from "./schools.ts";

const CLEAR = 100;
const PALE = -100;

const SOPRANO: ReadonlySet<string> = new Set(["chorale-in-soprano", "ornamented-chorale", "melody-over-accompaniment"]);
const TENOR: ReadonlySet<string> = new Set(["chorale-in-tenor", "melody-in-tenor"]);
const isTenor = (context: PartContext): boolean =>
  context.section.texture !== null && TENOR.has(context.section.texture);

/** A soprano tune wants a high or reedy colour, a tenor one an 8' reed or principal. */
function isClear(sound: PartSound, context: PartContext): boolean {
  if ((sound.reed & FEET_8) !== 0 || sound.cornets > 0 || sound.tierceCompounds > 0) return true;
  if (isTenor(context)) return (sound.principal & FEET_8) !== 0 || sound.tierces > 0;
  return sound.mutation !== 0 || sound.cover2 !== 0 || (sound.principal & FEET_8) !== 0;
}

export const choraleByPosition: PartRule = {
  id: "chorale-by-position",
  conventions: [37],
  reads: "part",
  statement:
    "A chorale tune in the soprano has a clear colour (tierce, cornet, reed); in the tenor an 8' reed or principal.",
  why: "Everyone must be able to follow the tune among the other voices.",
  source: "scheidt-1624",
  severity: "note",
  yieldsToPrescription: true,
  applies: ({ part, section }) =>
    part.role === "melody" &&
    part.hands !== "feet" &&
    section.texture !== null &&
    GERMAN_BAROQUE.has(section.tradition) &&
    (SOPRANO.has(section.texture) || TENOR.has(section.texture)),
  most: () => CLEAR,
  weigh: (sound, context) => (isClear(sound, context) ? CLEAR : sound.cover8 === 0 ? 0 : PALE),
  atMost: (now, all, context) => (isClear(all, context) ? CLEAR : now.cover8 === 0 ? 0 : PALE),
  words: (_sound, context, heard, points) => {
    const where = isTenor(context) ? "tenor" : "soprano";
    if (points > 0)
      return {
        text: `${named(heard.stops)} ${agree(heard.stops, "makes", "make")} the chorale clear in the ${where}.`,
      };
    const reed = undrawnAt(heard, footOf(8), context, KIND_GROUPS.reed);
    const other = heard.undrawn.find(
      (each) =>
        each.silent.length === 0 &&
        !each.stop.off &&
        each.stop.kinds.some((kind) => kind === "sesquialtera" || kind === "cornet" || kind === "nasard"),
    );
    const principal = undrawnAt(heard, footOf(8), context, ["principal"]);
    return {
      text: `${named(heard.stops)} ${agree(heard.stops, "is", "are")} pale for a chorale in the ${where}.`,
      remedy: draw(
        isTenor(context) ? (reed ?? principal) : (other ?? reed ?? principal),
        `${The(context)} has no clearer colour.`,
      ),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Rückpositiv: Gedackt 8, Flöte 4, Sesquialtera II",
        plays: "melody on Rückpositiv",
        texture: "chorale-in-soprano",
        tradition: "north-german",
        says: "Gedackt 8, Flöte 4 and Sesquialtera II make the chorale clear in the soprano.",
      },
      {
        organ: "Oberwerk: Gedackt 8, Flöte 4 (Trompete 8)",
        plays: "melody on Oberwerk",
        texture: "chorale-in-tenor",
        tradition: "central-german",
        says: "Gedackt 8 and Flöte 4 are pale for a chorale in the tenor.",
      },
      {
        organ: "Oberwerk: Trompete 8",
        plays: "melody on Oberwerk",
        texture: "chorale-in-tenor",
        tradition: "central-german",
        says: "Trompete 8 makes the chorale clear in the tenor.",
      },
      {
        organ: "Rückpositiv: Gedackt 8 (Sesquialtera II, Krummhorn 8)",
        plays: "melody on Rückpositiv",
        texture: "chorale-in-soprano",
        tradition: "north-german",
        says: "Gedackt 8 is pale for a chorale in the soprano.",
      },
    ],
    silent: [
      { organ: "Rückpositiv: Gedackt 8, Flöte 4, Sesquialtera II", plays: "melody on Rückpositiv" },
      {
        organ: "Oberwerk: Gedackt 8, Flöte 4 (Trompete 8)",
        plays: "melody on Oberwerk",
        texture: "chorale-in-tenor",
        tradition: "german-romantic",
      },
    ],
  },
};
