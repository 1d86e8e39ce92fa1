import { Blend } from "../acoustics/blend.ts";
import { type Phons, strengthOf } from "../acoustics/hearing.ts";
import { pedalsFor } from "../console/range.ts";
import type { PrescribedCoupler, PrescribedPart, Prescription, StandIn } from "../music/prescription.ts";
import type { Section } from "../music/texture.ts";
import type {
  AdviceRule,
  PairRule,
  PartContext,
  PartRule,
  PlacingRule,
  Points,
  Rule,
  SectionFacts,
  StepRule,
} from "../rules/rule.ts";
import type { Coupler, Division, Instrument, Stop } from "../stoplist/instrument.ts";
import { type DivisionKind, divisionKinds } from "../stoplist/keyboard-kind.ts";
import { type PlacedPart, placePart, type Seat, sharedRanks } from "./placed-part.ts";
import { type PartRecipe, type Reading, readingOf } from "./reading.ts";
import { type Recipe, recipeOf } from "./recipe.ts";
import { voicesOf } from "./voices.ts";

/** Rules by what they read. */
export interface SortedRules {
  readonly part: readonly PartRule[];
  readonly pair: readonly PairRule[];
  readonly placing: readonly PlacingRule[];
  readonly advice: readonly AdviceRule[];
  readonly steps: readonly StepRule[];
}

/** A section on an instrument, made ready to be judged: the readings, the rules, and what is fixed before a stop is drawn. */
export interface Problem {
  readonly instrument: Instrument;
  readonly section: Section;
  readonly facts: SectionFacts;
  /** The last one is the reading by conventions alone. */
  readonly readings: readonly Reading[];
  readonly rules: SortedRules;
  readonly shared: ReadonlyMap<string, number>;
  readonly kindsOf: ReadonlyMap<string, ReadonlySet<DivisionKind>>;
  readonly standIns: readonly StandIn[];
  /** Every stop in printed order. */
  readonly stops: readonly Stop[];
  /** The one placing of a part, made once; the keyboard's unison is on unless it is said to be off. */
  place(
    part: number,
    keyboard: Division,
    octave: -1 | 0 | 1,
    couplers: readonly Coupler[],
    unisonOff?: boolean,
  ): PlacedPart;
  /** The first reading that asks the same of a part as this one. */
  light(part: number, reading: number): number;
  /** A placed part in the light of one reading, made once. */
  weighed(placed: PlacedPart, reading: number): WeighedPart;
}

/** A placed part in the light of one reading: the recipe, the rules that have a say, and what is settled. */
export interface WeighedPart {
  readonly placed: PlacedPart;
  readonly context: PartContext;
  readonly recipe: Recipe;
  readonly partRules: readonly PartRule[];
  /** Highest points that the part rules can give together. */
  readonly most: Points;
  /** Points of keyboard, octave and couplers; `null` when a rule forbids them. */
  readonly fix: Points | null;
}

const sortedOf = new WeakMap<readonly Rule[], SortedRules>();
function sorted(rules: readonly Rule[]): SortedRules {
  let known = sortedOf.get(rules);
  if (!known) {
    known = {
      part: rules.filter((rule) => rule.reads === "part"),
      pair: rules.filter((rule) => rule.reads === "pair"),
      placing: rules.filter((rule) => rule.reads === "placing"),
      advice: rules.filter((rule) => rule.reads === "advice"),
      steps: rules.filter((rule) => rule.reads === "steps"),
    };
    sortedOf.set(rules, known);
  }
  return known;
}

/** Costs of leaving the prescription in keyboards and couplers. */
const OTHER_KEYBOARD: Points = -100;
/** More than the stops of another keyboard can make up for where the one prescribed lacks a reed. */
const NOT_THERE: Points = -1000;
const COUPLER_LEFT_OUT: Points = -200;
const COUPLER_BESIDE: Points = -200;
/** A coupler that the prescription allows without asking for it: the fewest means that do. */
const COUPLER_ALLOWED: Points = -25;

/** Whether a coupler is the one that a prescription speaks of. */
export const isPrescribed = (
  coupler: Coupler,
  asked: PrescribedCoupler,
  kindsOf: ReadonlyMap<string, ReadonlySet<DivisionKind>>,
): boolean =>
  coupler.pitch === asked.pitch &&
  (asked.from === "any-other" || kindsOf.get(coupler.from)?.has(asked.from) === true) &&
  (asked.to === "any-other" || kindsOf.get(coupler.to)?.has(asked.to) === true);

