import { type JudgedPart, type Judgement, scoreInLight, scoreOf } from "../judging/judge.ts";
import { prepare } from "../judging/prepare.ts";
import type { Problem } from "../judging/problem.ts";
import { sectionOf } from "../music/section.ts";
import type { Part, Section, Texture, Tradition } from "../music/texture.ts";
import { texturesOf } from "../music/textures/catalogue.ts";
import { type Lacking, lackingOf } from "../propose/lacking.ts";
import { isLadder, ladder } from "../propose/ladder.ts";
import { missingMeans } from "../propose/missing.ts";
import { isProposable } from "../propose/state-space.ts";
import { partName } from "../rules/balance.ts";
import { RULES } from "../rules/index.ts";
import { oneKeyboardOneSound } from "../rules/one-keyboard-one-sound.ts";
import { joined, type PairRule, type Points } from "../rules/rule.ts";
import type { Instrument } from "../stoplist/instrument.ts";
import { type Best, bestFrom } from "./patient-search.ts";

/** How an organ serves a texture, best first. */
export const LEVELS = ["well", "compromise", "not-possible"] as const;
export type Level = (typeof LEVELS)[number];

/**
 * What the best registration must be worth, of the 6000 hundredths that a recipe kept to the last stop earns: five sixths
 * to serve well, three fifths to serve at all. Below that what the music is about is missing: an elevation without its
 * beating rank keeps half of its recipe. Common practice knows no such numbers; they were set by looking at the demo organs.
 */
const WORTH: Readonly<Record<Exclude<Level, "not-possible">, Points>> = { well: 5000, compromise: 3600 };

/** Whatever is worth anything. */
const ANY: Points = 0;

/** How many things must join a crescendo, a stop or the opening of a box each, for the same. */
const GROWTH: Readonly<Record<Exclude<Level, "not-possible">, number>> = { well: 12, compromise: 5 };

/** What an organ can do of one texture in one school. */
export interface SurveyedTexture {
  readonly tradition: Tradition;
  readonly texture: Texture;
  readonly level: Level;
  /** The best registration in short; `null` where nothing serves. */
  readonly label: string | null;
  /** In hundredths of a point; `null` where nothing serves, and for a crescendo. */
  readonly score: Points | null;
  /** What the recipe of the best registration, or the nearest recipe, asks for and the organ has not. */
  readonly lacking: readonly Lacking[];
  /** The compromise, or why nothing serves, a sentence each; empty where the organ serves well. */
  readonly why: readonly string[];
  /** Whether it is known that nothing is better; else too many registrations were equally poor to look at them all. */
  readonly exact: boolean;
  /**
   * The nearest way round where nothing serves: the texture of any school that has the same shape, served or with the best
   * there is; this texture itself with the best there is where no stop is missing, or where it has no such shape.
   */
  readonly instead: { readonly texture: Texture; readonly label: string } | null;
}

export interface SurveyOptions {
  /** The schools to look at, in order. */
  readonly traditions: readonly Tradition[];
  /** What a musician calls a registration. */
  labelOf(problem: Problem, parts: readonly JudgedPart[]): string;
}

/** What is known after each texture. */
export interface SurveyStep {
  readonly done: number;
  readonly of: number;
  readonly surveyed: SurveyedTexture;
  /** Whether it is the last of its school. */
  readonly last: boolean;
}

/**
 * On one manual a piece for two may have to be played all the same, so there the rule only costs. To say that an organ serves
 * a solo, a trio or an echo of which nothing is heard apart would be untrue.
 */
const apartOrNot: PairRule = {
  ...oneKeyboardOneSound,
  forbids: (one, other, first, second) =>
    oneKeyboardOneSound.forbids?.(one, other, first, second) === true ||
    oneKeyboardOneSound.weigh(one, other, first, second) < 0,
};

/** The rules as a survey judges by them: parts that are to differ are heard apart, or the section is not served. */
const HEARD_APART = RULES.map((rule) => (rule === oneKeyboardOneSound ? apartOrNot : rule));

/** The rules that forbid and no other: the best score is then how near the organ can come to the recipe itself. */
const RECIPE_ALONE = HEARD_APART.filter(
  (rule) => (rule.reads === "part" || rule.reads === "pair" || rule.reads === "placing") && rule.forbids,
);

/**
 * The level of a texture whose best registration is known. Both its score and the nearness to the recipe are the highest
 * that the organ can reach, so one more stop never makes a level worse.
 */
function levelOf({ instrument, section }: Problem, { judgement, state, placings }: Best, exact: boolean): Level {
  const recipeAlone = prepare(instrument, section, RECIPE_ALONE);
  // Mostly the recipe in whose light it is best is near enough, and the others need not be looked at.
  const inLight = scoreInLight(recipeAlone, state, placings, judgement.reading) ?? 0;
  const isNear = (least: Points): boolean =>
    inLight >= least ||
    (scoreOf(recipeAlone, state, placings)?.score ?? 0) >= least ||
    (exact && bestFrom(recipeAlone, least).best !== null);
  if (judgement.score >= WORTH.well && isNear(WORTH.well)) return "well";
  return isNear(WORTH.compromise) ? "compromise" : "not-possible";
}

