import type { InventedLists } from "./list.ts";

/** A sixth look: neighbours' languages, scanned pages, jambs, mails. All places are invented. */
export const SIXTH_LOOK: InventedLists = {
  "a Czech list with its couplers": [
    `Varhany v kostele sv. Prokopa, Dolní Lhotka

I. manuál - hlavní stroj (C-f3)
Principál 8'
Bourdon 16'
Flétna 4'
Mixtura 4x 1 1/3'

II. manuál - pozitiv (C-f3)
Kopula 8'
Salicionál 8'
Oktáva 2'

Pedál (C-d1)
Subbas 16'
Oktávbas 8'

Spojky: II/I, I/P, II/P
Tremolo II`,
    `"Varhany v kostele sv. Prokopa, Dolní Lhotka"
hlavní stroj I C2-F6: Principál 8, Bourdon 16, Flétna 4, Mixtura IV 1 1/3
pozitiv II C2-F6: Kopula 8, Salicionál 8, Oktáva 2
Pedál C2-D4: Subbas 16, Oktávbas 8
pozitiv to hlavní stroj; hlavní stroj to Pedál; pozitiv to Pedál
~ pozitiv`,
  ],
  "a Polish list with ranks in ch. and a swell in words": [
    `Manuał I (C-g3)
1. Pryncypał 8'
2. Flet rurkowy 8'
3. Oktawa 4'
4. Mikstura 3 ch.
Manuał II w szafie ekspresyjnej
5. Burdon 8'
6. Salicet 8'
7. Flet 4'
Pedał (C-f1)
8. Subbas 16'
9. Oktawbas 8'
Połączenia: II/I, I/P, II/P`,
    `Manuał I I C2-G6: Pryncypał 8, Flet rurkowy 8, Oktawa 4, Mikstura III
Manuał II II in a box: Burdon 8, Salicet 8, Flet 4
Pedał C2-F4: Subbas 16, Oktawbas 8
Manuał II to Manuał I; Manuał I to Pedał; Manuał II to Pedał`,
  ],
  "a Portuguese list in halves with its palms": [
    `Órgão da igreja de São Telmo
Mão esquerda
Flautado de 12 tapado
Flautado de 6 aberto
Quinzena
Baixãozilho
Mão direita
Flautado de 12 tapado
Flautado de 6 aberto
Corneta inglesa IV
Clarim`,
    `"Órgão da igreja de São Telmo"
-: Flautado tapado 8 bass, Flautado aberto 4 bass, Quinzena 2 bass, Baixãozilho 4 bass, Flautado tapado 8 treble, Flautado aberto 4 treble, Corneta inglesa IV treble, Clarim 8 treble`,
  ],
  "a Norwegian list with its swell and couplers": [
    `Hovedverk (Man. I)
Prinsipal 8'
Rørfløyte 8'
Oktav 4'
Svellverk (Man. II)
Gedakt 8'
Gemshorn 4'
Blokkfløyte 2'
Pedal
Subbass 16'
Gedaktpommer 8'
Kopler: II-I, I-P, II-P`,
    `Hovedverk I: Prinsipal 8, Rørfløyte 8, Oktav 4
Svellverk II in a box: Gedakt 8, Gemshorn 4, Blokkfløyte 2
Pedal: Subbass 16, Gedaktpommer 8
Svellverk to Hovedverk; Hovedverk to Pedal; Svellverk to Pedal`,
  ],
  "a Finnish list": [
    `I sormio
Prinsipaali 8'
Huilu 4'
Mikstuura III
II sormio
Gedakti 8'
Principal 2'
Jalkio
Subbas 16'
II/I, I/J, II/J`,
    `I sormio I: Prinsipaali 8, Huilu 4, Mikstuura III
II sormio II: Gedakti 8, Principal 2
Jalkio (pedal): Subbas 16
II sormio to I sormio; I sormio to Jalkio; II sormio to Jalkio`,
  ],
  "a scanned page that takes l for 1 and lost its marks": [
    `GREAT ORGAN. CC to A, 58 notes.
l  Open Diapason .......... 8 ft.
2  Stopped Diapason ....... 8 ft.
3  Principal .............. 4 ft.
4  Twelfth ................ 2 2/3 ft.
5  Fifteenth .............. 2 ft.
SWELL ORGAN. CC to A, 58 notes.
6  Double Diapason ........ l6 ft.
7  Open Diapason .......... 8 ft.
8  Mixture ................ IIl ranks
9  Oboe ................... 8 ft.
PEDAL ORGAN. CCC to F, 30 notes.
lO Bourdon ................ I6 ft.
COUPLERS.
ll Swell to Great.
I2 Great to Pedals.`,
    `GREAT ORGAN C2-A6: Open Diapason 8, Stopped Diapason 8, Principal 4, Twelfth 2 2/3, Fifteenth 2
SWELL ORGAN C2-A6 in a box: Double Diapason 16, Open Diapason 8, Mixture III, Oboe 8
PEDAL ORGAN C2-F4: Bourdon 16
SWELL ORGAN to GREAT ORGAN; GREAT ORGAN to PEDAL ORGAN`,
  ],
  "an English list with wind pressures, materials and pipe counts": [
    `Great (3¼" wind)
Bourdon (wood) 16ft 58
Open Diapason (metal) 8ft 58
Claribel Flute (wood & metal) 8ft 58
Harmonic Flute (metal) 4ft 58
Swell (3¼", reeds 5")
Salicional (spotted metal) 8ft 58
Voix Célestes (TC) 8ft 46
Cornopean (metal) 8ft 58
Pedal (4")
Open Diapason (wood) 16ft 30
Bass Flute (20 from Great Bourdon) 8ft 12`,
    `Great: Bourdon 16, Open Diapason 8, Claribel Flute 8, Harmonic Flute 4
Swell in a box: Salicional 8, Voix Célestes 8 from C3, Cornopean 8
Pedal: Open Diapason 16, Bass Flute 8 <from Great Bourdon>`,
  ],
  "two consoles, of which one repeats nothing": [
    `Hauptorgel
I Hauptwerk: Principal 8', Oktave 4', Mixtur IV
II Schwellwerk: Gedackt 8', Salicional 8', Oboe 8'
Pedal: Subbaß 16', Oktavbaß 8'
Koppeln: II/I, I/P, II/P
Spieltisch: fahrbar, zweimanualig; Setzeranlage 4000-fach`,
    `"Hauptorgel"
Hauptwerk I: Principal 8, Oktave 4, Mixtur IV
Schwellwerk II in a box: Gedackt 8, Salicional 8, Oboe 8
Pedal: Subbaß 16, Oktavbaß 8
Schwellwerk to Hauptwerk; Hauptwerk to Pedal; Schwellwerk to Pedal`,
  ],
  "numbers of the jambs, left and right": [
    `LEFT JAMB
Swell: 1 Open Diapason 8, 2 Stopped Diapason 8, 3 Oboe 8, 4 Tremulant
Pedal: 5 Bourdon 16
RIGHT JAMB
Great: 6 Open Diapason 8, 7 Dulciana 8, 8 Principal 4
9 Swell to Great
10 Swell to Pedal
11 Great to Pedal`,
    `Swell in a box: Open Diapason 8, Stopped Diapason 8, Oboe 8
Pedal: Bourdon 16
Great: Open Diapason 8, Dulciana 8, Principal 4
Swell to Great; Swell to Pedal; Great to Pedal
~ Swell`,
  ],
  "divisions under the names of the house": [
    `The gallery organ has two manuals.
Lower manual ("Big Ben")
Prestant 8
Octave 4
Upper manual ("the cupboard", enclosed)
Holpijp 8
Viola 8
Pedal
Subbas 16`,
    `Lower manual: Prestant 8, Octave 4
Upper manual in a box: Holpijp 8, Viola 8
Pedal: Subbas 16`,
  ],
  "prepared for, behind a sign that a footnote explains": [
    `GREAT
Open Diapason 8
Principal 4
Trumpet 8*
SWELL
Gedackt 8
Celeste 8 TC
Mixture III*
PEDAL
Subbass 16
Trombone 16*

* prepared for only`,
    `GREAT: Open Diapason 8, Principal 4, Trumpet 8 prepared
SWELL in a box: Gedackt 8, Celeste 8 from C3, Mixture III prepared
PEDAL: Subbass 16, Trombone 16 prepared`,
  ],
  "percussions among the stops": [
    `GREAT
Diapason 8
Flute 4
Chimes (A-E, 20 notes)
SWELL
Gedeckt 8
Harp (prepared for)
PEDAL
Bourdon 16
Zimbelstern
Swell to Great 16-8-4`,
    `GREAT: Diapason 8, Flute 4, Chimes
SWELL in a box: Gedeckt 8, Harp prepared
PEDAL: Bourdon 16
SWELL to GREAT 16; SWELL to GREAT; SWELL to GREAT 4`,
  ],
  "a mail of a visitor in German": [
    `Lieber Jonas,
hier die Orgel, wie ich sie am Spieltisch abgeschrieben habe:
HW: Princ. 8, Gamba 8, Bord. 8, Oct. 4, Mixt. 3f
OW: Gedackt 8, Flauto trav. 8, Fl. 4
Ped.: Subb. 16, Cello 8
Koppeln OW-HW, HW-Ped.
Viele Grüße
Karla`,
    `HW: Princ. 8, Gamba 8, Bord. 8, Oct. 4, Mixt. III
OW: Gedackt 8, Flauto trav. 8, Fl. 4
Ped.: Subb. 16, Cello 8
OW to HW; HW to Ped.`,
  ],
  "old German spelling with Fuß in words and a stop of two lengths": [
    `Ober Werck.
Principal von Zinn 8. Fuß.
Quinta Thena 8. Fuß.
Grob Gedackt 8. Fuß.
Octava 4. Fuß.
Quinta 3. Fuß.
Mixtur 4. fach.
Pedal.
Sub Baß 16. Fuß.
Posaunen Baß 16. Fuß.
Cornet Baß 2. Fuß.
Coppel zum Pedal. Tremulant. Cymbel Stern.`,
    `Ober Werck: Principal 8, Quinta Thena 8, Grob Gedackt 8, Octava 4, Quinta 2 2/3, Mixtur IV
Pedal: Sub Baß 16, Posaunen Baß 16, Cornet Baß 2
Ober Werck to Pedal
~ all`,
  ],
  "a French list of a builder's contract": [
    `GRAND-ORGUE (1er clavier, 54 notes, d'ut à fa)
Montre 8 pieds (étain, en façade)
Bourdon 16 pieds (bois, puis étoffe)
Plein-jeu 5 rangs
Trompette 8 pieds
RÉCIT EXPRESSIF (2e clavier, 54 notes)
Flûte traversière 8 pieds
Voix céleste 8 pieds (à partir du 2e ut)
Basson-Hautbois 8 pieds
PÉDALE (27 notes, d'ut à ré)
Soubasse 16 pieds
Pédales de combinaison : Tirasse G.O., Tirasse Récit, Accouplement du Récit au G.O., Appel Trompette, Trémolo`,
    `GRAND-ORGUE I C2-F6: Montre 8, Bourdon 16, Plein-jeu V, Trompette 8
RÉCIT EXPRESSIF II C2-F6 in a box: Flûte traversière 8, Voix céleste 8 from C3, Basson-Hautbois 8
PÉDALE C2-D4: Soubasse 16
GRAND-ORGUE to PÉDALE; RÉCIT EXPRESSIF to PÉDALE; RÉCIT EXPRESSIF to GRAND-ORGUE
~ all`,
  ],
  "an Italian list of the nineteenth century in short words": [
    `Tastiera di 58 tasti (Do1-La5), pedaliera di 17
Registri di ripieno: Principale 8' bassi, Principale 8' soprani, Ottava, Duodecima, Decimaquinta, Due di ripieno
Registri da concerto: Fagotto bassi, Tromba soprani, Flauto traverso soprani, Viola bassi 4'
Pedale: Contrabassi 16'
Terza mano, Tiratutti, Timpani`,
    `- C2-A6: Principale 8 bass, Principale 8 treble, Ottava 4, Duodecima 2 2/3, Decimaquinta 2, Due di ripieno II, Fagotto 8 bass, Tromba 8 treble, Flauto traverso 8 treble, Viola 4 bass
Pedale: Contrabassi 16`,
  ],
  "a Dutch leaflet with its history between": [
    `Het orgel van de Dorpskerk te Oosterwolde aan Zee is in 1788 gemaakt door een leerling van de vorige bouwer.
HOOFDMANUAAL (C-d3): Prestant D 16, Prestant 8, Holpyp 8, Octaaf 4, Quint 3, Mixtuur B/D III-V, Trompet B/D 8
BOVENMANUAAL (C-d3): Roerfluit 8, Viola D 8, Fluit 4, Dulciaan 8
PEDAAL (aangehangen)
Werktuiglijke registers: manuaalkoppel B/D, tremulant BW, ventiel, calcant`,
    `HOOFDMANUAAL C2-D6: Prestant 16 treble, Prestant 8, Holpyp 8, Octaaf 4, Quint 2 2/3, Mixtuur V both, Trompet 8 both
BOVENMANUAAL C2-D6: Roerfluit 8, Viola 8 treble, Fluit 4, Dulciaan 8
PEDAAL:
BOVENMANUAAL to HOOFDMANUAAL; HOOFDMANUAAL to PEDAAL
~ BOVENMANUAAL`,
  ],
  "a web table with a column of couplers": [
    `| I Hauptwerk C–g3 | II Positiv C–g3 | Pedal C–f1 | Koppeln |
|---|---|---|---|
| Prinzipal 8′ | Gedeckt 8′ | Subbass 16′ | II/I |
| Rohrflöte 8′ | Rohrflöte 4′ | Gedecktbass 8′ | I/P |
| Oktave 4′ | Prinzipal 2′ | | II/P |`,
    `Hauptwerk I C2-G6: Prinzipal 8, Rohrflöte 8, Oktave 4
Positiv II C2-G6: Gedeckt 8, Rohrflöte 4, Prinzipal 2
Pedal C2-F4: Subbass 16, Gedecktbass 8
Positiv to Hauptwerk; Hauptwerk to Pedal; Positiv to Pedal`,
  ],
  "a spreadsheet whose pitches carry no marks and whose ranks stand in the pitch": [
    `Man;No;Stop;Feet
Gt;1;Open Diapason;8
Gt;2;Fifteenth;2
Gt;3;Mixture;19.22.26
Sw;4;Lieblich Gedackt;8
Sw;5;Celeste;8 (c13)
Ped;6;Bourdon;16`,
    `Gt: Open Diapason 8, Fifteenth 2, Mixture III (1 1/3 + 1 + 2/3)
Sw in a box: Lieblich Gedackt 8, Celeste 8 from C3
Ped: Bourdon 16`,
  ],
  "what cannot be known is asked with its line": [
    `GREAT
Open Diapason 8
Flute
Grangewood 8
Mixture III
SWELL
Gedackt 8
Octave 7
PEDAL
Bourdon 16`,
    `GREAT: Open Diapason 8, Flute, Grangewood 8, Mixture III
SWELL in a box: Gedackt 8, Octave
PEDAL: Bourdon 16
? 3 Flute
? 4 Grangewood
? 8 7`,
  ],
};
