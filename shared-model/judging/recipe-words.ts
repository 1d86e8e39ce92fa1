import { accordingTo } from "../music/prescriptions/citation.ts";
import { partName } from "../rules/balance.ts";
import { leaveOut, named, the } from "../rules/naming.ts";
import { type HeardStop, listedBriefly, type Points, type Words } from "../rules/rule.ts";
import type { Stop } from "../stoplist/instrument.ts";
import { type PartState, stopLabel } from "./listening.ts";
import { isPrescribed, type Problem, placingDeviations, type WeighedPart } from "./problem.ts";
import type { Reading } from "./reading.ts";
import { type Reason, reasonOf, type Speaker } from "./reason.ts";
import { type Closeness, COSTS, type Item, type Match, standingIn, worthOf } from "./recipe.ts";
import { wantedText } from "./wanted-stops.ts";

const ECONOMY: Speaker = { id: "fewest-stops", source: "common practice", severity: "note" };

interface Matched {
  readonly stop: Stop;
  readonly match: Match;
}

/** One part in the light of one reading, with all that the sentences about its recipe are made of. */
interface PartInLight {
  readonly reading: Reading;
  readonly part: PartState;
  readonly weighed: WeighedPart;
  readonly close: Closeness;
  /** The part as a musician calls it. */
  readonly who: string;
  /** Stops that the part draws itself. */
  readonly own: readonly Matched[];
  /** These and what comes along through couplers. */
  readonly all: readonly Matched[];
}

/** What the recipe asks for and finds satisfied, replaced or missing. */
interface Fulfilment {
  /** Points earned by what is there itself. */
  readonly direct: Points;
  readonly replaced: readonly { readonly points: Points; readonly text: string; readonly stops: readonly string[] }[];
  readonly missing: readonly string[];
}

const asHeard = ({ stop }: Matched): HeardStop => ({ stop, label: stopLabel(stop), silent: [] });
const namesOf = (some: readonly Matched[]): string => named(some.map(asHeard));
const idsOf = (some: readonly Matched[]): readonly string[] => some.map((each) => each.stop.id);
const itemWords = (item: Item): string => item.wanted.map(wantedText).slice(0, 3).join(" or ");
const costOf = (some: readonly Matched[]): Points => some.reduce((sum, each) => sum + each.match.cost, 0);

function fulfilmentOf({ weighed, close, who, all }: PartInLight): Fulfilment {
  const standInBits = all.reduce((bits, each) => bits | each.match.standIn, 0);
  const nearBits = all.reduce((bits, each) => bits | (each.match.coupled ? 0 : each.match.standIn), 0);
  const beside = all.reduce((bits, each) => bits | (each.match.items === 0 ? each.match.standIn : 0), 0);
  let direct = close.gain;
  const replaced: { points: Points; text: string; stops: readonly string[] }[] = [];
  const missing: string[] = [];
  const { items } = weighed.recipe;
  // The same stop may be asked of two keyboards, of which one has it.
  const ofSeveral = items.some((item) => item.recipe !== items[0]?.recipe);
  const whereOf = ({ recipe: { prescribed } }: Item): string =>
    ofSeveral && prescribed.keyboard !== "any-other" ? ` on the ${prescribed.keyboard} keyboard` : "";
  items.forEach((item, index) => {
    if (close.satisfied & (1 << index)) return;
    const use = standingIn(item, standInBits, beside);
    const name = `${itemWords(item)}${whereOf(item)}`;
    if (!use) {
      missing.push(name);
      return;
    }
    const points = worthOf(use, nearBits);
    direct -= points;
    if (use.leaveOut) {
      const text = `The ${who} does without the ${name}, which is welcome rather than needed.`;
      replaced.push({ points, text, stops: [] });
      return;
    }
    const serving = all.filter((each) => (each.match.standIn & use.bits) !== 0);
    replaced.push({
      points,
      text: `${namesOf(serving)} ${serving.length === 1 ? "stands" : "stand"} in for the ${name} that the recipe asks for${use.note ? ` (${use.note})` : ""}.`,
      stops: idsOf(serving),
    });
  });
  return { direct, replaced, missing };
}

/** What the part draws of what the recipe asks for, and what the recipe asks for besides; `null` when there is nothing to say. */
function drawsWords({ weighed, who, all }: PartInLight, { direct, missing }: Fulfilment, sources: readonly string[]) {
  const { recipe } = weighed;
  if (!recipe.speaks) return null;
  const by = accordingTo(sources[0] as string);
  const asked = all.filter((each) => each.match.status === "asked");
  const wanting = listedBriefly([...new Set(missing)]);
  if (asked.length > 0) {
    const lack = missing.length > 0 ? `; the recipe also asks for ${wanting}` : "";
    return { points: direct, text: `${by}, the ${who} draws ${namesOf(asked)}${lack}.` };
  }
  if (missing.length > 0) {
    return { points: direct, text: `The recipe asks the ${who} for ${wanting}, which it does not have here.` };
  }
  const welcome = all.filter((each) => each.match.status === "may");
  if (recipe.items.length > 0 || welcome.length === 0) return null;
  return { points: direct, text: `${by}, the ${who} may draw ${namesOf(welcome)}.` };
}

