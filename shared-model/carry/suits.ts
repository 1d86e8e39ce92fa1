import { beatsOf, type Piece, type PieceSection } from "../music/piece.ts";
import type { Instrument } from "../stoplist/instrument.ts";
import { type Served, type SurveyOptions, sectionServed } from "./survey.ts";

/** How an organ serves one section of a piece. */
export interface SuitedSection extends Served {
  readonly name: string;
  /** Its part of the piece: all of them together are 1. */
  readonly part: number;
}

/** How well a piece suits an organ. */
export interface SuitedPiece {
  readonly piece: Piece;
  readonly sections: readonly SuitedSection[];
  /** From 0, nothing of it can be played here as it is meant, to 1, all of it is served well. */
  readonly share: number;
  /** A sentence or two. */
  readonly text: string;
}

const WORTH = { well: 1, compromise: 0.5, "not-possible": 0 } as const;
/** From these shares on; our own setting. */
const GOOD = 0.9;
const FAIR = 0.6;

/** The part that each section takes: by beats where all say how long they are, else all alike. */
function partsOf(sections: readonly PieceSection[]): readonly number[] {
  const beats = sections.map(beatsOf);
  const known = beats.every((each) => each !== null && each > 0);
  const lengths = beats.map((each) => (known ? (each as number) : 1));
  const all = lengths.reduce((sum, each) => sum + each, 0);
  return lengths.map((each) => each / all);
}

function verdictOf(sections: readonly SuitedSection[], share: number): string {
  const without = sections.filter(({ level }) => level === "not-possible");
  const bent = sections.filter(({ level }) => level === "compromise");
  const head =
    without.length === sections.length
      ? "Not for this organ"
      : without.length === 0 && share >= GOOD
        ? "Suits it well"
        : share >= FAIR
          ? without.length > 0
            ? "Most of it can be played"
            : "Can be played, with compromises"
          : "Only in part";
  const told = (some: readonly SuitedSection[]): string =>
    some
      .slice(0, 2)
      .map(({ name, why }) => `${name}${why[0] === undefined ? "" : ` (${why[0].replace(/\.$/, "")})`}`)
      .join("; ")
      .concat(some.length > 2 ? `; and ${some.length - 2} more` : "");
  return [
    `${head}.`,
    ...(without.length > 0 ? [`Out of reach: ${told(without)}.`] : []),
    ...(bent.length > 0 ? [`A compromise: ${told(bent)}.`] : []),
  ].join(" ");
}

/** How well a piece suits an organ, whatever organ it was registered on: by what each of its sections asks for. */
export function suitOf(instrument: Instrument, piece: Piece, labelOf: SurveyOptions["labelOf"]): SuitedPiece {
  const parts = partsOf(piece.sections);
  const known = new Map<string, Served>();
  const sections = piece.sections.map(({ section }, at): SuitedSection => {
    // Verses of one kind are looked at once.
    const key = JSON.stringify({ ...section, name: null, bars: null });
    const served = known.get(key) ?? sectionServed(instrument, section, labelOf);
    known.set(key, served);
    return { ...served, name: section.name ?? `Section ${at + 1}`, part: parts[at] as number };
  });
  const share = sections.reduce((sum, { level, part }) => sum + WORTH[level] * part, 0);
  return { piece, sections, share, text: verdictOf(sections, share) };
}

/** Pieces by how well they suit an organ, best first; equals as they came. Adding a stop lowers none. */
export const piecesFor = (
  instrument: Instrument,
  pieces: readonly Piece[],
  labelOf: SurveyOptions["labelOf"],
): readonly SuitedPiece[] =>
  pieces.map((piece) => suitOf(instrument, piece, labelOf)).toSorted((a, b) => b.share - a.share);
