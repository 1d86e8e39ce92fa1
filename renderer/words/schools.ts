import type { Dynamic, Tempo, Tradition } from "../../shared-model/music/texture.ts";

/** The schools as a programme book names them. */
export const SCHOOL_WORDS: Readonly<Record<Tradition, string>> = {
  neutral: "Any",
  "french-classical": "French classical",
  "italian-renaissance": "Italian",
  "north-german": "North German",
  "central-german": "Central German",
  "english-18c": "English, 18th c.",
  "english-cathedral": "English cathedral",
  spanish: "Spanish",
  "french-symphonic": "French symphonic",
  "german-romantic": "German romantic",
};

/** In which manner a section is registered, for a sentence. */
export const mannerWords = (tradition: Tradition): string =>
  tradition === "neutral" ? "no school" : SCHOOL_WORDS[tradition];

export const TEMPI: readonly Tempo[] = ["slow", "moderate", "fast"];

/** A dynamic mark in words, to be read out. */
export const DYNAMIC_WORDS: Readonly<Record<Dynamic, string>> = {
  ppp: "softest",
  pp: "very soft",
  p: "soft",
  mp: "rather soft",
  mf: "rather loud",
  f: "loud",
  ff: "very loud",
  fff: "loudest",
};
