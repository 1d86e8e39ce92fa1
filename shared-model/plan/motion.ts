import {
  DISTANCES,
  type Distance,
  INCH_CM,
  INCHES,
  MOTIONS,
  type Motion,
  type MotionRow,
  SHORT,
  TMU_SECONDS,
} from "./motion-values.ts";

/** Distances in centimetres; those of the trade's usual console unless a person has measured others. */
export type Distances = Readonly<Record<Distance, number>>;

/** The distances that hold where nobody has measured. */
export const USUAL_DISTANCES: Distances = Object.fromEntries(
  Object.entries(DISTANCES).map(([name, { value }]) => [name, value]),
) as Distances;

/** How stops are moved: light electric knobs, heavier mechanical ones, or tabs. */
export type KnobAction = "electric" | "mechanical" | "tabs";

const row = (motion: Motion): MotionRow => MOTIONS[motion];

/** Time units of a motion over a distance in cm: by the tables, straight lines between their points. */
export function motionTime(motion: Motion, cm: number): number {
  const { tmu, beyond } = row(motion);
  const inches = cm / INCH_CM;
  const last = INCHES.length - 1;
  if (inches <= INCHES[0]) return tmu[0] as number;
  if (inches >= (INCHES[last] as number)) return (tmu[last] as number) + beyond * (inches - (INCHES[last] as number));
  const at = INCHES.findIndex((point) => point >= inches);
  const [low, high] = [INCHES[at - 1] as number, INCHES[at] as number];
  const [from, to] = [tmu[at - 1] as number, tmu[at] as number];
  return from + ((to - from) * (inches - low)) / (high - low);
}

/** Time units of moving a leg over a distance in cm. */
export const legTime = (cm: number): number => SHORT.leg.value + SHORT.legFurther.value * Math.max(0, cm - 15);

/** What is done to a knob. */
export type Act = "draw" | "cancel";

/** Time units of drawing or cancelling one knob, the hand being there. */
export function actTime(act: Act, action: KnobAction, distances: Distances): number {
  if (action === "tabs") return SHORT.tab.value;
  const travel = action === "electric" ? distances.travelElectric : distances.travelMechanical;
  const plain = motionTime("moveA", travel);
  const moved = action === "electric" ? plain : plain * SHORT.loadFactor.value + SHORT.loadConstant.value;
  return act === "cancel" ? moved : SHORT.grasp.value + moved + SHORT.release.value;
}

/** Knobs that stand together, in the order in which a hand comes to them. */
export interface KnobRow {
  /** How far its first knob lies from the last one of the row before, or from the keys, in cm. */
  readonly away: number;
  readonly draws: number;
  readonly cancels: number;
}

/** Time units of drawing and of cancelling one knob. */
export type ActTimes = Readonly<Record<Act, number>>;

/**
 * Time units of one hand's way: from the keys over rows of knobs and back (`back` in cm). `reads`: every further label must
 * be read; the first look hides in the first reach.
 */
export function handTime(
  rows: readonly KnobRow[],
  back: number,
  acts: ActTimes,
  reads: boolean,
  distances: Distances,
): number {
  let knobs = 0;
  let tmu = 0;
  for (const { away, draws, cancels } of rows) {
    const count = draws + cancels;
    if (count === 0) continue;
    knobs += count;
    tmu += motionTime("reachB", away) + draws * acts.draw + cancels * acts.cancel;
    if (count > 1) tmu += (count - 1) * motionTime("reachB", distances.knobPitch);
  }
  if (knobs === 0) return 0;
  return tmu + motionTime("reachB", back) + (reads ? (knobs - 1) * SHORT.look.value : 0);
}

/** One knob under a waiting hand: what is done, and how far it lies from the one before, in cm. */
export interface Visit {
  readonly act: Act;
  readonly away: number;
}

/** Time units of an assistant's hand that waits on its first knob, until the last one acts. */
export function waitingTime(visits: readonly Visit[], action: KnobAction, distances: Distances): number {
  return visits.reduce((sum, { act, away }, index) => {
    const done = actTime(act, action, distances);
    if (index > 0) return sum + motionTime("reachB", away) + done;
    return sum + (act === "draw" && action !== "tabs" ? done - SHORT.grasp.value : done);
  }, 0);
}

/** Time units of single means: `whole` until the limb is back, `sound` until it acts. */
export function meansTime(
  means: SingleMeans,
  distances: Distances,
): { readonly whole: number; readonly sound: number } {
  const thumb = (cm: number, reach: Motion = "reachB") => {
    const way = motionTime(reach, cm);
    return { whole: 2 * way + SHORT.press.value, sound: way + SHORT.press.value };
  };
  const foot = (cm: number, press: number) => ({ whole: 2 * legTime(cm) + press, sound: legTime(cm) + press });
  switch (means) {
    case "piston-same":
      return thumb(distances.pistonSame, "reachA");
    case "piston-next":
      return thumb(distances.pistonNext);
    case "piston-far":
      return thumb(distances.pistonFar);
    case "toe-near":
      return foot(distances.toeNear, SHORT.ankle.value);
    case "toe-far":
      return foot(distances.toeFar, SHORT.ankle.value);
    case "hitch-down":
      return foot(distances.hitch, SHORT.heavyFoot.value);
    case "swell-shoe":
      return foot(distances.shoe, SHORT.ankle.value);
  }
}
export type SingleMeans =
  | "piston-same"
  | "piston-next"
  | "piston-far"
  | "toe-near"
  | "toe-far"
  | "hitch-down"
  | "swell-shoe";

/** Seconds of a number of time units at a pace (its factor). */
export const secondsOf = (tmu: number, pace = 1): number => tmu * TMU_SECONDS * pace;

/** Seconds of beats in a tempo. */
export const beatSeconds = (beats: number, bpm: number): number => (beats * 60) / bpm;
