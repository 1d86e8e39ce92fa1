import { zonesBetween } from "../acoustics/voice.ts";
import type { StandIn, Wanted } from "../music/prescription.ts";
import { footOf } from "../pitch/foot.ts";
import type { Points } from "../rules/rule.ts";
import type { Half, Instrument, Stop } from "../stoplist/instrument.ts";
import type { DivisionKind } from "../stoplist/keyboard-kind.ts";
import type { PlacedPart, Seat } from "./placed-part.ts";
import type { PartRecipe } from "./reading.ts";
import { wantedStops } from "./wanted-stops.ts";

/** What a thing earns that only a coupler supplies, in hundredths: it brings all else that is drawn there. */
const COUPLED_WORTH = 85;
/** A recipe with more different stand-ins than this would outgrow the bits; its later ones are not offered. */
const MOST_STAND_INS = 30;
/** A recipe of so many things can do without one that is only welcome; in a smaller one it may be the whole point. */
const LARGE = 5;
/** What an item, or what stands in for it, earns when only a coupler supplies it. */
export const coupledWeight = ({ weight }: { readonly weight: Points }): Points =>
  Math.floor((weight * COUPLED_WORTH) / 100);

/** Costs of a stop, by how the recipe speaks of it. */
export const COSTS = {
  /** Welcome, though not asked for: the fewest stops that make the sound. */
  may: 25,
  /** A second stop of a kind that was asked for once. */
  again: 75,
  /** Outside the recipe. */
  stray: 400,
  /** Against the recipe: more than a colour may fall behind and still be shown early. */
  against: 1600,
  /** Each stop after the first where no recipe speaks. */
  plain: 60,
  /** Each box that is not left open. */
  shutBox: 50,
} as const;

/** One thing that a recipe asks of a part, with what it earns. */
export interface Item {
  /** Any of these. */
  readonly wanted: readonly Wanted[];
  readonly recipe: PartRecipe;
  readonly weight: Points;
  /** Each stop of the kind earns its part of the weight. */
  readonly every: boolean;
  /** Only the half of a divided keyboard that it is about. */
  readonly half: Half;
  /** Complete stand-ins: bits of `standIns` that must all be there, and what they earn. */
  readonly instead: readonly {
    readonly bits: number;
    readonly weight: Points;
    readonly note: string | null;
    /** Serves with nothing in its place. */
    readonly leaveOut: boolean;
  }[];
}

/** How a recipe looks at one stop that a part could hear. */
export interface Match {
  /** Items that it satisfies. */
  readonly items: number;
  /** The item it counts for, -1 for none: a second stop for one item costs a little. */
  readonly primary: number;
  readonly status: "asked" | "may" | "stray" | "against" | "plain";
  /** Points that it earns by itself (of an `every` item). */
  readonly gain: Points;
  /** What it costs by its status, before counting doubles and stand-ins. */
  readonly cost: Points;
  /** Bits of stand-ins that it can be part of. */
  readonly standIn: number;
  /** Whether it comes by a coupler from a keyboard that the recipe does not speak of. */
  readonly coupled: boolean;
}

/** A recipe, ready for one placed part. */
export interface Recipe {
  readonly items: readonly Item[];
  /** By stop id, for every stop that the part can hear. */
  matchOf(stop: Stop): Match;
  /** Whether any prescribed part speaks of this part. */
  readonly speaks: boolean;
  /** Whether the conventions that yield to a prescription yield to it. */
  readonly excuses: boolean;
}

const PLAIN: Match = { items: 0, primary: -1, status: "plain", gain: 0, cost: COSTS.plain, standIn: 0, coupled: false };

/** Which prescribed part speaks of a division: the one whose keyboard it is, else the first for the keyboard played. */
function recipeFor(
  recipes: readonly PartRecipe[],
  kinds: ReadonlySet<DivisionKind>,
  own: boolean,
): PartRecipe | undefined {
  const fit = recipes.find((each) => kinds.has(each.prescribed.keyboard as DivisionKind));
  return fit ?? (own || recipes.length === 1 ? recipes[0] : recipes[1]);
}

