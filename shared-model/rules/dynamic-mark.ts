import { type Phons, strengthOf } from "../acoustics/hearing.ts";
import { strengthAtLeast, strengthAtMost } from "../acoustics/loudness-bounds.ts";
import type { PartSound } from "../acoustics/part-sound.ts";
import { OCTAVES } from "../acoustics/pitch-set.ts";
import { yardstickIn } from "../acoustics/yardstick.ts";
import type { Dynamic } from "../music/texture.ts";
import { textureFor } from "../music/textures/catalogue.ts";
import { agree, named, The, the } from "./naming.ts";
import { FEET_4, FEET_8, FEET_16 } from "./pitches.ts";
import type { PartContext, PartRule, SectionFacts } from "./rule.ts";
import { UNDER_VOICES } from "./schools.ts";

const RIGHT = 200;
const LEAST = -400;
const NOT_AS_PRINTED = 80;

/**
 * Strength of the hands for each mark, lowest and highest, in hundredths of a phon over a principal 8 in the same room.
 * An Aeoline lies near -1200, a Gedackt near -850, principals 8 4 2 near 450, with their mixture near 650, a full organ
 * with its reeds near 1450. Our own setting, from what the German romantic ladder names for each mark.
 */
const LEVELS: Readonly<Record<Dynamic, readonly [Phons, Phons]>> = {
  ppp: [-4000, -1150],
  pp: [-2200, -800],
  p: [-1250, 100],
  mp: [-850, 250],
  mf: [-200, 500],
  f: [350, 1250],
  ff: [600, 4000],
  fff: [750, 4000],
};
/** So little under everything that there is counts as everything: the organ can give no more. */
const NEARLY_ALL = 100;

/** Lowest and highest strength that suits the mark here, in hundredths of a phon. */
function suiting(dynamic: Dynamic, context: PartContext): readonly [Phons, Phons] {
  const principal = yardstickIn(context.instrument.room);
  const [low, high] = LEVELS[dynamic];
  return [Math.min(principal + low, context.fullest - NEARLY_ALL), principal + high];
}

/** German romantic prefaces say what a mark means in stops: how a sound breaks that, if it does. */
function againstThePreface(sound: PartSound, dynamic: Dynamic): boolean {
  const above8 = sound.plain & OCTAVES & ~(FEET_16 | FEET_8);
  const bright = sound.mixtures > 0 || sound.mutation !== 0;
  if (dynamic === "ppp" || dynamic === "pp") return sound.stops > 1 || above8 !== 0 || bright;
  if (dynamic === "p") return above8 !== 0 || bright || sound.principal !== 0;
  if (dynamic === "mp" || dynamic === "mf") return (above8 & ~FEET_4) !== 0 || bright;
  return dynamic === "f" ? false : (sound.principal & FEET_4) === 0 && sound.mixtures === 0;
}

const printedAs: Readonly<Record<Dynamic, string>> = {
  ppp: "the softest 8 alone",
  pp: "one soft 8",
  p: "several soft 8s",
  mp: "8s, perhaps with a 4",
  mf: "a principal 8 or strong 8s, perhaps with a 4",
  f: "the full sound without its loudest",
  ff: "everything",
  fff: "everything",
};

/** A texture's usual dynamic is no mark that a composer wrote: its recipe says what to draw. German romantic recipes are the marks. */
const isTheTexturesOwn = ({ texture, tradition, dynamic }: SectionFacts): boolean =>
  tradition !== "german-romantic" && texture !== null && textureFor(texture, tradition)?.dynamic === dynamic;

function weighed(sound: PartSound, context: PartContext): number {
  const { dynamic, tradition } = context.section;
  if (dynamic === null || sound.stops === 0) return 0;
  const [low, high] = suiting(dynamic, context);
  const level = strengthOf(sound.blend);
  const away = level < low ? low - level : level > high ? level - high : 0;
  const printed = tradition === "german-romantic" && againstThePreface(sound, dynamic) ? NOT_AS_PRINTED : 0;
  return Math.max(LEAST, RIGHT - away - printed);
}

/**
 * The mark belongs to the hands that lead: the tune where there is one, else the common sound. A pedal has 16 and 8 even
 * at pp, and singers or players set their own measure.
 */
const hasSay = ({ part, section }: Pick<PartContext, "part" | "section">): boolean =>
  section.dynamic !== null &&
  section.texture !== "continuo" &&
  !(section.texture !== null && UNDER_VOICES.has(section.texture)) &&
  !isTheTexturesOwn(section) &&
  part.hands !== "feet" &&
  (part.role === "plenum" ||
    part.role === "melody" ||
    (part.role === "accompaniment" && !section.roles.has("plenum") && !section.roles.has("melody")));

