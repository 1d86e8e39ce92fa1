import type { Alternative } from "../plan/candidates.ts";
import type { PlannedPiece } from "../plan/planned.ts";
import type { Points } from "../rules/rule.ts";
import type { Division, Instrument } from "../stoplist/instrument.ts";
import type { MeaningDifference } from "./meaning.ts";

/** Points, our own setting: more than any registration earns, since hands that learn the wrong keyboard learn it for good. */
const OTHER_KEYBOARD: Points = 6000;
/** A change that is missing, or that home has not, at the beginning of a section. */
const CHANGE: Points = 1500;
/** What speaks against a way of giving the keyboards of home to those that are there. */
const AGAINST = { apartTogether: 100, changeLost: 30, noFoundation: 1000, elsewhere: 1 } as const;

const standsOf = ({ entry, steps }: Alternative) => [entry, ...steps.map(({ stand }) => stand)];

const inHeight = ({ divisions }: Instrument): readonly Division[] =>
  divisions.filter(({ kind }) => kind === "manual").toSorted((a, b) => (a.keyboard ?? 0) - (b.keyboard ?? 0));

/** Every way to give so many keyboards to so many others without crossing them, lowest first. */
function uncrossed(ones: number, others: number, from = 0): readonly (readonly number[])[] {
  if (ones === 0) return [[]];
  return Array.from({ length: others - from }, (_, at) => from + at).flatMap((at) =>
    uncrossed(ones - 1, others, at).map((rest) => [at, ...rest]),
  );
}

/** Of more keyboards than this there would be too many ways to look at; no console has them. */
const MOST_KEYBOARDS = 9;

/**
 * The keyboard on which each keyboard of home is practised, the same through the whole piece: never crossed, hands that
 * play on two there on two here as often as can be, and what they go between kept apart. Feet keep the pedal.
 */
export function practiceKeyboards(before: PlannedPiece, to: Instrument): ReadonlyMap<string, string> {
  const rows = before.sections.map(({ chosen }) => standsOf(chosen).map(({ placings }) => placings));
  const played = new Set(rows.flat(2).map(({ keyboard }) => keyboard));
  const used = inHeight(before.instrument).filter(({ name }) => played.has(name));
  const there = inHeight(to).slice(0, MOST_KEYBOARDS);
  const pedal = (organ: Instrument): Division | undefined => organ.divisions.find(({ kind }) => kind === "pedal");
  const [feet, feetThere] = [pedal(before.instrument), pedal(to)];
  const hasFoundation = ({ stops }: Division): boolean => stops.some((stop) => !stop.off && stop.uses.length > 0);
  const against = (way: readonly number[]): number => {
    const at = (keyboard: string): number | undefined => way[used.findIndex(({ name }) => name === keyboard)];
    const isOne = (one: string, other: string): boolean => one !== other && at(one) === at(other);
    let sum = 0;
    for (const placings of rows.flat()) {
      for (const [index, one] of placings.entries())
        for (const other of placings.slice(index + 1))
          if (isOne(one.keyboard, other.keyboard) && at(one.keyboard) !== undefined) sum += AGAINST.apartTogether;
    }
    const stands = rows.flat();
    for (const [index, placings] of stands.entries()) {
      for (const { part, keyboard } of placings) {
        const last = stands[index - 1]?.find((each) => each.part === part)?.keyboard;
        if (last !== undefined && isOne(last, keyboard) && at(keyboard) !== undefined) sum += AGAINST.changeLost;
      }
    }
    for (const [index, place] of way.entries()) {
      if (!hasFoundation(there[place] as Division)) sum += AGAINST.noFoundation;
      // Where several ways keep as much, the one in which a keyboard keeps its height from below.
      sum += AGAINST.elsewhere * Math.abs((used[index]?.keyboard ?? 1) - (there[place]?.keyboard ?? 1));
    }
    return sum;
  };
  const [best] = uncrossed(used.length, there.length)
    .map((way) => ({ way, points: against(way) }))
    .toSorted((a, b) => a.points - b.points);
  return new Map([
    ...used.flatMap(({ name }, at) => {
      const other = there[best?.way[at] ?? -1];
      return other ? [[name, other.name] as const] : [];
    }),
    ...(feet && feetThere ? [[feet.name, feetThere.name] as const] : []),
  ]);
}

/** Parts that are not on the keyboard on which theirs is practised. */
export const otherKeyboards = (
  keyboards: ReadonlyMap<string, string>,
  old: Alternative,
  now: Alternative,
): readonly MeaningDifference[] =>
  old.entry.placings.flatMap(({ part, keyboard }): readonly MeaningDifference[] => {
    const wanted = keyboards.get(keyboard);
    const here = now.entry.placings.find((each) => each.part === part)?.keyboard;
    if (here === undefined || wanted === here) return [];
    const text = wanted === undefined ? `on the ${here}, not by the feet` : `on the ${here}, not on the ${wanted}`;
    return [{ part, text, points: OTHER_KEYBOARD, about: "hands" }];
  });

const list = (set: ReadonlySet<string>): string => [...set].sort().join("\n");

/** Whether the player, or somebody, has to do something between the end of one registration and the beginning of another. */
export function isChange(earlier: Alternative, later: Alternative): boolean {
  const [one, other] = [earlier.exit, later.entry];
  const [before, after] = [one.state, other.state];
  const isOtherSet = (["drawn", "couplers", "tremulants", "unisonOff"] as const).some(
    (what) => list(before[what]) !== list(after[what]),
  );
  const isOtherBox = [...new Set([...before.boxes.keys(), ...after.boxes.keys()])].some(
    (box) => (before.boxes.get(box) ?? "open") !== (after.boxes.get(box) ?? "open"),
  );
  const isElsewhere = other.placings.some(({ part, keyboard }) => {
    const last = one.placings.find((each) => each.part === part)?.keyboard;
    return last !== undefined && last !== keyboard;
  });
  return isOtherSet || isOtherBox || isElsewhere;
}

/** Whether home and here have a change at the same place; what is otherwise, else `null`. */
export function changeDifference(isHere: boolean, isAtHome: boolean): MeaningDifference | null {
  if (isHere === isAtHome) return null;
  const text = isAtHome
    ? "nothing is changed before it, where home has a change"
    : "a change before it, where home has none";
  return { part: null, text, points: CHANGE, about: "console" };
}