/** Whether a stop sounds in a half of the keyboard, `null` for the whole of it. */
const isInHalf = (stop: Stop, half: Half): boolean => half === null || stop.half === null || stop.half === half;

const asksForCornet = ({ prescribed: { must, oneOf = [] } }: PartRecipe): boolean =>
  [...must, ...oneOf.flat()].some((wanted) => wanted.kind === "cornet");

/** Recipes made ready for an instrument, and how many stops they look at together. */
interface Made {
  readonly standIns: readonly StandIn[];
  readonly bySeat: Map<Seat, Map<string, Recipe>>;
  stops: number;
}

/** How many stops the recipes kept for one instrument look at together: some fifteen megabytes. More, and all are forgotten. */
const MOST_LOOKED_AT = 60_000;
const madeFor = new WeakMap<Instrument, Made>();

/**
 * A reading ready for a part on its keyboard. Made once for an instrument, whatever the section: textures of one school
 * ask for the same accompaniment, and the same texture is asked for again and again.
 *
 * @param asked one text for `recipes` that ask for the same.
 */
export function recipeOf(
  instrument: Instrument,
  recipes: readonly PartRecipe[],
  asked: string,
  placed: PlacedPart,
  kindsOf: ReadonlyMap<string, ReadonlySet<DivisionKind>>,
  standIns: readonly StandIn[],
): Recipe {
  let made = madeFor.get(instrument);
  if (!made || made.standIns !== standIns || made.stops > MOST_LOOKED_AT) {
    made = { standIns, bySeat: new Map(), stops: 0 };
    madeFor.set(instrument, made);
  }
  let bySeat = made.bySeat.get(placed.seat);
  if (!bySeat) {
    bySeat = new Map();
    made.bySeat.set(placed.seat, bySeat);
  }
  const published = recipes.map((each) => (each.published ? "published" : "practice")).join(" ");
  const key = `${placed.part.hands} ${published} ${asked}`;
  let recipe = bySeat.get(key);
  if (!recipe) {
    recipe = makeRecipe(instrument, recipes, placed, kindsOf, standIns);
    bySeat.set(key, recipe);
    made.stops += placed.reach.reduce((sum, { division }) => sum + division.stops.length, 0);
  }
  return recipe;
}

