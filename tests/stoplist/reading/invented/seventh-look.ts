import type { InventedLists } from "./list.ts";

/** A seventh look: what the sixth made one think of. All places are invented. */
export const SEVENTH_LOOK: InventedLists = {
  "a Hungarian list": [
    `I. manuál (főmű)
Principál 8'
Csövesfuvola 8'
Oktáv 4'
Mixtúra 4x
II. manuál (redőny)
Fedett 8'
Erdei fuvola 2'
Pedál
Subbass 16'
Kopulák: II/I, I/P, II/P`,
    `főmű I: Principál 8, Csövesfuvola 8, Oktáv 4, Mixtúra IV
redőny II in a box: Fedett 8, Erdei fuvola 2
Pedál: Subbass 16
redőny to főmű; főmű to Pedál; redőny to Pedál`,
  ],
  "a Swedish list with its compass in brackets": [
    `Huvudverk (C-g3)
Principal 8'
Rörflöjt 8'
Oktava 4'
Mixtur 4 kor
Svällverk (C-g3)
Gedackt 8'
Spetsflöjt 4'
Oboe 8'
Tremulant
Pedal (C-f1)
Subbas 16'
Koppel: SV/HV, HV/P, SV/P`,
    `Huvudverk C2-G6: Principal 8, Rörflöjt 8, Oktava 4, Mixtur IV
Svällverk C2-G6 in a box: Gedackt 8, Spetsflöjt 4, Oboe 8
Pedal C2-F4: Subbas 16
Svällverk to Huvudverk; Huvudverk to Pedal; Svällverk to Pedal
~ Svällverk`,
  ],
  "a letter quoted beneath a letter": [
    `> On Tuesday the curate wrote:
> > GREAT
> > Open Diapason 8
> > Fifteenth 2
> > SWELL
> > Lieblich Gedackt 8
> > Oboe 8
> > PEDAL
> > Bourdon 16
> > Swell to Great
>
> Best wishes
> Anne`,
    `GREAT: Open Diapason 8, Fifteenth 2
SWELL in a box: Lieblich Gedackt 8, Oboe 8
PEDAL: Bourdon 16
SWELL to GREAT`,
  ],
  "a footnote that lends, and one that only tells": [
    `GREAT
Open Diapason 8
Bourdon 16†
Flute 4‡
PEDAL
Principal 16
Bass Flute 8†

† from the Swell
‡ by the former builder`,
    `GREAT: Open Diapason 8, Bourdon 16 <from the Swell>, Flute 4
PEDAL: Principal 16, Bass Flute 8 <from the Swell>`,
  ],
  "a scanned German page": [
    `Hauptwerk, C—f'''
l. Bordun l6'
2. Principal 8'
3. Gamba 8'
4. Octave 4'
5. Mixtur 3fach
Pedal, C—d'
6. Subbaß I6'
7. Octavbaß 8'
Nebenzüge:
8. Pedalkoppel`,
    `Hauptwerk C2-F6: Bordun 16, Principal 8, Gamba 8, Octave 4, Mixtur III
Pedal C2-D4: Subbaß 16, Octavbaß 8
Hauptwerk to Pedal`,
  ],
  "pipes counted behind every pitch": [
    `SWELL ORGAN (expressive)
Geigen Diapason 8' 73 pipes
Stopped Flute 8' 73 pipes
Vox Celeste 8' 61 pipes
Flute d'Amour 4' 73 pipes
PEDAL ORGAN
Bourdon 16' 32 pipes
Flute 8' 12 pipes, 20 from Bourdon
Gedeckt 16' (from Swell) 32 notes`,
    `SWELL ORGAN in a box: Geigen Diapason 8, Stopped Flute 8, Vox Celeste 8, Flute d'Amour 4
PEDAL ORGAN: Bourdon 16, Flute 8 <from Bourdon>, Gedeckt 16 <from Swell>`,
  ],
  "a French page in small words": [
    `Orgue de tribune, II/P, 14 jeux
Positif expressif : bourdon 8, flûte 4, nasard 2 2/3, doublette 2, tierce 1 3/5, cromorne 8
Grand-orgue : montre 8, flûte à cheminée 8, prestant 4, fourniture III, trompette 8
Pédale : soubasse 16, bourdon 8, flûte 4
Accouplement Pos./G.O., tirasses G.O. et Pos.`,
    `"Orgue de tribune, II/P, 14 jeux"
Positif expressif in a box: bourdon 8, flûte 4, nasard 2 2/3, doublette 2, tierce 1 3/5, cromorne 8
Grand-orgue: montre 8, flûte à cheminée 8, prestant 4, fourniture III, trompette 8
Pédale: soubasse 16, bourdon 8, flûte 4
Positif expressif to Grand-orgue; Grand-orgue to Pédale; Positif expressif to Pédale`,
  ],
  "an Italian page of the twentieth century": [
    `I Tastiera - Grand'Organo
Principale 8'
Flauto camino 8'
Ottava 4'
Ripieno 5 file 2'
II Tastiera - Espressivo
Bordone 8'
Viola 8'
Voce celeste 8'
Flauto 4'
Pedale
Subbasso 16'
Basso 8'
Unioni: II-I, I-Ped, II-Ped; Tremolo II`,
    `Grand'Organo I: Principale 8, Flauto camino 8, Ottava 4, Ripieno V 2
Espressivo II in a box: Bordone 8, Viola 8, Voce celeste 8, Flauto 4
Pedale: Subbasso 16, Basso 8
Espressivo to Grand'Organo; Grand'Organo to Pedale; Espressivo to Pedale
~ Espressivo`,
  ],
  "a Dutch dossier with its disposition in sentences": [
    `Dispositie. Hoofdwerk: Prestant 8', Roerfluit 8', Octaaf 4', Mixtuur 3 st.; Zwelwerk: Holpijp 8', Gamba 8', Fluit 4'; Pedaal: Subbas 16', Gedekt 8'. Koppelingen: Hw-Zw, Ped-Hw, Ped-Zw.`,
    `Hoofdwerk: Prestant 8, Roerfluit 8, Octaaf 4, Mixtuur III
Zwelwerk in a box: Holpijp 8, Gamba 8, Fluit 4
Pedaal: Subbas 16, Gedekt 8
Zwelwerk to Hoofdwerk; Hoofdwerk to Pedaal; Zwelwerk to Pedaal`,
  ],
  "a Spanish page with its halves in columns of a table": [
    `| Mano izquierda | Mano derecha |
|---|---|
| Flautado 8' | Flautado 8' |
| Octava 4' | Octava 4' |
| Bajoncillo 4' | Clarín 8' |
| | Corneta V |`,
    `-: Flautado 8 bass, Octava 4 bass, Bajoncillo 4 bass, Flautado 8 treble, Octava 4 treble, Clarín 8 treble, Corneta V treble`,
  ],
};
