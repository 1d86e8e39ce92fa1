import { footOf } from "../pitch/foot.ts";
import { KIND_GROUPS } from "../stoplist/kind.ts";
import { agree, draw, idsOf, named, ofKinds, soundsAt, The, the, undrawnAt } from "./naming.ts";
import { reachesLoneCeleste } from "./reach-facts.ts";
import type { PartRule } from "./rule.ts";

const ALONE = 500;

export const celesteWithItsPartner: PartRule = {
  id: "celeste-with-its-partner",
  conventions: [7],
  reads: "part",
  statement: "An undulating rank sounds with the plain stop that it beats against, unless it holds both ranks itself.",
  why: "It is tuned off the pitch: alone it is merely out of tune, and often it has no bass.",
  source: "antegnati-1608",
  severity: "warning",
  yieldsToPrescription: true,
  applies: reachesLoneCeleste,
  most: () => 0,
  weigh: (sound) => ((sound.celeste & ~(sound.string | sound.flute | sound.principal)) === 0 ? 0 : -ALONE),
  atMost: (now, all) => ((now.celeste & ~(all.string | all.flute | all.principal)) === 0 ? 0 : -ALONE),
  words: (_sound, context, heard) => {
    const celestes = ofKinds(heard.stops, ["celeste"]);
    const pitch = (celestes[0] && soundsAt(celestes[0].stop, context)) ?? footOf(8);
    const partner =
      undrawnAt(heard, pitch, context, ["string", "soft-string"]) ??
      undrawnAt(heard, pitch, context, [...KIND_GROUPS.flute, "principal"]);
    return {
      text: `${named(celestes)} ${agree(celestes, "has", "have")} no plain stop to beat against on ${the(context)}.`,
      remedy: draw(partner, `${The(context)} has no partner for it; leave it out.`),
      stops: idsOf(celestes),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Récit: Voix céleste 8 from C3 (Viole de gambe 8)",
        plays: "accompaniment on Récit",
        says: "Voix céleste 8 has no plain stop to beat against on the Récit.",
      },
      {
        organ: "Swell: Vox angelica 8, Gemshorn 4",
        plays: "accompaniment on Swell",
        says: "Vox angelica 8 has no plain stop to beat against on the Swell.",
      },
    ],
    silent: [
      { organ: "Récit: Viole de gambe 8, Voix céleste 8 from C3", plays: "accompaniment on Récit" },
      { organ: "Organo: Principale 8, Fiffaro 8 from C4", plays: "accompaniment on Organo" },
      { organ: "Swell: Vox coelestis II 8", plays: "accompaniment on Swell" },
    ],
  },
};
