import { addFacts, type PartSound, silence, type Voice } from "../acoustics/part-sound.ts";
import type { Match } from "../judging/recipe.ts";
import type { Points } from "../rules/rule.ts";
import { addMatch, copyProgress, noProgress, type Progress, type View } from "./view.ts";

/** What a part makes of the stops drawn so far. */
export interface Heard extends Progress {
  readonly sound: PartSound;
}

/** How far a set has come: for the part itself, and for each companion. */
export interface Node extends Heard {
  cost: Points;
  plain: number;
  /** What of the colour is there. */
  makes: number;
  /** Couplers by which something comes, as bits. */
  couplers: number;
  /** Nothing drawn that the recipe does not know. */
  loyal: boolean;
  /** Stops that can only serve as stand-ins, the items that they could serve for, and whether two are alike in that. */
  strays: number;
  strayItems: number;
  strayBits: number;
  strayTwice: boolean;
  /** What each companion has heard: of `own`, or still of the set before when it does not hear the last stop. */
  readonly companions: Heard[];
  readonly own: readonly Heard[];
  /** The most that the companions can earn together. */
  companionsAtMost: Points;
}

const nothingHeard = (): Heard => ({ ...noProgress(), sound: silence() });

/** Writes silence into what was heard. */
export function hearNothing(heard: Heard): void {
  copyProgress(NOTHING, heard);
  Object.assign(heard.sound, SILENCE);
}
const SILENCE = silence();
const NOTHING = noProgress();

/** The beginning of every set. @param companions how many hear it beside the part itself. */
export function freshNode(companions: number): Node {
  const own = Array.from({ length: companions }, nothingHeard);
  return {
    ...nothingHeard(),
    cost: 0,
    plain: 0,
    makes: 0,
    couplers: 0,
    loyal: true,
    strays: 0,
    strayItems: 0,
    strayBits: 0,
    strayTwice: false,
    companions: [...own],
    own,
    companionsAtMost: 0,
  };
}

/** Writes into `to` what `from` becomes when a stop joins it. */
export function hear(from: Heard, match: Match, voice: Voice, to: Heard): void {
  addMatch(from, match, to);
  addFacts(from.sound, voice, to.sound);
}

/** The most that a part can come to with what it hears and the entries from a place on; `null` when all is forbidden. */
export function partAtMost(view: View, heard: Heard, all: PartSound, from: number, loyal: boolean): Points | null {
  const { fix } = view.weighed;
  if (fix === null) return null;
  const rules = view.rulesAtMost(heard.sound, all, loyal && view.canConform(heard, from));
  return rules === null ? null : fix + rules + view.recipeAtMost(heard, from);
}