/** What the recipe that comes off best lacks; the first in print of those that lack equally much. */
function nearestLacking(problem: Problem): readonly Lacking[] {
  const each = problem.readings.flatMap(({ prescription }, reading) =>
    prescription ? [lackingOf(problem, { prescription, reading })] : [],
  );
  return (
    each.reduce<readonly Lacking[] | null>((best, next) => (best && best.length <= next.length ? best : next), null) ??
    []
  );
}

/** What no stop could mend: nothing under the hands that sounds, or no pedal for a tune in the feet. */
function beyondStops({ instrument, section }: Pick<Problem, "instrument" | "section">): string | null {
  const wanted = section.parts.filter(({ optional }) => !optional);
  const manuals = instrument.divisions.filter(({ kind }) => kind === "manual");
  if (wanted.some(({ hands }) => hands !== "feet")) {
    if (manuals.length === 0) return "there is no keyboard for the hands";
    const sounding = instrument.divisions.filter(({ kind }) => kind !== "pedal").flatMap(({ stops }) => stops);
    if (!sounding.some(isProposable)) return "no stop for the hands can be drawn";
  }
  const inFeet = wanted.find(({ hands, role }) => hands === "feet" && role !== "bass");
  if (inFeet && !instrument.divisions.some(({ kind }) => kind === "pedal"))
    return `there is no pedal for the ${partName({ part: inFeet })}`;
  return null;
}

/** How many keyboards the hands need at once. */
function keyboardsNeeded(parts: readonly Part[]): number {
  const apart: Part[] = [];
  for (const part of parts.filter((each) => !each.optional && each.hands !== "feet")) {
    if (apart.every((other) => other.apartFrom.includes(part.id) || part.apartFrom.includes(other.id)))
      apart.push(part);
  }
  return Math.max(1, apart.length);
}

/** The dearest things that the conventions or the recipe hold against a registration. */
const dearest = ({ reasons }: Judgement, most = 1): readonly string[] =>
  reasons
    .filter((each) => each.points < 0)
    .toSorted((a, b) => a.points - b.points)
    .slice(0, most)
    .map((each) => each.text);

/** `oboe 8 and principal 8`: stops that stand in together. */
const together = (way: string): string => joined(way.split(" with "));

/** `no trumpet 8 for the melody: oboe 8 and principal 8 can stand in`. */
const lackWords = ({ who, what, way }: Lacking): string =>
  `no ${what} for the ${who}${way === null ? "" : `: ${together(way)} can stand in`}`;

/** The same where nothing serves, stand-ins or not: `no trumpet 8 for the melody, only oboe 8 and principal 8`. */
const lackAllTheSame = ({ who, what, way }: Lacking): string =>
  `no ${what} for the ${who}${way === null ? "" : `, only ${together(way)}`}`;

/** What the hands lack when they need more keyboards than there are, as something to be missed beside stops; `null` for nothing. */
function keyboardLacking({ instrument, section }: Problem): { readonly lack: Lacking; readonly words: string } | null {
  const manuals = instrument.divisions.filter((each) => each.kind === "manual").length;
  const needed = keyboardsNeeded(section.parts);
  if (manuals >= needed) return null;
  return {
    lack: { who: "hands", what: needed === 2 ? "second keyboard" : "third keyboard", way: null },
    words: `the hands need ${needed} keyboards, of which there ${manuals === 1 ? "is" : "are"} ${manuals}`,
  };
}

/** A texture for which nothing serves. */
function notServed(problem: Problem, exact: boolean): Served {
  const lacking = nearestLacking(problem);
  const few = keyboardLacking(problem);
  const lacks = [...(few ? [few.words] : []), ...lacking.map(lackAllTheSame)];
  const why = lacks.length > 0 ? lacks : heldAgainst(problem);
  return {
    level: "not-possible",
    label: null,
    score: null,
    lacking: few ? [few.lack, ...lacking] : lacking,
    why,
    exact,
  };
}

/** What is held against the best there is, where nothing is lacking that a recipe asks for. */
function heldAgainst(problem: Problem): readonly string[] {
  const { best } = bestFrom(problem, ANY);
  const against = best ? dearest(best.judgement, 2) : [];
  return against.length > 0 ? against : missingMeans(problem).map(({ text }) => text);
}

function ladderServed(problem: Problem, labelOf: SurveyOptions["labelOf"]): Served {
  const last = ladder(problem).at(-1);
  const opened = new Set(problem.instrument.divisions.flatMap(({ box }) => box ?? [])).size;
  const growth = last ? last.state.drawn.size + opened : 0;
  const level = growth >= GROWTH.well ? "well" : growth >= GROWTH.compromise ? "compromise" : "not-possible";
  const few = `only ${growth} ${growth === 1 ? "thing" : "things"} can join, a stop or the opening of a box each`;
  return {
    level,
    label: last && level !== "not-possible" ? labelOf(problem, last.judgement.parts) : null,
    score: null,
    lacking: [],
    why: level === "well" ? [] : [few],
    exact: true,
  };
}

