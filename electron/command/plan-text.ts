import { labelOf } from "../../shared-model/cards/label.ts";
import { LINK_WORDS } from "../../shared-model/music/piece.ts";
import { VERDICT_WORDS, VERDICTS } from "../../shared-model/plan/feasibility.ts";
import { givenUpPoints, type PlannedChange, type PlannedPiece } from "../../shared-model/plan/planned.ts";
import { type SheetRow, settingSheet } from "../../shared-model/plan/setting-sheet.ts";
import {
  meansWords,
  movesWords,
  moveWords,
  shiftWords,
  stopsWords,
  timeWords,
  WHO,
  whenWords,
} from "../../shared-model/plan/words.ts";
import { counted, opposite, table, wrapped } from "./plain-text.ts";
import { decimal } from "./proposal-json.ts";
import { registrationLines } from "./registration-text.ts";

const INDENT = "    ";

const nameOf = (plan: PlannedPiece, at: number): string => plan.sections[at]?.music.section.name ?? `Section ${at + 1}`;

function barsWords(bars: string | null): string {
  if (bars === null) return "";
  return /^\d/.test(bars) ? `, bars ${bars}` : `, ${bars}`;
}

/** `1.6 of 2.0 s`; empty where nobody is pressed. */
function secondsWords({ handling, alone, verdict }: PlannedChange): string {
  const { need, available } = verdict === "needs-assistant" ? alone : handling;
  if (need === 0) return "";
  if (verdict === "needs-assistant") return `, alone ${need.toFixed(1)} of ${available.toFixed(1)} s`;
  if (need > available && verdict === "brisk")
    return `, ${need.toFixed(1)} s at this pace, and ${available.toFixed(1)} there are`;
  return Number.isFinite(available) ? `, ${need.toFixed(1)} of ${available.toFixed(1)} s` : `, ${need.toFixed(1)} s`;
}

/** Rows of who moves what, the means first. */
function doingRows(change: PlannedChange): readonly (readonly string[])[] {
  const { means, handling, assistant } = change;
  const piston = meansWords(means);
  const rows: (readonly string[])[] = [];
  if (piston !== null) {
    const presser = assistant === null ? (handling.tasks[0]?.who === "feet" ? "a toe" : "a thumb") : "assistant";
    const by = means.by === "general" ? presser : "a thumb";
    rows.push([by, `presses ${piston}`]);
  }
  const plain = means.by === "general" && !means.near;
  for (const task of plain ? [] : handling.tasks) {
    const when = whenWords(task);
    const doing = [...movesWords(task.moves), ...(task.turns ? ["turns the page"] : [])].join("; ");
    if (doing !== "") rows.push([WHO[task.who], when === null ? doing : `${doing} (${when})`]);
  }
  if (plain) {
    const boxes = change.moves.filter((move) => move.what === "box");
    if (boxes.length > 0) rows.push([WHO.feet, boxes.map(moveWords).join(", ")]);
    if (change.time.turn !== null)
      rows.push([change.time.turn === "player" ? "a hand" : "assistant", "turns the page"]);
  }
  const going = shiftWords(change.shifts);
  if (going.length > 0) rows.push(["then", going.join(", ")]);
  if (change.left.length > 0) rows.push(["stays", `${stopsWords(change.left)} (silent, and wanted again)`]);
  if (change.later.length > 0)
    rows.push(["later", `${movesWords(change.later).join("; ")} (silent now: when there is time)`]);
  return rows;
}

function changeLines(change: PlannedChange): readonly string[] {
  const nothing = change.means.by === "nothing" && change.shifts.length === 0;
  const head =
    nothing && change.time.turn === null
      ? "nothing to change"
      : `${VERDICT_WORDS[change.verdict]}${secondsWords(change)}`;
  const where = change.step > 0 ? `step ${change.step + 1}` : timeWords(change.time);
  return [
    ...wrapped(
      `${where}${change.time.assumed && change.step === 0 ? ", as is taken here" : ""}: ${head}`,
      `${INDENT}-> `,
    ),
    ...table(doingRows(change), `${INDENT}   `),
    ...change.reasons.flatMap(({ text }) => wrapped(text, `${INDENT}   ! `)),
    ...change.advice.flatMap((each) => wrapped(each, `${INDENT}   * `)),
  ];
}