function makeRecipe(
  instrument: Instrument,
  recipes: readonly PartRecipe[],
  placed: PlacedPart,
  kindsOf: ReadonlyMap<string, ReadonlySet<DivisionKind>>,
  standIns: readonly StandIn[],
): Recipe {
  if (recipes.length === 0) return { items: [], matchOf: () => PLAIN, speaks: false, excuses: false };

  const byDivision = new Map<string, PartRecipe>();
  const ways = new Map<string, number[]>();
  for (const { division, shift } of placed.reach) {
    const own = division === placed.keyboard;
    const recipe = recipeFor(recipes, kindsOf.get(division.name) ?? new Set(), own);
    if (recipe && !byDivision.has(division.name)) byDivision.set(division.name, recipe);
    // An octave coupler thickens what is drawn; where the stop also speaks at its own pitch, that is what the recipe means.
    const unison = placed.reach.some((each) => each.division === division && each.shift === 0);
    if (unison && shift !== 0) continue;
    ways.set(division.name, [...(ways.get(division.name) ?? []), placed.octave + shift]);
  }
  // Most parts hear all they hear at one octave: then one table of the instrument says which stops are wanted.
  const octavesHeard = new Set([...ways.values()].flat());
  const alike = octavesHeard.size === 1;
  /** Whether a stop in reach is wanted at a pitch at which the part hears it, the octave that the recipe asks for taken off. */
  const fitting = (list: readonly Wanted[], { prescribed: { octave = 0 } }: PartRecipe): ((stop: Stop) => boolean) => {
    const tables: { readonly octaves: number; readonly stops: ReadonlySet<Stop> }[] = [];
    for (const wanted of list) {
      for (const octaves of octavesHeard) {
        const stops = wantedStops(instrument, wanted, octaves - octave);
        if (stops.size > 0) tables.push({ octaves, stops });
      }
    }
    return (stop) => {
      for (const { octaves, stops } of tables) {
        if (stops.has(stop) && (alike || ways.get(stop.division)?.includes(octaves))) return true;
      }
      return false;
    };
  };

  const audible = (stop: Stop): boolean => {
    for (const { division, shift } of placed.reach) {
      if (division.name !== stop.division) continue;
      const away = 12 * (placed.octave + shift);
      if (zonesBetween(placed.zones, stop.from - away, stop.to - away) !== 0) return true;
    }
    return false;
  };
  const inReach = placed.reach
    .map((each) => each.division)
    .filter((division, index, all) => all.indexOf(division) === index)
    .flatMap((division) => division.stops.filter((stop) => !stop.off && audible(stop)));

  const standInTable: { readonly wanted: Wanted; readonly half: Half }[] = [];
  const standInBit = (wanted: Wanted, half: Half): number => {
    let index = standInTable.findIndex((each) => each.wanted === wanted && each.half === half);
    if (index < 0) index = standInTable.push({ wanted, half }) - 1;
    return index < MOST_STAND_INS ? 1 << index : 0;
  };

  const items: Item[] = [];
  const everyCount: number[] = [];
  for (const recipe of recipes) {
    const speaksHere = [...byDivision.values()].includes(recipe);
    const lists: { wanted: readonly Wanted[]; every: boolean }[] = [
      ...recipe.prescribed.must.map((wanted) => ({ wanted: [wanted], every: wanted.every === true })),
      ...(recipe.prescribed.oneOf ?? []).map((wanted) => ({ wanted, every: false })),
    ];
    if (lists.length === 0 && (recipe.prescribed.may?.length ?? 0) > 0) {
      lists.push({ wanted: recipe.prescribed.may ?? [], every: false });
    }
    if (!speaksHere || lists.length === 0) continue;
    const each = Math.floor(recipe.share / lists.length);
    lists.forEach(({ wanted, every }, index) => {
      const weight = index === 0 ? recipe.share - each * (lists.length - 1) : each;
      const fits = fitting(wanted, recipe);
      const found = inReach.filter((stop) => fits(stop) && byDivision.get(stop.division) === recipe);
      const uses = wanted.flatMap((one) =>
        standIns
          .filter(
            (standIn) =>
              standIn.for.kind === one.kind &&
              (standIn.for.pitch === undefined || standIn.for.pitch === one.pitch) &&
              (standIn.pedal ?? false) === (placed.part.hands === "feet" && standIn.pedal !== undefined),
          )
          .flatMap((standIn) => standIn.use)
          .filter((use) => (use.leaveOut === true && lists.length >= LARGE) || (use.stops.length > 0 && !every)),
      );
      // What stands in on a divided keyboard stands in half by half, as what is asked for does.
      const serves = fitting(found.length > 0 ? [] : uses.flatMap((use) => use.stops), recipe);
      const serving =
        found.length > 0 ? found : inReach.filter((stop) => serves(stop) && byDivision.get(stop.division) === recipe);
      const halves = new Set(serving.map((stop) => stop.half));
      const divided = halves.has("bass") && halves.has("treble") && !wanted.some((one) => one.half);
      const parts: Half[] = divided ? ["bass", "treble"] : [null];
      parts.forEach((half, at) => {
        const own = divided ? (at === 0 ? weight - Math.floor(weight / 2) : Math.floor(weight / 2)) : weight;
        const instead = uses.map((use) => ({
          bits: use.stops.reduce((sum, stop) => sum | standInBit(stop, half), 0),
          weight: Math.floor((own * (100 - 15 * use.cost)) / 100),
          note: use.note ?? null,
          leaveOut: use.leaveOut === true,
        }));
        instead.sort((a, b) => b.weight - a.weight);
        items.push({ wanted, recipe, weight: own, every, half, instead });
        everyCount.push(
          every ? found.filter((stop) => half === null || stop.half === null || stop.half === half).length : 0,
        );
      });
    });
  }
  if (items.length > 30) throw new RangeError("A prescription asks for more than thirty things of one part.");

  /** A Cornet of three or four ranks needs its 8' drawn with it, though the recipe says no more than "Cornet". */
  const wantsGround = inReach.some(
    (stop) => stop.kinds.includes("cornet") && !stop.uses.some(({ pitch }) => pitch.under === 1 && pitch.over >= 8),
  );
  const grounds = (stop: Stop): boolean =>
    wantsGround &&
    stop.family.startsWith("flute") &&
    (ways.get(stop.division) ?? []).some((octaves) => stop.pitch !== null && stop.pitch === footOf(8) && octaves === 0);
  const asked = new Map(
    [...new Set(byDivision.values())].map((recipe) => {
      const { may = [], not = [] } = recipe.prescribed;
      return [
        recipe,
        {
          items: items.flatMap((item, index) =>
            item.recipe === recipe ? [{ item, index, fits: fitting(item.wanted, recipe) }] : [],
          ),
          may: fitting(may, recipe),
          not: fitting(not, recipe),
          standIns: standInTable
            .slice(0, MOST_STAND_INS)
            .map(({ wanted, half }) => ({ half, fits: fitting([wanted], recipe) })),
        },
      ] as const;
    }),
  );
  const memo = new Map<string, Match>();
  const everySeen = new Map<number, number>();
  const matchOf = (stop: Stop): Match => {
    const known = memo.get(stop.id);
    if (known) return known;
    const recipe = byDivision.get(stop.division);
    const asks = recipe && asked.get(recipe);
    let match: Match = PLAIN;
    if (asks) {
      let [set, primary, gain] = [0, -1, 0];
      for (const { item, index, fits } of asks.items) {
        if (!isInHalf(stop, item.half) || !fits(stop)) continue;
        if (primary < 0) primary = index;
        if (item.every) {
          const count = everyCount[index] as number;
          const seen = everySeen.get(index) ?? 0;
          everySeen.set(index, seen + 1);
          const part = Math.floor(item.weight / Math.max(1, count));
          gain += seen === 0 ? item.weight - part * (count - 1) : part;
        }
        set |= 1 << index;
      }
      const welcome = asks.may(stop) || (set === 0 && grounds(stop) && asksForCornet(recipe));
      const against = set === 0 && !welcome && asks.not(stop);
      let standIn = 0;
      asks.standIns.forEach(({ half, fits }, index) => {
        if (isInHalf(stop, half) && fits(stop)) standIn |= 1 << index;
      });
      const status = set !== 0 ? "asked" : welcome ? "may" : against ? "against" : "stray";
      const cost = status === "asked" ? (welcome ? COSTS.may : COSTS.again) : COSTS[status];
      const coupled =
        stop.division !== placed.keyboard.name &&
        !kindsOf.get(stop.division)?.has(recipe.prescribed.keyboard as DivisionKind);
      match = { items: set, primary, status, gain, cost, standIn: against ? 0 : standIn, coupled };
    }
    memo.set(stop.id, match);
    return match;
  };
  // Shares of an `every` item fall to the stops in printed order, whichever is asked about first.
  for (const stop of inReach) matchOf(stop);
  return { items, matchOf, speaks: true, excuses: recipes.every((each) => each.published) };
}

