import type { InventedLists } from "./list.ts";

/** A list or two in the manner of each language. All places are invented. */
export const VARIOUS: InventedLists = {
  "an English leaflet with leaders, numbers and a compass": [
    `Great Organ (CC to g3)
1. Open Diapason ...... 8 ft
2. Stopped Diapason ... 8 ft
3. Principal .......... 4 ft
4. Fifteenth .......... 2 ft
5. Mixture ............ III ranks
Swell Organ (enclosed)
6. Lieblich Gedeckt 8
7. Salicional 8
8. Vox Angelica (TC) 8
9. Gemshorn 4
10. Cornopean 8
Tremulant
Pedal Organ
11. Bourdon 16
Couplers
Sw to Gt
Sw to Ped
Gt to Ped
Swell Octave`,
    `Great Organ C2-G6: Open Diapason 8, Stopped Diapason 8, Principal 4, Fifteenth 2, Mixture III
Swell Organ in a box: Lieblich Gedeckt 8, Salicional 8, Vox Angelica 8 from C3, Gemshorn 4, Cornopean 8
Pedal Organ: Bourdon 16
Swell Organ to Great Organ; Swell Organ to Pedal Organ; Great Organ to Pedal Organ; Swell Organ to Swell Organ 4
~ Swell Organ`,
  ],
  "a German list with numbered headings, fach and a Schwebung that is a stop": [
    `I. Hauptwerk C–g'''
Principal 8'
Oktave 4'
Nasat 2 2/3'
Mixtur 4-5fach 1 1/3'
II. Schwellwerk C–g'''
Gedackt 8'
Schwebung 8' (ab c°)
Terz 1 3/5'
Tremulant
Pedal C–f'
Subbass 16'
Koppeln: II/I, I/P, II/P`,
    `Hauptwerk I C2-G6: Principal 8, Oktave 4, Nasat 2 2/3, Mixtur V 1 1/3
Schwellwerk II C2-G6 in a box: Gedackt 8, Schwebung 8 from C3, Terz 1 3/5
Pedal C2-F4: Subbass 16
Schwellwerk to Hauptwerk; Hauptwerk to Pedal; Schwellwerk to Pedal
~ Schwellwerk`,
  ],
  "a Dutch list with voet, sterk and couplers by initials": [
    `Hoofdwerk
Prestant 8 voet
Octaaf 4 voet
Mixtuur 3-4 st.
Rugwerk
Roerfluit 8 voet
Dulciaan 8 voet
Pedaal
Subbas 16 voet
Koppelingen: HW+RW, Ped+HW
Tremulant Rugwerk`,
    `Hoofdwerk: Prestant 8, Octaaf 4, Mixtuur IV
Rugwerk: Roerfluit 8, Dulciaan 8
Pedaal: Subbas 16
Rugwerk to Hoofdwerk; Hoofdwerk to Pedaal
~ Rugwerk`,
  ],
  "a French list with pieds, rangs and tirasses": [
    `Grand Orgue (56 notes)
Montre 8 pieds
Prestant 4
Plein jeu 4 rangs
Récit expressif
Flûte harmonique 8
Trompette 8
Pédale (30 notes)
Soubasse 16
Tirasse GO, Tirasse Récit
Accouplement Récit/G.O.`,
    `Grand Orgue C2-G6: Montre 8, Prestant 4, Plein jeu IV
Récit expressif in a box: Flûte harmonique 8, Trompette 8
Pédale C2-F4: Soubasse 16
Grand Orgue to Pédale; Récit expressif to Pédale; Récit expressif to Grand Orgue`,
  ],
  "pitch before name": [
    "8' Principal\n8' Gedackt\n4' Oktave\n2 2/3' Quinte",
    "-: Principal 8, Gedackt 8, Oktave 4, Quinte 2 2/3",
  ],
  "a spreadsheet with a column for each division": [
    "Great\tSwell\tPedal\nOpen Diapason 8\tOboe 8\tBourdon 16\nPrincipal 4\tGedackt 8\tOctave 8\nFifteenth 2\tFlute 4\t",
    "Great: Open Diapason 8, Principal 4, Fifteenth 2\nSwell in a box: Oboe 8, Gedackt 8, Flute 4\nPedal: Bourdon 16, Octave 8",
  ],
  "a whole organ on one line": [
    "Manual: Gedackt 8, Prinzipal 4, Oktave 2, Quinte 1 1/3; Pedal: Subbass 16",
    "Manual: Gedackt 8, Prinzipal 4, Oktave 2, Quinte 1 1/3\nPedal: Subbass 16",
  ],
  "octave couplers and an extended stop": [
    `GREAT
Open Diapason 8
SWELL
Oboe 8
PEDAL
Subbass 16
Bass Flute 8 (ext. Subbass)
Great to Pedal 8
Swell to Great 16
Swell to Great 4`,
    `GREAT: Open Diapason 8
SWELL in a box: Oboe 8
PEDAL: Subbass 16, Bass Flute 8 <ext. Subbass>
GREAT to PEDAL; SWELL to GREAT 16; SWELL to GREAT 4`,
  ],
  "a doubtful pitch and an unknown name are asked": [
    "Hauptwerk\nPrincipal 8'\nQuinte 22/3'\nZorkophon 8'",
    "Hauptwerk: Principal 8, Quinte 2 2/3, Zorkophon 8\n? 3 22/3\n? 4 Zorkophon",
  ],
  "markdown and a printed composition": [
    "- **Great**\n  - Open Diapason 8'\n  - Sesquialtera 2 2/3 + 1 3/5\n- **Pedal**\n  - Bourdon 16'",
    "Great: Open Diapason 8, Sesquialtera II 2 2/3 (2 2/3 + 1 3/5)\nPedal: Bourdon 16",
  ],
  "chatter between the divisions": [
    `The organ was built in 1911 and restored in 1988.
Great: Open Diapason 8, Principal 4
The action is mechanical.
Pedal: Bourdon 16
Two composition pedals.`,
    "Great: Open Diapason 8, Principal 4\nPedal: Bourdon 16",
  ],
  "halves, ranks and a lowest key": [
    "Oberwerk\nGedackt 8'\nDulzian 8' Bass/Diskant\nCornett 3f. ab c'\nZimbelstern",
    "Oberwerk: Gedackt 8, Dulzian 8 both, Cornett III treble from C4",
  ],
  "a Danish list": [
    "Hovedværk\nPrincipal 8'\nRørfløjte 8'\nPedal\nSubbas 16'",
    "Hovedværk: Principal 8, Rørfløjte 8\nPedal: Subbas 16",
  ],
};
