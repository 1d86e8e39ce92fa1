import type { InventedLists } from "./list.ts";

/** Lists in Italian and Spanish. All places are invented. */
export const ITALIAN_AND_SPANISH: InventedLists = {
  "a ripieno by its names, halves behind the pitch": [
    `Principale 8' Bassi
Principale 8' Soprani
Ottava 4'
Quintadecima 2'
Decimanona
Vigesimaseconda
Vigesimasesta
Vigesimanona
Flauto in VIII
Flauto in XII Soprani
Voce umana Soprani
Cornetto Soprani
Tromba 8' Bassi
Tromba 8' Soprani
Pedale:
Contrabbassi 16'
Tiratutti, Terza mano
Unione Tasto-Pedale`,
    `-: Principale 8 bass, Principale 8 treble, Ottava 4, Quintadecima 2, Decimanona 1 1/3, Vigesimaseconda 1, Vigesimasesta 2/3, Vigesimanona 1/2, Flauto in VIII 4, Flauto in XII 2 2/3 treble, Voce umana 8 treble, Cornetto treble, Tromba 8 bass, Tromba 8 treble
Pedale: Contrabbassi 16
Manual to Pedale`,
  ],
  "two manuals with dotted fractions and unions in words": [
    `Parrocchia di San Zelino, Torrevecchia al Lago
I - Grand'Organo (C1-G5)
Principale 8'
Flauto a camino 8'
Ottava 4'
XV 2'
Ripieno 4 file 1.1/3'
Tromba 8'
II - Organo Espressivo (C1-G5)
Bordone 8'
Viola 8'
Celeste 8'
Flauto 4'
Nazardo 2.2/3'
Oboe 8'
Tremolo
Pedale (C1-F3)
Subbasso 16'
Bordone 8'
Unione I al Ped.
Unione II al Ped.
Unione II al I
Ottava acuta II al I
Ottava grave II al I`,
    `"Parrocchia di San Zelino, Torrevecchia al Lago"
Grand'Organo I C2-G6: Principale 8, Flauto a camino 8, Ottava 4, XV 2, Ripieno IV 1 1/3, Tromba 8
Organo Espressivo II C2-G6 in a box: Bordone 8, Viola 8, Celeste 8, Flauto 4, Nazardo 2 2/3, Oboe 8
Pedale C2-F4: Subbasso 16, Bordone 8
Grand'Organo to Pedale; Organo Espressivo to Pedale; Organo Espressivo to Grand'Organo; Organo Espressivo to Grand'Organo 4; Organo Espressivo to Grand'Organo 16
~ Organo Espressivo`,
  ],
  "a short octave, di piedi, halves in brackets": [
    `Tastiera (50 tasti, prima ottava corta, Do1–Fa5)
Principale di 8 piedi (bassi)
Principale di 8 piedi (soprani)
Ottava di 4 piedi
Flauto in ottava
Cornetta soprani 2 file
Pedaliera
Contrabbasso di 16 piedi
Accessori: Tiratutti; Terzamano`,
    `Tastiera C2-F6 without C#2, Eb2, F#2, G#2: Principale 8 bass, Principale 8 treble, Ottava 4, Flauto in ottava 4, Cornetta II treble
Pedaliera: Contrabbasso 16`,
  ],
  "left and right hand with lengths in palms": [
    `ÓRGANO MAYOR
Mano izquierda:
Flautado de 13
Octava
Docena
Quincena
Lleno de 4 hileras
Bajoncillo
Mano derecha:
Flautado de 13
Octava
Docena
Quincena
Lleno de 4 hileras
Corneta de 6 hileras
Clarín de batalla
Contras de 26`,
    `ÓRGANO MAYOR: Flautado 8 bass, Octava 4 bass, Docena 2 2/3 bass, Quincena 2 bass, Lleno IV bass, Bajoncillo 4 bass, Flautado 8 treble, Octava 4 treble, Docena 2 2/3 treble, Quincena 2 treble, Lleno IV treble, Corneta VI treble, Clarín de batalla 8 treble, Contras 16
? 17 Contras`,
  ],
  "two keyboards, ranks in hileras, couplers in words": [
    `I. Cadereta
Violón 8'
Flautado menor 4'
Nasardo 2 2/3'
Quincena 2'
Decisetena 1 3/5'
Címbala III
Cromorno 8'
II. Órgano Mayor
Violón 16'
Flautado 8'
Octava 4'
Docena 2 2/3'
Lleno IV-V hileras 2'
Trompeta real 8'
Pedal
Contras 16'
Contras 8'
Bombarda 16'
Acoplamientos: I/II, I/Ped, II/Ped
Trémolo de la Cadereta`,
    `Cadereta I: Violón 8, Flautado menor 4, Nasardo 2 2/3, Quincena 2, Decisetena 1 3/5, Címbala III, Cromorno 8
Órgano Mayor II: Violón 16, Flautado 8, Octava 4, Docena 2 2/3, Lleno V 2, Trompeta real 8
Pedal: Contras 16, Contras 8, Bombarda 16
Cadereta to Órgano Mayor; Cadereta to Pedal; Órgano Mayor to Pedal
~ Cadereta`,
  ],
  "one keyboard with a short octave, pies and palmos": [
    `Teclado único, 45 notas, octava corta
Flautado 8 pies (bajos y tiples)
Violón 13 palmos
Octava 4 pies
Compuestas de lleno 3 h.
Corneta 7 h. (tiple)
Pájaros
Tambor y timbal`,
    "Teclado único C2-C6 without C#2, Eb2, F#2, G#2: Flautado 8 both, Violón 8, Octava 4, Compuestas de lleno III, Corneta VII treble",
  ],
};
