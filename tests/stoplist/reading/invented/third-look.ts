import type { InventedLists } from "./list.ts";

/** Lists in the manner of leaflets, mails and signs beside the console. All places are invented. */
export const THIRD_LOOK: InventedLists = {
  "a sign at the console, in capitals without marks": [
    `RÜCKPOSITIV
GEDACKT 8
PRINCIPAL 4
QUINTE 1 1/3
SCHARF 4F
HAUPTWERK
PRINCIPAL 8
OCTAVE 4
MIXTUR 5F
PEDAL
SUBBASS 16
KOPPELN RP/HW HW/P RP/P`,
    `RÜCKPOSITIV: GEDACKT 8, PRINCIPAL 4, QUINTE 1 1/3, SCHARF IV
HAUPTWERK: PRINCIPAL 8, OCTAVE 4, MIXTUR V
PEDAL: SUBBASS 16
RÜCKPOSITIV to HAUPTWERK; HAUPTWERK to PEDAL; RÜCKPOSITIV to PEDAL`,
  ],
  "footnotes that say who made the stops": [
    `Hoofdwerk
Prestant 8' ¹
Roerfluit 8' ²
Octaaf 4' ¹
Rugwerk
Holpijp 8' ²
Fluit 4' ³
Pedaal
aangehangen
¹ = 17e eeuw
² = 1780
³ = reconstructie`,
    `Hoofdwerk: Prestant 8, Roerfluit 8, Octaaf 4
Rugwerk: Holpijp 8, Fluit 4
Pedaal:
Hoofdwerk to Pedaal`,
  ],
  "a French list by the hand of a visitor": [
    `GO : montre 8, bourdon 8, prestant 4, doublette 2, fourniture III, trompette 8
Réc. exp. : flûte 8, gambe 8, voix céleste 8, flûte 4, hautbois 8
Péd. : soubasse 16, basse 8
tir. GO, tir. R, acc. R/GO`,
    `GO: montre 8, bourdon 8, prestant 4, doublette 2, fourniture III, trompette 8
Réc. exp. in a box: flûte 8, gambe 8, voix céleste 8, flûte 4, hautbois 8
Péd.: soubasse 16, basse 8
GO to Péd.; Réc. exp. to Péd.; Réc. exp. to GO`,
  ],
  "two stops joined on one line": [
    `Manual
Gedackt 8' und Flöte 4'
Principal 4', Octave 2'
Mixtur 3f.`,
    "Manual: Gedackt 8, Flöte 4, Principal 4, Octave 2, Mixtur III",
  ],
  "an Italian organ with its console at length": [
    `Tastiera di 56 note (Do1-Sol5), pedaliera di 27 note (Do1-Re3)
Principale 8' bassi
Principale 8' soprani
Ottava 4'
Duodecima 2.2/3'
Quintadecima 2'
Ripieno 3 file
Voce umana 8'
Flauto 4'
Viola 4' bassi
Tromba 8' soprani
Pedale
Contrabbasso 16'
Staffa "Combinazione libera"
Pedaletto per il Ripieno
Unione tastiera-pedale`,
    `- C2-G6: Principale 8 bass, Principale 8 treble, Ottava 4, Duodecima 2 2/3, Quintadecima 2, Ripieno III, Voce umana 8, Flauto 4, Viola 4 bass, Tromba 8 treble
Pedale C2-D4: Contrabbasso 16
Manual to Pedale`,
  ],
  "Spanish couplers by the word for them": [
    `I Órgano Mayor
Flautado 8
Octava 4
Lleno III
II Órgano Expresivo
Violón 8
Gamba 8
Voz celeste 8
Trompeta 8
Pedal
Subbajo 16
Enganches: II a I, I a Pedal, II a Pedal
Trémolo II`,
    `Órgano Mayor I: Flautado 8, Octava 4, Lleno III
Órgano Expresivo II in a box: Violón 8, Gamba 8, Voz celeste 8, Trompeta 8
Pedal: Subbajo 16
Órgano Expresivo to Órgano Mayor; Órgano Mayor to Pedal; Órgano Expresivo to Pedal
~ Órgano Expresivo`,
  ],
  "a list whose name comes first, then its builder": [
    `Organ of St Cuthman, Harrow Weir
Messrs. Thorne & Daughter
Manual I: Great
8 Open Diapason
8 Gedeckt
4 Principal
2 Fifteenth
Manual II: Swell
8 Viola
4 Flute
8 Trumpet
Pedal
16 Bourdon
16 8 4`,
    `"Organ of St Cuthman, Harrow Weir"
Great I: Open Diapason 8, Gedeckt 8, Principal 4, Fifteenth 2
Swell II in a box: Viola 8, Flute 4, Trumpet 8
Pedal: Bourdon 16
? 14 16 8 4`,
  ],
};