export const dynamicMark: PartRule = {
  id: "dynamic-mark",
  conventions: [47],
  reads: "part",
  statement:
    "A dynamic mark names a sound: pp one softest 8, p soft 8s, mf a principal 8 or strong 8s, f full without the loudest, ff all.",
  why: "On the organ a mark is a registration before it is a degree of loudness.",
  source: "mendelssohn-1845",
  severity: "note",
  yieldsToPrescription: true,
  applies: hasSay,
  listens: hasSay,
  most: ({ section }) => (section.dynamic === null ? 0 : RIGHT),
  weigh: weighed,
  atMost: (now, all, context) => {
    const { dynamic, tradition } = context.section;
    if (dynamic === null) return 0;
    const [low, high] = suiting(dynamic, context);
    const away = Math.max(0, low - strengthAtMost(all), strengthAtLeast(now) - high);
    // The loud marks are reached by drawing more, the soft ones are lost by it.
    const printed =
      tradition === "german-romantic" && againstThePreface(dynamic === "ff" || dynamic === "fff" ? all : now, dynamic);
    return Math.max(LEAST, RIGHT - away - (printed ? NOT_AS_PRINTED : 0));
  },
  words: (sound, context, heard, points) => {
    const { dynamic, tradition } = context.section;
    const mark = dynamic ?? "mf";
    const [low, high] = suiting(mark, context);
    const level = strengthOf(sound.blend);
    const stops = named(heard.stops);
    if (points === RIGHT)
      return { text: `${stops} on ${the(context)} ${agree(heard.stops, "suits", "suit")} the mark ${mark}.` };
    if (level >= low && level <= high) {
      return {
        text: `${stops} on ${the(context)} ${agree(heard.stops, "has", "have")} the strength of ${mark}, but a German romantic ${mark} is ${printedAs[mark]}.`,
      };
    }
    const soft = level < low;
    const more = heard.undrawn.find((each) => each.silent.length === 0 && !each.stop.off);
    const isFar = points < 0 ? "" : " a little";
    return {
      text: `${stops} on ${the(context)} ${agree(heard.stops, "is", "are")}${isFar} too ${soft ? "soft" : "loud"} for ${mark}${tradition === "german-romantic" ? `, which is ${printedAs[mark]}` : ""}.`,
      remedy: soft
        ? more
          ? `Add to it, for instance ${more.label}.`
          : `${The(context)} has no more to give: couple another manual.`
        : sound.enclosed > 0 && sound.shut < 2
          ? "Shut the box, or take a stop off."
          : "Take a stop off.",
    };
  },
  examples: {
    speaks: [
      {
        organ: "Manual III: Aeoline 8",
        plays: "plenum on Manual III",
        texture: "sustained",
        tradition: "german-romantic",
        dynamic: "pp",
        says: "Aeoline 8 on Manual III suits the mark pp.",
      },
      {
        organ: "Great: Open Diapason 8, Principal 4, Fifteenth 2, Mixture III",
        plays: "plenum on Great",
        dynamic: "pp",
        says: "Open Diapason 8, Principal 4, Fifteenth 2 and Mixture III on the Great are too loud for pp.",
      },
      {
        organ: "Manual II: Gedackt 8 (Principal 8)",
        plays: "plenum on Manual II",
        texture: "sustained",
        tradition: "german-romantic",
        dynamic: "f",
        says: "Gedackt 8 on Manual II is too soft for f, which is the full sound without its loudest.",
      },
      {
        organ: "Manual I: Principal 8, Oktave 4",
        plays: "plenum on Manual I",
        texture: "sustained",
        tradition: "german-romantic",
        dynamic: "p",
        says: "Principal 8 and Oktave 4 on Manual I are too loud for p, which is several soft 8s.",
      },
      {
        organ: "Manual II: Gedackt 8, Salicional 8",
        plays: "plenum on Manual II",
        texture: "sustained",
        tradition: "german-romantic",
        dynamic: "pp",
        says: "Gedackt 8 and Salicional 8 on Manual II are too loud for pp, which is one soft 8.",
      },
    ],
    silent: [
      {
        organ: "Manual III: Aeoline 8",
        plays: "plenum on Manual III",
        texture: "sustained",
        tradition: "german-romantic",
      },
      { organ: "Pedal: Subbass 16, Violoncello 8", plays: "bass on Pedal", dynamic: "pp" },
      {
        organ: "Great: Stopped Diapason 8",
        plays: "accompaniment on Great",
        texture: "choir-accompaniment",
        dynamic: "f",
      },
    ],
  },
};
