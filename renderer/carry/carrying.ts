import { labelOf } from "../../shared-model/cards/label.ts";
import {
  type CarriedOther,
  type CarriedPiece,
  type CarriedSection,
  carry,
  withOther,
} from "../../shared-model/carry/carry.ts";
import type { Aim } from "../../shared-model/carry/meaning.ts";
import { neverPractised, notPractised, practisedOn } from "../../shared-model/carry/practice-words.ts";
import { carriedPieceText } from "../../shared-model/files/carried-piece.ts";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { readPieceFile } from "../../shared-model/files/piece-file.ts";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import { LINK_WORDS, type Piece } from "../../shared-model/music/piece.ts";
import type { Part } from "../../shared-model/music/texture.ts";
import { VERDICT_WORDS } from "../../shared-model/plan/feasibility.ts";
import { chooseRow, USUAL_CHOICE } from "../../shared-model/plan/plan.ts";
import { type PlannedSection, workOut } from "../../shared-model/plan/planned.ts";
import { type ProposedPart, plainParts } from "../registrations/proposed.ts";

/** What is asked of the worker: texts of the files of the piece, of the organ it is registered on, and of the other organ. */
export interface CarryAsk {
  readonly piece: string;
  readonly from: string;
  readonly to: string;
  readonly aim: Aim;
  /** By section, another registration than the one that is worth most, by its signature; where nothing stands, that one. */
  readonly others: Readonly<Record<number, string>>;
}

/** A section's registration on one of the two organs. */
export interface CarriedSide {
  readonly label: string;
  readonly parts: readonly ProposedPart[];
  /** How many steps follow it, where the section grows. */
  readonly steps: number;
  /** Whole hundredths. */
  readonly score: number;
}

/** How much of a section comes over. */
export const FATES = ["as-it-was", "in-meaning", "otherwise", "lost"] as const;
export type Fate = (typeof FATES)[number];

/** Another registration that a section could have there. */
export interface OtherLine {
  /** Stands for it when it is chosen. */
  readonly signature: string;
  readonly label: string;
  readonly parts: readonly ProposedPart[];
  /** Whole hundredths by which it is worth less. */
  readonly behind: number;
  /** What it costs, dearest first, a few words each. */
  readonly costs: readonly string[];
}

/** What becomes of one section, in plain values. */
export interface CarriedLine {
  readonly name: string;
  readonly bars: string | null;
  readonly fate: Fate;
  readonly music: readonly Part[];
  readonly before: CarriedSide;
  /** `null` where the other organ has no means for it. */
  readonly after: CarriedSide | null;
  readonly missing: readonly string[];
  /** What stops became, part by part. */
  readonly stops: readonly { readonly part: string; readonly text: string }[];
  /** What is meant otherwise, dearest first; points in whole hundredths against it. */
  readonly differences: readonly { readonly part: string | null; readonly text: string; readonly points: number }[];
  /** Links that do not hold there, and a change into it that is not easy, a sentence each. */
  readonly remarks: readonly string[];
  /** What of it cannot be practised there; empty where it is carried to be played. */
  readonly unpractised: readonly string[];
  /** The next best. */
  readonly others: readonly OtherLine[];
}

/** What comes of it. */
export interface CarryAnswer {
  /** `null` when it cannot be carried, and the troubles say why. */
  readonly lines: readonly CarriedLine[] | null;
  readonly troubles: readonly string[];
  /** Sections that had no registration and were planned on the first organ before they were carried. */
  readonly plannedFirst: number;
  /** Of a practice version: on which keyboard each one of home is practised, and what of the whole cannot be. */
  readonly practice: { readonly on: string | null; readonly never: readonly string[] } | null;
}

/** What is asked of the worker to have the file written. */
export interface CarryFileAsk extends CarryAsk {
  /** By section, whether its new registration is taken. */
  readonly taken: readonly boolean[];
  readonly name: string;
}

/** The text of the piece's file for the other organ; `null` when there is none, and the troubles say why. */
export interface CarryFileAnswer {
  readonly text: string | null;
  readonly troubles: readonly string[];
}

type Made = { readonly carried: CarriedPiece; readonly piece: Piece; readonly plannedFirst: number };

let last: { readonly key: string; readonly made: Made | readonly string[] } | null = null;

/** The piece carried, or why it cannot be, in sentences. The same question twice is reckoned once. */
function carriedFor({ piece: text, from, to, aim, others }: CarryAsk): Made | readonly string[] {
  const key = JSON.stringify([text, from, to, aim]);
  if (last?.key !== key) last = { key, made: carryNow(text, from, to, aim) };
  const { made } = last;
  if (!("carried" in made)) return made;
  const carried = Object.entries(others).reduce((sum, [at, signature]) => {
    const here = sum.made.kept.indexOf(Number(at));
    const other = sum.plan?.row.candidates[here]?.list.find((each) => each.signature === signature);
    return other ? withOther(sum, Number(at), other) : sum;
  }, made.carried);
  return { ...made, carried };
}

