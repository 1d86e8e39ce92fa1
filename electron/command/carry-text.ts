import { labelOf } from "../../shared-model/cards/label.ts";
import type { CarriedOther, CarriedPiece, CarriedSection } from "../../shared-model/carry/carry.ts";
import { neverPractised, nowherePractised, practisedOn } from "../../shared-model/carry/practice-words.ts";
import type { JudgedPart } from "../../shared-model/judging/judge.ts";
import { stopLabel } from "../../shared-model/judging/listening.ts";
import { LINK_WORDS } from "../../shared-model/music/piece.ts";
import type { Alternative } from "../../shared-model/plan/candidates.ts";
import { VERDICT_WORDS } from "../../shared-model/plan/feasibility.ts";
import type { PlannedSection } from "../../shared-model/plan/planned.ts";
import { counted, opposite, table, wrapped } from "./plain-text.ts";
import { decimal } from "./proposal-json.ts";
import { registrationLines } from "./registration-text.ts";

const INDENT = "    ";

const labelled = ({ candidates, chosen }: PlannedSection): string =>
  labelOf(candidates.problem, chosen.judgement.parts);

/** What a section says apart from how it stands to the one before. */
const ownWords = ({ before, after, stops, differences }: CarriedSection): string =>
  JSON.stringify([before.chosen.signature, after?.chosen.signature, stops, differences]);

/** The first section before that says the very same; `null` where there is none, or nothing is to be said. */
function toldBefore({ sections }: CarriedPiece, section: CarriedSection): string | null {
  if (section.stops.length + section.differences.length === 0) return null;
  const words = ownWords(section);
  const at = sections.findIndex((each) => each === section || (each.after !== null && ownWords(each) === words));
  const found = sections[at];
  return !found || found === section ? null : (found.before.music.section.name ?? `Section ${at + 1}`);
}

function differenceLines(carried: CarriedPiece, section: CarriedSection): readonly string[] {
  const earlier = toldBefore(carried, section);
  const stops = earlier === null ? section.stops : [];
  const differences = [...(earlier === null ? section.differences : []), ...section.between];
  const told = differences.map(({ part, text, points }) => [
    points === 0 ? "" : String(decimal(-points)),
    part === null ? text : `${part}: ${text}`,
  ]);
  return [
    ...(earlier === null ? [] : wrapped(`as ${earlier}`, `${INDENT}* `)),
    ...stops.flatMap(({ part, text }) => wrapped(`${part}: ${text}`, `${INDENT}* `)),
    ...(told.length > 0 ? table(told, INDENT) : []),
  ];
}

/** So many of what another registration costs are told, dearest first. */
const MOST_COSTS = 3;

/** Parts that are played otherwise than with what was chosen: `bass Pedal Subbass 16, Trompete 8`. */
function unlikeParts({ candidates, chosen }: PlannedSection, other: Alternative): string {
  const said = ({ placing, heard }: JudgedPart): string => {
    const stops = candidates.problem.stops.filter(({ id }) => heard.includes(id)).map(stopLabel);
    return `${placing.part} ${placing.keyboard} ${stops.join(", ")}`;
  };
  const now = new Set(chosen.judgement.parts.map(said));
  return other.judgement.parts
    .map(said)
    .filter((each) => !now.has(each))
    .join("; ");
}

/** The next best of a section, a line each: how far behind, what is otherwise, and what it costs. */
function otherLines(after: PlannedSection, others: readonly CarriedOther[]): readonly string[] {
  const rows = others.map(({ alternative, behind, differences, remarks }) => {
    const dear = differences.toSorted((a, b) => b.points - a.points).slice(0, MOST_COSTS);
    const more = differences.length - dear.length;
    const costs = [
      ...remarks,
      ...dear.map(({ part, text }) => (part === null ? text : `${part}: ${text}`)),
      ...(more > 0 ? [`and ${more} more`] : []),
    ];
    const unlike = unlikeParts(after, alternative);
    const what = unlike === "" ? labelOf(after.candidates.problem, alternative.judgement.parts) : unlike;
    return [`or ${decimal(-behind)}`, costs.length > 0 ? `${what} (${costs.join("; ")})` : what];
  });
  return rows.length > 0 ? table(rows, INDENT) : [];
}

