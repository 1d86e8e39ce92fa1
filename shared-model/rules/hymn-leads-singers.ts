import type { PartSound } from "../acoustics/part-sound.ts";
import { footOf } from "../pitch/foot.ts";
import { agree, draw, named, The, the, undrawnAt } from "./naming.ts";
import { FEET_4, FEET_8 } from "./pitches.ts";
import { mayReach } from "./reach-facts.ts";
import type { PartContext, PartRule } from "./rule.ts";

const LEADS = 200;
const SUFFICES = 100;
const TOO_LITTLE = -400;
const LAST_TOO_SMALL = -100;

const LEADING: ReadonlySet<string> = new Set([
  "hymn-verse",
  "hymn-verse-manual",
  "hymn-verse-last",
  "hymn-introduction",
]);

/** Every stop more leads better, or as well. */
function weighed(sound: PartSound, context: PartContext): number {
  if (sound.stops === 0) return 0;
  if (sound.cover8 === 0 || sound.cover4 === 0) return TOO_LITTLE;
  const { texture } = context.section;
  if (texture === "hymn-verse-last" && sound.mixtures === 0 && sound.reed === 0) return LAST_TOO_SMALL;
  return sound.cover2 !== 0 || sound.mixtures > 0 || texture === "hymn-introduction" ? LEADS : SUFFICES;
}

export const hymnLeadsSingers: PartRule = {
  id: "hymn-leads-singers",
  conventions: [20, 45],
  reads: "part",
  statement:
    "A crowd sings to 8 and 4 at least, as a rule to 8 4 2; the last verse has a mixture or a reed besides. Only a verse of prayer is softer.",
  why: "The octaves over the tune are what a singing crowd can hear.",
  source: "lesson-hymns",
  severity: "warning",
  yieldsToPrescription: true,
  applies: ({ part, section }) =>
    part.role === "plenum" &&
    section.texture !== null &&
    LEADING.has(section.texture) &&
    section.dynamic !== "ppp" &&
    section.dynamic !== "pp" &&
    section.dynamic !== "p",
  most: (context) => (mayReach(context, FEET_8) && mayReach(context, FEET_4) ? LEADS : 0),
  weigh: weighed,
  atMost: (_now, all, context) => weighed(all, context),
  words: (sound, context, heard, points) => {
    const stops = named(heard.stops);
    const does = (one: string, several: string): string => agree(heard.stops, one, several);
    if (points === LEADS) return { text: `${stops} on ${the(context)} ${does("leads", "lead")} the singers clearly.` };
    if (points === SUFFICES)
      return { text: `${stops} on ${the(context)} ${does("carries", "carry")} a lighter verse.` };
    if (points === LAST_TOO_SMALL) {
      const more = heard.undrawn.find(
        (each) => !each.stop.off && each.stop.kinds.some((kind) => kind === "mixture" || kind === "trumpet"),
      );
      return {
        text: `${stops} on ${the(context)} ${does("is", "are")} small for a last verse, which has a mixture or a reed.`,
        remedy: draw(more, `${The(context)} has neither: couple another manual.`),
      };
    }
    const octave = sound.cover8 === 0 ? footOf(8) : footOf(4);
    return {
      text: `${stops} on ${the(context)} ${does("is", "are")} too little for a crowd to sing to: no ${octave.over}'.`,
      remedy: draw(undrawnAt(heard, octave, context), `${The(context)} has no ${octave.over}': couple another manual.`),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Great: Open Diapason 8, Principal 4, Fifteenth 2",
        plays: "plenum on Great",
        texture: "hymn-verse",
        says: "Open Diapason 8, Principal 4 and Fifteenth 2 on the Great lead the singers clearly.",
      },
      {
        organ: "Great: Open Diapason 8 (Principal 4)",
        plays: "plenum on Great",
        texture: "hymn-verse",
        says: "Open Diapason 8 on the Great is too little for a crowd to sing to: no 4'.",
      },
      {
        organ: "Great: Open Diapason 8, Principal 4, Fifteenth 2 (Mixture III)",
        plays: "plenum on Great",
        texture: "hymn-verse-last",
        says: "Open Diapason 8, Principal 4 and Fifteenth 2 on the Great are small for a last verse, which has a mixture or a reed.",
      },
      {
        organ: "Great: Open Diapason 8, Principal 4",
        plays: "plenum on Great",
        texture: "hymn-verse-manual",
        says: "Open Diapason 8 and Principal 4 on the Great carry a lighter verse.",
      },
    ],
    silent: [
      { organ: "Swell: Stopped Diapason 8", plays: "plenum on Swell", texture: "hymn-verse-quiet" },
      { organ: "Great: Open Diapason 8 (Principal 4)", plays: "plenum on Great", texture: "flutes" },
      { organ: "Great: Stopped Diapason 8", plays: "plenum on Great", texture: "hymn-verse", dynamic: "pp" },
    ],
  },
};
