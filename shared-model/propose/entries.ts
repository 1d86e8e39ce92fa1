import type { Colour } from "../acoustics/colour.ts";
import { silence, type Voice } from "../acoustics/part-sound.ts";
import type { PlacedPart } from "../judging/placed-part.ts";
import type { Problem, WeighedPart } from "../judging/problem.ts";
import type { Match, Recipe } from "../judging/recipe.ts";
import { type Voices, voicesOf } from "../judging/voices.ts";
import type { Points } from "../rules/rule.ts";
import type { Division, Stop } from "../stoplist/instrument.ts";
import { madeIn } from "./made.ts";
import { isProposable, likeness } from "./state-space.ts";

/** One thing that a part could draw where it is placed: a stop, or a tremulant. */
export interface Entry {
  readonly stop: Stop | null;
  readonly tremulant: string | null;
  /** The division it stands in; `all` for a tremulant of the whole organ. */
  readonly division: string;
  /** Bit of that division among those that the part hears. */
  readonly divisionBit: number;
  /** Comes by a coupler only. */
  readonly foreign: boolean;
  readonly match: Match;
  /** Lowest that its presence can cost, whatever else is drawn. */
  readonly rank: number;
  /** Items for which it can be part of a stand-in. */
  readonly standInItems: number;
  readonly voices: Voices;
  /** Stops with the same text are alike in everything the rules read. */
  readonly likeness: string;
  /** Those with the same number are alike to the recipe: they cost a set as much, and bring it the same. */
  readonly kind: number;
}

/** The number of what has been met before, or the next one. */
export const numberFor = <Key>(numbers: Map<Key, number>, key: Key): number => madeIn(numbers, key, () => numbers.size);

const RANK: Readonly<Record<Match["status"], number>> = { asked: 0, may: 1, stray: 4, plain: 4, against: 5 };
/** Rank of what the recipe does not know, but can use in the place of something that is lacking. */
export const STANDS_IN = 2;
const NO_MATCH: Match = { items: 0, primary: -1, status: "may", gain: 0, cost: 0, standIn: 0, coupled: false };
const TREMBLE: Voice = { ...silence(), tremulant: 1 };

/** A division's bit among those that a part hears; an organ with more than 31 divisions in reach of one keyboard shares bits. */
export const bitOf = (inPrint: readonly Division[], name: string): number =>
  1 <<
  Math.max(
    0,
    inPrint.findIndex((division) => division.name === name),
  );

/** Divisions that a placed part hears, in printed order, each once. */
export const divisionsInPrint = (problem: Problem, placed: PlacedPart): readonly Division[] =>
  problem.instrument.divisions.filter((division) => placed.reach.some((each) => each.division === division));

const entriesOfRecipe = new WeakMap<Recipe, readonly Entry[]>();

/** What a part could draw where it is placed, what the recipe asks for first. Reckoned once for each recipe made ready. */
export function entriesOf(problem: Problem, weighed: WeighedPart): readonly Entry[] {
  const { recipe, placed } = weighed;
  const known = entriesOfRecipe.get(recipe);
  if (known) return known;
  const inPrint = divisionsInPrint(problem, placed);
  const entries: Unnumbered[] = [];
  for (const stop of inPrint.flatMap((division) => division.stops)) {
    if (!isProposable(stop)) continue;
    const voices = voicesOf(problem, placed, stop);
    if (!voices) continue;
    const match = recipe.matchOf(stop);
    let standInItems = 0;
    if (match.standIn !== 0) {
      recipe.items.forEach((item, index) => {
        if (item.instead.some((use) => (use.bits & match.standIn) !== 0)) standInItems |= 1 << index;
      });
    }
    entries.push({
      stop,
      tremulant: null,
      division: stop.division,
      divisionBit: bitOf(inPrint, stop.division),
      foreign: stop.division !== placed.keyboard.name,
      match,
      rank: match.status === "stray" && standInItems !== 0 ? STANDS_IN : RANK[match.status],
      standInItems,
      voices,
      likeness: likeness(stop, problem.shared),
      kind: 0,
    });
  }
  for (const tremulant of problem.instrument.tremulants) {
    if (tremulant !== "all" && !inPrint.some((division) => division.name === tremulant)) continue;
    entries.push({
      stop: null,
      tremulant,
      division: tremulant,
      divisionBit: bitOf(inPrint, tremulant),
      foreign: tremulant !== placed.keyboard.name,
      match: NO_MATCH,
      rank: 3,
      standInItems: 0,
      voices: [TREMBLE, TREMBLE, TREMBLE],
      likeness: `tremulant ${tremulant}`,
      kind: 0,
    });
  }
  entries.sort((a, b) => a.rank - b.rank);
  const kinds = new Map<string, number>();
  for (const entry of entries) entry.kind = numberFor(kinds, kindText(entry));
  entriesOfRecipe.set(recipe, entries);
  return entries;
}

/**
 * Whether a stop can be part of a colour that is shown for variety: the colour admits it, and the recipe does not shut
 * it out. A colour got by straying from the recipe, or by leaving it half done, would be a mistake, not another answer;
 * stand-ins serve the way itself.
 */
export const inColour = ({ match, voices }: Entry, colour: Colour): boolean =>
  match.status !== "against" && match.status !== "stray" && colour.admits(voices[0]);

/** An entry that is still to be numbered. */
type Unnumbered = Omit<Entry, "kind"> & { kind: number };

/** One text for all that the recipe looks at alike. */
function kindText({ match, rank, standInItems, tremulant, foreign }: Entry): string {
  const { items, primary, status, gain, cost, standIn, coupled } = match;
  const what = `${tremulant === null ? "stop" : "tremulant"} ${foreign} ${rank}`;
  return `${what} ${items} ${primary} ${status} ${gain} ${cost} ${standIn} ${standInItems} ${coupled}`;
}

/** What an entry costs at least, whatever else is drawn. */
export function leastCost({ match, tremulant, standInItems }: Entry): Points {
  if (tremulant !== null || match.status === "asked" || match.status === "plain") return 0;
  return match.status === "stray" && standInItems !== 0 ? 0 : match.cost;
}

/**
 * An upper bound of the sets of a colour that a placed part could draw, from its entries alone: what the admitted stops
 * can earn for the recipe, less the least that a stop making the colour costs.
 */
export function boundInColour(problem: Problem, weighed: WeighedPart, colour: Colour): Points {
  let items = 0;
  const making: Points[] = Array.from({ length: colour.makers }, () => Number.POSITIVE_INFINITY);
  for (const entry of entriesOf(problem, weighed)) {
    if (!entry.stop || !inColour(entry, colour)) continue;
    items |= entry.match.items;
    const makes = colour.makes(entry.voices[0]);
    for (let at = 0; at < making.length; at++) {
      if (makes & (1 << at)) making[at] = Math.min(making[at] as Points, leastCost(entry));
    }
  }
  let sum = (weighed.fix ?? Number.NEGATIVE_INFINITY) + weighed.most - Math.max(0, ...making);
  weighed.recipe.items.forEach((item, index) => {
    const without = item.instead.find((use) => use.leaveOut)?.weight ?? Number.NEGATIVE_INFINITY;
    sum += items & (1 << index) ? item.weight : without;
  });
  return sum;
}
