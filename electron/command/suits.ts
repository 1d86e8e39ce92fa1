import { labelOf } from "../../shared-model/cards/label.ts";
import { piecesFor, type SuitedPiece } from "../../shared-model/carry/suits.ts";
import { readPieceFile } from "../../shared-model/files/piece-file.ts";
import { readText } from "./input-file.ts";
import { readOptions, type Usage } from "./options.ts";
import { readOrgan, settle } from "./organ.ts";
import { opposite, wrapped } from "./plain-text.ts";
import { DONE, line, Refusal, type Terminal } from "./terminal.ts";

export const SUITS: Usage = {
  command: "suits",
  line: "registrant suits ORGAN.yaml PIECE.yaml... [--json]",
  does: "Ranks pieces by how well they suit an organ, and says why.",
  options: { json: "flag" },
  operands: ["ORGAN.yaml", "PIECE.yaml"],
  repeats: true,
};

const inPercent = ({ share }: SuitedPiece): number => Math.round(share * 100);

/** `registrant suits`. */
export function suitsCommand(words: readonly string[], terminal: Terminal): number {
  const given = readOptions(SUITS, words);
  const [organ = "", ...paths] = given.operands;
  const twice = paths.find((path, at) => paths.indexOf(path) < at);
  if (twice !== undefined) throw new Refusal(`${twice} stands twice; keep one of the two.`);
  const instrument = readOrgan(organ, terminal);
  const files = new Map(
    paths.map((path) => {
      const { piece, troubles } = readPieceFile(readText(path, terminal), path, null);
      return [settle(path, piece, troubles, terminal), path] as const;
    }),
  );
  const ranked = piecesFor(instrument, [...files.keys()], labelOf);
  if (given.has("json")) {
    const pieces = ranked.map((each) => ({
      file: files.get(each.piece),
      name: each.piece.name,
      suits: inPercent(each),
      text: each.text,
      sections: each.sections.map(({ name, level, label, why, exact }) => ({ name, level, label, why, exact })),
    }));
    terminal.stdout.write(line(JSON.stringify({ instrument: instrument.name, pieces }, null, 2)));
    return DONE;
  }
  const lines = [
    ...wrapped(`What suits ${instrument.name}`),
    "",
    ...ranked.flatMap((each, at) => [
      ...opposite(`${at + 1}. ${each.piece.name ?? files.get(each.piece) ?? ""}`, `${inPercent(each)} of 100`),
      ...wrapped(each.text, "   "),
    ]),
    "",
    ...wrapped("By what each section asks for, longer ones counting more; not by how hard the changes are."),
  ];
  terminal.stdout.write(line(lines.join("\n")));
  return DONE;
}