/** Points of one part for its closeness to the recipe, taken apart. */
export interface Closeness {
  gain: Points;
  cost: Points;
  /** Drawn as the recipe says: every thing asked for (or its stand-in), nothing beside. */
  conform: boolean;
  /** Conforms to a published prescription, which silences the conventions that yield to one. */
  excused: boolean;
  /** Items that a drawn stop satisfies. */
  satisfied: number;
  /** Bits of the stand-ins that serve for items nothing drawn satisfies. */
  serving: number;
}

/**
 * The stand-in that serves for an item, given the stand-in bits of all that is drawn and of those among it that the
 * recipe does not ask for anyway: what is there for its own sake does not stand in for another as well. `undefined` when
 * none is complete.
 */
export const standingIn = (item: Item, bits: number, beside: number): Item["instead"][number] | undefined =>
  item.instead.find((each) => each.leaveOut || ((each.bits & beside) !== 0 && (bits & each.bits) === each.bits));

/**
 * What a stand-in earns, given the stand-in bits of what is drawn where the recipe plays: less where a part of it comes
 * by a coupler only, as with the thing itself.
 */
export const worthOf = (use: Item["instead"][number], nearBits: number): Points =>
  (nearBits & use.bits) === use.bits ? use.weight : coupledWeight(use);

