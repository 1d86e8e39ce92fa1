import type { InventedLists } from "./list.ts";

/** Ways of setting a list that no language owns. All places are invented. */
export const LAYOUTS: InventedLists = {
  "every way of printing a fraction": [
    `Great
Quint 5 1/3'
Twelfth 2⅔
Nazard 2-2/3'
Larigot 1 ⅓ ft
Tierce 1.3/5'
Septième 1 1/7'
Seventeenth 1 3⁄5′
None 8/9'
Gross Quint 10⅔'
Great Tierce 6 2/5'
Fifteenth 2’
Twenty-second 1 foot`,
    "Great: Quint 5 1/3, Twelfth 2 2/3, Nazard 2 2/3, Larigot 1 1/3, Tierce 1 3/5, Septième 1 1/7, Seventeenth 1 3/5, None 8/9, Gross Quint 10 2/3, Great Tierce 6 2/5, Fifteenth 2, Twenty-second 1",
  ],
  "signs of footnotes before and behind": [
    `GREAT
Open Diapason* 8
Stopped Diapason† 8
Principal¹ 4
Fifteenth [a] 2
Mixture ‡ III
SWELL
Gedackt 8*
Oboe 8 (†)
* pipes from the former organ
† revoiced 2003
¹ new`,
    `GREAT: Open Diapason 8, Stopped Diapason 8, Principal 4, Fifteenth 2, Mixture III
SWELL in a box: Gedackt 8, Oboe 8`,
  ],
  "columns with the pitch before the name": [
    `GREAT ORGAN      SWELL ORGAN      PEDAL ORGAN
16 Bourdon       8 Rohrflöte      16 Subbass
8 Principal      8 Viole          8 Octave
8 Gedeckt        8 Viole Céleste  4 Choralbass
4 Octave         4 Flute          16 Trombone
2 Fifteenth      2 Piccolo
IV Mixture       8 Oboe`,
    `GREAT ORGAN: Bourdon 16, Principal 8, Gedeckt 8, Octave 4, Fifteenth 2, Mixture IV
SWELL ORGAN in a box: Rohrflöte 8, Viole 8, Viole Céleste 8, Flute 4, Piccolo 2, Oboe 8
PEDAL ORGAN: Subbass 16, Octave 8, Choralbass 4, Trombone 16`,
  ],
  "no capital anywhere": [
    `great
open diapason 8
principal 4
swell
lieblich gedackt 8
gamba 8
pedal
bourdon 16`,
    `great: open diapason 8, principal 4
swell in a box: lieblich gedackt 8, gamba 8
pedal: bourdon 16`,
  ],
  "a spreadsheet with a column of names and a column of pitches for each division": [
    "Great\t\tSwell\t\tPedal\t\nOpen Diapason\t8\tGedackt\t8\tBourdon\t16\nPrincipal\t4\tGemshorn\t4\tBass Flute\t8\n\t\tOboe\t8\t\t",
    `Great: Open Diapason 8, Principal 4
Swell in a box: Gedackt 8, Gemshorn 4, Oboe 8
Pedal: Bourdon 16, Bass Flute 8`,
  ],
};
