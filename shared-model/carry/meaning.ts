import { type Phons, strengthOf } from "../acoustics/hearing.ts";
import type { PartSound } from "../acoustics/part-sound.ts";
import { countPitches, FIFTHS, lowestOf, type PitchSet, pitchBit, pitchesOf, THIRDS } from "../acoustics/pitch-set.ts";
import type { Placing } from "../console/state.ts";
import { pitchName } from "../pitch/reading.ts";
import { ratioTo } from "../rules/loudness-words.ts";
import type { Points } from "../rules/rule.ts";

/** What each part is played on and what is heard of it. */
export interface HeardPart {
  readonly placing: Placing;
  readonly sound: PartSound;
}

/**
 * What a piece is carried for: to be played there, or to be practised there for the organ that it comes from. Who practises
 * wants the hands where they will be and the keys to sound where they will; how it sounds otherwise counts for little.
 */
export const AIMS = ["playing", "practice"] as const;
export type Aim = (typeof AIMS)[number];

/** What a difference is about: where the hands are, which pitch a key gives, how it sounds, how the console is handled. */
export type Matter = "hands" | "pitch" | "sound" | "console";

/** One way in which a registration means something else than another. */
export interface MeaningDifference {
  /** `null` where it concerns the parts together. */
  readonly part: string | null;
  readonly text: string;
  /** 0 or more. */
  readonly points: Points;
  readonly about: Matter;
}

/** Points against each difference, in the coin of scores. Our own setting. */
const PLAYING = {
  rests: 1500,
  pitchLost: 600,
  pitchNew: 400,
  /** The longest pitch of a part is another one, beside what is lost and new. */
  ground: 0,
  family: 300,
  /** A tongue for a pipe with a lip, or the other way round: no other two families are heard as so unlike. */
  reed: 900,
  reedSort: 150,
  mixture: 600,
  compound: 100,
  /** The hands in another octave than they were. */
  octave: 300,
  tremulant: 250,
  box: 100,
  together: 400,
  /** Each phon by which two parts, or two sections, stand otherwise to each other than they did, beyond `FREE`. */
  phon: 40,
  reversed: 400,
};
type Prices = Readonly<Record<keyof typeof PLAYING, Points>>;
const PRICES: Readonly<Record<Aim, Prices>> = {
  playing: PLAYING,
  practice: {
    rests: 6000,
    pitchLost: 150,
    pitchNew: 100,
    ground: 1500,
    family: 75,
    reed: 150,
    reedSort: 25,
    mixture: 100,
    compound: 25,
    octave: 3000,
    tremulant: 50,
    box: 100,
    together: 6000,
    phon: 10,
    reversed: 100,
  },
};
/** Hundredths of a phon that nobody minds: half a step of the five strengths, about. */
const FREE: Phons = 200;
/** By so much one section is heard as louder than another. */
const LOUDER = 150;

const FAMILIES = ["principal", "flute", "string", "celeste", "reed"] as const;
const REED_SORTS = ["chorusReed", "soloReed", "shortReed"] as const;
const SORT_WORDS = { chorusReed: "a chorus reed", soloReed: "a solo reed", shortReed: "a short reed" } as const;

/** Pitches that are heard as such: of plain stops, and inside cornets and sesquialteras, but not inside mixtures. */
const voicesIn = ({ plain, compound, mixture }: PartSound): PitchSet => plain | (compound & ~mixture);

const listed = (words: readonly string[], last: "and" | "or"): string =>
  words.length < 2 ? (words[0] ?? "") : `${words.slice(0, -1).join(", ")} ${last} ${words.at(-1)}`;
const and = (words: readonly string[]): string => listed(words, "and");
const named = (set: PitchSet, last: "and" | "or"): string =>
  listed(
    pitchesOf(set).map((foot) => pitchName(foot)),
    last,
  );

const OCTAVE_WORDS = {
  [-1]: "played an octave lower",
  0: "played at its own pitch",
  1: "played an octave higher",
} as const;
const NO_TREMULANT = "without tremulant; there is none here";

type Said = Omit<MeaningDifference, "part">;

function pitchDifferences(one: PartSound, other: PartSound, cost: Prices): readonly Said[] {
  const lost = voicesIn(one) & ~voicesIn(other);
  const fresh = voicesIn(other) & ~voicesIn(one);
  const [ground, groundNow] = [lowestOf(voicesIn(one)), lowestOf(voicesIn(other))];
  const isMoved = cost.ground > 0 && ground !== groundNow && ground !== 0 && groundNow !== 0;
  return [
    ...(isMoved
      ? [
          {
            text: `built on ${named(groundNow, "and")} instead of ${named(ground, "and")}`,
            points: cost.ground,
            about: "pitch" as const,
          },
        ]
      : []),
    ...(lost
      ? [{ text: `no ${named(lost, "or")}`, points: countPitches(lost) * cost.pitchLost, about: "sound" as const }]
      : []),
    ...(fresh
      ? [
          {
            text: `${named(fresh, "and")} beside it`,
            points: countPitches(fresh) * cost.pitchNew,
            about: "sound" as const,
          },
        ]
      : []),
  ];
}

