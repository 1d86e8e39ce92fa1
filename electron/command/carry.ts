import { carry } from "../../shared-model/carry/carry.ts";
import { carriedPieceText } from "../../shared-model/files/carried-piece.ts";
import { readPieceFile } from "../../shared-model/files/piece-file.ts";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import type { Piece } from "../../shared-model/music/piece.ts";
import { USUAL_CHOICE } from "../../shared-model/plan/plan.ts";
import type { PlannedPiece } from "../../shared-model/plan/planned.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { carryJson } from "./carry-json.ts";
import { carryText } from "./carry-text.ts";
import { readText } from "./input-file.ts";
import { readOptions, type Usage, wholeNumber } from "./options.ts";
import { readOrgan, settle } from "./organ.ts";
import { mayWrite, writeWhole } from "./output-file.ts";
import { counted } from "./plain-text.ts";
import { isWrong, planned } from "./plan.ts";
import { DONE, line, Refusal, type Terminal, WRONG } from "./terminal.ts";

export const CARRY: Usage = {
  command: "carry",
  line: "registrant carry ORGAN.yaml PIECE.yaml --to OTHER.yaml [--practice] [--count N] [--out F.yaml] [--replace] [--json]",
  does: "Carries the registrations of a piece to another organ, by what they mean, and says what changes.",
  options: {
    to: { value: "the file of the other organ" },
    practice: "flag",
    count: { value: "a number" },
    out: { value: "a file" },
    replace: "flag",
    json: "flag",
  },
  operands: ["ORGAN.yaml", "PIECE.yaml"],
};

/** As many of each list as a plan looks at. */
const MOST = 50;

/** The piece as it is registered on its organ; what has no registration is planned there first, and that is told. */
function before(instrument: Instrument, piece: Piece, path: string, count: number, terminal: Terminal): PlannedPiece {
  const open = piece.sections.filter((section) => section.registration === null).length;
  if (open > 0) {
    const what =
      open === piece.sections.length
        ? "no section has a registration yet"
        : `${counted(open, "section")} without a registration`;
    const keep = `"registrant plan ... --out F.yaml" keeps what is planned`;
    terminal.stderr.write(line(`${path}: ${what}: planned for ${instrument.name} first; ${keep}.`));
  }
  const held = piece.sections.map((section) => ({ ...section, pinned: section.registration !== null }));
  return planned(instrument, { ...piece, sections: held }, path, { count });
}

const hasPistons = ({ pistons }: Piece): boolean =>
  pistons.generals !== null || pistons.divisionals !== null || pistons.levels !== null;

/** `registrant carry`. */
export function carryCommand(words: readonly string[], terminal: Terminal): number {
  const given = readOptions(CARRY, words);
  const [organ = "", path = ""] = given.operands;
  const other = given.value("to");
  if (other === undefined)
    throw new Refusal("carry needs --to with the file of the organ that the piece is carried to.");
  const count = wholeNumber(given, "count", MOST) ?? USUAL_CHOICE;
  const out = given.value("out");
  if (given.has("replace") && out === undefined) throw new Refusal("--replace goes with --out FILE.yaml.");
  if (out !== undefined) mayWrite(out, given.has("replace"), terminal);
  const from = readOrgan(organ, terminal);
  const to = readOrgan(other, terminal);
  const text = readText(path, terminal);
  const reading = readPieceFile(text, path, from);
  if (reading.troubles.some((trouble) => trouble.code === "other-organ")) {
    const said = `${path}: It is registered for ${reading.piece?.organ ?? "another organ"}, not for ${from.name}.`;
    throw new Refusal(`${said} Carry it from the organ that it was registered on.`);
  }
  const piece = settle(path, reading.piece, reading.troubles, terminal);
  const carried = carry(
    before(from, piece, path, count, terminal),
    piece.sections.map((section) => section.pinned),
    to,
    count,
    given.has("practice") ? "practice" : "playing",
  );
  if (hasPistons(piece) && from.name !== to.name)
    terminal.stderr.write(
      line(
        `${path}: its pistons: are those of ${from.name}; planned with all that ${to.name} has. Ask which are yours there before you set any.`,
      ),
    );
  const done = carried.sections.filter((section) => section.after !== null).length;
  if (out !== undefined) {
    const edited = carriedPieceText(text, path, carried, piece);
    if (edited.text === null) throw new Refusal(edited.troubles.map(troubleLine).join("\n"));
    writeWhole(out, edited.text, given.has("replace"), terminal);
    terminal.stderr.write(line(`${out}: ${counted(done, "section")} registered for ${to.name}.`));
    const loosed = carried.sections.filter(({ asItWas }, at) => piece.sections[at]?.pinned && !asItWas).length;
    if (loosed > 0) {
      const pins = loosed === 1 ? "One pin is taken out: what it held" : `${loosed} pins are taken out: what they held`;
      terminal.stderr.write(line(`${out}: ${pins} cannot be set there as it was. Hear it, then pin it anew.`));
    }
  }
  terminal.stdout.write(line(given.has("json") ? JSON.stringify(carryJson(carried), null, 2) : carryText(carried)));
  return done < carried.sections.length || (carried.plan !== null && isWrong(carried.plan)) ? WRONG : DONE;
}
