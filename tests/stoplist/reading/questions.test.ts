import { describe, expect, it } from "vitest";
import { readStoplist } from "../../../shared-model/stoplist/reading/read-stoplist.ts";
import { INVENTED } from "./invented/all.ts";
import { dedented } from "./written.ts";

/** What is asked about a list: line, sentence, and the answers to choose from. */
const asked = (list: string): string[] =>
  readStoplist(dedented(list)).questions.map(
    ({ line, text, choices }) => `${line}: ${text}${choices.length > 0 ? ` [${choices.join(" | ")}]` : ""}`,
  );

const ORGAN = `Great
Open Diapason 8
Swell
Gedackt 8
Pedal
Bourdon 16`;

/** A doubt as print leaves it, and the whole question: what is wrong, what was done meanwhile, what to choose from. */
const DOUBTS: Readonly<Record<string, readonly [list: string, ...questions: string[]]>> = {
  "no pitch where the others print theirs": [
    "Great\nOpen Diapason 8\nGedackt\nPrincipal 4",
    "3: No pitch is printed for Gedackt, so it is left open; what is it? [8' | 16' | 4']",
  ],
  "ranks or pitch": [
    "Great\nOpen Diapason 8\nMixture 4",
    `3: The "4" behind Mixture can be its ranks or its pitch; it is read as 4 ranks. Is that right? [4 ranks | 4']`,
  ],
  "a pitch that no organ has": [
    "Great\nOpen Diapason 8\nPrincipal 9'",
    "3: Principal is printed 9', a pitch that organs do not have, so it is left open; what is its pitch? [8' | 16' | 4']",
  ],
  "figures run together": [
    "Hauptwerk\nPrincipal 8'\nQuinte 22/3'",
    `3: "22/3" of Quinte is taken for 2 2/3'; is that right? [2 2/3' | 7 1/3']`,
  ],
  "a reed printed six feet": [
    "Hauptwerk\nPrincipal 8'\nTrompete 6'",
    "3: Trompete is printed 6', which can be a fifth (5 1/3') or belong to a keyboard that begins at F (4'), so it is left open; which is it? [4' | 5 1/3']",
  ],
  "a coupler with a sign, between keyboards without numbers": [
    `${ORGAN}\nCouplers: I-II`,
    `7: The coupler "I-II" does not say which keyboard plays the other; it is taken as Swell to Great. Is that right? [Swell to Great | Great to Swell]`,
    `7: The coupler "I-II" counts keyboards that the list does not number; they are taken in printed order (I Great, II Swell). Is that right? [yes | no]`,
  ],
  "a coupler of a division that the list has not": [
    `${ORGAN}\nCouplers: Ch to Gt`,
    `7: The coupler "Ch to Gt" is left out, because this list has no Ch; which division is that? [Great | Swell | Pedal]`,
  ],
  "a pedal coupler among three manuals": [
    `${ORGAN}\nChoir\nDulciana 8\nPedal coupler`,
    `9: The coupler "Pedal coupler" does not say which keyboard it brings to the pedal; it is taken as Great. Which is it? [Great | Swell | Choir]`,
  ],
  "a tremulant of a division that the list has not": [
    `${ORGAN}\nTremulant Positive`,
    `7: "Tremulant Positive" names no division of this list; it is taken for the whole organ. What does it shake? [Great | Swell | Pedal | the whole organ]`,
  ],
  "a word over stops that is no division's name": [
    `${ORGAN}\nZephyr:\nViola 8\nFlute 4`,
    `7: "Zephyr" stands over stops like a heading and is read as a manual division; is it one? [a manual division | the pedal | part of the division before]`,
  ],
  "a heading without stops": [
    "Great\nOpen Diapason 8\nSolo Organ:\nSwell\nGedackt 8",
    "3: No stops are printed under Solo Organ, so it is left out; is it a division of its own?",
  ],
  "words that mean nothing here": [
    "Great\nOpen Diapason 8\nXyloquark\nPrincipal 4",
    `3: "Xyloquark" was not understood and is left out; if it is a stop, print its pitch behind it.`,
  ],
  "two groups without headings": [
    "Principal 8\nFlöte 4\nOktave 2\n\nPrincipal 8\nFlöte 4\nOktave 2",
    "5: The list falls into two groups without headings; they are read as one manual. Are they its bass and treble halves, or two keyboards? [one manual | bass half and treble half | two manuals]",
  ],
  "no list at all": ["Evensong is at six.", "1: No stops were found in this text; is it a stoplist?"],
};

describe("what print leaves open is asked in words that can be answered", () => {
  it.each(Object.entries(DOUBTS))("%s", (_, [list, ...questions]) => {
    expect(asked(list)).toEqual(questions);
  });
});

describe("every question of the invented lists", () => {
  const all = INVENTED.flatMap(([, lists]) => Object.values(lists)).flatMap(([list]) => {
    const text = dedented(list);
    return readStoplist(text).questions.map((question) => ({ ...question, lines: text.split("\n") }));
  });

  it("names a line of the list that holds what it is about", () => {
    const astray = all.filter(({ line, about, lines }) => !lines[line - 1]?.includes(about));
    expect(astray.map(({ line, text }) => `${line}: ${text}`)).toEqual([]);
    expect(all.length).toBeGreaterThan(8);
  });

  it("is a sentence, and offers no single answer", () => {
    const poor = all.filter(({ text, choices }) => !/^["\p{Lu}].*[.?]$/u.test(text) || choices.length === 1);
    expect(poor.map(({ line, text }) => `${line}: ${text}`)).toEqual([]);
  });
});
