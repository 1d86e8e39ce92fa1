import type { PartSound } from "../acoustics/part-sound.ts";
import { KIND_GROUPS } from "../stoplist/kind.ts";
import { heardTogether, isOneSilent, soundName, soundNameFirst } from "./balance.ts";
import { ratioTo } from "./loudness-words.ts";
import { allNamed, mixturesOf, ofKinds, reedsOf, the } from "./naming.ts";
import type { HeardStop, PairRule } from "./rule.ts";
import { UNDER_VOICES } from "./schools.ts";

/** Hundredths of a phon by which the chords may outdo the tune in the height: two flutes 8 and 4 under one with its nasard. */
const SHINES = 300;
const TRIFLE = 100;
const MOST = 250;

/** A quarter of a hundredth of a point for each hundredth beyond; a trifle is let pass. */
function weighed(solo: PartSound, ground: PartSound): number {
  if (isOneSilent(solo, ground)) return 0;
  const over = -heardTogether(solo, ground).shine - SHINES;
  return over < TRIFLE ? 0 : -Math.min(MOST, over >> 2);
}

/** What of an accompaniment shines most, for the remedy: mixtures, else reeds, else mutations and short compounds. */
function brightest(stops: readonly HeardStop[]): readonly HeardStop[] {
  const ranked = [mixturesOf, reedsOf, (all: readonly HeardStop[]) => ofKinds(all, COLOURED)];
  return ranked.map((find) => find(stops)).find((found) => found.length > 0) ?? [];
}
const COLOURED = [...KIND_GROUPS.mutation, "sesquialtera", "tertian", "cornet"] as const;

export const accompanimentTransparent: PairRule = {
  id: "accompaniment-transparent",
  conventions: [18],
  reads: "pair",
  listens: true,
  statement: "An accompaniment does not outshine its tune: as a rule it is of flues at 8, or 8 and 4.",
  why: "Chords that shine draw the ear away from the tune.",
  source: "boyvin-1690",
  severity: "note",
  yieldsToPrescription: true,
  applies: (first, second) =>
    first.part.role === "melody" &&
    second.part.role === "accompaniment" &&
    second.section.texture !== "continuo" &&
    !(second.section.texture !== null && UNDER_VOICES.has(second.section.texture)),
  most: () => 0,
  weigh: weighed,
  words: (solo, ground, soloContext, groundContext, heard) => {
    const chords = soundNameFirst(heard.second, groundContext);
    const one = heard.second.stops.length === 1 || chords.startsWith("The ");
    const where = chords.startsWith("The ") ? "" : ` on ${the(groundContext)}`;
    const bright = brightest(heard.second.stops);
    const less = bright.length < heard.second.stops.length ? bright : [];
    const off = less.length > 0 ? `leave out ${allNamed(less)}` : "draw something duller";
    const { shine } = heardTogether(solo, ground);
    return {
      text: `${chords}${where} ${one ? "outshines" : "outshine"} the tune: in the high partials ${one ? "it is" : "they are"} ${ratioTo(-shine, soundName(heard.first, soloContext))}.`,
      remedy:
        ground.enclosed > 0 && ground.shut < 2
          ? `Shut the box of ${the(groundContext)}, or ${off}.`
          : `On ${the(groundContext)} ${off}.`,
      stops: (less.length > 0 ? less : heard.second.stops).map((each) => each.stop.id),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Hauptwerk: Gedackt 8, Oktave 4, Mixtur IV | Oberwerk: Principal 8",
        plays: "melody on Oberwerk, accompaniment on Hauptwerk",
        says: "Gedackt 8, Oktave 4 and Mixtur IV on the Hauptwerk outshine the tune: in the high partials they are about three times as loud as Principal 8.",
      },
      {
        organ: "Swell: Stopped Diapason 8, Oboe 8 | Great: Open Diapason 8",
        plays: "melody on Great, accompaniment on Swell",
        says: "Stopped Diapason 8 and Oboe 8 on the Swell outshine the tune: in the high partials they are about half as loud again as Open Diapason 8.",
      },
      {
        organ: "Récit [box]: Gambe 8, Voix céleste 8 | Grand-Orgue: Flûte harmonique 8",
        plays: "melody on Grand-Orgue, accompaniment on Récit",
        says: "Gambe 8 and Voix céleste 8 on the Récit outshine the tune: in the high partials they are more than three times as loud as Flûte harmonique 8.",
      },
    ],
    silent: [
      {
        organ: "Hauptwerk: Gedackt 8, Flöte 4 | Oberwerk: Principal 8",
        plays: "melody on Oberwerk, accompaniment on Hauptwerk",
      },
      {
        organ: "Récit [box]: Gambe 8, Voix céleste 8 | Grand-Orgue: Flûte harmonique 8",
        plays: "melody on Grand-Orgue, accompaniment on Récit",
        boxes: { Récit: "closed" },
      },
      {
        organ: "Great: Open Diapason 8, Principal 4, Fifteenth 2 | Solo: Tuba 8",
        plays: "melody on Solo, accompaniment on Great",
        texture: "solo-tuba",
        tradition: "english-cathedral",
      },
      {
        organ: "Swell: Stopped Diapason 8, Oboe 8 | Great: Trumpet 8",
        plays: "melody on Great, accompaniment on Swell",
      },
    ],
  },
};
