import type { BoxPosition } from "../console/state.ts";
import type { CardHand, CardStop, CueCard } from "./cue-card.ts";

/** Columns of a card: as many as stand across a narrow sheet in type that is read from the bench. */
export const CARD_WIDTH = 46;

/** Where a part is played; empty where it is played as written. */
export const OCTAVE_WORDS: Readonly<Record<CardHand["octave"], string>> = {
  [-1]: "an octave lower than written",
  0: "",
  1: "an octave higher than written",
};
/** How a box stands. */
export const BOX_WORDS: Readonly<Record<BoxPosition, string>> = { open: "open", half: "half open", closed: "shut" };

/** Width of the first column of `Right hand  Oberwerk`. */
const HEAD = 12;

/** Lines of at most `width` letters: the first begins with `lead`, later ones with as many spaces as `hanging` says. */
export function wrapped(text: string, width: number, lead = "", hanging = lead.length): readonly string[] {
  const lines: string[] = [];
  let line = lead;
  let isEmpty = true;
  const end = (): void => {
    lines.push(line.trimEnd());
    line = " ".repeat(hanging);
    isEmpty = true;
  };
  // A pitch stays with its stop: `Gedackt 8` is never torn apart.
  for (const word of text.split(/\s+(?!\d)/u).filter((each) => each !== "")) {
    // Letters, not code units: half a letter cannot be printed.
    let left = [...word];
    if (!isEmpty && [...line].length + 1 + left.length > width) end();
    while (isEmpty && [...line].length + left.length > width) {
      const room = width - [...line].length;
      line += left.slice(0, room).join("");
      left = left.slice(room);
      end();
    }
    line += `${isEmpty ? "" : " "}${left.join("")}`;
    isEmpty = false;
  }
  return [...lines, line.trimEnd()];
}

const row = (head: string, text: string, width: number): readonly string[] => wrapped(text, width, head.padEnd(HEAD));

function handLines(hands: readonly CardHand[], width: number): readonly string[] {
  return hands.flatMap((hand, index) => {
    const head = hands[index - 1]?.who === hand.who ? "" : hand.who;
    if (hand.keyboard === null) return row(head, "rest", width);
    const what = hand.what === null ? "" : ` (${hand.what})`;
    const octave = OCTAVE_WORDS[hand.octave];
    return [...row(head, `${hand.keyboard}${what}`, width), ...(octave === "" ? [] : row("", octave, width))];
  });
}

const stopWords = ({ name, or }: CardStop): string => [name, ...or].join(" or ");

/**
 * A cue card as plain text, to be printed large: what is wrong first, then where to play, what to draw division by
 * division, and what else to set. Parts are set off by blank lines. Ends with a line feed.
 *
 * @param width columns, 20 or more; default {@link CARD_WIDTH}.
 */
export function cueCardText(card: CueCard, width = CARD_WIDTH): string {
  const columns = Math.max(20, width);
  const bars = card.bars === null ? "" : /^\d/.test(card.bars) ? `bars ${card.bars}` : card.bars;
  const head = [card.section ?? "", bars].filter((each) => each !== "").join(", ");
  const settings = [
    ...card.couplers.flatMap((name, index) => row(index === 0 ? "Couple" : "", name, columns)),
    ...card.unisonOff.flatMap((name, index) => row(index === 0 ? "Unison off" : "", name, columns)),
    ...card.tremulants.flatMap((name, index) =>
      row(index === 0 ? "Tremulant" : "", name === "all" ? "the whole organ" : name, columns),
    ),
    ...card.boxes.flatMap(({ name, position }, index) =>
      row(index === 0 ? "Box" : "", `${name} ${BOX_WORDS[position]}`, columns),
    ),
  ];
  const blocks: readonly (readonly string[])[] = [
    [
      ...(head === "" ? [] : wrapped(head, columns)),
      ...wrapped(card.label, columns),
      "=".repeat(columns),
      ...card.warnings.flatMap(({ severity, text, remedy }) => {
        const todo = severity === "error" && remedy !== null ? ` ${remedy}` : "";
        return wrapped(`${text}${todo}`, columns, severity === "error" ? "WRONG " : "! ", 2);
      }),
    ],
    handLines(card.hands, columns),
    ...card.divisions.map(({ name, stops }) => [
      ...wrapped(name.toUpperCase(), columns),
      ...stops.flatMap((stop) => wrapped(stopWords(stop), columns, "  ", 6)),
    ]),
    settings,
    card.why === null ? [] : wrapped(card.why, columns),
    wrapped(card.organ, columns),
  ];
  return `${blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join("\n"))
    .join("\n\n")}\n`;
}
