import type { InventedLists } from "./list.ts";

/** A fourth look at what people paste, after the first three held. All places are invented. */
export const FOURTH_LOOK: InventedLists = {
  "hands printed side by side as in Spanish churches": [
    `ÓRGANO DE LA EPÍSTOLA
Teclado manual de 45 notas (C-c''', octava corta), registros partidos

Mano izquierda                     Mano derecha
Flautado de 13                     Flautado de 13
Octava                             Octava
Docena                             Flauta travesera 8'
Lleno III                          Corneta VI
Bajoncillo                         Clarín claro 8'
                                   Trompeta magna 16'
Pedal: 8 contras de 26`,
    `"ÓRGANO DE LA EPÍSTOLA"
- C2-C6 without C#2, Eb2, F#2, G#2: Flautado 8 bass, Octava 4 bass, Docena 2 2/3 bass, Lleno III bass, Bajoncillo 4 bass, Flautado 8 treble, Octava 4 treble, Flauta travesera 8 treble, Corneta VI treble, Clarín claro 8 treble, Trompeta magna 16 treble
Pedal: contras 16`,
  ],
  "a spreadsheet with a column of ranks": [
    `Division\tStop\tPitch\tRanks\tNotes
Hauptwerk\tRohrflöte\t8'\t\tHolz
Hauptwerk\tMixtur\t1 1/3'\t4\t
Hauptwerk\tTrompete\t8'\t\t
Schwellwerk\tGedackt\t8'\t\t
Schwellwerk\tSesquialtera\t2 2/3'\t2\t
Pedal\tSubbass\t16'\t\t`,
    `Hauptwerk: Rohrflöte 8, Mixtur IV 1 1/3, Trompete 8
Schwellwerk in a box: Gedackt 8, Sesquialtera II 2 2/3
Pedal: Subbass 16`,
  ],
  "a spreadsheet with the ranks before the length": [
    `Stop;Ranks;Pitch
Great;;
Principal;;8
Mixture;4;1 1/3
Pedal;;
Bourdon;;16
Mixture;3;2 2/3`,
    `Great: Principal 8, Mixture IV 1 1/3
Pedal: Bourdon 16, Mixture III 2 2/3`,
  ],
  "two numbered columns, and numbers within a line": [
    `Das Orgelwerk hat folgende Disposition:
I. Hauptwerk C–g3            II. Oberwerk C–g3
1. Bourdon 16'               4. Gedackt 8'
2. Principal 8'              5. Quintade 8'
3. Hohlflöte 8'              6. Principal 4'

Pedal C–f1
7. Subbaß 16'   8. Octavbaß 8'   9. Posaune 16'
Nebenregister: Manualkoppel (Schiebekoppel), Pedalkoppel I, Tremulant OW, Zimbelstern`,
    `Hauptwerk I C2-G6: Bourdon 16, Principal 8, Hohlflöte 8
Oberwerk II C2-G6: Gedackt 8, Quintade 8, Principal 4
Pedal C2-F4: Subbaß 16, Octavbaß 8, Posaune 16
Oberwerk to Hauptwerk; Hauptwerk to Pedal
~ Oberwerk`,
  ],
  "octave couplers of a swell on one line": [
    `GREAT
Open Diapason 8
Principal 4
SWELL (enclosed)
Open Diapason 8
Gemshorn 4
Oboe 8
Octave; Sub Octave; Unison Off
PEDAL
Bourdon 16
COUPLERS
Swell to Great`,
    `GREAT: Open Diapason 8, Principal 4
SWELL in a box: Open Diapason 8, Gemshorn 4, Oboe 8
PEDAL: Bourdon 16
SWELL to SWELL 4; SWELL to SWELL 16; SWELL to GREAT
- unison off SWELL`,
  ],
  "couplers numbered in capital Roman figures": [
    `GREAT
Open Diapason 8
SWELL
Geigen Diapason 8
PEDAL
Bourdon 16
COUPLERS
I    Swell to Pedal
II   Great to Pedal
III  Swell to Great
IV   Swell octave
V    Swell sub octave
VI   Swell unison off`,
    `GREAT: Open Diapason 8
SWELL in a box: Geigen Diapason 8
PEDAL: Bourdon 16
SWELL to PEDAL; GREAT to PEDAL; SWELL to GREAT; SWELL to SWELL 4; SWELL to SWELL 16
- unison off SWELL`,
  ],
  "an American list with mechanicals, counts and words behind headings": [
    `GREAT ORGAN - 3 stops - 4 ranks - 330 pipes - unenclosed
Diapason              8'    61 pipes
Octave                4'    61 pipes
Mixture              II    122 pipes
SWELL ORGAN - 2 stops
Bourdon              16'    (tenor c)  49 pipes
Salicional            8'    61 pipes
PEDAL ORGAN
Bourdon              16'    30 pipes
MECHANICALS: Swell to Great; Swell to Pedal; Great to Pedal; Bellows Signal; Tremolo; Swell to Swell 4'`,
    `GREAT ORGAN: Diapason 8, Octave 4, Mixture II
SWELL ORGAN in a box: Bourdon 16 from C3, Salicional 8
PEDAL ORGAN: Bourdon 16
SWELL ORGAN to GREAT ORGAN; SWELL ORGAN to PEDAL ORGAN; GREAT ORGAN to PEDAL ORGAN; SWELL ORGAN to SWELL ORGAN 4
~ all`,
  ],
  "an American list in which the divisions lend": [
    `Great Organ (unenclosed)
16' Violone (Pedal)
 8' Principal                  61 pipes
 8' Trumpet (Sw.)
    Great to Great 16', 4', Unison Off
Swell Organ (expressive)
 8' Gedeckt
 8' Trumpet
Pedal Organ
16' Violone
 8' Gedeckt (Sw)`,
    `Great Organ: Violone 16 <Pedal>, Principal 8, Trumpet 8 <Sw.>
Swell Organ in a box: Gedeckt 8, Trumpet 8
Pedal Organ: Violone 16, Gedeckt 8 <Sw>
Great Organ to Great Organ 16; Great Organ to Great Organ 4
- unison off Great Organ`,
  ],
  "columns of a console as in Italy of the 19th century": [
    `Grand'Organo (61 tasti) - colonna di destra:
Principale 8' bassi
Principale 8' soprani
Ottava 4'
colonna di sinistra:
Cornetto I a due voci
Tromba soprani 8
Flauto 8
Terza mano`,
    `Grand'Organo C2-C7: Principale 8 bass, Principale 8 treble, Ottava 4, Cornetto I II, Tromba 8 treble, Flauto 8`,
  ],
  "a French coupler that says how it moves": [
    `GRAND-ORGUE
Montre 8
Prestant 4
POSITIF
Bourdon 8
Nasard 2 2/3
PEDALE
Flûte 8
Accouplement à tiroir POS/GO
Tirasse GO`,
    `GRAND-ORGUE: Montre 8, Prestant 4
POSITIF: Bourdon 8, Nasard 2 2/3
PEDALE: Flûte 8
POSITIF to GRAND-ORGUE; GRAND-ORGUE to PEDALE`,
  ],
  "a Dutch coupler for both halves": [
    `Hoofdwerk
Prestant 8 vt
Octaaf 4 vt
Bovenwerk
Viola 8 vt
Roerfluit 8 vt
Pedaal
Subbas 16 vt
Speelhulpen: koppel Hw-Bw (bas en discant), koppel Ped-Hw, tremulant opliggend`,
    `Hoofdwerk: Prestant 8, Octaaf 4
Bovenwerk: Viola 8, Roerfluit 8
Pedaal: Subbas 16
Bovenwerk to Hoofdwerk; Hoofdwerk to Pedaal
~ all`,
  ],
  "a coupler in the Bohemian spelling": [
    `Hauptmanual (I): Copula maior 8', Copula minor 4', Principal 8'
Oberpositiv (II): Flauta 8' (gedeckt), Flauta amabilis 4'
Pedal: Subbass 16', Octavbass 8', Cornettbass 3x
Manualcoppel`,
    `Hauptmanual I: Copula maior 8, Copula minor 4, Principal 8
Oberpositiv II: Flauta 8, Flauta amabilis 4
Pedal: Subbass 16, Octavbass 8, Cornettbass III
Oberpositiv to Hauptmanual`,
  ],
  "a keyboard's stops in brackets, and how one is built": [
    `Manual C-f3: Principal 8, Gedackt 8, Flöte 4 gedeckt, Quinte 2 2/3 (vakant), Mixtur 3f 1 1/3
Pedal C-d1 (Subbaß 16, Violon 8)
Pedalkoppel`,
    `Manual C2-F6: Principal 8, Gedackt 8, Flöte 4, Quinte 2 2/3 prepared, Mixtur III 1 1/3
Pedal C2-D4: Subbaß 16, Violon 8
Manual to Pedal`,
  ],
  "a Danish list with its couplers in short": [
    `Hovedværk
Principal 8
Gedaktfløjte 4
Mixtur IV-V kor
Svelleværk
Gedakt 8
Waldfløjte 2
Pedal
Subbas 16
HV+SV, P+HV, P+SV, SV 16'`,
    `Hovedværk: Principal 8, Gedaktfløjte 4, Mixtur V
Svelleværk in a box: Gedakt 8, Waldfløjte 2
Pedal: Subbas 16
Svelleværk to Hovedværk; Hovedværk to Pedal; Svelleværk to Pedal; Svelleværk to Svelleværk 16`,
  ],
  "a French list with its keyboards in short": [
    `Gr-Orgue: 56 notes
Montre 16' - Bourdon 8' - Fourniture progressive III-VI rgs - Bombarde 16'
Récit expressif: 56 notes
Viole de gambe 8' - *Trompette harmonique 8' - Trémolo
Pédale de 30 notes
Soubasse 16'
Pédales de combinaison: Tirasse G.O., Anches Récit (*), Copula, Octave grave Récit/GO`,
    `Gr-Orgue C2-G6: Montre 16, Bourdon 8, Fourniture progressive VI, Bombarde 16
Récit expressif C2-G6 in a box: Viole de gambe 8, Trompette harmonique 8
Pédale C2-F4: Soubasse 16
Gr-Orgue to Pédale; Récit expressif to Gr-Orgue; Récit expressif to Gr-Orgue 16
~ Récit expressif`,
  ],
  "a ripieno in Roman figures": [
    `Ripieno: Principale 8' (in facciata), Ottava 4', Decima V, Decima IX, Vigesima II, Vigesima VI, Vigesima IX
Concerto: Flauto in ottava 4', Voce umana, Tromboncini B.S.
Pedale: Contrabassi 16'`,
    `-: Principale 8, Ottava 4, Decima V 2, Decima IX 1 1/3, Vigesima II 1, Vigesima VI 2/3, Vigesima IX 1/2, Flauto in ottava 4, Voce umana 8, Tromboncini 8 both
Pedale: Contrabassi 16`,
  ],
  "a celeste from tenor C in short": [
    `SWELL
Echo Gamba         8
Celeste (ten C)    8
Gemshorn           4`,
    "SWELL in a box: Echo Gamba 8, Celeste 8 from C3, Gemshorn 4",
  ],
};
