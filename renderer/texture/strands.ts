import type { Part, Role } from "../../shared-model/music/texture.ts";

/** A stroke of a small diagram, in a lane 196 wide and 30 high. */
export interface Strand {
  readonly path: string;
  readonly width: number;
  readonly dots: boolean;
}

const LEFT = 32;
const RIGHT = 228;
/** Middle of a lane. */
const MID = 15;

const bars = (rows: readonly (readonly [from: number, to: number, y: number])[]): string =>
  rows.map(([from, to, y]) => `M${from} ${y}H${to}`).join("");

function wave(from: number, to: number): string {
  const step = (to - from) / 4;
  return `M${from} ${MID + 4}${[0, 1, 2, 3]
    .map((at) => `q${step / 2} ${at % 2 === 0 ? -20 : 20} ${step} ${at === 3 ? -2 : 0}`)
    .join("")}`;
}

/** Steps up and down, as a bass walks. */
const walking = (): string =>
  bars(
    [0, 3, 5, 1, -3, -6, -2, 3, 6, 1].map((up, at) => [LEFT + at * 20, LEFT + at * 20 + 14, MID + up * 0.8] as const),
  );

/** Short notes of one voice. */
const voice = (turn: number): string =>
  bars([-4, 0, 4, -1, -5, 1, 5, 0, -3].map((up, at) => [LEFT + at * 22, LEFT + at * 22 + 9, MID + up * turn] as const));

/** Two inner voices in long notes. */
const inner = (): string =>
  bars([
    [LEFT, LEFT + 60, MID - 4],
    [LEFT + 66, LEFT + 118, MID - 6],
    [LEFT + 124, RIGHT, MID - 3],
    [LEFT, LEFT + 40, MID + 5],
    [LEFT + 46, LEFT + 110, MID + 3],
    [LEFT + 116, RIGHT, MID + 6],
  ]);

/** Chords: a chorus. */
function chords(from: number, to: number): string {
  const count = Math.max(2, Math.round((to - from) / 33));
  const width = (to - from) / count - 8;
  return bars(
    Array.from({ length: count }, (_, at) => at).flatMap((at) =>
      [-8, -3, 2, 7].map((up) => {
        const x = from + at * (width + 8);
        return [x, x + width, MID + up + (at % 2)] as const;
      }),
    ),
  );
}

const long = (): string =>
  bars([
    [LEFT, LEFT + 42, MID + 2],
    [LEFT + 50, LEFT + 92, MID - 3],
    [LEFT + 100, LEFT + 142, MID],
    [LEFT + 150, RIGHT, MID + 3],
  ]);

/**
 * What a part does, drawn: a curve is a tune, long thin lines are inner voices, steps a walking bass, thick bars a
 * cantus firmus, stacks a chorus, dots an echo. Where two parts take turns each has its half of the lane.
 */
export function strandOf(part: Part, parts: readonly Part[]): Strand {
  const alike = parts.filter((each) => each.role === part.role && each.hands === part.hands);
  const answered = parts.some((each) => each.role === "echo");
  const half = (LEFT + RIGHT) / 2;
  const draw: Readonly<Record<Role, () => Strand>> = {
    melody: () => ({ path: wave(LEFT, answered ? half - 6 : RIGHT), width: 2.2, dots: false }),
    echo: () => ({ path: wave(half + 6, RIGHT), width: 1.8, dots: true }),
    accompaniment: () => ({ path: inner(), width: 1.4, dots: false }),
    bass: () => ({ path: walking(), width: 2, dots: false }),
    "cantus-firmus": () => ({ path: long(), width: 5, dots: false }),
    voice: () => ({ path: voice(alike.indexOf(part) % 2 === 0 ? 1 : -1), width: 2, dots: false }),
    plenum: () => {
      const turns = alike.length > 1;
      const first = alike.indexOf(part) === 0;
      const [from, to] = turns ? (first ? [LEFT, half - 8] : [half + 8, RIGHT]) : [LEFT, RIGHT];
      return { path: chords(from, to), width: 1.5, dots: false };
    },
  };
  return draw[part.role]();
}
