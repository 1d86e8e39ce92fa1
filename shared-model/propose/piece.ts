import type { BoxPosition, ConsoleState, Placing } from "../console/state.ts";
import type { PlacedPart } from "../judging/placed-part.ts";
import type { Problem } from "../judging/problem.ts";
import type { Candidate } from "./candidate.ts";
import { type Identity, identityOf, placeCode, placesInPrint } from "./found.ts";
import type { Option } from "./frames.ts";

/** A part with its placing and its set of stops: one piece of a state. */
export interface Piece {
  readonly option: Option;
  readonly index: number;
  readonly candidate: Candidate;
}

/** What of a piece tells one state from another. */
type Drawn = Omit<Piece, "candidate"> & { readonly candidate: Pick<Candidate, "stops" | "tremulants" | "boxes"> };

/** Where a part is played. */
export const placingOf = (placed: PlacedPart): Placing => ({
  part: placed.part.id,
  keyboard: placed.keyboard.name,
  octave: placed.octave,
});

/** The state that the pieces make together. */
export const stateOf = (pieces: readonly Piece[]): ConsoleState => ({
  drawn: new Set(pieces.flatMap((each) => each.candidate.stops.map((stop) => stop.id))),
  couplers: new Set(pieces.flatMap((each) => (each.option.placed?.couplers ?? []).map((coupler) => coupler.name))),
  tremulants: new Set(pieces.flatMap((each) => each.candidate.tremulants)),
  boxes: new Map(pieces.flatMap((each) => each.candidate.boxes)) as ReadonlyMap<string, BoxPosition>,
  unisonOff: new Set(),
});

/** As {@link identify}, from the parts of a state that is not put together yet. */
export function identifyPieces(problem: Problem, pieces: readonly Drawn[]): Identity {
  const places = placesInPrint(problem);
  const keyboards = problem.section.parts.map((_, index) => {
    const placed = pieces.find((each) => each.index === index)?.option.placed;
    return placed ? placeCode(problem, placed.keyboard, placed.octave) : 9999;
  });
  const drawn: number[] = [];
  const couplers = new Set<string>();
  const tremulants: string[] = [];
  const boxes: (readonly [string, BoxPosition])[] = [];
  for (const { option, candidate } of pieces) {
    for (const stop of candidate.stops) drawn.push(places.get(stop) as number);
    for (const coupler of option.placed?.couplers ?? []) couplers.add(coupler.name);
    tremulants.push(...candidate.tremulants);
    boxes.push(...candidate.boxes);
  }
  drawn.sort((a, b) => a - b);
  return identityOf(problem, keyboards, drawn, couplers, tremulants, boxes);
}
