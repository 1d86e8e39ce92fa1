import type { InventedLists } from "./list.ts";

/** Lists in French. All places are invented. */
export const FRENCH: InventedLists = {
  "bullets, keys by syllables, couplers by initials": [
    `Grand-Orgue – 54 notes (Ut1 à Fa5)
• Montre 8
• Bourdon 8
• Prestant 4
• Doublette 2
• Plein-Jeu III-IV rgs
• Cornet V (dès ut3)
• Trompette 8
Récit – 54 notes
• Bourdon 8
• Flûte 4
• Nazard 2 2/3
• Tierce 1 3/5
• Cromorne 8
Pédale – 30 notes
• Soubasse 16
• Flûte 8
Accouplement Réc./G.O.
Accouplement Réc./G.O. en 16
Tirasses G.O. et Réc.
Tremblant au Récit`,
    `Grand-Orgue C2-F6: Montre 8, Bourdon 8, Prestant 4, Doublette 2, Plein-Jeu IV, Cornet V treble from C4, Trompette 8
Récit C2-F6: Bourdon 8, Flûte 4, Nazard 2 2/3, Tierce 1 3/5, Cromorne 8
Pédale C2-F4: Soubasse 16, Flûte 8
Récit to Grand-Orgue; Récit to Grand-Orgue 16; Grand-Orgue to Pédale; Récit to Pédale
~ Récit`,
  ],
  "a classical organ that prints hardly any pitches": [
    `Positif de dos
Montre 4 pieds
Bourdon 8 pieds
Nasard
Doublette
Tierce
Fourniture 3 rangs
Cymbale 2 rangs
Cromorne
Grand Orgue
Montre 8 pieds
Bourdon 16 pieds
Bourdon 8 pieds
Prestant
Grosse tierce 3 1/5
Nasard
Quarte de nasard
Tierce
Fourniture 4 rangs
Cymbale 3 rangs
Grand Cornet 5 rangs
Trompette
Clairon
Voix humaine
Récit (dessus)
Cornet 5 rangs
Trompette
Echo (dessus)
Cornet 5 rangs
Pédale
Flûte 8 pieds
Trompette
Tremblant doux
Tremblant à vent perdu
Accouplement à tiroir`,
    `Positif de dos: Montre 4, Bourdon 8, Nasard 2 2/3, Doublette 2, Tierce 1 3/5, Fourniture III, Cymbale II, Cromorne 8
Grand Orgue: Montre 8, Bourdon 16, Bourdon 8, Prestant 4, Grosse tierce 3 1/5, Nasard 2 2/3, Quarte de nasard 2, Tierce 1 3/5, Fourniture IV, Cymbale III, Grand Cornet V, Trompette 8, Clairon 4, Voix humaine 8
Récit: Cornet V treble, Trompette 8 treble
Echo: Cornet V treble
Pédale: Flûte 8, Trompette 8
~ all
? 35 Accouplement à tiroir`,
  ],
  "one keyboard in halves, a pedal en tirasse": [
    `Clavier (51 notes)
Bourdon 8' basse et dessus
Dessus de Flûte 8'
Basson 8' (basse)
Hautbois 8' (dessus)
Prestant 4'
Pédalier en tirasse`,
    `Clavier C2-D6: Bourdon 8 both, Dessus de Flûte 8 treble, Basson 8 bass, Hautbois 8 treble, Prestant 4
Pédalier:
Clavier to Pédalier`,
  ],
  "titles within the divisions, pedals of combination": [
    `ORGUE DE CHŒUR DE SAINT-AUBRAC
Composition :
1er clavier : Grand-Orgue
Jeux de fonds
Bourdon 16 p.
Montre 8 p.
Flûte harmonique 8 p.
Salicional 8 p.
Prestant 4 p.
Jeux de combinaison
Plein-jeu 5 r.
Trompette 8 p.
2e clavier : Récit expressif
Jeux de fonds
Cor de nuit 8 p.
Viole de gambe 8 p.
Voix céleste 8 p.
Flûte octaviante 4 p.
Jeux de combinaison
Octavin 2 p.
Basson-Hautbois 8 p.
Voix humaine 8 p.
Pédale
Soubasse 16 p.
Basse 8 p.
Pédales de combinaison
Tirasse G.O.
Tirasse Récit
Octaves graves G.O.
Copula Récit sur G.O.
Anches Récit
Anches G.O.
Trémolo Récit
Expression Récit`,
    `"ORGUE DE CHŒUR DE SAINT-AUBRAC"
Grand-Orgue I: Bourdon 16, Montre 8, Flûte harmonique 8, Salicional 8, Prestant 4, Plein-jeu V, Trompette 8
Récit expressif II in a box: Cor de nuit 8, Viole de gambe 8, Voix céleste 8, Flûte octaviante 4, Octavin 2, Basson-Hautbois 8, Voix humaine 8
Pédale: Soubasse 16, Basse 8
Grand-Orgue to Pédale; Récit expressif to Pédale; Grand-Orgue to Grand-Orgue 16; Récit expressif to Grand-Orgue
~ Récit expressif`,
  ],
};