/** Keyboards that a part may be played on: feet play the pedal, or a manual where there is none that is long enough. */
export function keyboardsFor({ instrument, section }: Problem, index: number): readonly Division[] {
  const part = section.parts[index];
  const pedals = part?.hands === "feet" ? pedalsFor(instrument, part) : [];
  return pedals.length > 0 ? pedals : instrument.divisions.filter((division) => division.kind === "manual");
}

/** What the prescription says of where a part is played: each deviation with its cost, for points and for words. */
export function placingDeviations(
  reading: Reading,
  placed: PlacedPart,
  kindsOf: ReadonlyMap<string, ReadonlySet<DivisionKind>>,
): readonly {
  readonly points: Points;
  readonly what: "keyboard" | "left-out" | "beside" | "allowed";
  readonly about: string;
  /** The coupler left out. */
  readonly asked?: PrescribedCoupler;
}[] {
  const recipes = reading.recipes.get(placed.part.id);
  const { prescription } = reading;
  if (!prescription || !recipes) return [];
  const found: {
    points: Points;
    what: "keyboard" | "left-out" | "beside" | "allowed";
    about: string;
    asked?: PrescribedCoupler;
  }[] = [];
  const own = kindsOf.get(placed.keyboard.name) ?? new Set();
  // What a recipe adds on a second keyboard if it is coupled is no reason to play on that one.
  const needed = recipes.filter((each) => !each.prescribed.optional);
  const at = (needed.length > 0 ? needed : recipes).map((each) => each.prescribed.keyboard);
  if (!at.some((kind) => kind === "any-other" || own.has(kind as DivisionKind))) {
    const points = recipes.some((each) => each.prescribed.onlyThere) ? NOT_THERE : OTHER_KEYBOARD;
    found.push({ points, what: "keyboard", about: at[0] as string });
  }
  for (const asked of prescription.couplers) {
    if (asked.to !== "any-other" && !own.has(asked.to as DivisionKind)) continue;
    if (placed.reach.some((each) => each.couplers.some((one) => isPrescribed(one, asked, kindsOf)))) continue;
    found.push({ points: COUPLER_LEFT_OUT, what: "left-out", about: `${asked.from} to ${asked.to}`, asked });
  }
  for (const coupler of placed.couplers) {
    if (prescription.couplers.some((asked) => isPrescribed(coupler, asked, kindsOf))) continue;
    const allowed = prescription.couplersMay?.some((asked) => isPrescribed(coupler, asked, kindsOf)) === true;
    found.push({
      points: allowed ? COUPLER_ALLOWED : COUPLER_BESIDE,
      what: allowed ? "allowed" : "beside",
      about: coupler.name,
    });
  }
  return found;
}

const askedOf = new WeakMap<PrescribedPart, string>();
/** One text for parts of prescriptions that ask for the same. */
function askedText(prescribed: PrescribedPart): string {
  let text = askedOf.get(prescribed);
  if (text === undefined) {
    text = JSON.stringify({ ...prescribed, note: "" });
    askedOf.set(prescribed, text);
  }
  return text;
}

const meansOf = new WeakMap<Prescription, string>();
/** One text for prescriptions that say the same of tremulant and couplers. */
function meansText(prescription: Prescription): string {
  let text = meansOf.get(prescription);
  if (text === undefined) {
    const { tremulant, couplers, couplersMay = [] } = prescription;
    text = JSON.stringify([tremulant, couplers, couplersMay]);
    meansOf.set(prescription, text);
  }
  return text;
}

/** One text for all that is asked of a part. */
const recipesText = (recipes: readonly PartRecipe[]): string =>
  recipes.map(({ share, prescribed }) => `${share} ${askedText(prescribed)}`).join();

/**
 * For each part, by reading: the first reading that asks the same of it. Ways of one texture often differ in the solo
 * only; what is reckoned for the other parts then serves them all.
 */
function lightsOf(readings: readonly Reading[], section: Section): readonly (readonly number[])[] {
  return section.parts.map((part) => {
    const seen = new Map<string, number>();
    return readings.map(({ prescription, recipes }, index) => {
      const asked = recipesText(recipes.get(part.id) ?? []);
      const key = `${asked} ${prescription ? meansText(prescription) : "-"}`;
      if (!seen.has(key)) seen.set(key, index);
      return seen.get(key) as number;
    });
  });
}