/** How an organ serves a section: level, the best registration, and why it is not better. */
export type Served = Pick<SurveyedTexture, "level" | "label" | "score" | "lacking" | "why" | "exact">;

/** How well a section can be registered on its organ at all, whatever stood for it anywhere; not for one that grows. */
function servedBy(problem: Problem, labelOf: SurveyOptions["labelOf"]): Served {
  const { best, exact } = bestFrom(problem, WORTH.compromise);
  const level = best ? levelOf(problem, best, exact) : "not-possible";
  if (!best || level === "not-possible") return notServed(problem, exact);
  const { judgement } = best;
  const lacking = lackingOf(problem, judgement);
  const compromise = lacking.length > 0 ? lacking.map(lackWords) : dearest(judgement);
  return {
    level,
    label: labelOf(problem, judgement.parts),
    score: judgement.score,
    lacking,
    why: level === "well" ? [] : compromise,
    exact,
  };
}

/** As {@link servedBy}, of a section that grows too. */
export function sectionServed(instrument: Instrument, section: Section, labelOf: SurveyOptions["labelOf"]): Served {
  const beyond = beyondStops({ instrument, section });
  if (beyond !== null) {
    return { level: "not-possible", label: null, score: null, lacking: [], why: [beyond], exact: true };
  }
  return isLadder({ section })
    ? ladderServed(prepare(instrument, section), labelOf)
    : servedBy(prepare(instrument, section, HEARD_APART), labelOf);
}

/** The best there is for a section that nothing serves, as one who has to play it all the same would draw it. */
function allTheSame(instrument: Instrument, section: Section, labelOf: SurveyOptions["labelOf"]): string | null {
  if (isLadder({ section }) || beyondStops({ instrument, section }) !== null) return null;
  const problem = prepare(instrument, section);
  const { best } = bestFrom(problem, ANY);
  return best && labelOf(problem, best.judgement.parts);
}

function surveyTexture(
  instrument: Instrument,
  texture: Texture,
  tradition: Tradition,
  options: SurveyOptions,
): SurveyedTexture {
  const served = sectionServed(instrument, sectionOf(texture, { tradition }), options.labelOf);
  return { tradition, texture, ...served, instead: null };
}

/**
 * Surveys an organ texture by texture, so that a screen can show how far it is and stop when nobody waits any more. Levels
 * are absolute: they do not depend on what else the organ can do, and one more stop never makes one worse, unless it makes
 * another keyboard the main one, or the best was not found exactly (`exact`).
 */
export function* surveying(instrument: Instrument, options: SurveyOptions): Generator<SurveyStep, void> {
  const all = options.traditions.flatMap((tradition) =>
    texturesOf(tradition).map((texture, at, some) => ({ tradition, texture, last: at === some.length - 1 })),
  );
  const shapes = new Map(texturesOf("neutral").map((texture) => [texture.id, texture]));
  const known = new Map<string, SurveyedTexture>();
  const surveyed = (texture: Texture, tradition: Tradition): SurveyedTexture => {
    const key = `${tradition}/${texture.id}`;
    const found = known.get(key) ?? surveyTexture(instrument, texture, tradition, options);
    known.set(key, found);
    return found;
  };
  const looked = new Map<string, SurveyedTexture["instead"]>();
  const nearest = (texture: Texture, tradition: Tradition): SurveyedTexture["instead"] => {
    const key = `${tradition}/${texture.id}`;
    const found = looked.get(key);
    if (found !== undefined) return found;
    const label = allTheSame(instrument, sectionOf(texture, { tradition }), options.labelOf);
    const instead = label === null ? null : { texture, label };
    looked.set(key, instead);
    return instead;
  };
  let done = 0;
  for (const { texture, tradition, last } of all) {
    const one = surveyed(texture, tradition);
    const shape = one.level === "not-possible" ? shapes.get(texture.like ?? "") : undefined;
    const neutral = shape && surveyed(shape, "neutral");
    const serves = neutral && neutral.label !== null ? { texture: neutral.texture, label: neutral.label } : null;
    // Where no stop is missing, the texture's own music is nearer than another of its shape.
    const isOwnNearer = one.lacking.length === 0 || (serves === null && shape === undefined);
    const instead =
      one.level !== "not-possible"
        ? null
        : isOwnNearer
          ? (nearest(texture, tradition) ?? serves)
          : (serves ?? nearest(shape ?? texture, shape ? "neutral" : tradition));
    done += 1;
    yield { done, of: all.length, surveyed: { ...one, instead }, last };
  }
}

/** All textures of the schools, in the catalogue's order; as {@link surveying}. */
export const survey = (instrument: Instrument, options: SurveyOptions): readonly SurveyedTexture[] =>
  [...surveying(instrument, options)].map((step) => step.surveyed);