/** What cannot be practised there: of the whole piece, then section by section. */
function unpractisedLines(carried: CarriedPiece): readonly string[] {
  if (carried.aim !== "practice") return [];
  const all = [...neverPractised(carried), ...nowherePractised(carried)];
  return all.length === 0
    ? wrapped("All of it can be practised here.")
    : ["Cannot be practised here:", ...all.flatMap((each) => wrapped(each, "- "))];
}

/** How the change into a section goes there, where it is not easy. */
function changeLines({ plan }: CarriedPiece, section: PlannedSection): readonly string[] {
  const place = plan?.sections.indexOf(section) ?? -1;
  return (plan?.changes ?? [])
    .filter((change) => change.section === place && change.verdict !== "easy")
    .flatMap((change) => [
      ...wrapped(
        `the change into ${change.step > 0 ? `step ${change.step + 1}` : "it"}: ${VERDICT_WORDS[change.verdict]}`,
        `${INDENT}! `,
      ),
      ...change.advice.flatMap((each) => wrapped(each, `${INDENT}  `)),
    ]);
}

function sectionLines(carried: CarriedPiece, at: number): readonly string[] {
  const section = carried.sections[at];
  if (!section) return [];
  const { before, after, asItWas, missing } = section;
  const title = `${String(at + 1).padStart(2)}  ${before.music.section.name ?? `Section ${at + 1}`}`;
  const was = String(decimal(before.chosen.score));
  if (!after) {
    return [
      ...opposite(title, `${was} -> none`),
      ...wrapped(`${labelled(before)} -> no means for it here`, INDENT),
      ...missing.flatMap((each) => wrapped(each, `${INDENT}! `)),
      "",
    ];
  }
  const nameOf = (place: number): string => carried.plan?.sections[place]?.music.section.name ?? `section ${place + 1}`;
  return [
    ...opposite(title, `${was} -> ${decimal(after.chosen.score)}`),
    ...wrapped(`${labelled(before)} -> ${labelled(after)}`, INDENT),
    ...registrationLines(after.candidates.problem, after.chosen.entry.state, after.chosen.judgement, INDENT),
    ...(after.chosen.steps.length > 0 ? wrapped(`then ${counted(after.chosen.steps.length, "step")}`, INDENT) : []),
    ...(asItWas ? wrapped("Set as it was.", INDENT) : []),
    ...differenceLines(carried, section),
    ...otherLines(after, section.others),
    ...after.links
      .filter(({ holds }) => !holds)
      .flatMap(({ link }) => wrapped(`NOT ${LINK_WORDS[link.kind]} ${nameOf(link.to)}`, `${INDENT}! `)),
    ...changeLines(carried, after),
    "",
  ];
}

/** A carried piece as plain text: for each section what it was, what it is, and what that costs. */
export function carryText(carried: CarriedPiece): string {
  const { from, to, piece, sections, aim } = carried;
  const on = practisedOn(carried);
  const same = sections.filter((section) => section.asItWas).length;
  const none = sections.filter((section) => section.after === null).length;
  const counts = [
    counted(sections.length, "section"),
    ...(same > 0 ? [`${same} set as ${same === 1 ? "it was" : "they were"}`] : []),
    ...(none > 0 ? [`${none} without means there`] : []),
  ];
  return [
    ...wrapped(
      aim === "practice"
        ? `${piece.name ?? "The piece"} for ${from.name}, practised on ${to.name}`
        : `${piece.name ?? "The piece"}, from ${from.name} to ${to.name}`,
    ),
    ...wrapped(`${counts.join(", ")}. Stops are matched by what they are, not by their names.`),
    ...(on === null ? [] : wrapped(`${on}.`)),
    ...unpractisedLines(carried),
    "",
    ...sections.flatMap((_, at) => sectionLines(carried, at)),
    ...wrapped(
      'Points before a line are what it counts against the registration here, our own setting; behind "or" how much more or less another is worth by itself, and in brackets what speaks against it. At the right the scores by the rules, there and here.',
    ),
    ...wrapped(
      "Ask the organ's keeper before you change its combination memory, and hear everything in the room first.",
    ),
  ].join("\n");
}