function sectionLines(plan: PlannedPiece, at: number): readonly string[] {
  const section = plan.sections[at];
  if (!section) return [];
  const { music, chosen, candidates, links, givenUp } = section;
  const [into] = plan.changes.filter((change) => change.section === at && change.step === 0);
  const steps = plan.changes.filter((change) => change.section === at && change.step > 0);
  const title = `${String(at + 1).padStart(2)}  ${nameOf(plan, at)}${barsWords(music.section.bars)}`;
  return [
    ...opposite(`${title}${chosen.origin === "pinned" ? " (pinned)" : ""}`, String(decimal(chosen.score))),
    ...(into ? changeLines(into) : []),
    ...wrapped(labelOf(candidates.problem, chosen.judgement.parts), INDENT),
    ...registrationLines(candidates.problem, chosen.entry.state, chosen.judgement, INDENT),
    ...steps.flatMap(changeLines),
    ...links.flatMap(({ link, holds }) =>
      wrapped(`${holds ? "" : "NOT "}${LINK_WORDS[link.kind]} ${nameOf(plan, link.to)}`, INDENT),
    ),
    ...(givenUp
      ? wrapped(`${decimal(givenUp.points)} below the best of its list. ${givenUp.why.join(" ")}`, INDENT)
      : []),
    "",
  ];
}

/** `6 changes: 4 easy, 2 brisk`. */
function changesWords({ changes }: PlannedPiece): string {
  const counts = VERDICTS.map((verdict) => ({
    verdict,
    count: changes.filter((each) => each.verdict === verdict).length,
  }));
  const told = counts
    .filter(({ count }) => count > 0)
    .map(({ verdict, count }) =>
      verdict === "needs-assistant" && count > 1 ? `${count} need the assistant` : `${count} ${VERDICT_WORDS[verdict]}`,
    );
  return changes.length === 0 ? "no changes" : `${counted(changes.length, "change")}: ${told.join(", ")}`;
}

function sheetLines(plan: PlannedPiece, row: SheetRow): readonly string[] {
  const name = row.division === null ? `General ${row.number}` : `${row.division} ${row.number}`;
  const uses = row.sections.map((at) => nameOf(plan, at)).join(", ");
  const rows = [
    ...row.drawn.map(({ division, stops }) => [division, stops.join(", ")]),
    ...(row.couplers.length > 0 ? [["couple", row.couplers.join(", ")]] : []),
    ...(row.tremulants.length > 0 ? [["tremulant", row.tremulants.join(", ")]] : []),
    ...(row.unisonOff.length > 0 ? [["unison off", row.unisonOff.join(", ")]] : []),
  ];
  return [...wrapped(`Level ${row.level}, ${name}: for ${uses}`), ...table(rows, INDENT)];
}

/** A whole plan as plain text. */
export function planText(plan: PlannedPiece): string {
  const { row } = plan;
  const lost = givenUpPoints(plan);
  const sheet = settingSheet(plan);
  return [
    ...wrapped(`${row.piece.name ?? "The piece"}, on ${plan.instrument.name}`),
    ...wrapped(
      `${counted(plan.sections.length, "section")}, ${changesWords(plan)}. The row that is worth most of the best ${row.count} registrations of each section${lost > 0 ? `; ${decimal(lost)} ${lost === 100 ? "point" : "points"} given up for it` : ""}.`,
    ),
    ...plan.assumed.flatMap((each) => wrapped(each)),
    "",
    ...plan.sections.flatMap((_, at) => sectionLines(plan, at)),
    ...(sheet.rows.length > 0
      ? [
          "SETTING SHEET: draw what stands here, then press set and the piston.",
          ...(plan.memoryExact
            ? []
            : wrapped("The search for divisional pistons was broken off; others may save more.")),
          ...sheet.cautions.flatMap((each) => wrapped(each, "! ")),
          ...sheet.rows.flatMap((each) => sheetLines(plan, each)),
          "",
        ]
      : []),
    ...wrapped(
      "Times are reckoned from general motion times, not measured at an organ: try every change at the console.",
    ),
  ]
    .join("\n")
    .trimEnd();
}
