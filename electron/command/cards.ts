import { cueCard } from "../../shared-model/cards/cue-card.ts";
import { cueCardText } from "../../shared-model/cards/cue-card-text.ts";
import { PIECE_PARTS, piecePages, registrationPages } from "../../shared-model/cards/pages.ts";
import { pieceCards } from "../../shared-model/cards/piece-cards.ts";
import { pieceCardsText } from "../../shared-model/cards/piece-cards-text.ts";
import { fileKindOf } from "../../shared-model/files/file-kind.ts";
import { readPieceFile } from "../../shared-model/files/piece-file.ts";
import { registrationDrawing } from "../../shared-model/pictures/registration-picture.ts";
import { USUAL_CHOICE } from "../../shared-model/plan/plan.ts";
import type { PlannedPiece } from "../../shared-model/plan/planned.ts";
import { asRegistered } from "../../shared-model/plan/variants.ts";
import { checkFiles } from "./check.ts";
import { readText } from "./input-file.ts";
import { type Given, oneOf, readOptions, type Usage } from "./options.ts";
import { readOrgan, settle } from "./organ.ts";
import { counted } from "./plain-text.ts";
import { isWrong, planned } from "./plan.ts";
import { DRAWN_OPTION, PRINT_OPTIONS, PRINT_USAGE, type PrintOrder, printCards, printOrder } from "./print-cards.ts";
import { DONE, line, Refusal, type Terminal, WRONG } from "./terminal.ts";

export const CARDS: Usage = {
  command: "cards",
  line: `registrant cards ORGAN.yaml (REGISTRATION.yaml | PIECE.yaml) ${PRINT_USAGE} [--with-picture] [--part ${PIECE_PARTS.join("|")}]`,
  does: "Prints the cue card of a registration, or the cards of a whole piece, to be read at the console.",
  options: { ...PRINT_OPTIONS, ...DRAWN_OPTION, part: { value: "a part of a piece's cards" } },
  operands: ["ORGAN.yaml", "REGISTRATION.yaml or PIECE.yaml"],
};
export const CARD: Usage = { ...CARDS, command: "card", line: CARDS.line.replace("cards", "card") };

/** `registrant cards` and `registrant card`. */
export async function cardsCommand(usage: Usage, words: readonly string[], terminal: Terminal): Promise<number> {
  const given = readOptions(usage, words);
  const order = printOrder(given, terminal);
  const [organ = "", path = ""] = given.operands;
  if (fileKindOf(readText(path, terminal)) === "piece") return cardsOfPiece(organ, path, given, order, terminal);
  if (given.has("part")) throw new Refusal(`--part is for pieces; ${path} holds a single registration.`);
  const { written, problem, checked } = checkFiles(organ, path, terminal);
  const card = cueCard(problem, written.state, checked.judgement, checked.findings);
  const drawing = given.has("with-picture") ? registrationDrawing(problem, checked.judgement, card.label) : null;
  if (order) await printCards(order, (form) => registrationPages(card, form, drawing), terminal);
  else terminal.stdout.write(cueCardText(card));
  return checked.findings.some((finding) => finding.severity === "error") ? WRONG : DONE;
}

/**
 * The plan that the piece's own registrations make; sections without one are planned round them.
 *
 * @throws Refusal for a piece that was registered on another organ.
 */
function planOfPiece(organ: string, path: string, terminal: Terminal): PlannedPiece {
  const instrument = readOrgan(organ, terminal);
  const reading = readPieceFile(readText(path, terminal), path, instrument);
  if (reading.troubles.some((trouble) => trouble.code === "other-organ")) {
    const said = `${path}: It is registered for ${reading.piece?.organ ?? "another organ"}, not for ${instrument.name}.`;
    throw new Refusal(`${said} Plan it for this organ first ("registrant plan ... --out"), then print its cards.`);
  }
  const piece = settle(path, reading.piece, reading.troubles, terminal);
  const open = piece.sections.filter((section) => section.registration === null).length;
  if (open > 0) {
    const words = `${counted(open, "section")} without a registration: planned for these cards only`;
    terminal.stderr.write(line(`${path}: ${words}; "registrant plan ... --out F.yaml" keeps what is planned.`));
  }
  return planned(instrument, asRegistered(piece), path, { count: USUAL_CHOICE });
}

async function cardsOfPiece(
  organ: string,
  path: string,
  given: Given,
  order: PrintOrder | null,
  terminal: Terminal,
): Promise<number> {
  const said = given.value("part");
  const parts = said === undefined ? undefined : [oneOf("part of a piece's cards", said, PIECE_PARTS)];
  if (given.has("with-picture"))
    throw new Refusal("For a piece, --part pictures prints a picture of each registration.");
  if (said !== undefined && order === null)
    throw new Refusal("--part goes with --pdf; without it all is printed as text.");
  const plan = planOfPiece(organ, path, terminal);
  const cards = pieceCards(plan);
  if (order) await printCards(order, (form) => piecePages(cards, form, parts), terminal);
  else terminal.stdout.write(pieceCardsText(cards));
  return isWrong(plan) ? WRONG : DONE;
}
