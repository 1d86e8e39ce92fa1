import type { InventedLists } from "./list.ts";

/** Lists in English, British and American. All places are invented. */
export const ENGLISH: InventedLists = {
  "a mail with quoted lines and a mixture printed by intervals": [
    `> Hi Martin, here is the spec of ours:
>
> GREAT
> Open Diapason     8
> Claribel Flute    8
> Principal         4
> Twelfth       2 2/3
> Fifteenth         2
>
> SWELL
> Open Diapason     8
> Lieblich Gedact   8
> Gemshorn          4
> Mixture       12.15
> Oboe              8
> Tremulant
>
> PEDAL
> Bourdon          16
> Bass Flute (from Bourdon)  8
>
> Couplers: Sw/Gt, Sw/Ped, Gt/Ped, Swell super octave`,
    `GREAT: Open Diapason 8, Claribel Flute 8, Principal 4, Twelfth 2 2/3, Fifteenth 2
SWELL in a box: Open Diapason 8, Lieblich Gedact 8, Gemshorn 4, Mixture II (2 2/3 + 2), Oboe 8
PEDAL: Bourdon 16, Bass Flute 8 <from Bourdon>
SWELL to GREAT; SWELL to PEDAL; GREAT to PEDAL; SWELL to SWELL 4
~ SWELL`,
  ],
  "an American list with pipes, tubes and hyphened fractions": [
    `St. Alban's, Marrow Creek
Opus 112

GREAT (Manual I, unenclosed, 61 notes)
8' Principal 61 pipes
8' Rohrflöte 61 pipes
4' Octave 61 pipes
2-2/3' Twelfth 61 pipes
2' Fifteenth 61 pipes
IV Fourniture 1-1/3' 244 pipes
8' Trumpet 61 pipes
Chimes 25 tubes

SWELL (Manual II, enclosed, 61 notes)
8' Gedeckt 61 pipes
8' Viola 61 pipes
8' Viola Celeste (TC) 49 pipes
4' Spitzflöte 61 pipes
1-3/5' Tierce (TC) 49 pipes
8' Oboe 61 pipes
Tremolo

PEDAL (32 notes)
16' Subbass 32 pipes
8' Principal 32 pipes
16' Lieblich Gedeckt (Sw., ext. Gedeckt) 12 pipes
4' Choral Bass 32 pipes

COUPLERS
Great to Pedal 8, 4
Swell to Pedal 8, 4
Swell to Great 16, 8, 4
Swell to Swell 16, UO, 4`,
    `"St. Alban's, Marrow Creek"
GREAT I C2-C7: Principal 8, Rohrflöte 8, Octave 4, Twelfth 2 2/3, Fifteenth 2, Fourniture IV 1 1/3, Trumpet 8, Chimes
SWELL II C2-C7 in a box: Gedeckt 8, Viola 8, Viola Celeste 8 from C3, Spitzflöte 4, Tierce 1 3/5 from C3, Oboe 8
PEDAL C2-G4: Subbass 16, Principal 8, Lieblich Gedeckt 16 <Sw., ext. Gedeckt>, Choral Bass 4
GREAT to PEDAL; GREAT to PEDAL 4; SWELL to PEDAL; SWELL to PEDAL 4; SWELL to GREAT 16; SWELL to GREAT; SWELL to GREAT 4; SWELL to SWELL 16; SWELL to SWELL 4
- unison off SWELL
~ SWELL`,
  ],
  "an old compass in alt, halves behind commas, a cornet from the treble": [
    `Great Organ, GG to f in alt
Open Diapason 8 ft.
Stop'd Diapason, Bass 8 ft.
Stop'd Diapason, Treble 8 ft.
Principal 4 ft.
Twelfth 3 ft.
Fifteenth 2 ft.
Sesquialtera, Bass, 3 ranks
Cornet, Treble, 3 ranks
Trumpet 8 ft.

Swell Organ, tenor C to f in alt
Open Diapason 8 ft.
Hautboy 8 ft.

Swell to Great`,
    `Great Organ G1-F6: Open Diapason 8, Stop'd Diapason 8 bass, Stop'd Diapason 8 treble, Principal 4, Twelfth 2 2/3, Fifteenth 2, Sesquialtera III bass, Cornet III treble, Trumpet 8
Swell Organ C3-F6 in a box: Open Diapason 8, Hautboy 8
Swell Organ to Great Organ`,
  ],
  "cells with numbers and a column of pipes": [
    "No.\tStop\tPitch\tPipes\n\tGREAT ORGAN\n1\tOpen Diapason\t8\t58\n2\tDulciana\t8\t58\n3\tHarmonic Flute\t4\t58\n\tSWELL ORGAN\n4\tRohr Flute\t8\t58\n5\tSalicional\t8\t58\n6\tVoix Celestes (tenor c)\t8\t46\n7\tMixture\tIII\t174\n\tPEDAL ORGAN\n8\tBourdon\t16\t30",
    `GREAT ORGAN: Open Diapason 8, Dulciana 8, Harmonic Flute 4
SWELL ORGAN in a box: Rohr Flute 8, Salicional 8, Voix Celestes 8 from C3, Mixture III
PEDAL ORGAN: Bourdon 16`,
  ],
  "commas and quotes as a spreadsheet saves them": [
    `"Division","Stop","Pitch","Remarks"
"Great","Open Diapason","8'",""
"Great","Stopped Diapason","8'","wood"
"Great","Principal","4'",""
"Great","Mixture 19.22.26","III",""
"Swell","Lieblich Gedeckt","8'",""
"Swell","Gamba","8'","tin, bearded"
"Pedal","Bourdon","16'",""
"Pedal","Flute","8'","from Bourdon"`,
    `Great: Open Diapason 8, Stopped Diapason 8, Principal 4, Mixture III (1 1/3 + 1 + 2/3)
Swell in a box: Lieblich Gedeckt 8, Gamba 8
Pedal: Bourdon 16, Flute 8 <from Bourdon>`,
  ],
  "a Markdown table that names each division once": [
    `| Division | Stop | Pitch |
|----------|------|------:|
| **Great** | Open Diapason | 8' |
| | Principal | 4' |
| | Fifteenth | 2' |
| **Swell** | Gedact | 8' |
| | Oboe | 8' |
| **Pedal** | Bourdon | 16' |`,
    `Great: Open Diapason 8, Principal 4, Fifteenth 2
Swell in a box: Gedact 8, Oboe 8
Pedal: Bourdon 16`,
  ],
  "a web page's code, and couplers to a pedal that has no stops": [
    `<h2>St Ebba, Low Farrow</h2>
<h3>Great</h3>
<ul><li>Open Diapason 8&prime;</li><li>Principal 4&prime;</li><li>Twelfth 2<sup>2</sup>/<sub>3</sub>&prime;</li></ul>
<h3>Swell</h3>
<table><tr><td>Stopped Diapason</td><td>8&prime;</td></tr><tr><td>Cremona</td><td>8&prime;</td></tr></table>
<p>Swell to Great<br>Great to Pedals</p>`,
    `"St Ebba, Low Farrow"
Great: Open Diapason 8, Principal 4, Twelfth 2 2/3
Swell in a box: Stopped Diapason 8, Cremona 8
Pedal:
Swell to Great; Great to Pedal`,
  ],
  "two columns of blanks with the pedal under the great": [
    `GREAT                     SWELL (enclosed)
Open Diapason    8        Violin Diapason  8
Clarabella       8        Lieblich Gedact  8
Principal        4        Echo Gamba       8
Flute            4        Gemshorn         4
Fifteenth        2        Mixture         II
                          Oboe             8
PEDAL
Bourdon         16        COUPLERS
Bass Flute       8        Swell to Great
                          Swell to Pedal
                          Great to Pedal`,
    `GREAT: Open Diapason 8, Clarabella 8, Principal 4, Flute 4, Fifteenth 2
PEDAL: Bourdon 16, Bass Flute 8
SWELL in a box: Violin Diapason 8, Lieblich Gedact 8, Echo Gamba 8, Gemshorn 4, Mixture II, Oboe 8
SWELL to GREAT; SWELL to PEDAL; GREAT to PEDAL`,
  ],
  "stops prepared for, extended and borrowed": [
    `Swell
Rohrflute 8
Celeste (prepared for) 8
Nazard 2 2/3 – prepared
Double Trumpet 16 *
Trumpet 8 (extension of Double Trumpet)
Clarion 4 (ext.)

Pedal
Open Wood 16
Bourdon 16
Octave 8 (ext. Open Wood)
Trombone 16 (from Swell)

* new in 1998`,
    `Swell in a box: Rohrflute 8, Celeste 8 prepared, Nazard 2 2/3 prepared, Double Trumpet 16, Trumpet 8 <extension of Double Trumpet>, Clarion 4 <ext.>
Pedal: Open Wood 16, Bourdon 16, Octave 8 <ext. Open Wood>, Trombone 16 <from Swell>`,
  ],
  "a town organ of three manuals with its console": [
    `St Wilfrid, Ottershaw Magna
Manuals CC–a3 (58 notes), Pedals CCC–f1 (30 notes)

CHOIR
Gedeckt 8
Viola d'Orchestre 8
Flauto Traverso 4
Clarinet 8
Tremulant

GREAT
Double Open Diapason 16
Open Diapason No. I 8
Open Diapason No. II 8
Octave 4
Super Octave 2
Trumpet 8

SWELL
Geigen Diapason 8
Vox Angelica 8 (TC)
Octave Geigen 4
Mixture (3 rks) 15.19.22
Contra Fagotto 16
Horn 8
Tremulant

PEDAL
Harmonic Bass 32 (derived)
Open Diapason (wood) 16
Octave (from Open Diapason) 8

COUPLERS
Choir to Pedal, Great to Pedal, Swell to Pedal
Swell to Great, Swell to Choir, Choir to Great
Swell Octave, Swell Sub-octave, Swell Unison Off

Four thumb pistons to each manual
Balanced swell pedal
Wind pressure 3½ inches`,
    `"St Wilfrid, Ottershaw Magna"
CHOIR C2-A6: Gedeckt 8, Viola d'Orchestre 8, Flauto Traverso 4, Clarinet 8
GREAT C2-A6: Double Open Diapason 16, Open Diapason No. I 8, Open Diapason No. II 8, Octave 4, Super Octave 2, Trumpet 8
SWELL C2-A6 in a box: Geigen Diapason 8, Vox Angelica 8 from C3, Octave Geigen 4, Mixture III (2 + 1 1/3 + 1), Contra Fagotto 16, Horn 8
PEDAL C2-F4: Harmonic Bass 32 <derived>, Open Diapason 16, Octave 8 <from Open Diapason>
CHOIR to PEDAL; GREAT to PEDAL; SWELL to PEDAL; SWELL to GREAT; SWELL to CHOIR; CHOIR to GREAT; SWELL to SWELL 4; SWELL to SWELL 16
- unison off SWELL
~ CHOIR, SWELL`,
  ],
  "a page with its menu, its history and its foot": [
    `Home | History | Music | Contact
The Organ of Saint Osyth's, Marsh Tolling
Built by a local man in 1862, enlarged 1931.
Action: mechanical to manuals, pneumatic to pedal
Compass: manuals 56 notes, pedal 30 notes

Great Organ
Open Diapason 8'
Dulciana 8'
Principal 4'

Swell Organ
Gedact 8'
Gamba 8'
Oboe 8'

Pedal Organ
Bourdon 16'

Couplers: Swell to Great, Great to Pedal, Swell to Pedal
The blower is in the tower.
Page last changed in March
© 2021 the churchwardens`,
    `"The Organ of Saint Osyth's, Marsh Tolling"
Great Organ C2-G6: Open Diapason 8, Dulciana 8, Principal 4
Swell Organ C2-G6 in a box: Gedact 8, Gamba 8, Oboe 8
Pedal Organ C2-F4: Bourdon 16
Swell Organ to Great Organ; Great Organ to Pedal Organ; Swell Organ to Pedal Organ`,
  ],
  "couplers in many short wordings": [
    `Great
Open Diapason 8
Choir
Gedackt 8
Swell
Oboe 8
Pedal
Bourdon 16
Couplers:
Sw to Gt
Sw. to Gt. Sub
Swell to Great Super
Ch - Gt
Gt & Ped combs coupled
Swell to Choir 16
Sw Oct
Ch Sub Oct
Sw Unis Off
Gt-Ped
Sw–Ped
Ch→Ped`,
    `Great: Open Diapason 8
Choir: Gedackt 8
Swell in a box: Oboe 8
Pedal: Bourdon 16
Swell to Great; Swell to Great 16; Swell to Great 4; Choir to Great; Swell to Choir 16; Swell to Swell 4; Choir to Choir 16; Great to Pedal; Swell to Pedal; Choir to Pedal`,
  ],
  "a hand-typed sheet with shortened names": [
    `Gt: Op. Diap. 8, Stop. Diap. 8, Princ. 4, 12th 2 2/3, 15th 2, Mixt. III
Sw: Lieb. Ged. 8, Salic. 8, Gemshorn 4, Oboe 8
Ped: Bourdon 16
Sw to Gt, Sw to Ped, Gt to Ped`,
    `Gt: Op. Diap. 8, Stop. Diap. 8, Princ. 4, 12th 2 2/3, 15th 2, Mixt. III
Sw in a box: Lieb. Ged. 8, Salic. 8, Gemshorn 4, Oboe 8
Ped: Bourdon 16
Sw to Gt; Sw to Ped; Gt to Ped`,
  ],
  "a unit organ whose ranks are lettered": [
    `MANUAL I
Principal 8 (A)
Gedackt 8 (B)
Octave 4 (A)
Flute 4 (B)
Mixture II (C)
MANUAL II
Gedackt 8 (B)
Flute 4 (B)
Nazard 2 2/3 (B)
PEDAL
Bourdon 16 (B)
Principal 8 (A)`,
    `MANUAL I I: Principal 8 [A], Gedackt 8 [B], Octave 4 [A], Flute 4 [B], Mixture II [C]
MANUAL II II: Gedackt 8 [B], Flute 4 [B], Nazard 2 2/3 [B]
PEDAL: Bourdon 16 [B], Principal 8 [A]
? 2 (A)`,
  ],
};
