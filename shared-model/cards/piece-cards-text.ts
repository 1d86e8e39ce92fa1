import type { CardHand, CueCard } from "./cue-card.ts";
import { BOX_WORDS, CARD_WIDTH, OCTAVE_WORDS, wrapped } from "./cue-card-text.ts";
import {
  type CardMove,
  type CardPress,
  type CardTask,
  type CardVerdict,
  type ChangeCard,
  type PieceCards,
  type PistonSetting,
  pressWords,
  STAYS,
  WORKER_WORDS,
} from "./piece-card.ts";

const SIGN: Readonly<Record<CardMove["act"], string>> = { cancel: "-", draw: "+", set: ">" };

type Lines = readonly string[];

function moveLines(moves: readonly CardMove[], width: number): Lines {
  return moves.flatMap(({ act, what, division, name }, index) => {
    const head = division === null || moves[index - 1]?.division === division ? [] : [`  ${division}`];
    const words = what === null ? name : `${what} ${name}`;
    return [...head, ...wrapped(words, width, `  ${SIGN[act]} `)];
  });
}

function taskLines({ who, ready, turnsPage, moves }: CardTask, width: number): Lines {
  const worker = WORKER_WORDS[who].toUpperCase();
  const head = [worker, ready === null ? "" : `ready: ${ready}`, turnsPage ? "turns the page" : ""];
  return [...wrapped(head.filter((each) => each !== "").join(", "), width), ...moveLines(moves, width)];
}

const handWords = ({ who, what, octave }: CardHand): string =>
  [`${who.toLowerCase()}${what === null ? "" : ` (${what})`}`, OCTAVE_WORDS[octave]]
    .filter((each) => each !== "")
    .join(" ");

/** How the console stands, a keyboard a line. */
function stateLines(state: CueCard, width: number): Lines {
  const keyboards = new Set([
    ...state.divisions.map((division) => division.name),
    ...state.hands.flatMap((hand) => hand.keyboard ?? []),
  ]);
  const rows = [...keyboards].map((name) => {
    const hands = state.hands.filter((hand) => hand.keyboard === name).map(handWords);
    const stops = state.divisions.find((division) => division.name === name)?.stops.map((stop) => stop.name) ?? [];
    const who = hands.length === 0 ? "" : ` (${hands.join(", ")})`;
    return `${name}${who}: ${stops.length === 0 ? "nothing drawn" : stops.join(", ")}`;
  });
  const others = [
    ...state.couplers,
    ...state.unisonOff.map((name) => `unison off ${name}`),
    ...state.tremulants.map((name) => `tremulant ${name === "all" ? "of the whole organ" : name}`),
    ...state.boxes.map(({ name, position }) => `box ${name} ${BOX_WORDS[position]}`),
    ...state.hands.filter((hand) => hand.keyboard === null).map((hand) => `${hand.who.toLowerCase()} rest`),
  ];
  return [...rows, ...(others.length === 0 ? [] : [others.join(", ")])].flatMap((row) => wrapped(row, width, "", 2));
}

/** In capitals where it must not be overlooked. */
const verdictWords = ({ words, loud }: CardVerdict): string =>
  loud ? words.toUpperCase() : `${words.charAt(0).toUpperCase()}${words.slice(1)}`;

function changeLines(card: ChangeCard, width: number): Lines {
  const { number, where, cue, dynamic, verdict, presses, pressedBy, tasks, whenTime, stays, state, warnings } = card;
  const moment = [where, cue, dynamic].filter((each) => each !== null).join(", ");
  const sounds = [card.section, state.label].filter((each) => each !== null).join(": ");
  const by = pressedBy === null ? "" : ` (${pressedBy})`;
  const pressed = (press: CardPress): string => `PRESS ${pressWords(press)}${by}`;
  const idle = verdict === null ? "BEFORE YOU BEGIN" : "NOTHING CHANGES";
  const doing: readonly Lines[] = [
    ...(presses.length === 0 ? [] : [presses.flatMap((press) => wrapped(pressed(press), width, "", 6))]),
    ...tasks.map((task) => taskLines(task, width)),
    ...(whenTime.length === 0 ? [] : [["WHEN THERE IS TIME", ...moveLines(whenTime, width)]]),
    ...(presses.length + tasks.length + whenTime.length === 0 ? [[idle]] : []),
  ];
  const said =
    verdict === null ? "" : `${verdictWords(verdict)}.${verdict.detail === null ? "" : ` ${verdict.detail}`}`;
  return [
    ...wrapped(moment, width, `${number}  `),
    ...wrapped(sounds, width),
    "=".repeat(width),
    ...(said === "" ? [] : wrapped(said, width)),
    ...warnings.flatMap(({ severity, text, remedy }) =>
      wrapped(
        [text, severity === "error" ? (remedy ?? "") : ""].join(" "),
        width,
        severity === "error" ? "WRONG " : "! ",
        2,
      ),
    ),
    ...doing.flatMap((lines) => ["", ...lines]),
    "",
    ...(verdict === null ? [] : ["Then stands"]),
    ...stateLines(state, width),
    ...(stays.length === 0 ? [] : wrapped(`${STAYS}: ${stays.join(", ")}`, width, "", 2)),
  ];
}

function pistonLines({ press, changes, state }: PistonSetting, width: number): Lines {
  const use = `for change${changes.length === 1 ? "" : "s"} ${changes.join(", ")}`;
  return [...wrapped(`${pressWords(press)}: ${use}`, width), ...stateLines(state, width)];
}

/**
 * The cards of a piece as plain text: what to store on the pistons, then change by change. Ends with a line feed.
 *
 * @param width columns, 20 or more; default {@link CARD_WIDTH}.
 */
export function pieceCardsText(cards: PieceCards, width = CARD_WIDTH): string {
  const columns = Math.max(20, width);
  const helper = cards.assistant === null ? "" : `Assistant at the ${cards.assistant}, as the player sees it.`;
  const blocks: readonly Lines[] = [
    [
      ...wrapped(cards.piece, columns),
      ...wrapped(cards.organ, columns),
      ...(helper === "" ? [] : wrapped(helper, columns)),
    ],
    ...(cards.pistons.length === 0
      ? []
      : [
          ["PISTONS TO SET", ...cards.cautions.flatMap((caution) => wrapped(caution, columns, "! "))],
          ...cards.pistons.map((piston) => pistonLines(piston, columns)),
        ]),
    ...cards.changes.map((card) => changeLines(card, columns)),
  ];
  return `${blocks.map((block) => block.join("\n")).join("\n\n")}\n`;
}
