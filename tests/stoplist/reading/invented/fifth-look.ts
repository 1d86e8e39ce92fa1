import type { InventedLists } from "./list.ts";

/** A fifth look: tables, mails and shorthand. All places are invented. */
export const FIFTH_LOOK: InventedLists = {
  "two halves of two names on one line": [
    `GREAT: Open Diapason 8, Stopped Diapason 8 (wood), Fifteenth 2, Sesquialtera bass & Cornet treble III.
SWELL: Open Diapason 8, Principal 4, Hautboy 8.
PEDAL: Bourdon 16.`,
    `GREAT: Open Diapason 8, Stopped Diapason 8, Fifteenth 2, Sesquialtera III bass, Cornet III treble
SWELL in a box: Open Diapason 8, Principal 4, Hautboy 8
PEDAL: Bourdon 16`,
  ],
  "toys and two tremulants on one line": [
    `Hauptwerk
01 Principal 8
02 Bordun 16
Rückpositiv
03 Gedackt 8
04 Praestant 4
Pedal
05 Untersatz 16
06 Cornet 2
Tremulant für das ganze Werk, Tremulant RP, 2 Cymbelsterne, Vogelgesang, Trommel
Coppel RP/HW  Pedalcoppel`,
    `Hauptwerk: Principal 8, Bordun 16
Rückpositiv: Gedackt 8, Praestant 4
Pedal: Untersatz 16, Cornet 2
Rückpositiv to Hauptwerk; Hauptwerk to Pedal
~ Rückpositiv, all`,
  ],
  "a French organ of four keyboards, a row each": [
    `I - Positif de dos (51 notes, Ut1-Ré5 sans 1er Ut#)
Bourdon 8, Nazard 2 2/3, Cromorne 8
II - Grand-Orgue
Bourdon 16, Montre 8, Quarte 2, Fourniture V, Grand Cornet V
III - Récit (27 notes) : Cornet V, Trompette 8
Pédale: Flûte 8, Flûte 4
Accouplement Pos./G.O. à tiroir, Tirasse G.O., Tremblants doux et fort, Rossignol`,
    `Positif de dos I C2-D6 without C#2: Bourdon 8, Nazard 2 2/3, Cromorne 8
Grand-Orgue II: Bourdon 16, Montre 8, Quarte 2, Fourniture V, Grand Cornet V
Récit III C4-D6: Cornet V, Trompette 8
Pédale: Flûte 8, Flûte 4
Positif de dos to Grand-Orgue; Grand-Orgue to Pédale
~ all`,
  ],
  "a table that names the keyboard last": [
    `Orgel der Kirche in Unterweil

| Nr. | Register | Fuß | Werk |
|-----|----------|-----|------|
| 1 | Bourdon | 16' | I |
| 2 | Principal | 8' | I |
| 3 | Gedeckt | 8' | II |
| 4 | Traversflöte | 4' | II |
| 5 | Subbass | 16' | P |`,
    `"Orgel der Kirche in Unterweil"
I I: Bourdon 16, Principal 8
II II: Gedeckt 8, Traversflöte 4
P (pedal): Subbass 16`,
  ],
  "a table titled in short": [
    `Man.\tRegister\tFuß\tFach
I\tPrincipal\t8\t
I\tMixtur\t1 1/3\t4
II\tGedackt\t8\t
II\tFlöte\t4\t
P\tSubbass\t16\t`,
    `I I: Principal 8, Mixtur IV 1 1/3
II II: Gedackt 8, Flöte 4
P (pedal): Subbass 16`,
  ],
  "a celeste from GG": [
    `SWELL
Salicional 8
Celeste GG 8
Nachthorn 4`,
    "SWELL in a box: Salicional 8, Celeste 8 from G2, Nachthorn 4",
  ],
  "a chest organ in a sentence": [
    `Kistorgel
4 register: Holpijp 8 vt., Roerfluit 4 vt., Prestant 2 vt. (vanaf c'), Nasard 2 2/3 vt. discant`,
    `"Kistorgel"
-: Holpijp 8, Roerfluit 4, Prestant 2 treble from C4, Nasard 2 2/3 treble`,
  ],
  "an organist's shorthand": [
    `Gt: Op Diap 8, St Diap 8, Prin 4, Harm Fl 4, 12th, 15th, Mixt III, Tpt 8
Sw: Lieb Bdn 16, Op Diap 8, Vox Ang (TC) 8, Prin 4, C. Fag 16, Ob 8, trem
Ped: Op Wood 16, Bdn 16, Oct 8, Bass Fl 8`,
    `Gt: Op Diap 8, St Diap 8, Prin 4, Harm Fl 4, 12th 2 2/3, 15th 2, Mixt III, Tpt 8
Sw in a box: Lieb Bdn 16, Op Diap 8, Vox Ang 8 from C3, Prin 4, C. Fag 16, Ob 8
Ped: Op Wood 16, Bdn 16, Oct 8, Bass Fl 8
~ Sw`,
  ],
  "a Danish list with its couplers": [
    `Hovedværk (C-g''')
Spidsfløjte 8'
Oktav 4'
Svelleværk (C-g''')
Gedakt 8'
Nathorn 4'
Pedal (C-f')
Subbas 16'
Kopler: SV-HV, HV-P, SV-P`,
    `Hovedværk C2-G6: Spidsfløjte 8, Oktav 4
Svelleværk C2-G6 in a box: Gedakt 8, Nathorn 4
Pedal C2-F4: Subbas 16
Svelleværk to Hovedværk; Hovedværk to Pedal; Svelleværk to Pedal`,
  ],
  "couplers counted": [
    `1. MANUAL, HAUPTWERK, C - g³

Principal 8 Fuß
Flaut 4 Fuß

2. MANUAL, POSITIV, C - g³

Copel 8 Fuß
Principal 2 Fuß

PEDAL, C - f¹

Subbass 16 Fuß

Manualkoppel, 2 Pedalkoppeln`,
    `HAUPTWERK I C2-G6: Principal 8, Flaut 4
POSITIV II C2-G6: Copel 8, Principal 2
PEDAL C2-F4: Subbass 16
POSITIV to HAUPTWERK; HAUPTWERK to PEDAL; POSITIV to PEDAL`,
  ],
  "as many couplers as there can be": [
    `GREAT
Open Diapason 8
SWELL
Gedackt 8
PEDAL
Bourdon 16
3 couplers`,
    `GREAT: Open Diapason 8
SWELL in a box: Gedackt 8
PEDAL: Bourdon 16
SWELL to GREAT; GREAT to PEDAL; SWELL to PEDAL`,
  ],
  "more couplers than an organist can tell": [
    `GREAT
Open Diapason 8
SWELL
Gedackt 8
PEDAL
Bourdon 16
5 couplers`,
    `GREAT: Open Diapason 8
SWELL in a box: Gedackt 8
PEDAL: Bourdon 16
? 7 5 couplers`,
  ],
};
