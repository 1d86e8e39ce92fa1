import { comparePlans } from "../../shared-model/cards/plan-comparison.ts";
import type { SectionChange } from "../../shared-model/files/piece-edit.ts";
import { readPieceFile } from "../../shared-model/files/piece-file.ts";
import type { Piece } from "../../shared-model/music/piece.ts";
import { chooseRow, type PlanOptions, USUAL_CHOICE } from "../../shared-model/plan/plan.ts";
import { type PlannedPiece, workOut } from "../../shared-model/plan/planned.ts";
import { asRegistered, VARIANT_WORDS, VARIANTS, variantOf } from "../../shared-model/plan/variants.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { comparisonJson, comparisonText } from "./comparison-text.ts";
import { readText } from "./input-file.ts";
import { oneOf, readOptions, type Usage, wholeNumber } from "./options.ts";
import { readOrgan, settle } from "./organ.ts";
import { mayWrite, writeWhole } from "./output-file.ts";
import { counted } from "./plain-text.ts";
import { planJson } from "./plan-json.ts";
import { planText } from "./plan-text.ts";
import { registeredText, registeredValues } from "./registered-text.ts";
import { DONE, Impossible, line, Refusal, type Terminal, WRONG } from "./terminal.ts";

export const PLAN: Usage = {
  command: "plan",
  line: "registrant plan ORGAN.yaml PIECE.yaml [--count N] [--assistant left|right|none] [--compare WITH] [--out F.yaml] [--replace] [--json]",
  does: "Plans registrations through a whole piece, with the changes that hands have time for.",
  options: {
    count: { value: "a number" },
    assistant: { value: "left, right or none" },
    compare: { value: "a piece file or a way to plan" },
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
 * @throws Refusal where the piece cannot be planned as it is written, {@link Impossible} where the organ has no means for it.
 */
export function planned(instrument: Instrument, piece: Piece, path: string, options: PlanOptions): PlannedPiece {
  const row = chooseRow(instrument, piece, options);
  if (!("troubles" in row)) return workOut(row);
  const words = row.troubles.map(({ section, text }) => {
    const name = section === null ? null : (piece.sections[section]?.section.name ?? `Section ${section + 1}`);
    return `${path}: ${name === null ? "" : `${name}: `}${text}`;
  });
  throw row.troubles.every(({ impossible }) => impossible)
    ? new Impossible(words.join("\n"))
    : new Refusal(words.join("\n"));
}

/** What the plan puts into the piece's file. */
function planChanges({ sections, instrument }: PlannedPiece): readonly SectionChange[] {
  return sections.flatMap((planned, section) =>
    // A pin that was made on another organ pins nothing here.
    planned.music.pinned ? [] : [{ section, ...registeredValues(instrument, planned), pinned: null }],
  );
}

/** What a plan is compared with: the same piece planned in another way, or another file of it as it is registered. */
function otherPlan(
  said: string,
  { instrument, piece, path, count }: { instrument: Instrument; piece: Piece; path: string; count: number },
  terminal: Terminal,
): { readonly plan: PlannedPiece; readonly words: string } {
  if (/\.ya?ml$/i.test(said)) {
    const reading = readPieceFile(readText(said, terminal), said, instrument);
    const other = settle(said, reading.piece, reading.troubles, terminal);
    return { plan: planned(instrument, asRegistered(other), said, { count }), words: `as ${said} has it` };
  }
  const variant = oneOf("way to plan", said, VARIANTS);
  const basis = variantOf(instrument, piece, variant);
  const { weights } = basis;
  return { plan: planned(basis.instrument, basis.piece, path, { count, weights }), words: VARIANT_WORDS[variant] };
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
  const asked = assistant === null ? piece : { ...piece, assistant };
  const plan = planned(instrument, asked, path, { count });
  if (out !== undefined) {
    writeWhole(
      out,
      registeredText(text, path, instrument, piece.organ, planChanges(plan)),
      given.has("replace"),
      terminal,
    );
    terminal.stderr.write(
      line(`${out}: ${counted(plan.sections.length, "section")} registered for ${instrument.name}.`),
    );
  }
  const compare = given.value("compare");
  if (compare !== undefined) {
    const other = otherPlan(compare, { instrument, piece: asked, path, count }, terminal);
    const comparison = comparePlans(plan, other.plan);
    const text = (): string => comparisonText(plan, comparison, other.words);
    terminal.stdout.write(line(given.has("json") ? JSON.stringify(comparisonJson(comparison), null, 2) : text()));
    return DONE;
  }
  terminal.stdout.write(line(given.has("json") ? JSON.stringify(planJson(plan), null, 2) : planText(plan)));
  return isWrong(plan) ? WRONG : DONE;
}
