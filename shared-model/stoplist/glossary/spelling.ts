import { remembered } from "../remembered.ts";

/**
 * Names are compared in three steps, each more forgiving: as printed but for case and points; without accents,
 * umlauts and gaps; and as the ear would spell them, which takes in the old spellings (`Qvintadehn`, `Waldtfloit`,
 * `Cimbel`).
 */

/** As printed, but for case, points, hyphens and doubled spaces; accents stay. */
export const plainSpelling = (text: string): string =>
  text
    .normalize("NFC")
    .toLowerCase()
    .replace(/['’`´"„“”.,:;*†‡_\-–—‐]+/g, " ")
    .replace(/\s+/g, " ")
    .trim();

/** Also without accents and gaps, umlauts and their digraphs (`ö`, `oe`) alike. */
export const foldedSpelling: (text: string) => string = remembered((text) =>
  plainSpelling(text)
    .replace(/ß/g, "ss")
    .replace(/[œø]/g, "oe")
    .replace(/æ/g, "ae")
    .normalize("NFD")
    .replace(/\p{M}+/gu, "")
    .replace(/([aou])e/g, "$1")
    .replace(/[^\p{L}\p{N}]+/gu, ""),
);

/**
 * Also with one letter for the sounds that old printers wrote in many ways. Meant for names that fold to nothing
 * known.
 */
export const heardSpelling = (text: string): string =>
  foldedSpelling(text)
    .replace(/qv/g, "qu")
    .replace(/fl(?:uij|oi|oh|ui|uy|eu|o|u)t+h?/g, "flot")
    .replace(/ph/g, "f")
    .replace(/[tz]?z|c(?=[eiy])/g, "z")
    .replace(/sch|sh/g, "§")
    .replace(/ck|c/g, "k")
    .replace(/dt|th|d(?=$|[^aeiouy])/g, "t")
    .replace(/[yj]/g, "i")
    .replace(/w/g, "v")
    .replace(/([aeiou])h(?=[^aeiou]|$)/g, "$1")
    .replace(/(.)\1+/g, "$1")
    .replace(/e$/, "");
