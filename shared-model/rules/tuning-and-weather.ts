import { KIND_GROUPS } from "../stoplist/kind.ts";
import { ofKinds, reedsOf, soundingAt, soundsAt } from "./naming.ts";
import type { AdviceRule } from "./rule.ts";

export const tuningAndWeather: AdviceRule = {
  id: "tuning-and-weather",
  conventions: [42],
  reads: "advice",
  statement: "In a solo a reed and a flue of one pitch drift apart with the warmth of the day.",
  why: "Flues go sharp by about three cents a degree, reeds hardly move.",
  source: "common practice",
  severity: "note",
  advise: (_sound, context, heard) => {
    if (context.part.role !== "melody") return null;
    const flues = ofKinds(heard.stops, KIND_GROUPS.foundation);
    for (const reed of reedsOf(heard.stops)) {
      const length = soundsAt(reed.stop, context);
      const [flue] = length
        ? soundingAt(flues, length, context).filter(
            ({ stop }) => stop.half === null || stop.half === reed.stop.half || reed.stop.half === null,
          )
        : [];
      if (!flue) continue;
      return {
        text: `${reed.label} and ${flue.label} sound at one pitch: on a warm or a cold day they drift apart.`,
        remedy: `Try them together before playing; out of tune, ${reed.label} alone is better.`,
        stops: [reed.stop.id, flue.stop.id],
      };
    }
    return null;
  },
  examples: {
    speaks: [
      {
        organ: "Swell: Oboe 8, Stopped Diapason 8",
        plays: "melody on Swell",
        says: "Oboe 8 and Stopped Diapason 8 sound at one pitch: on a warm or a cold day they drift apart.",
      },
      {
        organ: "Rückpositiv: Dulzian 8, Quintadena 8, Flöte 4",
        plays: "melody on Rückpositiv",
        says: "Dulzian 8 and Quintadena 8 sound at one pitch: on a warm or a cold day they drift apart.",
      },
    ],
    silent: [
      { organ: "Positif: Cromorne 8, Prestant 4", plays: "melody on Positif" },
      { organ: "Swell: Oboe 8, Stopped Diapason 8", plays: "accompaniment on Swell" },
    ],
  },
};
