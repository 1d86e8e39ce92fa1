import type { InventedLists } from "./list.ts";

/** Lists in Dutch, Danish and Swedish. All places are invented. */
export const DUTCH_AND_NORDIC: InventedLists = {
  "halves, a doubled treble that is none, and couplers of halves": [
    `Hoofdwerk (C-f3)
Bourdon 16'
Prestant 8' (disc. dubbel)
Roerfluit 8'
Octaaf 4'
Quint 3'
Woudfluit 2'
Mixtuur 3-5 sterk
Cornet 5 sterk disc.
Trompet 8' b/d
Rugwerk (C-f3)
Holpijp 8'
Prestant 4'
Sexquialter 2 sterk disc.
Dulciaan 8'
Pedaal (C-d1)
Subbas 16'
Bazuin 16'
Werktuiglijke registers
Koppel Hoofdwerk-Rugwerk b/d
Koppel Pedaal-Hoofdwerk
Afsluiting Hoofdwerk
Tremulant Rugwerk
Ventiel
Windlosser`,
    `Hoofdwerk C2-F6: Bourdon 16, Prestant 8, Roerfluit 8, Octaaf 4, Quint 2 2/3, Woudfluit 2, Mixtuur V, Cornet V treble, Trompet 8 both
Rugwerk C2-F6: Holpijp 8, Prestant 4, Sexquialter II treble, Dulciaan 8
Pedaal C2-D4: Subbas 16, Bazuin 16
Rugwerk to Hoofdwerk; Hoofdwerk to Pedaal
~ Rugwerk`,
  ],
  "vt and voet, a pedal that hangs on the manual": [
    `Manuaal C-d3
Holpijp 8 vt
Viola di Gamba 8vt
Prestant 4 voet
Octaaf 2 voet
Aangehangen pedaal C-d1`,
    `Manuaal C2-D6: Holpijp 8, Viola di Gamba 8, Prestant 4, Octaaf 2
pedaal C2-D4:
Manuaal to pedaal`,
  ],
  "bullets under bullets": [
    `• Hoofdwerk
  – Prestant 8′
  – Holfluit 8′
  – Octaaf 4′
  – Nasard 2⅔′
  – Mixtuur III–IV
• Zwelwerk
  – Gedekt 8′
  – Salicionaal 8′
  – Voix Céleste 8′ (vanaf c)
  – Roerfluit 4′
  – Hobo 8′
  – Tremolo
• Pedaal
  – Subbas 16′
  – Openbas 8′
Koppelingen: Hw+Zw, Ped+Hw, Ped+Zw`,
    `Hoofdwerk: Prestant 8, Holfluit 8, Octaaf 4, Nasard 2 2/3, Mixtuur IV
Zwelwerk in a box: Gedekt 8, Salicionaal 8, Voix Céleste 8 from C3, Roerfluit 4, Hobo 8
Pedaal: Subbas 16, Openbas 8
Zwelwerk to Hoofdwerk; Hoofdwerk to Pedaal; Zwelwerk to Pedaal
~ Zwelwerk`,
  ],
  "a Danish list with fod and kor": [
    `Hovedværk
Principal 8 fod
Rørfløjte 8 fod
Oktav 4 fod
Mixtur 4 kor
Svelleværk
Gedakt 8 fod
Salicional 8 fod
Obo 8 fod
Tremulant
Pedal
Subbas 16 fod
Kobler: SV-HV, HV-P, SV-P`,
    `Hovedværk: Principal 8, Rørfløjte 8, Oktav 4, Mixtur IV
Svelleværk in a box: Gedakt 8, Salicional 8, Obo 8
Pedal: Subbas 16
Svelleværk to Hovedværk; Hovedværk to Pedal; Svelleværk to Pedal
~ Svelleværk`,
  ],
  "a Swedish list in rows": [
    `Huvudverk (I): Principal 8', Rörflöjt 8', Oktava 4', Mixtur 3 kor
Svällverk (II): Gedackt 8', Salicional 8', Flöjt 4', Oboe 8'
Pedal: Subbas 16', Oktavbas 8'
Koppel: II/I, I/P, II/P`,
    `Huvudverk I: Principal 8, Rörflöjt 8, Oktava 4, Mixtur III
Svällverk II in a box: Gedackt 8, Salicional 8, Flöjt 4, Oboe 8
Pedal: Subbas 16, Oktavbas 8
Svällverk to Huvudverk; Huvudverk to Pedal; Svällverk to Pedal`,
  ],
};
