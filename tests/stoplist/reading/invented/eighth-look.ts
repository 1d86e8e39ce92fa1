import type { InventedLists } from "./list.ts";

/** An eighth look, with a borrowed organ in mind: lists as a mail brings them. All places and builders are invented. */
export const EIGHTH_LOOK: InventedLists = {
  "keyboards that a numeral before a colon tells": [
    `House organ, 3 stops

I: Gedackt 8, Flute 4
II: Gedackt 8 (same pipes as I)
Pedal: Gedackt 8 (from I)`,
    `"House organ, 3 stops"
I I: Gedackt 8, Flute 4
II II: Gedackt 8 <same pipes as I>
Pedal: Gedackt 8 <from I>`,
  ],
  "the same on one line": [
    "I: Gedackt 8, Flute 4; II: Quintadena 8, Nazard 2 2/3; P: Subbass 16",
    `I I: Gedackt 8, Flute 4
II II: Quintadena 8, Nazard 2 2/3
P (pedal): Subbass 16`,
  ],
  "a letter with a sentence behind the stops": [
    `Dear Anna,
here is what stands on our little organ in St. Oswin, Thornmere:

Open Diapason 8
Stopped Diapason 8
Dulciana 8
Principal 4

One manual, 54 notes (C to f'''), no pedal.
Best wishes, Tom`,
    "- C2-F6: Open Diapason 8, Stopped Diapason 8, Dulciana 8, Principal 4",
  ],
  "builder and year in brackets behind the name": [
    `St. Aldhelm, Fenwick Magna (J. Trask & Son, 1902)
Great
Open Diapason 8
Pedal
Bourdon 16`,
    `"St. Aldhelm, Fenwick Magna" (J. Trask & Son, 1902)
Great: Open Diapason 8
Pedal: Bourdon 16`,
  ],
  "a firm in brackets, without a year": [
    `Chapel of ease, Little Marl (Trask Bros)
Open Diapason 8
Principal 4`,
    `"Chapel of ease, Little Marl" (Trask Bros)
-: Open Diapason 8, Principal 4`,
  ],
  "a place in brackets stays with the name": [
    `St. Peter, Marl (Northmere)
Open Diapason 8
Principal 4`,
    `"St. Peter, Marl (Northmere)"
-: Open Diapason 8, Principal 4`,
  ],
  "years that tell a history stay with the name": [
    `St. Peter, Marl (1888, rebuilt 1964)
Open Diapason 8
Principal 4`,
    `"St. Peter, Marl (1888, rebuilt 1964)"
-: Open Diapason 8, Principal 4`,
  ],
  "the builder behind a dash": [
    `Dorfkirche Lüttenhagen - Orgel von Chr. Wessling 1857
Manual I: Principal 8', Gedackt 8'
Manual II: Salicional 8', Flöte 4'
Pedal: Subbass 16'`,
    `"Dorfkirche Lüttenhagen" (Chr. Wessling, 1857)
Manual I I: Principal 8, Gedackt 8
Manual II II: Salicional 8, Flöte 4
Pedal: Subbass 16`,
  ],
  "a year alone on its line, without a name": [
    `erbaut 1741
Principal 8
Gedackt 8`,
    "-: Principal 8, Gedackt 8",
  ],
  "French keyboards of fifty notes, the builder on a line of his own": [
    `Orgue de l'abbatiale de Brancion
construit par Mathurin Desgrange en 1752

POSITIF (50 notes, ut1-ré5 sans 1er ut#)
Bourdon 8
Prestant 4
GRAND-ORGUE (50 notes)
Montre 8
Prestant 4`,
    `"Orgue de l'abbatiale de Brancion" (Mathurin Desgrange, 1752)
POSITIF C2-D6 without C#2: Bourdon 8, Prestant 4
GRAND-ORGUE C2-D6 without C#2: Montre 8, Prestant 4`,
  ],
  "an Italian keyboard and its pulled-down pedal before the stops": [
    `Chiesa di San Lauro, Montefosco
Tastiera di 45 tasti (Do1-Do5 con prima ottava corta)
Pedaliera di 17 note, unita alla tastiera

Principale 8' (bassi e soprani)
Ottava
Quintadecima
Flauto in ottava
Contrabbassi 16'`,
    `"Chiesa di San Lauro, Montefosco"
Tastiera C2-C6 without C#2, Eb2, F#2, G#2: Principale 8 both, Ottava 4, Quintadecima 2, Flauto in ottava 4, Contrabbassi 16
Pedaliera C2-E3:
Tastiera to Pedaliera
? 9 Contrabbassi`,
  ],
  "three rows of pipes with their letters, and what these stand for": [
    `Lodge Chapel, Harrow Bend (1931)
Ranks: Open Diapason 8 (73 pipes), Flute 16 (97 pipes)

GREAT
Open Diapason 8 (A)
Flute 8 (B)
Octave 4 (A)
PEDAL
Bourdon 16 (B)
Octave 8 (A)`,
    `"Lodge Chapel, Harrow Bend" (1931)
GREAT: Open Diapason 8 [A], Flute 8 [B], Octave 4 [A]
PEDAL: Bourdon 16 [B], Octave 8 [A]
? 5 (A)`,
  ],
  "pedals that move boxes are in none": [
    `PEDAL ORGAN
Bourdon 16
GREAT ORGAN
Open Diapason 8
SOLO ORGAN
Viole 8
Balanced expression pedals to Swell and Solo`,
    `PEDAL ORGAN: Bourdon 16
GREAT ORGAN: Open Diapason 8
SOLO ORGAN in a box: Viole 8`,
  ],
  "a Spanish keyboard with a hand to a line": [
    `Iglesia parroquial de San Gil, Villamoral (1735)

Un teclado de 45 notas, octava corta

Mano izquierda: Flautado 13, Octava, Docena, Quincena, Lleno IV, Bajoncillo 4
Mano derecha: Flautado 13, Octava, Docena, Quincena, Lleno IV, Corneta VI, Clarín 8`,
    `"Iglesia parroquial de San Gil, Villamoral" (1735)
- C2-C6 without C#2, Eb2, F#2, G#2: Flautado 13 8 bass, Octava 4 bass, Docena 2 2/3 bass, Quincena 2 bass, Lleno IV bass, Bajoncillo 4 bass, Flautado 13 8 treble, Octava 4 treble, Docena 2 2/3 treble, Quincena 2 treble, Lleno IV treble, Corneta VI treble, Clarín 8 treble`,
  ],
  "a German mail that ends in greetings": [
    `Hallo Jonas,
anbei die Disposition der Orgel in St. Ursula, Hohenried. Viel Spaß am Sonntag!

I. Manual (C-f3): Prinzipal 8', Gedackt 8', Oktave 4'
II. Manual (C-f3): Holzgedackt 8', Rohrflöte 4', Tremulant
Pedal (C-d1): Subbass 16', Gedacktbass 8'
Koppeln II/I, I/P, II/P
Der Schlüssel liegt beim Mesner.

Grüße
Marie`,
    `I. Manual I C2-F6: Prinzipal 8, Gedackt 8, Oktave 4
II. Manual II C2-F6: Holzgedackt 8, Rohrflöte 4
Pedal C2-D4: Subbass 16, Gedacktbass 8
II. Manual to I. Manual; I. Manual to Pedal; II. Manual to Pedal
~ II. Manual`,
  ],
  "an organ all in one box, beside pedals that move stops": [
    `Manual CC-g 56 notes
1 Open Diapason 8
2 Dulciana 8
Pedals CCC-F 30 notes
3 Bourdon 16
Manual to Pedals
All in general swell box. Two composition pedals.`,
    `Manual C2-G6 in a box: Open Diapason 8, Dulciana 8
Pedals C2-F4: Bourdon 16
Manual to Pedals`,
  ],
  "reeds that French pedals bring on are no couplers": [
    `Grand-Orgue
Montre 8
Trompette 8
Récit
Flûte 8
Trompette 8
Pédale
Soubasse 16
Tirasses GO, R ; Copula R/GO ; Anches GO ; Anches R`,
    `Grand-Orgue: Montre 8, Trompette 8
Récit: Flûte 8, Trompette 8
Pédale: Soubasse 16
Grand-Orgue to Pédale; Récit to Pédale; Récit to Grand-Orgue`,
  ],
  "an Italian title of many words, and keyboards counted in brackets": [
    `Organo Serafino Bordoni 1882, chiesa di S. Marta, Colleverde
due manuali e pedale, trasmissione meccanica

Grand'Organo (2a tastiera)
Principale 8 bassi
Principale 8 soprani
Ottava 4
Organo Eco (1a tastiera) espressivo
Bordone 8
Pedale
Contrabbassi 16
Unioni: I-II, I-Ped, II-Ped`,
    `"Organo Serafino Bordoni 1882, chiesa di S. Marta, Colleverde"
Grand'Organo II: Principale 8 bass, Principale 8 treble, Ottava 4
Organo Eco espressivo I in a box: Bordone 8
Pedale: Contrabbassi 16
Organo Eco espressivo to Grand'Organo; Organo Eco espressivo to Pedale; Grand'Organo to Pedale`,
  ],
};
