import type { InventedLists } from "./list.ts";

/** Lists in German. All places are invented. */
export const GERMAN: InventedLists = {
  "cells with remarks, as pages of reference print them": [
    "I Hauptwerk C–g3\nBordun\t16′\t\nPrincipal\t8′\tProspekt\nRohrflöte\t8′\talt, um 1780\nOctave\t4′\t\nQuinte\t2⅔′\t\nMixtur IV\t1⅓′\t\nII Positiv C–g3\nGedackt\t8′\t\nSesquialtera II\t2⅔′\tab c0\nKrummhorn\t8′\t\nTremulant\nPedal C–f1\nSubbaß\t16′\t\nOctavbaß\t8′\t\nFagott\t16′\tneu\nKoppeln: II/I, I/P, II/P",
    `Hauptwerk I C2-G6: Bordun 16, Principal 8, Rohrflöte 8, Octave 4, Quinte 2 2/3, Mixtur IV 1 1/3
Positiv II C2-G6: Gedackt 8, Sesquialtera II 2 2/3 from C3, Krummhorn 8
Pedal C2-F4: Subbaß 16, Octavbaß 8, Fagott 16
Positiv to Hauptwerk; Hauptwerk to Pedal; Positiv to Pedal
~ Positiv`,
  ],
  "numbered through to the couplers, with Fuß in words": [
    `Orgel der Stadtkirche Niederlausen
erbaut 1894, pneumatische Kegelladen

I. Manual (C–f3)
1. Bourdun 16 Fuß
2. Prinzipal 8 Fuß
3. Hohlflöte 8 Fuss
4. Gambe 8 Fuß
5. Oktave 4 Fuß
6. Mixtur 3–4fach 2 2/3 Fuß

II. Manual (C–f3)
7. Lieblich Gedeckt 8 Fuß
8. Salizional 8 Fuß
9. Aeoline 8 Fuß
10. Flauto dolce 4 Fuß

Pedal (C–d1)
11. Subbaß 16 Fuß
12. Violon 16 Fuß
13. Cello 8 Fuß

Nebenzüge
14. Manualkoppel
15. Pedalkoppel zu I
16. Pedalkoppel zu II
17. Kalkant
Feste Kombinationen: p, mf, f, Tutti`,
    `"Orgel der Stadtkirche Niederlausen"
I. Manual I C2-F6: Bourdun 16, Prinzipal 8, Hohlflöte 8, Gambe 8, Oktave 4, Mixtur IV 2 2/3
II. Manual II C2-F6: Lieblich Gedeckt 8, Salizional 8, Aeoline 8, Flauto dolce 4
Pedal C2-D4: Subbaß 16, Violon 16, Cello 8
II. Manual to I. Manual; I. Manual to Pedal; II. Manual to Pedal`,
  ],
  "a village organ with halves and an attached pedal": [
    `Manual C, D–c3
Gedackt 8' (B/D)
Principal 4'
Flöte 4' Bass
Flöte 4' Diskant
Octave 2'
Quinte 1½'
Sesquialter 2fach Diskant
Mixtur 3fach 1'
Zimbelstern
Pedal, angehängt`,
    `Manual C2-C6 without C#2: Gedackt 8 both, Principal 4, Flöte 4 bass, Flöte 4 treble, Octave 2, Quinte 1 1/3, Sesquialter II treble, Mixtur III 1
Pedal:
Manual to Pedal`,
  ],
  "old spelling in running lines, numbered anew in each division": [
    `Im Haupt-Wercke: 1. Principal 8. Fuß 2. Quintadena 16. Fuß 3. Octava 4. Fuß 4. Quinta 3. Fuß 5. Super-Octava 2. Fuß 6. Mixtur 4. fach
Im Rück-Positiv: 1. Gedact 8. Fuß 2. Principal 4. Fuß 3. Sesquialtera 2. fach 4. Krumbhorn 8. Fuß
Im Pedal: 1. Sub-Baß 16. Fuß 2. Posaunen-Baß 16. Fuß 3. Cornet-Baß 2. Fuß
Tremulant. Cimbelstern. Coppel zum Pedal.`,
    `Haupt-Wercke: Principal 8, Quintadena 16, Octava 4, Quinta 2 2/3, Super-Octava 2, Mixtur IV
Rück-Positiv: Gedact 8, Principal 4, Sesquialtera II, Krumbhorn 8
Pedal: Sub-Baß 16, Posaunen-Baß 16, Cornet-Baß 2
Haupt-Wercke to Pedal
~ all`,
  ],
  "two stops on one slide, an extension and a transmission": [
    `Hauptwerk (I)
Principal 8'
Rohrflöte 8'
Gemshorn 4' / Nasat 2 2/3' (Wechselschleife)
Mixtur 3-4f. 1 1/3'
Schwellwerk (II)
Gedeckt 8'
Viola da Gamba 8'
Schwebung 8' ab c
Blockflöte 2'
Larigot 1 1/3'
Oboe 8'
Tremulant
Pedal
Subbass 16'
Gedecktbass 8' (Ext. Subbass)
Principal 8' (Transm. HW)
Normalkoppeln: II–I, I–P, II–P
Suboktavkoppel II/I
Setzeranlage 4000fach`,
    `Hauptwerk I: Principal 8, Rohrflöte 8, Gemshorn 4, Nasat 2 2/3, Mixtur IV 1 1/3
Schwellwerk II in a box: Gedeckt 8, Viola da Gamba 8, Schwebung 8 from C3, Blockflöte 2, Larigot 1 1/3, Oboe 8
Pedal: Subbass 16, Gedecktbass 8 <Ext. Subbass>, Principal 8 <Transm. HW>
Schwellwerk to Hauptwerk; Hauptwerk to Pedal; Schwellwerk to Pedal; Schwellwerk to Hauptwerk 16
~ Schwellwerk`,
  ],
  "three columns of blanks": [
    `I Rückpositiv         II Hauptwerk          Pedal
Gedackt 8'            Bordun 16'            Principal 16'
Quintadena 8'         Principal 8'          Subbaß 16'
Principal 4'          Spielflöte 8'         Octave 8'
Rohrflöte 4'          Octave 4'             Gemshorn 8'
Waldflöte 2'          Nasat 2 2/3'          Choralbaß 4'
Sifflöte 1 1/3'       Superoctave 2'        Rauschpfeife IV
Scharf IV             Mixtur V              Posaune 16'
Dulcian 16'           Trompete 8'           Schalmey 4'
Tremulant
Koppeln: I/II, I/P, II/P`,
    `Rückpositiv I: Gedackt 8, Quintadena 8, Principal 4, Rohrflöte 4, Waldflöte 2, Sifflöte 1 1/3, Scharf IV, Dulcian 16
Hauptwerk II: Bordun 16, Principal 8, Spielflöte 8, Octave 4, Nasat 2 2/3, Superoctave 2, Mixtur V, Trompete 8
Pedal: Principal 16, Subbaß 16, Octave 8, Gemshorn 8, Choralbaß 4, Rauschpfeife IV, Posaune 16, Schalmey 4
Rückpositiv to Hauptwerk; Rückpositiv to Pedal; Hauptwerk to Pedal
~ Rückpositiv`,
  ],
  "rows of semicolons under initials": [
    `HW: Prinzipal 8; Gedackt 8; Oktave 4; Hohlflöte 4; Nasard 2 2/3; Oktave 2; Mixtur 4 f.
SW: Salicet 8; Holzgedackt 8; Prinzipal 4; Sesquialter 2 f.; Schwiegel 2; Zimbel 3 f.; Schalmei 8; Tremolo
P: Subbass 16; Oktavbass 8; Pommer 4
Koppeln: SW/HW, HW/P, SW/P`,
    `HW: Prinzipal 8, Gedackt 8, Oktave 4, Hohlflöte 4, Nasard 2 2/3, Oktave 2, Mixtur IV
SW in a box: Salicet 8, Holzgedackt 8, Prinzipal 4, Sesquialter II, Schwiegel 2, Zimbel III, Schalmei 8
P (pedal): Subbass 16, Oktavbass 8, Pommer 4
SW to HW; HW to P; SW to P
~ SW`,
  ],
  "what print leaves open is asked": [
    `Hauptwerk
Prinzipal 8'
Gedackt
Mixtur 4
Quinte 7'
Rückpositiv
Quintade 8'
Pfeifenblume 4'
Pedal
Subbass 16'
Koppel: HW-BW`,
    `Hauptwerk: Prinzipal 8, Gedackt, Mixtur IV, Quinte
Rückpositiv: Quintade 8, Pfeifenblume 4
Pedal: Subbass 16
? 3 Gedackt
? 4 Mixtur
? 5 7
? 8 Pfeifenblume
? 11 HW-BW`,
  ],
  "keyboards counted by a coupler that the list does not number": [
    `HAUPTWERK
Principal 8'
Oktave 4'

WOLKENWERK
Gedackt 8'
Flöte 4'

PEDAL
Subbass 16'
Koppel I-II`,
    `HAUPTWERK: Principal 8, Oktave 4
WOLKENWERK: Gedackt 8, Flöte 4
PEDAL: Subbass 16
WOLKENWERK to HAUPTWERK
? 11 I-II
? 11 I-II`,
  ],
  "couplers in many wordings, tremulants in one line": [
    `Hauptwerk
Principal 8'
Oberwerk
Gedackt 8'
Brustwerk
Regal 8'
Pedal
Subbaß 16'
Manualschiebekoppel OW/HW
Koppel BW-HW
Pedalkoppeln HW, OW
Oktavkoppel OW 4'
Tremulanten: OW, BW (regulierbar)`,
    `Hauptwerk: Principal 8
Oberwerk: Gedackt 8
Brustwerk: Regal 8
Pedal: Subbaß 16
Oberwerk to Hauptwerk; Brustwerk to Hauptwerk; Hauptwerk to Pedal; Oberwerk to Pedal; Oberwerk to Oberwerk 4
~ Oberwerk, Brustwerk`,
  ],
  "lost blanks between name and mark": [
    `Hauptwerk
Principal8'
Oktave4'
Quinte2 2/3'
Mixtur4fach
Pedal
Subbass16'`,
    `Hauptwerk: Principal 8, Oktave 4, Quinte 2 2/3, Mixtur IV
Pedal: Subbass 16`,
  ],
  "semicolons as a spreadsheet saves them, with a title over the columns": [
    `Werk;Register;Fußlage;Bemerkung
Hauptwerk;Bordun;16';
Hauptwerk;Prinzipal;8';Prospekt, Zinn
Hauptwerk;Oktave;4';
Hauptwerk;Mixtur;1 1/3';4fach
Brustwerk;Gedackt;8';Holz
Brustwerk;Rohrflöte;4';
Brustwerk;Terzian 2fach;;
Pedal;Subbass;16';
Pedal;Oktave;8';aus HW`,
    `Hauptwerk: Bordun 16, Prinzipal 8, Oktave 4, Mixtur IV 1 1/3
Brustwerk: Gedackt 8, Rohrflöte 4, Terzian II
Pedal: Subbass 16, Oktave 8 <aus HW>`,
  ],
};
