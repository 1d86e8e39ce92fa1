import type { CardForm } from "../../shared-model/cards/pages.ts";
import { imposed } from "../../shared-model/cards/paper/impose.ts";
import type { PrintedCards } from "../../shared-model/cards/paper/page.ts";
import { PAPER_FORMS, PAPERS, type Paper } from "../../shared-model/cards/paper/paper.ts";
import { pdfOf, type Typefaces } from "../../shared-model/cards/pdf.ts";
import { type Given, type OptionForm, oneOf } from "./options.ts";
import { mayWrite, writeWhole } from "./output-file.ts";
import { counted } from "./plain-text.ts";
import { line, Refusal, type Terminal } from "./terminal.ts";
import { installedTypefaces } from "./typefaces.ts";

/** The options of every command that prints cards, and how its usage line names them. */
export const PRINT_OPTIONS = {
  pdf: { value: "a file" },
  paper: { value: "a size of paper" },
  sheet: { value: "a size of paper" },
  replace: "flag",
} as const satisfies Readonly<Record<string, OptionForm>>;
/** For the card of one registration: a page behind it on which the registration is drawn. */
export const DRAWN_OPTION = { "with-picture": "flag" } as const satisfies Readonly<Record<string, OptionForm>>;
export const PRINT_USAGE = `[--pdf F.pdf] [--paper ${PAPERS.join("|")}] [--sheet a4|letter] [--replace]`;

const USUAL_PAPER: Paper = "a5";

/** Where to print, and on what. */
export interface PrintOrder {
  readonly path: string;
  readonly paper: Paper;
  /** A larger sheet to be cut; `null` when every page is a sheet of its own. */
  readonly sheet: Paper | null;
  readonly replace: boolean;
}

/**
 * What the options say of printing; `null` when the cards are wanted as text.
 *
 * @param usual the paper where none is named.
 * @throws Refusal for a size that there is not, an option that means nothing without --pdf, and a file that may not be written.
 */
export function printOrder(given: Given, terminal: Terminal, usual: Paper = USUAL_PAPER): PrintOrder | null {
  const path = given.value("pdf");
  if (path === undefined) {
    const own = ["paper", "sheet", "with-picture"];
    const options = given.value("picture") === undefined ? [...own, "replace"] : own;
    const idle = options.find((option) => given.has(option));
    if (idle !== undefined) throw new Refusal(`--${idle} goes with --pdf; without it text is printed.`);
    return null;
  }
  const sizeOf = (option: string): Paper | null => {
    const said = given.value(option);
    return said === undefined ? null : oneOf("size of paper", said, PAPERS);
  };
  const order = {
    path,
    paper: sizeOf("paper") ?? usual,
    sheet: sizeOf("sheet"),
    replace: given.has("replace"),
  };
  mayWrite(path, order.replace, terminal);
  return order;
}

/** Letters that would be printed as an empty box, each once. */
function lackingLetters({ pages }: PrintedCards, typefaces: Typefaces): readonly string[] {
  const texts = pages.flatMap((page) => page.blocks).flatMap((block) => block.marks);
  return [...new Set(texts.flatMap((mark) => (mark.kind === "text" ? typefaces.lacks(mark.text, mark.face) : [])))];
}

/**
 * Sets cards on paper and writes the PDF.
 *
 * @throws Refusal when there is nothing to print, when two pages do not go on the sheet, or the file cannot be written.
 */
export async function printCards(
  order: PrintOrder,
  cards: (form: CardForm) => PrintedCards,
  terminal: Terminal,
): Promise<void> {
  const typefaces = installedTypefaces();
  const printed = cards({ paper: order.paper, measure: typefaces.measure });
  if (printed.pages.length === 0) throw new Refusal("The piece has no such part: there is nothing to print.");
  const sheets = order.sheet === null ? printed : imposed(printed, order.sheet);
  if (sheets === null) {
    const [paper, sheet] = [PAPER_FORMS[order.paper].name, PAPER_FORMS[order.sheet ?? order.paper].name];
    throw new Refusal(`No two cards of ${paper} go on a sheet of ${sheet}. Leave --sheet off, or take smaller cards.`);
  }
  const lacking = lackingLetters(printed, typefaces);
  if (lacking.length > 0) {
    terminal.stderr.write(
      line(
        `The type of the cards has no letter for ${lacking.join(" ")}: an empty box stands there. Write it in by hand.`,
      ),
    );
  }
  writeWhole(order.path, await pdfOf(sheets, typefaces), order.replace, terminal);
  const name = PAPER_FORMS[order.sheet ?? order.paper].name;
  terminal.stdout.write(line(`${order.path}: ${counted(sheets.pages.length, "page")}, ${name}.`));
}
