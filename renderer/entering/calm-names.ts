import type { Reading } from "../../shared-model/stoplist/reading/reading.ts";

/** Words that stay small inside a name: `Positif de dos`. */
const SMALL_WORDS: ReadonlySet<string> = new Set(
  "of the and at in de du des d la le les l et dos di del della dei y e und der die das im am zu zum zur von bei te ter van en het".split(
    " ",
  ),
);

/** `HAUPTWERK` is `Hauptwerk`: headings shout in print where there is only one size of type. Short ones stay (`GO`, `II`). */
const calm = (name: string): string =>
  name.length > 3 && name === name.toLocaleUpperCase() && name !== name.toLocaleLowerCase()
    ? name.replace(/\p{L}+/gu, (word, at: number) => {
        const quiet = word.toLocaleLowerCase();
        return at > 0 && SMALL_WORDS.has(quiet) ? quiet : `${word.charAt(0)}${quiet.slice(1)}`;
      })
    : name;

/** A reading in which neither the organ nor its divisions shout, wherever they are named. */
export function withCalmNames(reading: Reading): Reading {
  const calmed = reading.divisions.map(({ name }) => name && calm(name));
  // Two headings that differ in their capitals alone stay as they are.
  if (new Set(calmed).size !== new Set(reading.divisions.map(({ name }) => name)).size) return reading;
  const names = reading.divisions.flatMap(({ name }) => (name === null ? [] : [name]));
  const calmText = (text: string): string => names.reduce((said, name) => said.replaceAll(name, calm(name)), text);
  return {
    ...reading,
    name: reading.name && calm(reading.name),
    divisions: reading.divisions.map((division) => ({ ...division, name: division.name && calm(division.name) })),
    couplers: reading.couplers.map((coupler) => ({ ...coupler, from: calm(coupler.from), to: calm(coupler.to) })),
    tremulants: reading.tremulants.map((name) => (name === "all" ? name : calm(name))),
    questions: reading.questions.map((question) => ({
      ...question,
      about: calmText(question.about),
      choices: question.choices.map(calmText),
    })),
  };
}
