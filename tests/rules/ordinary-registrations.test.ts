import { expect, test } from "vitest";
import { judge } from "../../shared-model/judging/judge.ts";
import { problemOf } from "../../shared-model/judging/problem.ts";
import { consoleOfExample } from "../../shared-model/rules/example.ts";
import { RULES } from "../../shared-model/rules/index.ts";
import type { Example } from "../../shared-model/rules/rule.ts";

/**
 * Registrations that any organist draws without a second thought, by common practice. No convention about a part may
 * forbid them or speak against them by more than a murmur, even without a recipe to lean on.
 */
const MURMUR = -60;
const ORDINARY: readonly Example[] = [
  { organ: "Swell [box]: Oboe 8", plays: "melody on Swell" },
  { organ: "Hauptwerk: Bourdon 8, Prestant 4", plays: "plenum on Hauptwerk" },
  { organ: "Hauptwerk: Gedackt 8, Flöte 4, Nasat 2 2/3", plays: "melody on Hauptwerk" },
  { organ: "Hauptwerk: Gedackt 8, Nasat 2 2/3", plays: "melody on Hauptwerk" },
  { organ: "Positif: Bourdon 8, Flûte 4, Larigot 1 1/3", plays: "melody on Positif" },
  { organ: "Positif: Bourdon 8, Flûte 4, Larigot 1 1/3", plays: "plenum on Positif", texture: "flutes" },
  { organ: "Récit: Cornet V from C4", plays: "melody on Récit" },
  {
    organ: "Récit: Cornet V from C4",
    plays: "melody on Récit",
    texture: "recit-de-cornet",
    tradition: "french-classical",
  },
  { organ: "Great: Open Diapason 8, Principal 4, Fifteenth 2, Mixture IV", plays: "plenum on Great" },
  {
    organ: "Great: Open Diapason 8, Principal 4, Twelfth 2 2/3, Fifteenth 2, Mixture IV, Trumpet 8",
    plays: "plenum on Great",
    texture: "plenum",
  },
  { organ: "Pedal: Subbass 16, Gedackt 8", plays: "bass on Pedal" },
  { organ: "Pedal: Posaune 16, Oktave 8, Oktave 4", plays: "bass on Pedal" },
  { organ: "Pedal: Subbass 16, Quinte 10 2/3, Oktave 8", plays: "bass on Pedal" },
  { organ: "Pédale: Flûte 8", plays: "bass on Pédale", tradition: "french-classical" },
  {
    organ: "Pédale: Trompette 8, Clairon 4",
    plays: "cantus-firmus on Pédale",
    texture: "plain-chant-en-basse",
    tradition: "french-classical",
  },
  {
    organ: "Grand-Orgue: Montre 8, Bourdon 8, Flûte harmonique 8, Gambe 8",
    plays: "plenum on Grand-Orgue",
    texture: "fonds-8",
    tradition: "french-symphonic",
  },
  {
    organ: "Grand-Orgue: Bourdon 16, Montre 8, Bourdon 8, Flûte harmonique 8, Prestant 4",
    plays: "plenum on Grand-Orgue",
    texture: "fonds-16-8-4",
    tradition: "french-symphonic",
  },
  {
    organ:
      "Grand-Orgue: Bourdon 16, Montre 8, Prestant 4, Doublette 2, Plein jeu IV, Bombarde 16, Trompette 8, Clairon 4",
    plays: "plenum on Grand-Orgue",
    texture: "grand-choeur-symphonic",
    tradition: "french-symphonic",
  },
  {
    organ: "Récit: Trompette 8",
    plays: "melody on Récit",
    texture: "recit-de-trompette",
    tradition: "french-classical",
  },
  { organ: "Récit [box]: Trompette 8", plays: "melody on Récit", tradition: "french-symphonic" },
  {
    organ: "Récit [box]: Viole de gambe 8, Voix céleste 8 from C3",
    plays: "plenum on Récit",
    texture: "voix-celeste",
    tradition: "french-symphonic",
  },
  {
    organ: "Swell [box]: Salicional 8, Vox angelica 8 from C3",
    plays: "accompaniment on Swell",
    texture: "meditation",
  },
  {
    organ: "Positif: Cromorne 8",
    plays: "melody on Positif",
    texture: "recit-de-cromorne",
    tradition: "french-classical",
  },
  {
    organ: "Positif: Bourdon 8, Prestant 4, Nasard 2 2/3, Doublette 2, Tierce 1 3/5",
    plays: "melody on Positif",
    texture: "tierce-en-taille",
    tradition: "french-classical",
  },
  {
    organ: "Grand-Orgue: Bourdon 8, Prestant 4, Trompette 8, Clairon 4, Cornet V from C4",
    plays: "plenum on Grand-Orgue",
    texture: "grand-jeu",
    tradition: "french-classical",
  },
  {
    organ: "Grand-Orgue: Montre 8, Bourdon 8, Prestant 4, Doublette 2, Fourniture IV, Cymbale III",
    plays: "plenum on Grand-Orgue",
    texture: "plein-jeu",
    tradition: "french-classical",
  },
  {
    organ: "Grand-Orgue: Bourdon 16, Montre 8, Bourdon 8, Prestant 4, Doublette 2, Fourniture IV, Cymbale III",
    plays: "plenum on Grand-Orgue",
    texture: "plein-jeu",
    tradition: "french-classical",
  },
  {
    organ: "Rückpositiv: Gedackt 8, Principal 4, Oktave 2, Scharff III",
    plays: "plenum on Rückpositiv",
    texture: "organo-pleno",
    tradition: "north-german",
  },
  {
    organ: "Hauptwerk: Quintadena 16, Principal 8, Oktave 4, Oktave 2, Mixtur V",
    plays: "plenum on Hauptwerk",
    texture: "organo-pleno",
    tradition: "north-german",
  },
  {
    organ: "Rückpositiv: Gedackt 8, Flöte 4, Sesquialtera II",
    plays: "melody on Rückpositiv",
    texture: "chorale-in-soprano",
    tradition: "north-german",
  },
  {
    organ: "Rückpositiv: Krummhorn 8, Flöte 4",
    plays: "melody on Rückpositiv",
    texture: "chorale-in-tenor",
    tradition: "north-german",
  },
  {
    organ: "Hauptwerk: Principal 8",
    plays: "accompaniment on Hauptwerk",
    texture: "melody-over-accompaniment",
    tradition: "central-german",
  },
  { organ: "Oberwerk: Gedackt 8, Flöte 4", plays: "accompaniment on Oberwerk" },
  {
    organ: "Organo: Principale 8, Ottava 4, Quintadecima 2, Decimanona 1 1/3, Vigesimaseconda 1",
    plays: "plenum on Organo",
    texture: "ripieno",
    tradition: "italian-renaissance",
  },
  {
    organ: "Organo: Principale 8, Fiffaro 8 from C4",
    plays: "plenum on Organo",
    texture: "fiffaro",
    tradition: "italian-renaissance",
  },
  {
    organ: "Great: Open Diapason 8, Stopped Diapason 8",
    plays: "plenum on Great",
    texture: "diapasons",
    tradition: "english-18c",
  },
  {
    organ: "Great: Stopped Diapason 8, Trumpet 8",
    plays: "melody on Great",
    texture: "trumpet-voluntary",
    tradition: "english-18c",
  },
  {
    organ: "Swell [box]: Contra Fagotto 16, Cornopean 8, Oboe 8, Clarion 4, Mixture III, Open Diapason 8, Gemshorn 4",
    plays: "plenum on Swell",
    texture: "full-swell",
    tradition: "english-cathedral",
  },
  { organ: "Solo: Tuba 8", plays: "melody on Solo", texture: "solo-tuba", tradition: "english-cathedral" },
  {
    organ: "Manual III [box]: Aeoline 8",
    plays: "plenum on Manual III",
    texture: "sustained",
    tradition: "german-romantic",
    dynamic: "pp",
  },
  {
    organ: "Manual II: Gedackt 8, Salicional 8, Flöte 8",
    plays: "plenum on Manual II",
    texture: "sustained",
    tradition: "german-romantic",
    dynamic: "p",
  },
  {
    organ: "Manual I: Principal 8, Gamba 8, Gedackt 8, Oktave 4",
    plays: "plenum on Manual I",
    texture: "sustained",
    tradition: "german-romantic",
    dynamic: "mf",
  },
  { organ: "Swell: Stopped Diapason 8, Principal 4", plays: "plenum on Swell", texture: "hymn-verse-quiet" },
  { organ: "Great: Open Diapason 8, Principal 4, Fifteenth 2", plays: "plenum on Great", texture: "hymn-verse" },
  { organ: "Swell: Stopped Diapason 8, Gemshorn 4", plays: "accompaniment on Swell", texture: "choir-accompaniment" },
  { organ: "Positiv: Gedackt 8", plays: "accompaniment on Positiv", texture: "continuo" },
  { organ: "Brustwerk: Flöte 4", plays: "melody on Brustwerk", octaves: { melody: -1 } },
  {
    organ: "Organ: Clarín 8 treble",
    plays: "melody on Organ",
    texture: "treble-solo",
    tradition: "spanish",
    ranges: { melody: "C4-A5" },
  },
  {
    organ: "Brustwerk: Gedackt 8, Oktave 2",
    plays: "right-hand voice on Brustwerk",
    texture: "two-voices",
    tradition: "north-german",
  },
];

test.each(ORDINARY)("$organ for $plays ($texture, $tradition, $dynamic)", (example) => {
  const { instrument, section, state, placings } = consoleOfExample(example);
  const part = RULES.filter((rule) => rule.reads === "part");
  const judged = judge(problemOf(instrument, section, [], [], part), state, placings);
  const named = new Set<string>(part.map((rule) => rule.id));
  const against = judged?.reasons.filter(
    (reason) => named.has(reason.rule) && (reason.points < MURMUR || reason.severity === "error"),
  );
  expect(against?.map((reason) => `${reason.points} ${reason.rule}: ${reason.text}`)).toEqual([]);
});
