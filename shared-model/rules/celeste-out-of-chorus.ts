import { agree, idsOf, leaveOut, mixturesOf, named, ofKinds, reedsOf, the } from "./naming.ts";
import type { PartRule } from "./rule.ts";
import { isChorus, UNDER_VOICES } from "./schools.ts";

const IN_CHORUS = 500;
const BESIDE_OTHERS = 300;
const QUICK = 300;

export const celesteOutOfChorus: PartRule = {
  id: "celeste-out-of-chorus",
  conventions: [7],
  reads: "part",
  falling: true,
  statement:
    "A celeste is for slow harmony: never in a chorus, beside reeds and mixtures, or under quick or strict part-writing.",
  why: "Beats blur moving voices and put the chorus out of tune.",
  source: "antegnati-1608",
  severity: "warning",
  yieldsToPrescription: true,
  applies: (context) =>
    context.part.role !== "bass" &&
    context.section.texture !== "continuo" &&
    !(context.section.texture !== null && UNDER_VOICES.has(context.section.texture)),
  most: () => 0,
  weigh: (sound, context) => {
    if (sound.celeste === 0) return 0;
    if (isChorus(context) || context.part.role === "voice") return -IN_CHORUS;
    if (sound.mixtures > 0 || (sound.chorusReed | sound.shortReed) !== 0) return -BESIDE_OTHERS;
    return context.section.tempo === "fast" ? -QUICK : 0;
  },
  words: (sound, context, heard) => {
    const celestes = ofKinds(heard.stops, ["celeste"]);
    const beats = agree(celestes, "beats", "beat");
    const why = isChorus(context)
      ? `${beats} against the chorus of ${the(context)}`
      : context.part.role === "voice"
        ? `${agree(celestes, "blurs", "blur")} a part that must be followed note by note`
        : sound.mixtures > 0 || (sound.chorusReed | sound.shortReed) !== 0
          ? `${beats} against ${named([...reedsOf(heard.stops), ...mixturesOf(heard.stops)])} beside it`
          : `${agree(celestes, "blurs", "blur")} quick notes`;
    return { text: `${named(celestes)} ${why}.`, remedy: leaveOut(celestes), stops: idsOf(celestes) };
  },
  examples: {
    speaks: [
      {
        organ: "Great: Open Diapason 8, Principal 4, Fifteenth 2, Unda maris 8",
        plays: "plenum on Great",
        says: "Unda maris 8 beats against the chorus of the Great.",
      },
      {
        organ: "Swell: Salicional 8, Voix céleste 8",
        plays: "accompaniment on Swell",
        tempo: "fast",
        says: "Voix céleste 8 blurs quick notes.",
      },
      {
        organ: "Récit: Viole de gambe 8, Voix céleste 8, Trompette 8",
        plays: "accompaniment on Récit",
        says: "Voix céleste 8 beats against Trompette 8 beside it.",
      },
      {
        organ: "Swell: Salicional 8, Voix céleste 8",
        plays: "voice on Swell",
        says: "Voix céleste 8 blurs a part that must be followed note by note.",
      },
    ],
    silent: [
      { organ: "Swell: Salicional 8, Voix céleste 8", plays: "accompaniment on Swell", tempo: "slow" },
      { organ: "Great: Open Diapason 8, Principal 4, Fifteenth 2 (Unda maris 8)", plays: "plenum on Great" },
    ],
  },
};
