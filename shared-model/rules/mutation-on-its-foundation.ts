import { FAR, FIFTHS, THIRDS } from "../acoustics/pitch-set.ts";
import { footOf } from "../pitch/foot.ts";
import { KIND_GROUPS } from "../stoplist/kind.ts";
import { agree, draw, idsOf, keysText, keysWithout, named, ofKinds, soundingAt, the, undrawnAt } from "./naming.ts";
import { mayReach } from "./reach-facts.ts";
import type { PartRule } from "./rule.ts";

const NOT_OCTAVES = FIFTHS | THIRDS | FAR;

export const mutationOnItsFoundation: PartRule = {
  id: "mutation-on-its-foundation",
  conventions: [2],
  reads: "part",
  statement: "A mutation sounds over the unison of its own series, in the same part.",
  why: "Without the unison it is heard as a wrong note, not as a colour.",
  source: "lesson-hymns",
  severity: "error",
  yieldsToPrescription: true,
  applies: (context) => mayReach(context, NOT_OCTAVES),
  most: () => 0,
  forbids: (sound) =>
    (sound.mutation8 & ~sound.cover8) !== 0 ||
    (sound.mutation16 & ~sound.cover16) !== 0 ||
    (sound.mutation32 & ~(sound.cover32 | sound.cover16)) !== 0,
  weigh: () => 0,
  atMost: (now, all) =>
    (now.mutation8 & ~all.cover8) !== 0 ||
    (now.mutation16 & ~all.cover16) !== 0 ||
    (now.mutation32 & ~(all.cover32 | all.cover16)) !== 0
      ? null
      : 0,
  words: (sound, context, heard) => {
    const [base, cover] =
      (sound.mutation8 & ~sound.cover8) !== 0
        ? [8, sound.cover8]
        : (sound.mutation16 & ~sound.cover16) !== 0
          ? [16, sound.cover16]
          : [32, sound.cover32 | sound.cover16];
    const all = ofKinds(heard.stops, [...KIND_GROUPS.mutation, "sesquialtera", "tertian", "cornet"]);
    const ground = [
      ...soundingAt(heard.stops, footOf(base), context),
      ...(base === 32 ? soundingAt(heard.stops, footOf(16), context) : ofKinds(heard.stops, ["cornet"])),
    ];
    const bare = cover === 0 ? [] : keysWithout(ground, context);
    // A cornet that carries its own 8 needs no ground where it speaks.
    const standing = all.filter(({ silent }) => bare.some((key) => !silent.includes(key)));
    const mutations = standing.length > 0 ? standing : all;
    const them = agree(mutations, "it", "them");
    const where = bare.length > 0 ? ` on ${keysText(bare)}` : "";
    return {
      text: `${named(mutations)} ${agree(mutations, "has", "have")} no ${base}' under ${them} in ${the(context)}${where}.`,
      remedy: draw(
        undrawnAt(heard, footOf(base), context),
        `No ${base}' of ${the(context)} covers the part; leave ${them} out.`,
      ),
      stops: idsOf(mutations),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Oberwerk: Nasat 2 2/3 (Gedackt 8)",
        plays: "melody on Oberwerk",
        says: "Nasat 2 2/3 has no 8' under it in the Oberwerk.",
      },
      {
        organ: "Oberwerk: Flöte 4, Nasat 2 2/3, Terz 1 3/5 (Gedackt 8)",
        plays: "melody on Oberwerk",
        says: "Nasat 2 2/3 and Terz 1 3/5 have no 8' under them in the Oberwerk.",
      },
      {
        organ: "Hauptwerk: Principal 8, Quinte 5 1/3",
        plays: "plenum on Hauptwerk",
        says: "Quinte 5 1/3 has no 16' under it in the Hauptwerk.",
      },
      {
        organ: "Positif: Cornet V from C4, Nasard 2 2/3 (Bourdon 8)",
        plays: "melody on Positif",
        ranges: { melody: "C3-C5" },
        says: "Nasard 2 2/3 has no 8' under it in the Positif on C3 to B3.",
      },
    ],
    silent: [
      { organ: "Oberwerk: Gedackt 8, Nasat 2 2/3", plays: "melody on Oberwerk" },
      { organ: "Pedal: Subbass 16, Quinte 10 2/3, Oktave 8", plays: "bass on Pedal" },
      {
        organ: "Positif: Flûte 4, Nasard 2 2/3 | Grand-Orgue: Bourdon 8",
        plays: "melody on Positif",
        couplers: ["Grand-Orgue to Positif"],
      },
    ],
  },
};
