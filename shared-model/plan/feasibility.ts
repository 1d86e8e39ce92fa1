import type { Division } from "../stoplist/instrument.ts";
import type { Difference } from "./changes.ts";
import type { ConsoleLayout, Jamb } from "./console-layout.ts";
import type { Crew, Handling } from "./crew.ts";
import { handle, pressing } from "./hands.ts";
import { MUSIC_VALUES } from "./motion-values.ts";
import type { TimeLeft } from "./time-left.ts";

/** How a change goes: `impossible` means not possible as written, whoever helps. */
export const VERDICTS = ["easy", "brisk", "needs-assistant", "impossible"] as const;
export type Verdict = (typeof VERDICTS)[number];

/** What a verdict says, in the middle of a sentence. */
export const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  easy: "easy",
  brisk: "brisk",
  "needs-assistant": "needs the assistant",
  impossible: "not possible as written",
};

/** What a verdict would mean, behind "the change". */
export const WOULD: Readonly<Record<Verdict, string>> = {
  easy: "would be easy",
  brisk: "would have to be brisk",
  "needs-assistant": "would need an assistant",
  impossible: "would not be possible as written",
};

/** A change with its verdict and the best way to make it. */
export interface Feasibility {
  readonly verdict: Verdict;
  /** How it is done: by the player alone where that serves, else with the assistant. */
  readonly handling: Handling;
  /** How it goes for the player alone. */
  readonly alone: Handling;
  /** Where the assistant stands whom it needs; `null` when it needs none, or when none would help. */
  readonly assistant: Jamb | null;
}

/**
 * The verdict for time there is over time needed, by the player alone and at best with an assistant. From
 * `MUSIC_VALUES.easy` on it is easy; from `MUSIC_VALUES.brisk` on it can be done at a brisk pace.
 */
export function verdictOf(alone: number, assisted: number): Verdict {
  if (alone >= MUSIC_VALUES.easy.value) return "easy";
  if (alone >= MUSIC_VALUES.brisk.value) return "brisk";
  return assisted >= MUSIC_VALUES.brisk.value ? "needs-assistant" : "impossible";
}

/** Whether and how the music leaves time for a change by hand. */
export function feasibilityOf(
  difference: Difference,
  time: TimeLeft,
  layout: ConsoleLayout,
  crew: Crew,
  divisions: readonly Division[],
): Feasibility {
  const alone = handle(difference, time, layout, { ...crew, assistant: "none" }, divisions);
  if (alone.slack >= MUSIC_VALUES.easy.value) return { verdict: "easy", handling: alone, alone, assistant: null };
  if (crew.assistant === "none" && alone.slack >= MUSIC_VALUES.brisk.value)
    return { verdict: "brisk", handling: alone, alone, assistant: null };
  const sides: readonly Jamb[] = crew.assistant === "none" ? ["left", "right"] : [crew.assistant];
  const helped = sides.map((side) => ({
    side,
    handling: handle(difference, time, layout, { ...crew, assistant: side }, divisions),
  }));
  const best = helped.reduce((one, other) => (other.handling.slack > one.handling.slack ? other : one));
  const verdict = verdictOf(alone.slack, best.handling.slack);
  const there = crew.assistant !== "none" && best.handling.slack > alone.slack;
  return {
    // With somebody there, a change that would be brisk for the player alone becomes easy.
    verdict: verdict === "brisk" && there && best.handling.slack >= MUSIC_VALUES.easy.value ? "easy" : verdict,
    handling: there || verdict === "needs-assistant" ? best.handling : alone,
    alone,
    assistant: there || verdict === "needs-assistant" ? best.side : null,
  };
}

/** Whether a piston can be pressed in time, and by whom. Boxes are moved and keyboards changed meanwhile. */
export function pressFeasibility(
  difference: Difference,
  time: TimeLeft,
  layout: ConsoleLayout,
  crew: Crew,
  divisions: readonly Division[],
): Feasibility {
  const press = pressing(time, layout, crew);
  const boxes = difference.needed.filter((move) => move.what === "box");
  const rest: Difference = { needed: boxes, later: [], shifts: difference.shifts };
  const going = handle(rest, time, layout, { ...crew, assistant: "none" }, divisions);
  const worst = going.slack < press.slack ? going : press;
  const handling = { ...worst, tasks: [...press.tasks, ...going.tasks] };
  // Whoever stands at the console presses a piston at any time.
  const assisted = going.slack;
  const verdict = verdictOf(handling.slack, assisted);
  const helps = verdict === "needs-assistant";
  return {
    verdict,
    handling,
    alone: handling,
    assistant: helps && crew.assistant !== "none" ? crew.assistant : helps ? "right" : null,
  };
}
