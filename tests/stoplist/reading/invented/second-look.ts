import type { InventedLists } from "./list.ts";

/** Lists with what a second look at such prints brought up. All places are invented. */
export const SECOND_LOOK: InventedLists = {
  "an index of organs: headings that tell action and compass": [
    `Great Key action Tr Stop action Me Compass-low C Compass-high g3 Keys 56
1 Open Diapason 8 bass grooved
2 Stopped Diapason 8
3 Principal 4
4 Mixture II 12.15
Swell Key action Tr Stop action Me Compass-low C Compass-high g3 Keys 56 Enclosed
5 Gedeckt 8
6 Salicional 8
7 Hautboy 8 TC
Pedal Key action Pn Stop action Pn Compass-low C Compass-high f1 Keys 30
8 Bourdon 16
COUPLERS
Swell to Great
Great to Pedal
Swell to Pedal`,
    `Great C2-G6: Open Diapason 8, Stopped Diapason 8, Principal 4, Mixture II (2 2/3 + 2)
Swell C2-G6 in a box: Gedeckt 8, Salicional 8, Hautboy 8 from C3
Pedal C2-F4: Bourdon 16
Swell to Great; Great to Pedal; Swell to Pedal`,
  ],
  "American headings with wind pressures": [
    `GREAT ORGAN — 3½ inches wind
16' Violone
8' Principal
8' Bourdon
4' Octave
2' Super Octave
Mixture IV
SWELL ORGAN (Expressive) — 4 inches wind
8' Chimney Flute
8' Salicional
8' Voix Céleste (Low C)
4' Principal
2-2/3' Nazard
1-3/5' Tierce
16' Basson-Hautbois
8' Trompette
Tremulant
PEDAL ORGAN
32' Resultant
16' Subbass
16' Violone (Gt)
8' Octave
16' Bombarde
MIDI on Swell
Swell to Great 16-8-4
Swell to Pedal 8-4
Great to Pedal 8`,
    `GREAT ORGAN: Violone 16, Principal 8, Bourdon 8, Octave 4, Super Octave 2, Mixture IV
SWELL ORGAN in a box: Chimney Flute 8, Salicional 8, Voix Céleste 8 from C2, Principal 4, Nazard 2 2/3, Tierce 1 3/5, Basson-Hautbois 16, Trompette 8
PEDAL ORGAN: Resultant 32, Subbass 16, Violone 16 <Gt>, Octave 8, Bombarde 16
SWELL ORGAN to GREAT ORGAN 16; SWELL ORGAN to GREAT ORGAN; SWELL ORGAN to GREAT ORGAN 4; SWELL ORGAN to PEDAL ORGAN; SWELL ORGAN to PEDAL ORGAN 4; GREAT ORGAN to PEDAL ORGAN
~ SWELL ORGAN`,
  ],
  "compounds in every wording": [
    `Hauptwerk
Prinzipal 8'
Mixtur 1 1/3' 4–6fach
Scharff 5-6fach 1'
Cornet 3–5fach ab g
Rauschquinte 2 2/3' + 2'
Sesquialter 2 2/3' u. 1 3/5'
Kornett 8' 5f. (ab c')
Zimbel dreifach 1/2'
Terzian zweifach
Großmixtur 6- bis 8-fach 2'
Progressio harmonica II–III`,
    "Hauptwerk: Prinzipal 8, Mixtur VI 1 1/3, Scharff VI 1, Cornet V from G3, Rauschquinte II 2 2/3 (2 2/3 + 2), Sesquialter II 2 2/3 (2 2/3 + 1 3/5), Kornett V 8 treble from C4, Zimbel III 1/2, Terzian II, Großmixtur VIII 2, Progressio harmonica III",
  ],
  "keys in French words": [
    `Grand-Orgue (Ut1-Sol5)
Montre 8
Bourdon 8
Unda maris 8 (à partir du 2e ut)
Cornet 5 rangs (dessus, dès Ut3)
Positif (Ut1-Sol5)
Bourdon 8
Flûte 4
Voix humaine 8 (dessus)
Pédale (Ut1-Fa3)
Soubasse 16
Tirasse Grand-Orgue
Tirasse Positif
Accouplement du Positif au Grand-Orgue`,
    `Grand-Orgue C2-G6: Montre 8, Bourdon 8, Unda maris 8 from C3, Cornet V treble from C4
Positif C2-G6: Bourdon 8, Flûte 4, Voix humaine 8 treble
Pédale C2-F4: Soubasse 16
Grand-Orgue to Pédale; Positif to Pédale; Positif to Grand-Orgue`,
  ],
  "left and right hand by initials": [
    `Órgano principal
Flautado 8 M.I.
Flautado 8 M.D.
Octava 4 M.I.
Octava 4 M.D.
Nasardo 12ª M.I.
Nasardo 12ª M.D.
Lleno 3 h. M.I.
Lleno 4 h. M.D.
Bajoncillo 4 M.I.
Clarín 8 M.D.`,
    "Órgano principal: Flautado 8 bass, Flautado 8 treble, Octava 4 bass, Octava 4 treble, Nasardo 12ª 2 2/3 bass, Nasardo 12ª 2 2/3 treble, Lleno III bass, Lleno IV treble, Bajoncillo 4 bass, Clarín 8 treble",
  ],
  "bassi and soprani in two columns": [
    `BASSI                     SOPRANI
Principale 8'             Principale 8'
Ottava 4'                 Ottava 4'
Flauto 4'                 Flauto 4'
Fagotto 8'                Tromba 8'`,
    "-: Principale 8 bass, Ottava 4 bass, Flauto 4 bass, Fagotto 8 bass, Principale 8 treble, Ottava 4 treble, Flauto 4 treble, Tromba 8 treble",
  ],
  "kinds of tremulants": [
    `Great
Open Diapason 8
Swell
Gedackt 8
Trem.
Choir
Dulciana 8
Tremulant (slow)
Pedal
Bourdon 16
General tremulant`,
    `Great: Open Diapason 8
Swell in a box: Gedackt 8
Choir: Dulciana 8
Pedal: Bourdon 16
~ Swell, Choir, all`,
  ],
  "a contract: stops with their material in sentences of one line": [
    `On the Great:
An Open Diapason of metal, 8 feet
A Stopped Diapason of wood, 8 feet
A Principal of metal, 4 feet
A Fifteenth of metal, 2 feet
On the Swell:
A Stopped Diapason of wood, 8 feet
A Hautboy of metal, 8 feet`,
    `Great: Open Diapason 8, Stopped Diapason 8, Principal 4, Fifteenth 2
Swell in a box: Stopped Diapason 8, Hautboy 8`,
  ],
  "stops prepared for, in a row of their own": [
    `Great: Open Diapason 8, Gedackt 8, Principal 4
Prepared for: Trumpet 8, Clarion 4
Pedal: Bourdon 16`,
    `Great: Open Diapason 8, Gedackt 8, Principal 4, Trumpet 8 prepared, Clarion 4 prepared
Pedal: Bourdon 16`,
  ],
  "keyboards from the top, numbered in Dutch": [
    `III Zwelwerk
Roerfluit 8'
Salicionaal 8'
II Hoofdwerk
Prestant 8'
Octaaf 4'
Mixtuur IV
I Rugpositief
Holpijp 8'
Prestant 4'
Pedaal
Subbas 16'
Koppels: I+II, III+II, I+III, Ped.+I, Ped.+II, Ped.+III`,
    `Zwelwerk III in a box: Roerfluit 8, Salicionaal 8
Hoofdwerk II: Prestant 8, Octaaf 4, Mixtuur IV
Rugpositief I: Holpijp 8, Prestant 4
Pedaal: Subbas 16
Hoofdwerk to Rugpositief; Hoofdwerk to Zwelwerk; Zwelwerk to Rugpositief; Rugpositief to Pedaal; Hoofdwerk to Pedaal; Zwelwerk to Pedaal`,
  ],
  "one manual under a bare word": [
    `Orgelpositiv, Privatbesitz
Manual (C–f3)
Gedackt 8'
Rohrflöte 4'
Principal 2'
Quinte 1 1/3' (Diskant)
ohne Pedal`,
    `"Orgelpositiv, Privatbesitz"
Manual C2-F6: Gedackt 8, Rohrflöte 4, Principal 2, Quinte 1 1/3 treble`,
  ],
  "an extension organ that prints its lengths in a row": [
    `Manual
Gedackt 16' 8' 4' 2'
Principal 8' 4' 2'
Pedal
Gedackt 16' 8' 4'`,
    `Manual: Gedackt 16, Gedackt 8, Gedackt 4, Gedackt 2, Principal 8, Principal 4, Principal 2
Pedal: Gedackt 16, Gedackt 8, Gedackt 4`,
  ],
  "decimal figures and feet without blanks": [
    `Great
Open Diapason 8ft
Twelfth 2.67ft
Fifteenth 2ft
Seventeenth 1.6ft
Nineteenth 1.33ft
Pedal
Bourdon 16ft`,
    `Great: Open Diapason 8, Twelfth 2 2/3, Fifteenth 2, Seventeenth 1 3/5, Nineteenth 1 1/3
Pedal: Bourdon 16`,
  ],
  "a chamber organ in English words with a shifting movement": [
    `The chamber organ at Netherby Combe House
One manual, GG to e3, no GG sharp
Open Diapason (tenor C) 8
Stopped Diapason 8
Principal 4
Twelfth 2 2/3
Fifteenth 2
Shifting movement
No pedals`,
    `"The chamber organ at Netherby Combe House"
- G1-E6: Open Diapason 8 from C3, Stopped Diapason 8, Principal 4, Twelfth 2 2/3, Fifteenth 2`,
  ],
};
