import type { Colour } from "../acoustics/colour.ts";
import type { Voice } from "../acoustics/part-sound.ts";
import { voiceOf, zonesOf } from "../acoustics/voice.ts";
import type { PlacedPart } from "../judging/placed-part.ts";
import type { Problem } from "../judging/problem.ts";
import type { PartRecipe } from "../judging/reading.ts";
import { wantedStops } from "../judging/wanted-stops.ts";
import type { PrescribedPart, StandIn, Wanted } from "../music/prescription.ts";
import type { Points } from "../rules/rule.ts";
import type { Division, Instrument, Stop } from "../stoplist/instrument.ts";
import { madeIn } from "./made.ts";
import { isProposable } from "./state-space.ts";

/** What a recipe could earn at best on an organ, by which kinds it has at all: bounds before any stop is looked at. */
export class RecipeReach {
  private readonly problem: Problem;
  private readonly known: Known;

  constructor(problem: Problem) {
    this.problem = problem;
    this.known = knownOf(problem);
  }

  /** What the telling part can keep of a recipe at best when it must have a colour: never too low. */
  keepsInColour(reading: number, part: string, colour: Colour): Points {
    const recipes = this.problem.readings[reading]?.recipes.get(part);
    if (!recipes) return 0;
    let lost = 0;
    for (const recipe of recipes) {
      lost += madeIn(rowOf(this.known.inColour, recipe), colour, () => this.lostInColour(recipe, colour));
    }
    return -lost;
  }

  private lostInColour({ prescribed, share }: PartRecipe, colour: Colour): Points {
    const has = (wanted: Wanted): boolean => this.known.has(wanted, colour);
    const lists = listsOf(prescribed, this.problem.standIns);
    let lost = 0;
    for (const { wanted, uses } of lists) {
      // What is welcome earns nothing where something is asked for, and may be of any colour where nothing is.
      if (wanted === prescribed.may || wanted.some(has)) continue;
      const each = Math.floor(share / lists.length);
      let kept = 0;
      for (const use of uses) {
        if (use.leaveOut || (use.stops.length > 0 && use.stops.every(has))) kept = Math.max(kept, worthOf(use, each));
      }
      lost += each - kept;
    }
    return lost;
  }

  /** What the recipe could earn on a keyboard at best, by which kinds the divisions have at all. */
  on(reading: number, part: string, placed: PlacedPart): Points {
    const recipes = this.problem.readings[reading]?.recipes.get(part);
    if (!recipes) return 0;
    let sum = 0;
    for (const recipe of recipes) {
      const row = rowOf(this.known.inDivision, recipe);
      let best = 0;
      for (const { division, shift } of placed.reach) {
        const octaves = placed.octave + shift;
        const byOctave = madeIn(row, division, () => new Map());
        best += madeIn(byOctave, octaves, () => this.inDivision(recipe, division, octaves));
      }
      sum += Math.min(best, recipe.share);
    }
    return sum;
  }

  private inDivision({ prescribed, share }: PartRecipe, division: Division, octaves: number): Points {
    const lists = listsOf(prescribed, this.problem.standIns);
    if (lists.length === 0) return 0;
    const up = octaves - (prescribed.octave ?? 0);
    const has = (wanted: Wanted): boolean => {
      for (const stop of wantedStops(this.problem.instrument, wanted, up)) {
        if (stop.division === division.name && isProposable(stop)) return true;
      }
      return false;
    };
    const each = Math.ceil(share / lists.length) + lists.length;
    let points = 0;
    for (const { wanted, uses } of lists) {
      if (wanted.some(has)) points += each;
      else {
        let most = 0;
        for (const use of uses) if (use.leaveOut || use.stops.some(has)) most = Math.max(most, worthOf(use, each));
        points += most;
      }
    }
    return points;
  }
}

type Use = StandIn["use"][number];

