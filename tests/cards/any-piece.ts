import fc from "fast-check";
import {
  CARD_WORKERS,
  type CardMove,
  type CardPress,
  type ChangeCard,
  type PieceCards,
} from "../../shared-model/cards/piece-card.ts";
import { anyCard } from "./any-card.ts";

const move: fc.Arbitrary<CardMove> = fc.oneof(
  fc.record({
    act: fc.constantFrom("draw", "cancel"),
    what: fc.constant(null),
    division: fc.constantFrom("Hauptwerk", "Positif de dos"),
    name: fc.constantFrom("Gedackt 8", "Doppelrohrgedacktflöte 16", "Quinte 1 1/3", "Mixtur III-V"),
  }),
  fc.record({
    act: fc.constantFrom("draw", "cancel", "set"),
    what: fc.constantFrom("coupler", "tremulant", "box"),
    division: fc.constant(null),
    name: fc.constantFrom("Swell to Positif de dos 16", "Swell half open"),
  }),
);

const press: fc.Arbitrary<CardPress> = fc.record({
  name: fc.constantFrom("General", "Positif de dos"),
  number: fc.integer({ min: 1, max: 99 }),
  level: fc.option(fc.integer({ min: 1, max: 999 })),
  newLevel: fc.boolean(),
});

const change: fc.Arbitrary<ChangeCard> = anyCard.chain((state) =>
  fc.record({
    number: fc.integer({ min: 1, max: 60 }),
    section: fc.constant(state.section),
    where: fc.option(fc.constantFrom("bar 25", "from the double bar, the second time")),
    cue: fc.option(fc.constantFrom("fermata", "rest of 2 beats")),
    dynamic: fc.option(fc.constantFrom("ppp", "mf", "fff")),
    verdict: fc.option(
      fc.constantFrom(
        { words: "easy", brief: "easy", loud: false, detail: null },
        {
          words: "not possible as written",
          brief: "not possible",
          loud: true,
          detail: "Needs 12.3 s, and the music leaves 1.5 s.",
        },
      ),
    ),
    presses: fc.array(press, { maxLength: 3 }),
    pressedBy: fc.constantFrom("thumb", "toe", "assistant", null),
    tasks: fc.array(
      fc.record({
        who: fc.constantFrom(...CARD_WORKERS),
        ready: fc.option(fc.constantFrom("at any time before", "in the rest at bar 20")),
        turnsPage: fc.boolean(),
        moves: fc.array(move, { maxLength: 25, size: "max" }),
      }),
      { maxLength: 4 },
    ),
    whenTime: fc.array(move, { maxLength: 5 }),
    stays: fc.subarray(["Octave 4 (Hauptwerk)", "Mixtur III-V (Positif de dos)"]),
    state: fc.constant(state),
    warnings: fc.constant(state.warnings),
  }),
);

/** Pieces of a few changes, each with more to be moved than anybody would ask of an assistant. */
export const anyPiece: fc.Arbitrary<PieceCards> = fc.record({
  piece: fc.constantFrom(
    "Partita",
    "Introduction, Passacaglia und Fuge über ein unaussprechlichkeitshalber langes Thema",
  ),
  organ: fc.constant("St. Example, Sampleford"),
  changes: fc.array(change, { minLength: 1, maxLength: 4 }),
  assistant: fc.option(fc.constantFrom("left", "right")),
  pistons: fc.array(fc.record({ press, changes: fc.constantFrom([2], [2, 5, 9, 12]), state: anyCard }), {
    maxLength: 2,
  }),
  cautions: fc.constant(["Ask the keeper before you change any piston."]),
  timeLine: fc.array(
    fc.record({
      number: fc.integer({ min: 1, max: 60 }),
      section: fc.nat({ max: 59 }),
      length: fc.integer({ min: 1, max: 200 }),
      level: fc.double({ min: 0, max: 1, noNaN: true }),
    }),
    { maxLength: 60, size: "max" },
  ),
  pictures: fc.constant([]),
});
