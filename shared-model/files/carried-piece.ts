import type { CarriedPiece } from "../carry/carry.ts";
import type { Piece, Registration } from "../music/piece.ts";
import { registrationsOf } from "../plan/written.ts";
import type { Instrument } from "../stoplist/instrument.ts";
import { type EditedPiece, editPieceFile, type PieceEdit, type SectionChange } from "./piece-edit.ts";
import { registrationValue } from "./registration-value.ts";

/** What of a carried piece goes into its file. */
export interface CarriedWish {
  /** By section, whether its new registration is taken; the others are left without one. All, where this is left out. */
  readonly taken?: readonly boolean[];
  /** What the piece is called from now on; as before, where this is left out. */
  readonly name?: string;
}

/**
 * The text of a piece's file with the registrations that it has on the other organ; everything else keeps its bytes. What is
 * set as it was is not touched, not even in its order.
 *
 * @param piece what the text says on the organ that it comes from.
 */
export function carriedPieceText(
  text: string,
  fileName: string,
  carried: CarriedPiece,
  piece: Piece,
  { taken, name }: CarriedWish = {},
): EditedPiece {
  const values = (organ: Instrument, all: readonly Registration[]) => all.map((each) => registrationValue(organ, each));
  const changes = carried.sections.flatMap(({ before, after, asItWas }, section): readonly SectionChange[] => {
    const had = piece.sections[section];
    if (!after || taken?.[section] === false) return [{ section, registration: null, steps: null, pinned: null }];
    const now = values(carried.to, registrationsOf(after));
    const was = had?.registration ? values(carried.from, registrationsOf(before)) : [];
    if (asItWas && JSON.stringify(was) === JSON.stringify(now)) return [];
    const [first, ...steps] = now;
    // A pin that was made on another organ pins nothing here, unless it could be set as it was.
    const pinned = asItWas && had?.pinned ? true : null;
    return [{ section, registration: first ?? null, steps, pinned }];
  });
  const { organ, name: oldName, pistons } = piece;
  const named = pistons.generals !== null || pistons.divisionals !== null || pistons.levels !== null;
  const edits: readonly PieceEdit[] = [
    ...(organ === carried.to.name ? [] : [{ edit: "set-key", key: "organ", value: carried.to.name } as const]),
    ...(name === undefined || name === oldName ? [] : [{ edit: "set-key", key: "name", value: name } as const]),
    // Pistons that were given to the player on one organ are none of another's.
    ...(named && carried.from.name !== carried.to.name
      ? [{ edit: "set-key", key: "pistons", value: null } as const]
      : []),
    { edit: "set-registrations", changes },
  ];
  return editPieceFile(text, edits, fileName);
}