/** Pitches whose family is heard; a cornet is wide pipes, so all of its ranks count as flutes. */
const colouredIn = (sound: PartSound): PitchSet => (sound.cornets > 0 ? voicesIn(sound) : sound.plain);
const familyIn = (sound: PartSound, family: (typeof FAMILIES)[number]): PitchSet =>
  family === "flute" && sound.cornets > 0 ? sound.flute | (sound.compound & ~sound.mixture) : sound[family];

/** `flute instead of principal at 16`: what families are heard otherwise at one pitch; nothing where they are the same. */
function familiesAt(one: PartSound, other: PartSound, bit: PitchSet, pitch: string): readonly string[] {
  const gone = FAMILIES.filter((family) => familyIn(one, family) & ~familyIn(other, family) & bit);
  const come = FAMILIES.filter((family) => familyIn(other, family) & ~familyIn(one, family) & bit);
  if (gone.length === 0 && come.length === 0) return [];
  if (gone.length === 0) return [`${and(come)} too at ${pitch}`];
  return [
    come.length === 0 ? `no ${listed(gone, "or")} at ${pitch}` : `${and(come)} instead of ${and(gone)} at ${pitch}`,
  ];
}

function familyDifferences(one: PartSound, other: PartSound, prices: Prices): readonly Said[] {
  const both = colouredIn(one) & colouredIn(other);
  const less = FAMILIES.filter((family) => familyIn(one, family) & ~familyIn(other, family) & both);
  const more = FAMILIES.filter((family) => familyIn(other, family) & ~familyIn(one, family) & both);
  const cost = (families: readonly (typeof FAMILIES)[number][], a: PartSound, b: PartSound): number =>
    families.reduce(
      (sum, family) =>
        sum +
        (family === "reed" ? prices.reed : prices.family) *
          countPitches(familyIn(a, family) & ~familyIn(b, family) & both),
      0,
    );
  const points = Math.max(cost(less, one, other), cost(more, other, one));
  const isBoth = less.some((each) => more.includes(each));
  const words = isBoth
    ? pitchesOf(both).flatMap((foot) => familiesAt(one, other, pitchBit(foot), pitchName(foot)))
    : [...less.map((each) => `less ${each}`), ...more.map((each) => `more ${each}`)];
  const sorts = REED_SORTS.filter((sort) => other[sort] !== 0 && one[sort] === 0);
  const reeds = one.reed !== 0 && other.reed !== 0 && sorts.length > 0;
  return [
    ...(points > 0 ? [{ text: and(words), points, about: "sound" as const }] : []),
    ...(reeds
      ? [
          {
            text: `the reed is ${and(sorts.map((sort) => SORT_WORDS[sort]))}`,
            points: prices.reedSort,
            about: "sound" as const,
          },
        ]
      : []),
  ];
}

function otherDifferences(one: PartSound, other: PartSound, cost: Prices, shakes: boolean): readonly Said[] {
  const [had, has] = [one.mixtures > 0, other.mixtures > 0];
  const [hadOne, hasOne] = [one.cornets + one.tierceCompounds > 0, other.cornets + other.tierceCompounds > 0];
  const single = (voicesIn(other) & (FIFTHS | THIRDS)) !== 0;
  return [
    ...(had !== has
      ? [{ text: has ? "with a mixture" : "no mixture", points: cost.mixture, about: "sound" as const }]
      : []),
    ...(hadOne !== hasOne
      ? [
          {
            text: hasOne
              ? "its fifths and thirds on one knob"
              : single
                ? "its fifths and thirds from single ranks"
                : "no rank for its fifths and thirds",
            points: cost.compound,
            about: "sound" as const,
          },
        ]
      : []),
    ...(one.tremulant !== other.tremulant
      ? [
          {
            text: other.tremulant === 1 ? "with tremulant" : shakes ? "without tremulant" : NO_TREMULANT,
            points: cost.tremulant,
            about: "console" as const,
          },
        ]
      : []),
    ...(one.shut !== other.shut
      ? [
          {
            text: other.shut > one.shut ? "the box further shut" : "the box further open",
            points: cost.box,
            about: "console" as const,
          },
        ]
      : []),
  ];
}

const beyond = (difference: number, cost: Prices): Points =>
  Math.round((Math.max(0, Math.abs(difference) - FREE) / 100) * cost.phon);

