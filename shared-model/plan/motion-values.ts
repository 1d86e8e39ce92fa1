/**
 * How long hands and feet take, and how far things lie apart: every number of the time model, with where it comes from.
 *
 * `read`: seen in the source named. `memory`: known from the literature, not seen. `own`: our own setting, to be measured at
 * the console and changed there; never to be shown as a published value. Times are in TMU, the unit of the source: 0.036 s.
 * They are predictions for a trained person at a steady pace, not measurements of organists.
 */
export type Origin = "read" | "memory" | "own";

/** One value with its origin. */
export interface MotionValue {
  readonly value: number;
  readonly unit: "TMU" | "cm" | "s" | "factor" | "beats";
  readonly origin: Origin;
  /** Where it stands, or in a few words why it is so. */
  readonly note: string;
}

const TABLES = "MTM-1 tables of motion times, two printed copies that agree";
const CARD = "MTM-1 data card, 2019";

/** Seconds of one time unit, from the data card. */
export const TMU_SECONDS = 0.036;
/** Centimetres of an inch: the tables count in inches. */
export const INCH_CM = 2.54;

/** Table points of the distance, in inches; below the first the time is that of the first. Read in the tables. */
export const INCHES = [0.75, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30] as const;

/** A row of the tables: times at {@link INCHES} and what each further inch adds. Read in the tables. */
export interface MotionRow {
  readonly tmu: readonly number[];
  readonly beyond: number;
}

/**
 * Reaching to a fixed place (A), to a single thing whose place varies a little (B), among others (C), out of the way (E);
 * moving a thing against its end (A) or to about a place (B).
 */
export const MOTIONS = {
  reachA: {
    tmu: [
      2.0, 2.5, 4.0, 5.3, 6.1, 6.5, 7.0, 7.4, 7.9, 8.3, 8.7, 9.6, 10.5, 11.4, 12.3, 13.1, 14.0, 14.9, 15.8, 16.7, 17.5,
    ],
    beyond: 0.4,
  },
  reachB: {
    tmu: [
      2.0, 2.5, 4.0, 5.3, 6.4, 7.8, 8.6, 9.3, 10.1, 10.8, 11.5, 12.9, 14.4, 15.8, 17.2, 18.6, 20.1, 21.5, 22.9, 24.4,
      25.8,
    ],
    beyond: 0.7,
  },
  moveA: {
    tmu: [
      2.0, 2.5, 3.6, 4.9, 6.1, 7.3, 8.1, 8.9, 9.7, 10.5, 11.3, 12.9, 14.4, 16.0, 17.6, 19.2, 20.8, 22.4, 24.0, 25.5,
      27.1,
    ],
    beyond: 0.8,
  },
} as const satisfies Readonly<Record<string, MotionRow>>;
export type Motion = keyof typeof MOTIONS;

/** Short motions. */
export const SHORT = {
  grasp: { value: 2.0, unit: "TMU", origin: "read", note: "easy grasp; MTM-1 tables 14.4" },
  release: { value: 2.0, unit: "TMU", origin: "memory", note: "release by opening the fingers" },
  look: { value: 7.3, unit: "TMU", origin: "read", note: "eye focus on a label; never combines with another" },
  tab: { value: 2.0, unit: "TMU", origin: "read", note: "a tab is pressed by contact" },
  press: { value: 2.0, unit: "TMU", origin: "read", note: "a piston is pressed by contact and let go" },
  ankle: { value: 8.5, unit: "TMU", origin: "read", note: `${CARD}: foot at the ankle, up to 10 cm` },
  heavyFoot: { value: 19.1, unit: "TMU", origin: "read", note: `${CARD}: foot with heavy pressure` },
  leg: { value: 7.1, unit: "TMU", origin: "read", note: `${CARD}: leg up to 15 cm` },
  legFurther: { value: 0.5, unit: "TMU", origin: "read", note: `${CARD}: leg, each further cm` },
  turn: { value: 18.6, unit: "TMU", origin: "read", note: `${CARD}: turn of the body, first foot` },
  bodyTurn: { value: 37.2, unit: "TMU", origin: "read", note: `${CARD}: turn of the body, both feet` },
  pace: { value: 15.0, unit: "TMU", origin: "memory", note: "walking, one pace" },
  loadFactor: { value: 1.06, unit: "factor", origin: "read", note: `${TABLES}: moving under a load up to 33 N` },
  loadConstant: { value: 2.2, unit: "TMU", origin: "read", note: `${TABLES}: moving under a load up to 33 N` },
} as const satisfies Readonly<Record<string, MotionValue>>;

