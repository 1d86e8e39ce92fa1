import type { PieceSection } from "../music/piece.ts";
import { type Difference, differenceOf, type Move } from "./changes.ts";
import { beatSeconds } from "./motion.ts";
import { MUSIC_VALUES } from "./motion-values.ts";
import type { ChosenRow } from "./plan.ts";
import type { Stand } from "./stand.ts";
import { bpmOf, sectionSeconds, type TimeLeft } from "./time-left.ts";

/** One console on the way through a piece: a section's, or a step inside a section that grows. */
export interface Station {
  readonly section: number;
  /** 0 for the section's own beginning; 1 for the first step that joins later. */
  readonly step: number;
  readonly stand: Stand;
  /** What the music leaves before it; `null` at the beginning of the piece. */
  readonly time: TimeLeft | null;
}

/** The time for one of several steps inside a section: whoever plays goes on playing. */
function stepTime(section: PieceSection, steps: number, before: TimeLeft | null): TimeLeft {
  const whole = sectionSeconds(section);
  const each = whole / (steps + 1);
  const beat = beatSeconds(1, bpmOf(section));
  const plays = new Set(section.section.parts.map((part) => part.hands));
  const free = (limb: "left" | "right" | "feet"): boolean =>
    limb === "feet" ? !plays.has("feet") : !plays.has("both") && !plays.has(limb);
  const seconds = (limb: "left" | "right" | "feet"): number => (free(limb) ? each : MUSIC_VALUES.articulation.value);
  return {
    what: "attacca",
    assumed: before?.assumed ?? false,
    gap: MUSIC_VALUES.articulation.value,
    limbs: { left: seconds("left"), right: seconds("right"), feet: seconds("feet") },
    thumb: beat * MUSIC_VALUES.thumb.value,
    foot: beat * MUSIC_VALUES.foot.value,
    turn: null,
    rests: [],
    beat,
    section: each,
  };
}

/** Every console of a chosen row in playing order, steps of growing sections among them. */
export function stationsOf({
  piece,
  chosen,
  times,
}: Pick<ChosenRow, "piece" | "chosen" | "times">): readonly Station[] {
  return chosen.flatMap((one, section): readonly Station[] => {
    const music = piece.sections[section] as PieceSection;
    const time = times[section] ?? null;
    return [
      { section, step: 0, stand: one.entry, time },
      ...one.steps.map(({ stand }, index): Station => {
        return { section, step: index + 1, stand, time: stepTime(music, one.steps.length, time) };
      }),
    ];
  });
}

/** What changes on the way into a station. Inside a growing section stops join the sound: they need no silence. */
export function differenceInto(
  row: Pick<ChosenRow, "instrument" | "layout">,
  before: Station,
  station: Station,
): Difference {
  const difference = differenceOf(row.instrument, row.layout, before.stand, station.stand);
  if (station.step === 0) return difference;
  const free = (move: Move): Move => ({ ...move, heldBy: new Set() });
  return { ...difference, needed: difference.needed.map(free), later: difference.later.map(free) };
}