// Scratch space of `closenessOf`, which the search calls some hundred thousand times a second.
const dearest = new Int32Array(32);

/**
 * How close a set of drawn stops comes to the recipe, in any order. The first `count` of `own` are the part's own
 * stops; the `borrowed` ones belong to another part's division and come along through a coupler: they can satisfy, and
 * cost nothing here. Of several stops for one item the dearest counts as the one asked for.
 */
export function closenessOf(
  recipe: Recipe,
  own: readonly Match[],
  count: number,
  borrowed: readonly Match[],
  out: Closeness,
): Closeness {
  let [satisfied, near, standInBits, nearBits, beside, gain, cost, plain, serving] = [0, 0, 0, 0, 0, 0, 0, 0, 0];
  let complete = true;
  let loyal = true;
  let standing = 0;
  for (const match of borrowed) {
    satisfied |= match.items;
    if (!match.coupled) {
      near |= match.items;
      nearBits |= match.standIn;
    }
    standInBits |= match.standIn;
    if (match.items === 0) beside |= match.standIn;
    gain += match.gain;
  }
  dearest.fill(0);
  for (let i = 0; i < count; i++) {
    const match = own[i] as Match;
    satisfied |= match.items;
    if (!match.coupled) {
      near |= match.items;
      nearBits |= match.standIn;
    }
    standInBits |= match.standIn;
    if (match.items === 0) beside |= match.standIn;
    gain += match.gain;
    if (match.status === "asked") {
      if (recipe.items[match.primary]?.every) continue;
      cost += match.cost;
      if (match.cost > (dearest[match.primary] as number)) dearest[match.primary] = match.cost;
    }
  }
  const { items } = recipe;
  for (let i = 0; i < items.length; i++) {
    const item = items[i] as Item;
    cost -= dearest[i] as number;
    if (satisfied & (1 << i)) {
      if (!item.every) gain += near & (1 << i) ? item.weight : coupledWeight(item);
      continue;
    }
    const use = item.instead.length > 0 ? standingIn(item, standInBits, beside) : undefined;
    if (use) {
      serving |= use.bits;
      gain += worthOf(use, nearBits);
    } else complete = false;
  }
  for (let i = 0; i < count; i++) {
    const match = own[i] as Match;
    if (match.status === "asked") continue;
    if (match.status === "plain") {
      plain += 1;
      if (plain > 1) cost += match.cost;
    } else if (match.status === "stray" && (match.standIn & serving) !== 0) {
      // One stop for each thing that stands in; a second one doubles it.
      const bit = 31 - Math.clz32(match.standIn & serving);
      if (standing & (1 << bit)) cost += COSTS.again;
      standing |= 1 << bit;
    } else {
      if (match.status !== "may") loyal = false;
      cost += match.cost;
    }
  }
  out.gain = gain;
  out.cost = cost;
  out.conform = recipe.speaks && complete && loyal;
  out.excused = out.conform && recipe.excuses;
  out.satisfied = satisfied;
  out.serving = serving;
  return out;
}
