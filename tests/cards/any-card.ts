import fc from "fast-check";
import type { CardHand, CardStop, CueCard } from "../../shared-model/cards/cue-card.ts";

const NAMES = [
  "Gedackt",
  "Open Diapason",
  "Stopped Diapason",
  "Doppelrohrgedacktflöte",
  "Basson-Hautbois",
  "Vox Humana",
  "Großnasat",
  "Flûte harmonique",
  "Contre-Bombarde",
  "Violón",
  "Ó",
  "Schwebend Unda maris und Zartgeige",
];
const PITCHES = ["16", "8", "4", "2 2/3", "1 3/5", "10 2/3", "IV", "III-V", "8 bass", "1 1/7"];
const DIVISIONS = ["Hauptwerk", "Swell", "Positif de dos", "Rückpositiv", "Brustwerk", "Pedal"];
const SENTENCE = "Bourdon 8 and Nasat 2 2/3 on the Récit speak at other octaves than the ear expects here.";

const stop: fc.Arbitrary<CardStop> = fc.record({
  name: fc.tuple(fc.constantFrom(...NAMES), fc.constantFrom(...PITCHES)).map((words) => words.join(" ")),
  or: fc.oneof(
    { weight: 5, arbitrary: fc.constant([]) },
    { weight: 1, arbitrary: fc.array(fc.constantFrom("Rohrflöte 8", "Spitzflöte 2 2/3"), { maxLength: 2 }) },
  ),
});

const hand = (keyboards: readonly string[]): fc.Arbitrary<CardHand> =>
  fc.record({
    who: fc.constantFrom("Right hand", "Left hand", "Both hands", "Feet", "Bass"),
    keyboard: fc.option(fc.constantFrom(...keyboards)),
    what: fc.option(fc.constantFrom("echo", "second chorus")),
    octave: fc.constantFrom(-1, 0, 1),
  });

const text = (most: number): fc.Arbitrary<string> =>
  fc
    .array(fc.constantFrom("Wie", "soll", "Partita", "Meditation", "bars", "unaussprechlichkeitshalber", "& <ö>"), {
      minLength: 1,
      maxLength: most,
    })
    .map((words) => words.join(" "));

/** Cards of any size up to 40 drawn stops, with titles and sentences longer than anybody writes. */
export const anyCard: fc.Arbitrary<CueCard> = fc
  .tuple(fc.subarray(DIVISIONS, { minLength: 1 }), fc.integer({ min: 1, max: 40 }))
  .chain(([names, stops]) =>
    fc.record({
      organ: text(12),
      section: fc.option(text(20)),
      bars: fc.option(fc.constantFrom("1-16", "from the double bar")),
      label: text(8),
      hands: fc.array(hand([...names, "Fernwerk"]), { maxLength: 4 }),
      divisions: fc
        .tuple(
          ...names.map(() => fc.array(stop, { minLength: 1, maxLength: Math.ceil(stops / names.length), size: "max" })),
        )
        .map((lists) => lists.map((list, index) => ({ name: names[index] as string, stops: list }))),
      couplers: fc.subarray(["Swell to Hauptwerk", "Positif de dos to Positif de dos 16", "Swell to Pedal 4"]),
      tremulants: fc.subarray(["all", "Swell"]),
      unisonOff: fc.subarray(["Swell"]),
      boxes: fc.subarray([{ name: "Swell", position: "half" as const }]),
      warnings: fc.array(
        fc.record({
          severity: fc.constantFrom("error" as const, "warning" as const),
          text: fc.constant(SENTENCE),
          remedy: fc.option(fc.constant("Draw Gedackt 8.")),
        }),
        { maxLength: 6 },
      ),
      why: fc.option(text(15)),
    }),
  );