function carryNow(text: string, from: string, to: string, aim: Aim): Made | readonly string[] {
  const [old, other] = [
    readInstrumentFile(from, "the organ").instrument,
    readInstrumentFile(to, "the organ").instrument,
  ];
  if (!old || !other) return ["The file of one of the two organs has errors; mend them first."];
  const { piece, troubles } = readPieceFile(text, "the piece", old);
  if (!piece) return troubles.map(troubleLine);
  if (troubles.some((each) => each.code === "other-organ"))
    return [`This piece is registered for ${piece.organ}, not for ${old.name}. Carry it from there.`];
  const held = piece.sections.map((section) => ({ ...section, pinned: section.registration !== null }));
  const row = chooseRow(old, { ...piece, sections: held });
  if ("troubles" in row) return row.troubles.map((each) => each.text);
  const pinned = piece.sections.map((section) => section.pinned);
  return {
    carried: carry(workOut(row), pinned, other, USUAL_CHOICE, aim),
    piece,
    plannedFirst: piece.sections.filter((section) => section.registration === null).length,
  };
}

const sideOf = ({ candidates, chosen }: PlannedSection): CarriedSide => ({
  label: labelOf(candidates.problem, chosen.judgement.parts),
  parts: plainParts(chosen.judgement),
  steps: chosen.steps.length,
  score: chosen.score,
});

function fateOf({ after, asItWas, differences, between }: CarriedSection): Fate {
  if (!after) return "lost";
  if (asItWas) return "as-it-was";
  return differences.length + between.length === 0 ? "in-meaning" : "otherwise";
}

/** Links that cannot be kept there, and how the change into the section goes, where it is not easy. */
function remarksOn({ plan, sections }: CarriedPiece, { after }: CarriedSection): readonly string[] {
  if (!after || !plan) return [];
  const place = plan.sections.indexOf(after);
  const nameOf = (at: number): string => plan.sections[at]?.music.section.name ?? `section ${at + 1}`;
  const unkept = after.links.flatMap(({ link, holds }) =>
    holds ? [] : [`It is not ${LINK_WORDS[link.kind]} ${nameOf(link.to)}: nothing here can be.`],
  );
  const changes = plan.changes
    .filter((change) => change.section === place && change.verdict !== "easy" && sections.length > 1)
    .map(
      (change) =>
        `The change into ${change.step > 0 ? `step ${change.step + 1}` : "it"}: ${VERDICT_WORDS[change.verdict]}. ${change.advice.join(" ")}`,
    );
  return [...unkept, ...changes.map((each) => each.trim())];
}

const saidOf = ({ part, text }: { readonly part: string | null; readonly text: string }): string =>
  part === null ? text : `${part}: ${text}`;

const otherOf = (after: PlannedSection, other: CarriedOther): OtherLine => ({
  signature: other.alternative.signature,
  label: labelOf(after.candidates.problem, other.alternative.judgement.parts),
  parts: plainParts(other.alternative.judgement),
  behind: other.behind,
  costs: [...other.remarks, ...other.differences.toSorted((a, b) => b.points - a.points).map(saidOf)],
});

function lineOf(carried: CarriedPiece, section: CarriedSection, at: number): CarriedLine {
  const { before, after, missing, stops, differences, between } = section;
  const { section: music } = before.music;
  return {
    name: music.name ?? `Section ${at + 1}`,
    bars: music.bars,
    fate: fateOf(section),
    music: music.parts,
    before: sideOf(before),
    after: after && sideOf(after),
    missing,
    stops,
    differences: [...differences, ...between].toSorted((a, b) => b.points - a.points),
    remarks: remarksOn(carried, section),
    unpractised: carried.aim === "practice" ? notPractised(section) : [],
    others: after ? section.others.map((each) => otherOf(after, each)) : [],
  };
}

/** Carries a piece to another organ and says section by section what becomes of it. Takes its time: for the worker. */
export function carryFor(ask: CarryAsk): CarryAnswer {
  const made = carriedFor(ask);
  if (!("carried" in made)) return { lines: null, troubles: made, plannedFirst: 0, practice: null };
  const { carried, plannedFirst } = made;
  const practice = ask.aim === "practice" ? { on: practisedOn(carried), never: neverPractised(carried) } : null;
  return { lines: carried.sections.map((each, at) => lineOf(carried, each, at)), troubles: [], plannedFirst, practice };
}

/** The file of the carried piece; everything that carrying does not concern keeps its bytes. */
export function carriedFileFor({ taken, name, ...ask }: CarryFileAsk): CarryFileAnswer {
  const made = carriedFor(ask);
  if (!("carried" in made)) return { text: null, troubles: made };
  const { text, troubles } = carriedPieceText(ask.piece, "the piece", made.carried, made.piece, { taken, name });
  return { text, troubles: troubles.map(troubleLine) };
}
