import { hasKey, type Key, keyText } from "../pitch/key.ts";
import { partName } from "./balance.ts";
import { keysText } from "./naming.ts";
import { type AdviceRule, listed, type PartContext } from "./rule.ts";

/** Keys of the part that its keyboard does not have. */
function lacking(context: PartContext): readonly Key[] {
  const { part, keyboard, octave } = context;
  return Array.from({ length: part.high - part.low + 1 }, (_, index) => part.low + index).filter(
    (key) => !hasKey(keyboard.compass, key + 12 * octave),
  );
}

/** Another keyboard for the same hands that has them all. */
const fuller = (context: PartContext, keys: readonly Key[]) =>
  context.instrument.divisions.find(
    (each) =>
      each !== context.keyboard &&
      each.kind === context.keyboard.kind &&
      keys.every((key) => hasKey(each.compass, key + 12 * context.octave)),
  );

export const oldCompass: AdviceRule = {
  id: "old-compass",
  conventions: [43],
  reads: "advice",
  statement: "Short octaves and short compasses lack keys: the notes are named, with a way round.",
  why: "Better to know at home which notes to move than to find the gap while playing.",
  source: "common practice",
  severity: "note",
  advise: (_sound, context) => {
    // A range that nobody has stated holds notes that the music may never ask for.
    const keys = context.part.stated ? lacking(context) : [];
    if (keys.length === 0) return null;
    const other = fuller(context, keys);
    const low = (keys[0] as Key) + 12 * context.octave < context.keyboard.compass.low + 12;
    const feet = context.part.hands === "feet";
    return {
      text: `The ${context.keyboard.name} has no key for ${keys.length <= 6 ? listed(keys.map(keyText)) : keysText(keys)} of the ${partName(context)}.`,
      remedy: other
        ? `Play these notes on the ${other.name}.`
        : low
          ? feet
            ? "Give these notes to the left hand, or play them an octave higher."
            : "Play these notes an octave higher, on a 16 if the organ has one."
          : feet
            ? "Give these notes to the left hand, or play them an octave lower."
            : "Play the passage an octave lower, on a 4 if the organ has one.",
    };
  },
  examples: {
    speaks: [
      {
        organ: "Pedal: Subbass 16, Oktave 8",
        plays: "bass on Pedal",
        ranges: { bass: "C2-A4" },
        says: "The Pedal has no key for F#4, G4, G#4 and A4 of the bass.",
      },
      {
        organ: "Great: Open Diapason 8",
        plays: "plenum on Great",
        ranges: { plenum: "A1-C6" },
        says: "The Great has no key for A1, Bb1 and B1 of the chorus.",
      },
    ],
    silent: [
      { organ: "Pedal: Subbass 16, Oktave 8", plays: "bass on Pedal", ranges: { bass: "C2-F4" } },
      {
        organ: "Great: Open Diapason 8",
        plays: "plenum on Great",
        ranges: { plenum: "A1-C5" },
        octaves: { plenum: 1 },
      },
    ],
  },
};
