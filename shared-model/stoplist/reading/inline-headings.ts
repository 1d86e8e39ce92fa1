import { isAidsTitle, isListTitle } from "./accessories.ts";
import { isCouplerLabel } from "./couplers.ts";

const KEYBOARD_PHRASE =
  /(?<![\p{L}\d])(?:I{1,3}|IV|V)\s?\.?\s?(?:Man(?:ual)?|Klav(?:ier)?|Clav(?:ier)?)\b\.?:?\s|(?<=[\s;,.'’′])(?:Ped(?:al|aal|ale|\.)?|Pédale):?\s(?=\p{Lu})/gu;

const isAidsLead = (piece: string): boolean => isAidsTitle(piece.split(":")[0] ?? "");

/** A line that prints a whole list: parted before each keyboard that it names. */
export function inlineHeadings(text: string): string[] {
  // "Manual: Gedackt 8, Prinzipal 4; Pedal: Subbass 16"
  const named = text.split(/[;.]\s+(?=\p{Lu}[\p{L}. -]{0,24}:\s)/u);
  const isRow = (piece: string): boolean => /^[^:]{1,26}:\s.*\d/u.test(piece) && !isCouplerLabel(piece);
  // "Dispositie. Hoofdwerk: ...; Pedaal: ... Koppelingen: ..."
  const others = named.filter((piece) => !isRow(piece));
  const areAside = others.every((piece) => isListTitle(piece) || isCouplerLabel(piece) || isAidsLead(piece));
  if (named.length - others.length > (others.length > 0 ? 1 : 0) && named.length > 1 && areAside) return named;
  if (text.length < 30) return [text];
  const places = [...text.matchAll(KEYBOARD_PHRASE)].filter((match) => !/[-–/]\s?$/.test(text.slice(0, match.index)));
  const keyboards = places.filter((match) => /[IV]/.test(match[0][0] as string));
  if (keyboards.length === 0 || !(places.length >= 2 || (keyboards[0] as RegExpExecArray).index > 0)) return [text];
  const feet = text.match(/\d\s?['’′`´]|\d\s?(?:Fu|vt|voet|pied|ft)/g)?.length ?? 0;
  if (feet < 2) return [text];
  const pieces: string[] = [];
  let from = 0;
  for (const [index, place] of places.entries()) {
    if (place.index > from) pieces.push(text.slice(from, place.index));
    const head = place[0].trim();
    const end = place.index + place[0].length;
    const until = places[index + 1]?.index ?? text.length;
    pieces.push(`${head.replace(/:$/, "")}: ${text.slice(end, until)}`);
    from = until;
  }
  return pieces.map((piece) => piece.replace(/[\s,;]+$/, "").trim()).filter((piece) => piece !== "");
}
