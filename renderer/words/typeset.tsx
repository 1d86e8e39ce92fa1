import { Fragment, type ReactNode } from "react";
import { type Key, keyText } from "../../shared-model/pitch/key.ts";

/**
 * A fraction as print has it, set by the font from digits round a fraction stroke. A blank that is heard and not seen
 * keeps 2 2/3 from being read out as 22/3.
 */
export function Fraction({ over, under, behindWhole }: { over: string; under: string; behindWhole: boolean }) {
  return (
    <>
      {behindWhole && <span className="sr"> </span>}
      <span className="fr">
        {over}⁄{under}
      </span>
    </>
  );
}

const FRACTION = /(\d+[ \u00A0])?\b(\d{1,2})\/(\d{1,2})\b/gu;

/** A sentence with its fractions set, and with figures of speech in order: `-2` gets a true minus. */
export function Typeset({ children }: { children: string }) {
  const pieces: ReactNode[] = [];
  let done = 0;
  for (const found of children.matchAll(FRACTION)) {
    const [all, whole, over = "", under = ""] = found;
    pieces.push(
      <Fragment key={found.index}>
        {children.slice(done, found.index)}
        <span className="nb">
          {whole?.trim()}
          <Fraction over={over} under={under} behindWhole={whole !== undefined} />
        </span>
      </Fragment>,
    );
    done = found.index + all.length;
  }
  return (
    <>
      {pieces}
      {children.slice(done)}
    </>
  );
}

const STROKES = ["", "′", "″", "‴", "⁗"];

/** A key in the usual letters of the trade: C, c, c′, c″; what a reader of organ books expects. */
export function keyName(key: Key): string {
  const [, letter = "", sign = "", octave = ""] = /^([A-G])([#b]?)(-?\d+)$/.exec(keyText(key)) ?? [];
  const bend = sign === "#" ? "♯" : sign === "b" ? "♭" : "";
  const number = Number(octave);
  if (number < 2) return `${letter}${bend}${"₁₂₃"[1 - number] ?? ""}`;
  return number === 2 ? `${letter}${bend}` : `${letter.toLowerCase()}${bend}${STROKES[number - 3] ?? ""}`;
}

/** Whole hundredths of a point as a person reads them: `41`, `2.5`, `−3`. */
export function pointsText(points: number, signed = false): string {
  const text = String(Math.abs(points) / 100);
  return points < 0 ? `−${text}` : signed && points > 0 ? `+${text}` : text;
}

const COUNTS = [
  "no",
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
  "ten",
  "eleven",
  "twelve",
];

/** A small number as a word, a large one in figures. */
export const numberWord = (count: number): string => COUNTS[count] ?? String(count);

/** The same at the head of a sentence. */
export const NumberWord = (count: number): string => capital(numberWord(count));

/** With a capital. */
export const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** `one stop`, `22 stops`. */
export const counted = (count: number, noun: string): string => `${numberWord(count)} ${noun}${count === 1 ? "" : "s"}`;

const ROMAN = ["", "I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX", "X", "XI", "XII"];

/** A small number in Roman figures, as ranks and keyboards are counted. */
export const roman = (count: number): string => ROMAN[count] ?? String(count);