function pairDifferences(
  [first, second]: readonly [HeardPart, HeardPart],
  [firstNow, secondNow]: readonly [HeardPart, HeardPart],
  cost: Prices,
): readonly Said[] {
  const together = first.placing.keyboard === second.placing.keyboard;
  const now = firstNow.placing.keyboard === secondNow.placing.keyboard;
  const who = `${first.placing.part} and ${second.placing.part}`;
  const over = (a: HeardPart, b: HeardPart): number => strengthOf(a.sound.blend) - strengthOf(b.sound.blend);
  const shift = over(firstNow, secondNow) - over(first, second);
  const points = beyond(shift, cost);
  return [
    ...(together !== now
      ? [
          {
            text: now ? `${who} on one keyboard` : `${who} on keyboards of their own`,
            points: cost.together,
            about: "hands" as const,
          },
        ]
      : []),
    ...(points > 0
      ? [
          {
            text: `the ${first.placing.part} ${ratioTo(shift, "before")} against the ${second.placing.part}`,
            points,
            about: "sound" as const,
          },
        ]
      : []),
  ];
}

/**
 * What a registration means otherwise than an earlier one of the same section: pitches lost and new, families, compounds,
 * tremulant, box, part by part; keyboards and balance, pair by pair. Empty when it means the same, whatever its stops are called.
 *
 * @param shakes whether the later organ has a tremulant at all; only the words ask.
 * @param aim what it is carried for: what counts, and how much.
 */
export function meaningDifferences(
  before: readonly HeardPart[],
  after: readonly HeardPart[],
  shakes = true,
  aim: Aim = "playing",
): readonly MeaningDifference[] {
  const cost = PRICES[aim];
  const differences: MeaningDifference[] = [];
  const kept: (readonly [HeardPart, HeardPart])[] = [];
  for (const one of before) {
    const { part } = one.placing;
    const other = after.find((each) => each.placing.part === part);
    if (!other) {
      differences.push({ part, text: "rests", points: cost.rests, about: "hands" });
      continue;
    }
    kept.push([one, other]);
    if (other.placing.octave !== one.placing.octave)
      differences.push({
        part,
        text: OCTAVE_WORDS[other.placing.octave],
        points: cost.octave,
        about: "hands",
      });
    for (const find of [pitchDifferences, familyDifferences, otherDifferences])
      differences.push(...find(one.sound, other.sound, cost, shakes).map((each) => ({ part, ...each })));
  }
  for (const { placing } of after)
    if (!before.some((each) => each.placing.part === placing.part))
      differences.push({
        part: placing.part,
        text: "plays, where it rested",
        points: cost.rests,
        about: "hands",
      });
  for (const [at, [one, oneNow]] of kept.entries())
    for (const [other, otherNow] of kept.slice(at + 1))
      differences.push(
        ...pairDifferences([one, other], [oneNow, otherNow], cost).map((each) => ({ part: null, ...each })),
      );
  return differences;
}

/** Points of all differences together. */
export const distanceOf = (before: readonly HeardPart[], after: readonly HeardPart[], aim: Aim = "playing"): Points =>
  meaningDifferences(before, after, true, aim).reduce((sum, each) => sum + each.points, 0);

/** Strength of the loudest part, in hundredths of a phon. */
export const loudestOf = (parts: readonly HeardPart[]): Phons =>
  parts.reduce((most, part) => Math.max(most, strengthOf(part.sound.blend)), 0);

/**
 * What a step in loudness from one section to the next says otherwise than it did; `null` where it says the same.
 *
 * @param before the step that was, in hundredths of a phon: positive where the later section is louder.
 */
export function stepDifference(before: number, after: number, aim: Aim = "playing"): MeaningDifference | null {
  const cost = PRICES[aim];
  const reversed = (before >= LOUDER && after < 0) || (before <= -LOUDER && after > 0);
  const points = beyond(after - before, cost) + (reversed ? cost.reversed : 0);
  if (points === 0) return null;
  const text = reversed
    ? `it is ${after > 0 ? "louder" : "softer"} than the section before, where it was ${before > 0 ? "louder" : "softer"}`
    : `against the section before it is ${ratioTo(after - before, "it was")}`;
  return { part: null, text, points, about: "sound" };
}

const FACTS = [
  "stops",
  "plain",
  "principal",
  "flute",
  "string",
  "celeste",
  "chorusReed",
  "soloReed",
  "shortReed",
] as const;
const MORE_FACTS = ["compound", "mixtures", "cornets", "short", "kindsLow", "kindsHigh", "tremulant", "shut"] as const;

/** Whether every part sounds the same in all that rules read of it. */
export const soundsAlike = (before: readonly HeardPart[], after: readonly HeardPart[]): boolean =>
  before.length === after.length &&
  before.every((one) => {
    const other = after.find((each) => each.placing.part === one.placing.part);
    return (
      other !== undefined &&
      strengthOf(one.sound.blend) === strengthOf(other.sound.blend) &&
      [...FACTS, ...MORE_FACTS].every((fact) => one.sound[fact] === other.sound[fact])
    );
  });
