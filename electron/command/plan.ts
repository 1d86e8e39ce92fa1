import { editPieceFile, type PieceEdit } from "../../shared-model/files/piece-edit.ts";
import { readPieceFile } from "../../shared-model/files/piece-file.ts";
import { registrationValue } from "../../shared-model/files/registration-value.ts";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import type { Piece } from "../../shared-model/music/piece.ts";
import { chooseRow, USUAL_CHOICE } from "../../shared-model/plan/plan.ts";
import { type PlannedPiece, workOut } from "../../shared-model/plan/planned.ts";
import { registrationsOf } from "../../shared-model/plan/written.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { readText } from "./input-file.ts";
import { oneOf, readOptions, type Usage, wholeNumber } from "./options.ts";
import { readOrgan, settle } from "./organ.ts";
import { mayWrite, writeWhole } from "./output-file.ts";
import { counted } from "./plain-text.ts";
import { planJson } from "./plan-json.ts";
import { planText } from "./plan-text.ts";
import { DONE, line, Refusal, type Terminal, WRONG } from "./terminal.ts";

export const PLAN: Usage = {
  command: "plan",
  line: "registrant plan ORGAN.yaml PIECE.yaml [--count N] [--assistant left|right|none] [--out F.yaml] [--replace] [--json]",
  does: "Plans registrations through a whole piece, with the changes that hands have time for.",
  options: {
    count: { value: "a number" },
    assistant: { value: "left, right or none" },
    out: { value: "a file" },
    replace: "flag",
    json: "flag",
  },
  operands: ["ORGAN.yaml", "PIECE.yaml"],
};

/** More of each list than is ever worth looking at. */
const MOST = 50;

/** Whether something in the plan cannot be played or heard as the piece asks. */
export const isWrong = ({ changes, sections, row }: PlannedPiece): boolean =>
  changes.some(
    ({ verdict }) => verdict === "impossible" || (verdict === "needs-assistant" && row.crew.assistant === "none"),
  ) || sections.some(({ links }) => links.some((link) => !link.holds));

/**
 * Plans a piece on an organ.
 *
 * @throws Refusal where a section has nothing to choose from.
 */
export function planned(instrument: Instrument, piece: Piece, path: string, count: number): PlannedPiece {
  const row = chooseRow(instrument, piece, { count });
  if (!("troubles" in row)) return workOut(row);
  const words = row.troubles.map(({ section, text }) => {
    const name = section === null ? null : (piece.sections[section]?.section.name ?? `Section ${section + 1}`);
    return `${path}: ${name === null ? "" : `${name}: `}${text}`;
  });
  throw new Refusal(words.join("\n"));
}

/** The text of the piece with the plan's registrations filled in; everything else keeps its bytes. */
function filledIn(text: string, path: string, plan: PlannedPiece, organInFile: string | null): string {
  const changes = plan.sections.flatMap((section, at) => {
    if (section.music.pinned) return [];
    const [first, ...steps] = registrationsOf(section).map((each) => registrationValue(plan.instrument, each));
    // A pin that was made on another organ pins nothing here.
    return first ? [{ section: at, registration: first, steps, pinned: null }] : [];
  });
  const edits: PieceEdit[] = [{ edit: "set-registrations", changes }];
  if (organInFile !== plan.instrument.name)
    edits.unshift({ edit: "set-key", key: "organ", value: plan.instrument.name });
  const { text: after, troubles } = editPieceFile(text, edits, path);
  if (after === null) throw new Refusal(troubles.map(troubleLine).join("\n"));
  return after;
}

/** `registrant plan`. */
export function planCommand(words: readonly string[], terminal: Terminal): number {
  const given = readOptions(PLAN, words);
  const [organ = "", path = ""] = given.operands;
  const count = wholeNumber(given, "count", MOST) ?? USUAL_CHOICE;
  const stands = given.value("assistant");
  const assistant = stands === undefined ? null : oneOf("place for an assistant", stands, ["left", "right", "none"]);
  const out = given.value("out");
  if (given.has("replace") && out === undefined) throw new Refusal("--replace goes with --out FILE.yaml.");
  if (out !== undefined) mayWrite(out, given.has("replace"), terminal);
  const instrument = readOrgan(organ, terminal);
  const text = readText(path, terminal);
  const reading = readPieceFile(text, path, instrument);
  const piece = settle(path, reading.piece, reading.troubles, terminal);
  const plan = planned(instrument, assistant === null ? piece : { ...piece, assistant }, path, count);
  if (out !== undefined) {
    writeWhole(out, filledIn(text, path, plan, piece.organ), given.has("replace"), terminal);
    terminal.stderr.write(
      line(`${out}: ${counted(plan.sections.length, "section")} registered for ${instrument.name}.`),
    );
  }
  terminal.stdout.write(line(given.has("json") ? JSON.stringify(planJson(plan), null, 2) : planText(plan)));
  return isWrong(plan) ? WRONG : DONE;
}