/**
 * Stops that cost something for being more than the recipe asks for: those that only help, and several that do the work of
 * one. Of these, one or more of the `spare` could be taken off; the `needed` alone make up something that stands in.
 */
function besidesIn({ weighed, close, own, all }: PartInLight): {
  spare: readonly Matched[];
  needed: readonly Matched[];
} {
  const works = ({ match }: Matched): string | null => {
    if (match.status === "plain") return "plain";
    if (match.status === "asked" && !weighed.recipe.items[match.primary]?.every) return `item ${match.primary}`;
    const serving = match.status === "stray" ? match.standIn & close.serving : 0;
    return serving === 0 ? null : `stand-in ${31 - Math.clz32(serving)}`;
  };
  const count = (work: string): number => own.filter((each) => works(each) === work).length;
  const isNeeded = (one: Matched): boolean => {
    const others = all.reduce((bits, each) => bits | (each === one ? 0 : each.match.standIn), 0);
    return (one.match.standIn & close.serving & ~others) !== 0;
  };
  const besides = own.filter((each) => {
    const work = works(each);
    return each.match.status === "may" || (work !== null && count(work) > 1);
  });
  return { spare: besides.filter((each) => !isNeeded(each)), needed: besides.filter(isNeeded) };
}

/** Reasons for how near a part comes to its recipe, where it is played, and how few stops it takes. */
export function recipeReasons(
  problem: Problem,
  reading: Reading,
  part: PartState,
  weighed: WeighedPart,
  close: Closeness,
  heard: readonly string[],
): readonly Reason[] {
  const { recipe } = weighed;
  const matched = (stop: Stop): Matched => ({ stop, match: recipe.matchOf(stop) });
  const own = part.own.map(matched);
  const all = [...own, ...part.borrowed.map(matched)];
  const who = partName(weighed.context);
  const light: PartInLight = { reading, part, weighed, close, who, own, all };
  const sources = reading.prescription?.sources ?? ["common practice"];
  const speaker: Speaker = { id: "close-to-prescription", source: sources.join("; "), severity: "note" };
  const reasons: Reason[] = [];
  const say = (points: Points, words: Words, by = speaker): void => {
    reasons.push(reasonOf(by, points, words, [part.placing.part], heard));
  };

  const fulfilment = fulfilmentOf(light);
  const draws = drawsWords(light, fulfilment, sources);
  if (draws) say(draws.points, draws);
  for (const each of fulfilment.replaced) say(each.points, each);

  const stray = own.filter(({ match }) => match.status === "stray" && !((match.standIn & close.serving) !== 0));
  if (stray.length > 0) {
    const text = `${namesOf(stray)} ${stray.length === 1 ? "is" : "are"} outside the recipe for the ${who}.`;
    say(-costOf(stray), { text, stops: idsOf(stray) });
  }
  const against = own.filter(({ match }) => match.status === "against");
  if (against.length > 0) {
    const text = `The recipe keeps ${namesOf(against)} out of the ${who}.`;
    const remedy = leaveOut(against.map(asHeard));
    say(-costOf(against), { text, remedy, stops: idsOf(against) }, { ...speaker, severity: "warning" });
  }
  const { spare, needed } = besidesIn(light);
  const besides = -close.cost + costOf(stray) + costOf(against);
  // Of stops that do the work of one, the spare ones bear the cost.
  const ofNeeded = spare.length === 0 ? besides : -costOf(needed.filter(({ match }) => match.status === "may"));
  if (ofNeeded !== 0) {
    const beyond = needed.length === 1 ? ["goes", "is"] : ["go", "are"];
    const text = `${namesOf(needed)} ${beyond[0]} beyond the recipe for the ${who}, but ${beyond[1]} needed to stand in.`;
    say(ofNeeded, { text, stops: idsOf(needed) }, ECONOMY);
  }
  const rest = besides - ofNeeded;
  if (rest !== 0) {
    const fewer = spare.length === 1 ? "could do without" : "could do with fewer:";
    say(rest, { text: `The ${who} ${fewer} ${namesOf(spare)}.` }, ECONOMY);
  }
  if (part.shutBoxes > 0) {
    const text = `The ${who} plays from ${part.shutBoxes === 1 ? "a box that is" : "boxes that are"} not open.`;
    say(-COSTS.shutBox * part.shutBoxes, { text }, ECONOMY);
  }
  for (const { points, what, about, asked } of placingDeviations(reading, part.placed, problem.kindsOf)) {
    const isThere = asked && problem.instrument.couplers.some((each) => isPrescribed(each, asked, problem.kindsOf));
    const text = {
      keyboard: `The recipe plays the ${who} on the ${about.replace("-", " ")} keyboard; here it is ${the(weighed.context)}.`,
      "left-out": `The recipe couples ${about}; ${isThere ? "that coupler is not on here" : "the organ has no such coupler"}.`,
      beside: `${about} is on, which the recipe does not ask for.`,
      allowed: `${about} is on; the recipe allows it and can do without.`,
    }[what];
    say(points, { text });
  }
  return reasons;
}