/** Distances at the console. No standard found states them: measure yours. */
export const DISTANCES = {
  keysToBlock: { value: 45, unit: "cm", origin: "own", note: "from the keys to the nearest knobs" },
  farJamb: { value: 30, unit: "cm", origin: "own", note: "further to the knobs at the other hand's side" },
  knobPitch: { value: 7, unit: "cm", origin: "own", note: "knob to knob" },
  blockToBlock: { value: 22, unit: "cm", origin: "own", note: "division to division in one jamb" },
  jambToJamb: { value: 110, unit: "cm", origin: "own", note: "jamb to jamb" },
  travelElectric: { value: 2.5, unit: "cm", origin: "own", note: "travel of an electric knob" },
  travelMechanical: { value: 7, unit: "cm", origin: "own", note: "travel of a mechanical knob" },
  pistonSame: { value: 6, unit: "cm", origin: "own", note: "thumb to a piston of its own slip" },
  pistonNext: { value: 14, unit: "cm", origin: "own", note: "thumb to a piston of the next slip" },
  pistonFar: { value: 30, unit: "cm", origin: "own", note: "thumb to the far end of a slip" },
  toeNear: { value: 15, unit: "cm", origin: "own", note: "foot to a near toe stud" },
  toeFar: { value: 35, unit: "cm", origin: "own", note: "foot to a far toe stud" },
  hitch: { value: 25, unit: "cm", origin: "own", note: "foot to a hitch-down pedal" },
  shoe: { value: 20, unit: "cm", origin: "own", note: "foot to a swell shoe" },
  tabs: { value: 25, unit: "cm", origin: "own", note: "keys to tabs over the top manual" },
  tabPitch: { value: 2.5, unit: "cm", origin: "own", note: "tab to tab" },
  manualUp: { value: 6.35, unit: "cm", origin: "read", note: "manual above manual; AGO measures" },
  manualBack: { value: 10.8, unit: "cm", origin: "read", note: "manual behind manual; AGO measures" },
  octave: { value: 16.4, unit: "cm", origin: "read", note: "seven naturals" },
} as const satisfies Readonly<Record<string, MotionValue>>;
export type Distance = keyof typeof DISTANCES;

/** What a pace multiplies every time by. */
export const PACE_FACTORS = { brisk: 0.8, normal: 1.0, careful: 1.25 } as const;

/** What the music leaves, and when a change counts as what. */
export const MUSIC_VALUES = {
  articulation: {
    value: 0.2,
    unit: "s",
    origin: "memory",
    note: "between two sections that follow at once: 0.1 to 0.3",
  },
  thumb: { value: 1, unit: "beats", origin: "own", note: "a thumb can be spared for so long before a change" },
  foot: { value: 2, unit: "beats", origin: "own", note: "of two feet one can be spared for so long" },
  assumedRest: { value: 2, unit: "beats", origin: "memory", note: "where nothing is said; between verses 2 to 4" },
  slow: { value: 60, unit: "beats", origin: "memory", note: "beats a minute of slow: Adagio" },
  moderate: { value: 96, unit: "beats", origin: "memory", note: "beats a minute of moderate: Moderato" },
  fast: { value: 126, unit: "beats", origin: "memory", note: "beats a minute of fast: Allegro" },
  unsaid: { value: 76, unit: "beats", origin: "memory", note: "beats a minute where nothing is said: Andante" },
  leaveEarly: {
    value: 0.2,
    unit: "s",
    origin: "own",
    note: "a hand that goes elsewhere leaves its last note so early",
  },
  assistantEarly: {
    value: 0.5,
    unit: "s",
    origin: "own",
    note: "an assistant who reads along may move so much round the beat",
  },
  unknownSection: { value: 20, unit: "s", origin: "own", note: "a section whose length is not known lasts this long" },
  pageTurn: { value: 1.9, unit: "s", origin: "own", note: "one hand turns a page; reckoned from the tables" },
  walkRound: { value: 5.92, unit: "s", origin: "own", note: "an assistant goes round the bench: six paces, two turns" },
  comfortable: {
    value: 1.5,
    unit: "factor",
    origin: "own",
    note: "time there is over time needed: nothing is gained above",
  },
  easy: { value: 1.2, unit: "factor", origin: "own", note: "from here on a change is easy" },
  brisk: { value: 0.8, unit: "factor", origin: "own", note: "from here on it can be done at a brisk pace" },
} as const satisfies Readonly<Record<string, MotionValue>>;
