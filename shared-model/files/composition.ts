import { type Foot, footFromText, stretch } from "../pitch/foot.ts";
import type { Key } from "../pitch/key.ts";
import { isUsualPitch } from "../pitch/reading.ts";
import type { Kind } from "../stoplist/kind.ts";
import { isThird } from "./pitch-text.ts";

/** Kinds of stops that sound several ranks of different pitch on a key. */
export const COMPOUND_KINDS = ["mixture", "cymbal", "rauschpfeife", "sesquialtera", "tertian", "cornet"] as const;
/** One of {@link COMPOUND_KINDS}. */
export type CompoundKind = (typeof COMPOUND_KINDS)[number];

/** The compound kind among a stop's kinds, the first if there are several; `null` for a plain stop. */
export const compoundKind = (kinds: readonly Kind[]): CompoundKind | null =>
  (kinds.find((kind) => (COMPOUND_KINDS as readonly Kind[]).includes(kind)) as CompoundKind | undefined) ?? null;

/** From this key upward these pitches sound. */
export interface Row {
  readonly from: Key;
  readonly pitches: readonly Foot[];
}

const feet = (text: string): readonly Foot[] => text.split(" ").map((each) => footFromText(each) as Foot);

/** Octaves and fifths, lowest first: the row along which a mixture is set and breaks back. */
const CHORUS = feet("64 32 64/3 16 32/3 8 16/3 4 8/3 2 4/3 1 2/3 1/2 1/3 1/4 1/6 1/8");

/** `ranks` pitches of octaves and fifths from `lowest` up. */
function chorusFrom(lowest: Foot, ranks: number): readonly Foot[] {
  const above = CHORUS.filter((pitch) => pitch !== lowest && pitch.over * lowest.under < lowest.over * pitch.under);
  return [lowest, ...above].slice(0, ranks);
}

/** Lowest pitch on a manual by number of ranks, when neither the file nor the glossary tells it. Common practice. */
const MIXTURE_FROM = feet("1 1 4/3 4/3 2 2 8/3 8/3 4");
const CYMBAL_FROM = feet("1/2 1/2 1/2 2/3 1");

/** Solo compounds by number of ranks, from one up; the French and German usual form. Common practice. */
const SET: Readonly<Record<"sesquialtera" | "tertian" | "cornet", readonly (readonly Foot[])[]>> = {
  sesquialtera: ["8/5", "8/3 8/5", "8/3 2 8/5", "8/3 2 8/5 4/3", "8/3 2 8/5 4/3 1"].map(feet),
  tertian: ["8/5", "8/5 4/3", "8/5 4/3 1"].map(feet),
  cornet: [
    "8/5",
    "8/3 8/5",
    "8/3 2 8/5",
    "4 8/3 2 8/5",
    "8 4 8/3 2 8/5",
    "8 4 8/3 2 8/5 4/3",
    "8 4 8/3 2 8/5 4/3 1",
  ].map(feet),
};

/** Ranks of a compound whose number nothing tells. Common practice. */
const USUAL_RANKS: Readonly<Record<CompoundKind, number>> = {
  mixture: 4,
  cymbal: 3,
  rauschpfeife: 2,
  sesquialtera: 2,
  tertian: 2,
  cornet: 5,
};

const isPowerOfTwo = (count: number): boolean => Number.isInteger(Math.log2(count));

/** The row moved by whole octaves so that it begins at `lowest`; `null` when no number of octaves does that. */
function movedTo(row: readonly Foot[], lowest: Foot): readonly Foot[] | null {
  const first = row[0] as Foot;
  const ratio = { over: lowest.over * first.under, under: lowest.under * first.over };
  const octaves = ratio.over >= ratio.under ? ratio.over / ratio.under : ratio.under / ratio.over;
  if (!isPowerOfTwo(octaves)) return null;
  const moved = row.map((pitch) => stretch(pitch, ratio.over, ratio.under));
  return moved.every(isUsualPitch) ? moved : null;
}

