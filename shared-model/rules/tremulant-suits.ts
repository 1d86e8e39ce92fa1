import type { PartSound } from "../acoustics/part-sound.ts";
import { named, the } from "./naming.ts";
import { FEET_8 } from "./pitches.ts";
import type { PartContext, PartRule } from "./rule.ts";
import { isPedalMelody } from "./schools.ts";

const REQUIRED = 300;
const WELCOME = 50;
const ALLOWED = 25;
const SHAKEN_TOO = -50;
const UNSUITED = -200;
const QUICK = -250;
const UNWANTED: Readonly<Record<string, number>> = { accompaniment: -300, bass: -300, plenum: -400, voice: -250 };

/** The part for whose sake the tremulant is drawn: the tune, else the common sound, else the chords. */
function leads(context: PartContext): boolean {
  const { roles } = context.section;
  const { role } = context.part;
  if (isPedalMelody(context) || role === "bass") return false;
  if (role === "melody" || role === "echo") return true;
  return !roles.has("melody") && (role === "plenum" || !roles.has("plenum"));
}

/** A solo reed, a cornet or tierce, a flute, one soft principal: what a tremulant becomes. */
const isSinging = (sound: PartSound): boolean =>
  sound.mixtures === 0 &&
  sound.chorusReed === 0 &&
  sound.celeste === 0 &&
  ((sound.soloReed | sound.shortReed) !== 0 ||
    sound.cornets > 0 ||
    sound.tierceCompounds > 0 ||
    ((sound.flute | sound.principal) & FEET_8) !== 0);

function weighed(sound: PartSound, context: PartContext): number {
  if (sound.tremulant === 0) return 0;
  const asked = context.prescription?.tremulant;
  const { role } = context.part;
  if (asked === "required") return leads(context) ? REQUIRED : 0;
  if (asked === "welcome" || asked === "may") {
    if (!leads(context)) return SHAKEN_TOO;
    return context.section.tempo === "fast" ? QUICK : asked === "welcome" ? WELCOME : ALLOWED;
  }
  if ((role !== "melody" && role !== "echo") || isPedalMelody(context)) return UNWANTED[role] ?? UNSUITED;
  if (context.section.tempo === "fast") return QUICK;
  return asked !== "no" && isSinging(sound) ? ALLOWED : UNSUITED;
}

function most(context: PartContext): number {
  const asked = context.prescription?.tremulant;
  if (!context.canShake || !leads(context)) return 0;
  if (asked === "required") return REQUIRED;
  if (context.section.tempo === "fast" || asked === "no") return 0;
  if (asked === "welcome") return WELCOME;
  return asked === "may" || context.part.role === "melody" || context.part.role === "echo" ? ALLOWED : 0;
}

export const tremulantSuits: PartRule = {
  id: "tremulant-suits",
  conventions: [24],
  reads: "part",
  statement:
    "A tremulant belongs to a slow or lyrical solo on a reed, cornet, flute or soft principal, and to nothing else unless a source asks for it.",
  why: "It makes one voice sing, and everything else unsteady.",
  source: "bedos-1766",
  severity: "warning",
  // It reads the recipe's own word on the tremulant, so it stays to be asked when the stops are as prescribed.
  yieldsToPrescription: false,
  applies: (context) => context.canShake,
  most,
  weigh: weighed,
  atMost: (now, all, context) => {
    if (all.tremulant === 0) return 0;
    if (now.tremulant === 0) return most(context);
    // Drawn: all that can still change is whether the stops sing with it.
    const drawn = weighed(now, context);
    return drawn === UNSUITED && context.prescription?.tremulant !== "no" ? ALLOWED : drawn;
  },
  words: (_sound, context, heard, points) => {
    const stops = named(heard.stops);
    if (points === REQUIRED) return { text: `The tremulant that the source asks for shakes ${stops}.` };
    if (points > 0) return { text: `The tremulant lets ${stops} sing.` };
    const { role } = context.part;
    const off = "Take the tremulant off.";
    if (role === "melody" || role === "echo") {
      const why =
        context.section.tempo === "fast" && points === QUICK
          ? "blurs quick notes"
          : isPedalMelody(context)
            ? "makes the tune in the feet unsteady"
            : context.prescription?.tremulant === "no"
              ? "is not in the recipe"
              : `does not suit ${stops}`;
      return { text: `The tremulant on ${the(context)} ${why}.`, remedy: off };
    }
    const what = {
      plenum: "both hands",
      voice: "a voice that must be followed",
      accompaniment: "the accompaniment",
      bass: "the bass",
    }[role as string];
    return {
      text: `The tremulant shakes ${what ?? "the cantus firmus"} on ${the(context)}: ${stops}.`,
      remedy: role === "accompaniment" || role === "bass" ? `${off.slice(0, -1)}, or take stops on other wind.` : off,
    };
  },
  examples: {
    speaks: [
      {
        organ: "Swell: Stopped Diapason 8, Oboe 8",
        plays: "melody on Swell",
        tremulants: ["Swell"],
        tempo: "slow",
        says: "The tremulant lets Stopped Diapason 8 and Oboe 8 sing.",
      },
      {
        organ: "Great: Open Diapason 8, Principal 4",
        plays: "plenum on Great",
        tremulants: ["Great"],
        says: "The tremulant shakes both hands on the Great: Open Diapason 8 and Principal 4.",
      },
      {
        organ: "Swell: Flute 8",
        plays: "melody on Swell",
        tremulants: ["Swell"],
        tempo: "fast",
        says: "The tremulant on the Swell blurs quick notes.",
      },
      {
        organ: "Swell: Oboe 8 | Great: Stopped Diapason 8 | Pedal: Bourdon 16, Flute 8",
        plays: "bass on Pedal",
        tremulants: ["all"],
        says: "The tremulant shakes the bass on the Pedal: Bourdon 16 and Flute 8.",
      },
      {
        organ: "Great: Trumpet 8",
        plays: "melody on Great",
        tremulants: ["Great"],
        tempo: "slow",
        says: "The tremulant on the Great does not suit Trumpet 8.",
      },
      {
        organ: "Swell: Salicional 8, Voix céleste 8",
        plays: "melody on Swell",
        tremulants: ["Swell"],
        tempo: "slow",
        says: "The tremulant on the Swell does not suit Salicional 8 and Voix céleste 8.",
      },
    ],
    silent: [
      { organ: "Swell: Stopped Diapason 8, Oboe 8", plays: "melody on Swell", tempo: "slow" },
      { organ: "Swell: Oboe 8 | Great: (Open Diapason 8)", plays: "melody on Swell", tremulants: ["Great"] },
    ],
  },
};
