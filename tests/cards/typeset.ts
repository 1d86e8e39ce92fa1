import { installedTypefaces } from "../../electron/command/typefaces.ts";
import type { Page, TextMark } from "../../shared-model/cards/paper/page.ts";
import { POINT } from "../../shared-model/cards/paper/type.ts";
import type { Typefaces } from "../../shared-model/cards/pdf.ts";

/** The faces that the command prints in. */
export const TYPEFACES: Typefaces = installedTypefaces();

export const textsOf = (page: Page): readonly TextMark[] =>
  page.blocks.flatMap((block) => block.marks.flatMap((mark) => (mark.kind === "text" ? [mark] : [])));

/** The words of a page, a line for each baseline of each block. */
export function wordsOf(page: Page): readonly string[] {
  return page.blocks.flatMap((block) => {
    const lines = new Map<string, string[]>();
    for (const mark of block.marks) {
      if (mark.kind !== "text") continue;
      const at = mark.y.toFixed(2);
      lines.set(at, [...(lines.get(at) ?? []), mark.text]);
    }
    return [...lines.values()].map((texts) => texts.join(" ").replace(/\s+/g, " "));
  });
}

interface Ink {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The room that a text needs: from the accents of its capitals down to its descenders; a fraction is as tall as a capital. */
export const inkOf = ({ text, x, y, width, size, fraction }: TextMark): Ink => ({
  text,
  left: x,
  right: x + width,
  top: y - (fraction ? 0.72 : 0.93) * size * POINT,
  bottom: y + (fraction ? 0.02 : 0.27) * size * POINT,
});

/** Pairs of texts that would be printed into each other, and texts that run off the page or into its margin. */
export function inkFaults(page: Page, margin: number): readonly string[] {
  const inks = textsOf(page).map(inkOf);
  const hair = 0.02;
  const off = inks
    .filter((ink) => ink.left < margin - hair || ink.right > page.width - margin + hair)
    .concat(inks.filter((ink) => ink.top < 0 || ink.bottom > page.height - margin + 1))
    .map((ink) => `"${ink.text}" runs off the page`);
  const met = inks.flatMap((one, index) =>
    inks.slice(index + 1).flatMap((other) => {
      const across = Math.min(one.right, other.right) - Math.max(one.left, other.left);
      const down = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
      return across > hair && down > hair ? [`"${one.text}" meets "${other.text}"`] : [];
    }),
  );
  return [...off, ...met];
}