const fullest = new WeakMap<Seat, Phons>();
/** Strength of everything that sounds at a placed part, boxes open. Reckoned when a rule first asks. */
function fullestOf(placed: PlacedPart, shared: ReadonlyMap<string, number>, divisions: readonly Division[]): Phons {
  let phons = fullest.get(placed.seat);
  if (phons === undefined) {
    const stops = divisions.flatMap((division) => division.stops).filter((stop) => !stop.off);
    const blends = stops.flatMap((stop) => voicesOf({ shared }, placed, stop)?.[0].blend ?? []);
    phons = strengthOf(Blend.of(blends));
    fullest.set(placed.seat, phons);
  }
  return phons;
}

/**
 * Makes a section ready to be judged on an instrument.
 *
 * @param prescriptions the recipes that serve the section (`prescriptionsFor`), in order of print.
 */
export function problemOf(
  instrument: Instrument,
  section: Section,
  prescriptions: readonly Prescription[],
  standIns: readonly StandIn[],
  rules: readonly Rule[],
): Problem {
  const readings = [...prescriptions, null].map((each) => readingOf(each, section.parts));
  const facts: SectionFacts = {
    texture: section.texture,
    tradition: section.tradition,
    dynamic: section.dynamic,
    tempo: section.tempo,
    roles: new Set(section.parts.map((part) => part.role)),
    feet: section.parts.some((part) => part.hands === "feet"),
  };
  const shared = sharedRanks(instrument);
  const kindsOf = divisionKinds(instrument);
  const ruleSets = sorted(rules);
  const placedParts = new Map<string, PlacedPart>();
  const weighedParts = new Map<PlacedPart, (WeighedPart | undefined)[]>();
  const lights = lightsOf(readings, section);
  const tremulants = new Set(instrument.tremulants);

  const followed = section.parts.map((part) =>
    ruleSets.part.some((rule) => rule.listens?.({ part, section: facts }) === true),
  );

  const problem: Problem = {
    instrument,
    section,
    facts,
    readings,
    rules: ruleSets,
    shared,
    kindsOf,
    standIns,
    stops: instrument.divisions.flatMap((division) => division.stops),
    place: (index, keyboard, octave, couplers, unisonOff = false) => {
      const key = `${index}|${keyboard.name}|${octave}|${unisonOff}|${couplers.map((each) => each.name).join("|")}`;
      let placed = placedParts.get(key);
      if (!placed) {
        placed = placePart(
          instrument,
          section.parts[index] as (typeof section.parts)[number],
          keyboard,
          octave,
          couplers,
          unisonOff,
          followed[index],
        );
        placedParts.set(key, placed);
      }
      return placed;
    },
    light: (part, reading) => (lights[part] as readonly number[])[reading] as number,
    weighed: (placed, reading) => {
      const at = (lights[section.parts.indexOf(placed.part)] as readonly number[])[reading] as number;
      let row = weighedParts.get(placed);
      if (!row) {
        row = [];
        weighedParts.set(placed, row);
      }
      const known = row[at];
      if (known) return known;
      const light = readings[at] as Reading;
      const recipes = light.recipes.get(placed.part.id) ?? [];
      const divisions = [...new Set(placed.reach.map((each) => each.division))];
      // Some rules ask for them at every set of stops.
      let zones: number | undefined;
      const context: PartContext = {
        instrument,
        section: facts,
        part: placed.played,
        keyboard: placed.keyboard,
        octave: placed.octave,
        couplers: placed.couplers,
        unisonOff: placed.unisonOff,
        reach: divisions,
        get zones() {
          zones ??= placed.zones.all;
          return zones;
        },
        keysIn: placed.keysIn,
        prescription: light.prescription,
        prescribed: recipes[0]?.prescribed ?? null,
        canShake: tremulants.has("all") || divisions.some((each) => tremulants.has(each.name)),
        canShade: divisions.some((each) => each.box !== null),
        get fullest() {
          return fullestOf(placed, shared, divisions);
        },
      };
      const partRules = ruleSets.part.filter((rule) => rule.applies(context));
      let fix: Points | null = placingDeviations(light, placed, kindsOf).reduce((sum, each) => sum + each.points, 0);
      for (const rule of ruleSets.placing) {
        if (rule.forbids?.(context)) {
          fix = null;
          break;
        }
        fix += rule.weigh(context);
      }
      // The recipe is dear to make ready and most placings are given up before it is looked at.
      let recipe: Recipe | undefined;
      const weighed: WeighedPart = {
        placed,
        context,
        get recipe() {
          recipe ??= recipeOf(instrument, recipes, recipesText(recipes), placed, kindsOf, standIns);
          return recipe;
        },
        partRules,
        most: partRules.reduce((sum, rule) => sum + rule.most(context), 0),
        fix,
      };
      row[at] = weighed;
      return weighed;
    },
  };
  return problem;
}
