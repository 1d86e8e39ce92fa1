import type { Limb } from "../music/piece.ts";
import type { Move, Shift } from "./changes.ts";
import type { Hand, Task } from "./crew.ts";
import type { Means } from "./planned.ts";
import type { Seat } from "./stand.ts";
import type { TimeLeft } from "./time-left.ts";

/** Who moves something. */
export const WHO: Readonly<Record<Hand, string>> = {
  left: "left hand",
  right: "right hand",
  feet: "a foot",
  assistant: "assistant",
};

const BOX = { open: "open", half: "half open", closed: "shut" } as const;

/** One move as a player writes it: `+Oboe 8`, `-Swell to Great`, `Swell box shut`. */
export function moveWords(move: Move): string {
  if (move.to !== null) return `${move.name} box ${BOX[move.to]}`;
  const name =
    move.what === "tremulant"
      ? move.name === "all"
        ? "Tremulant"
        : `Tremulant ${move.name}`
      : move.what === "unison-off"
        ? `Unison off ${move.name}`
        : move.name;
  return `${move.act === "draw" ? "+" : "-"}${name}`;
}

/** Moves by division, cancels before draws, as they stand in the order of the instrument: `Swell: -Oboe 8, +Flute 4`. */
export function movesWords(moves: readonly Move[]): readonly string[] {
  const divisions = [...new Set(moves.filter((move) => move.what === "stop").map((move) => move.division))];
  const cancelsFirst = (some: readonly Move[]): readonly Move[] => [
    ...some.filter((move) => move.act === "cancel"),
    ...some.filter((move) => move.act === "draw"),
  ];
  return [
    ...divisions.map((division) => {
      const own = moves.filter((move) => move.what === "stop" && move.division === division);
      return `${division}: ${cancelsFirst(own).map(moveWords).join(", ")}`;
    }),
    ...cancelsFirst(moves.filter((move) => move.what !== "stop")).map(moveWords),
  ];
}

/** Stops by division without their signs: `Swell: Oboe 8, Flute 4`. */
export function stopsWords(moves: readonly Move[]): string {
  const divisions = [...new Set(moves.map((move) => move.division))];
  const names = (division: string): string =>
    moves
      .filter((move) => move.division === division)
      .map((move) => move.name)
      .join(", ");
  return divisions.map((division) => `${division}: ${names(division)}`).join("; ");
}

/** When a task is done. */
export function whenWords({ ahead }: Pick<Task, "ahead">): string | null {
  if (ahead === null) return null;
  if (ahead === "any time") return "before, at any time: nothing sounds there";
  return ahead.bar === null ? "before, in the rest of that hand" : `before, in the rest at bar ${ahead.bar}`;
}

const seatWords = (seats: readonly Seat[]): string =>
  seats
    .map(({ keyboard, octave }) =>
      octave === 0 ? keyboard : `${keyboard}, an octave ${octave < 0 ? "lower" : "higher"} than written`,
    )
    .join(" and ");

const PLAYS: Readonly<Record<Limb, string>> = { left: "left hand", right: "right hand", feet: "feet" };

/** Limbs that go elsewhere: `right hand to the Swell`; both hands in one. */
export function shiftWords(shifts: readonly Shift[]): readonly string[] {
  const to = new Map<string, Limb[]>();
  for (const shift of shifts) {
    const where = seatWords(shift.to);
    to.set(where, [...(to.get(where) ?? []), shift.limb]);
  }
  return [...to].map(([where, limbs]) => {
    const both = limbs.includes("left") && limbs.includes("right");
    const who = both ? "both hands" : limbs.map((limb) => PLAYS[limb]).join(" and ");
    return `${who} to the ${where}`;
  });
}

/** `a rest of 2 beats (1.4 s)`. */
export function timeWords(time: TimeLeft): string {
  const beats = (seconds: number): string => {
    const count = Math.round((seconds / time.beat) * 10) / 10;
    return `${count} ${count === 1 ? "beat" : "beats"} (${seconds.toFixed(1)} s)`;
  };
  switch (time.what) {
    case "attacca":
      return "attacca";
    case "pause":
      return Number.isFinite(time.gap) ? `a pause of ${beats(time.gap)}` : "a pause, as long as is wanted";
    case "fermata":
      return "a fermata";
    case "rest":
      return `a rest of ${beats(time.gap)}`;
    case "page-turn":
      return `a page turn, ${beats(time.gap)}`;
  }
}

/** `general piston 3`, `pistons Swell 2 and Pedal 1`; `null` for what is made by hand or not at all. */
export function meansWords(means: Means): string | null {
  if (means.by === "general") {
    const piston = `general piston ${means.number}`;
    return `${means.newLevel ? `level ${means.level}, ` : ""}${piston}${means.near ? ", which is near; then" : ""}`;
  }
  if (means.by !== "divisionals") return null;
  return means.pistons.map(({ division, number }) => `${division} piston ${number}`).join(" and ");
}