const last = <T>(list: readonly T[], index: number): T => list[Math.min(index, list.length - 1)] as T;

function rowByKind(kind: CompoundKind, ranks: number, lowest: Foot | null, pedal: boolean): readonly Foot[] {
  const octave = pedal ? 2 : 1;
  if (kind === "mixture" || kind === "cymbal" || kind === "rauschpfeife") {
    const from =
      kind === "rauschpfeife" ? (CHORUS[8] as Foot) : last(kind === "mixture" ? MIXTURE_FROM : CYMBAL_FROM, ranks - 1);
    return chorusFrom(lowest ?? stretch(from, octave), ranks);
  }
  const row = last(SET[kind], ranks - 1);
  // A cornet's printed pitch is the unison it stands on, not its lowest rank: a Cornet IV 8 begins at 4.
  if (kind === "cornet") return lowest?.over === 16 && lowest.under === 1 ? row.map((pitch) => stretch(pitch, 2)) : row;
  return (lowest && movedTo(row, lowest)) ?? row.map((pitch) => stretch(pitch, octave));
}

/** A compound as far as a stoplist tells it. */
export interface PrintedCompound {
  readonly kind: CompoundKind;
  /** `null` when not printed. */
  readonly ranks: number | null;
  /** The printed pitch, that of the lowest rank; `null` when none is printed. */
  readonly lowest: Foot | null;
  readonly pedal: boolean;
  /** The glossary's composition for the name, on an 8' base (16' in the pedal). */
  readonly typical: readonly Foot[] | null;
}

/**
 * The pitches at its lowest key of a compound whose file gives no composition: the glossary's typical one where it has that
 * many ranks and can begin at the printed pitch, else the usual one of its kind (common practice).
 */
export function usualPitches(compound: PrintedCompound): readonly Foot[] {
  const { kind, lowest, pedal } = compound;
  const typical = compound.typical?.map((pitch) => (pedal ? stretch(pitch, 2) : pitch)) ?? null;
  const ranks = compound.ranks ?? typical?.length ?? USUAL_RANKS[kind];
  if (typical && typical.length === ranks) {
    const fitting = lowest === null || kind === "cornet" ? typical : movedTo(typical, lowest);
    if (fitting) return fitting;
  }
  return rowByKind(kind, ranks, lowest, pedal);
}

/** Where a rank of 8' that began at C2 would have its 1/8' pipe is C8: the smallest that mixtures are built with. */
const tooHigh = (pitch: Foot, key: Key): boolean => pitch.over * 8 < pitch.under * 2 ** ((key - 36) / 12);

/** One step down: along octaves and fifths, or a whole octave for rows with a third, which repeat. */
function stepBack(row: readonly Foot[]): readonly Foot[] {
  const down = row.map((pitch) => CHORUS[CHORUS.indexOf(pitch) - 1]);
  const chorus = !row.some(isThird) && down.every((pitch) => pitch !== undefined);
  return chorus ? (down as readonly Foot[]) : row.map((pitch) => stretch(pitch, 2));
}

/**
 * The breaks of a compound whose file gives none, from `from` to `to`: mixtures and cymbals step back at each C where their
 * highest pipe would be shorter than 1/8'; the others go through. Common practice; every builder breaks in his own way.
 */
export function usualBreaks(kind: CompoundKind, pitches: readonly Foot[], from: Key, to: Key): readonly Row[] {
  const rows: Row[] = [{ from, pitches }];
  if (kind !== "mixture" && kind !== "cymbal") return rows;
  let row = pitches;
  for (let key = 48; key <= to; key += 12) {
    const before = row;
    while (tooHigh(row[row.length - 1] as Foot, key) && (row[0] as Foot).over < 16 * (row[0] as Foot).under)
      row = stepBack(row);
    if (row === before) continue;
    if (key <= from) rows[0] = { from, pitches: row };
    else rows.push({ from: key, pitches: row });
  }
  return rows;
}