/** What a stand-in earns at most in the place of something that earns so much. */
const worthOf = ({ cost }: Use, each: Points): Points => Math.ceil((each * (100 - 15 * cost)) / 100);

/** One thing that is asked for, any of these, and whatever may stand in for it. */
interface Asked {
  readonly wanted: readonly Wanted[];
  readonly uses: readonly Use[];
}

const askedBy = new WeakMap<readonly StandIn[], WeakMap<PrescribedPart, readonly Asked[]>>();

/** Everything that a recipe asks of a part; what is welcome, where it asks for nothing else. */
function listsOf(prescribed: PrescribedPart, standIns: readonly StandIn[]): readonly Asked[] {
  const known = madeIn(askedBy, standIns, () => new WeakMap());
  return madeIn(known, prescribed, () => {
    const { must, oneOf = [], may = [] } = prescribed;
    const asked = [...must.map((wanted) => [wanted]), ...oneOf];
    return (asked.length > 0 ? asked : may.length > 0 ? [may] : []).map((wanted) => ({
      wanted,
      uses: standIns
        .filter((standIn) => wanted.some((one) => one.kind === standIn.for.kind))
        .flatMap((standIn) => standIn.use),
    }));
  });
}

/** By what is prescribed, by what it may earn. */
type ByRecipe<T> = Map<PrescribedPart, Map<Points, T>>;

/** What has been found out of an instrument, whatever the section. */
interface Known {
  readonly standIns: readonly StandIn[];
  readonly has: (wanted: Wanted, colour: Colour) => boolean;
  readonly inDivision: ByRecipe<Map<Division, Map<number, Points>>>;
  readonly inColour: ByRecipe<Map<Colour, Points>>;
}

const knownOfInstrument = new WeakMap<Instrument, Known>();

function knownOf({ instrument, standIns }: Problem): Known {
  let known = knownOfInstrument.get(instrument);
  if (known?.standIns !== standIns) {
    known = { standIns, has: coloursOf(instrument), inDivision: new Map(), inColour: new Map() };
    knownOfInstrument.set(instrument, known);
  }
  return known;
}

const rowOf = <K, V>(table: ByRecipe<Map<K, V>>, { prescribed, share }: PartRecipe): Map<K, V> =>
  madeIn(
    madeIn(table, prescribed, () => new Map()),
    share,
    () => new Map(),
  );

/** Whether an organ has a stop for what is wanted that a part of a colour could hold, at any octave. */
function coloursOf(instrument: Instrument): (wanted: Wanted, colour: Colour) => boolean {
  const tones = new Map<Stop, readonly Voice[]>();
  const tonesOf = (stop: Stop): readonly Voice[] => {
    let voices = tones.get(stop);
    if (!voices) {
      voices = [-1, 0, 1].flatMap((octaves) => toneOf(stop, octaves) ?? []);
      tones.set(stop, voices);
    }
    return voices;
  };
  const found = new Map<Wanted, Map<Colour, boolean>>();
  const has = (wanted: Wanted, colour: Colour): boolean => {
    let row = found.get(wanted);
    if (!row) {
      row = new Map();
      found.set(wanted, row);
    }
    let answer = row.get(colour);
    if (answer === undefined) {
      answer = [-2, -1, 0, 1, 2].some((up) =>
        [...wantedStops(instrument, wanted, up)].some(
          (stop) => isProposable(stop) && tonesOf(stop).some((voice) => colour.admits(voice)),
        ),
      );
      row.set(colour, answer);
    }
    return answer;
  };
  return has;
}

/** A stop's own sound over the whole keyboard, `octaves` away from where it is written. */
function toneOf(stop: Stop, octaves: number): Voice | null {
  const [low, high] = [stop.from - 12 * octaves, stop.to - 12 * octaves];
  return voiceOf(stop, {
    zones: zonesOf(low, high, []),
    away: 12 * octaves,
    low,
    high,
    sharedRank: () => undefined,
    boxed: false,
    box: "open",
  });
}
