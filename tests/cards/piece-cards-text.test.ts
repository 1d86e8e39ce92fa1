import { expect, test } from "vitest";
import { pieceCardsText } from "../../shared-model/cards/piece-cards-text.ts";
import { LANTERN } from "./piece-example.ts";

const [first, second, , , fifth] = LANTERN.changes as [never, never, never, never, never];

test("the beginning, a change with two helpers, a piston: as text for any printer", () => {
  expect(pieceCardsText({ ...LANTERN, changes: [first, second, fifth] })).toBe(`\
Lantern Partita
Weirside Chapel, Tarrowmere
Assistant at the left, as the player sees it.

PISTONS TO SET
! Ask the keeper before you change any piston.

General 3, level 2: for change 5
Great: Open Diapason 8, Principal 4,
  Twelfth 2 2/3, Fifteenth 2, Mixture IV
Pedal: Subbass 16, Trombone 16
Swell to Great, Great to Pedal

1  bar 1, mf
Theme: Principals 8 4 2
==============================================

BEFORE YOU BEGIN

Great (both hands): Open Diapason 8,
  Principal 4, Fifteenth 2
Pedal (feet): Subbass 16
Great to Pedal

2  bar 25, fermata, p
Variation 1: Oboe with tremulant over the
Stopped Diapason
==============================================
NEEDS THE ASSISTANT. Alone 4.1 s, and the
music leaves 1.5 s.

ASSISTANT, turns the page
  Great
  - Open Diapason 8
  - Principal 4
  - Fifteenth 2
  + Stopped Diapason 8

RIGHT HAND, ready: in the rest at bar 20
  Swell
  + Oboe 8
  + tremulant Swell
  > box Swell half open

Then stands
Great (left hand): Stopped Diapason 8
Swell (right hand): Oboe 8
Pedal (feet): Subbass 16
Great to Pedal, tremulant Swell, box Swell
  half open

5  bar 97, page turn, ff
Finale: Full chorus with pedal reeds
==============================================
Brisk.

PRESS General 3, level 2

Then stands
Great (both hands an octave lower than
  written): Open Diapason 8, Principal 4,
  Twelfth 2 2/3, Fifteenth 2, Mixture IV
Pedal: Subbass 16, Trombone 16
Swell to Great, Great to Pedal, feet rest
`);
});

test("no line is wider than asked for", () => {
  const lines = pieceCardsText(LANTERN, 30).split("\n");
  expect(lines.filter((line) => [...line].length > 30)).toEqual([]);
});
