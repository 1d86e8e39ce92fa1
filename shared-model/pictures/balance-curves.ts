import { camOf } from "../acoustics/bands.ts";
import type { Blend } from "../acoustics/blend.ts";
import { type BandLevels, bandLevels } from "../acoustics/hearing.ts";
import { curve, type Drawing, hatched, outlined, type Point, rule, type Shape, type Stroke, words } from "./shapes.ts";

/** Two parts to be compared; a sound that has no second is drawn alone. */
export interface Compared {
  readonly first: { readonly name: string; readonly blend: Blend };
  readonly second: { readonly name: string; readonly blend: Blend } | null;
}

/** Keys under the axis with their frequencies at a' = 440 Hz, as organists write them, in signs that every face has. */
const KEYS: readonly (readonly [string, number])[] = [
  ["C", 65.4],
  ["c", 130.8],
  ["c′", 261.6],
  ["c′′", 523.3],
  ["c′′′", 1046.5],
  ["c′′′′", 2093],
];
const LOWEST_HZ = 50;
const HIGHEST_HZ = 10_000;
const FLOOR_DB = 10;
const HEIGHT = 190;
const TOP = 34;
const LEFT = 40;
const DB_STEP = 20;

/** Whether the first part is heard in a band. */
const isHeard = ({ first, hidden }: BandLevels): boolean => first >= hidden;

/**
 * The balance picture: what the second part hides, hatched; the first as a heavy line where it is heard and a dashed one
 * where it is not; the keys beneath.
 */
export function balanceCurves({ first, second }: Compared, width: number): Drawing {
  const bands = bandLevels(first.blend, second?.blend ?? null).filter(({ hz }) => hz >= LOWEST_HZ && hz <= HIGHEST_HZ);
  const [low, high] = [camOf(LOWEST_HZ), camOf(HIGHEST_HZ)];
  const loudest = Math.max(...bands.map((band) => Math.max(band.first, band.hidden)));
  const ceiling = Math.max(60, DB_STEP * Math.ceil(loudest / DB_STEP));
  const base = TOP + HEIGHT;
  const x = (hz: number): number => LEFT + ((width - LEFT) * (camOf(hz) - low)) / (high - low);
  const y = (db: number): number => base - (HEIGHT * (Math.max(FLOOR_DB, db) - FLOOR_DB)) / (ceiling - FLOOR_DB);

  const hidden = bands.map((band): Point => [x(band.hz), y(band.hidden)]);
  const ends: readonly Point[] = [
    [hidden[0]?.[0] ?? LEFT, base],
    [hidden.at(-1)?.[0] ?? LEFT, base],
  ];
  const runs: Stroke[] = [];
  for (let i = 1; i < bands.length; i++) {
    const [from, to] = [bands[i - 1] as BandLevels, bands[i] as BandLevels];
    const segment = [
      [x(from.hz), y(from.first)],
      [x(to.hz), y(to.first)],
    ] as const;
    runs.push(isHeard(from) && isHeard(to) ? curve(segment, 2.8) : curve(segment, 1, { dashes: [2, 3] }));
  }
  const keys = KEYS.flatMap(([name, hz]) => [
    rule(x(hz), base, x(hz), base + 5, 1),
    words(x(hz), base + 21, name, { anchor: "middle", italic: true }),
  ]);
  const levels = Array.from({ length: Math.floor((ceiling - FLOOR_DB) / DB_STEP) + 1 }, (_, at): readonly Shape[] => {
    const db = Math.ceil(FLOOR_DB / DB_STEP) * DB_STEP + DB_STEP * at;
    return db > ceiling ? [] : [words(LEFT - 8, y(db) + 5, String(db), { anchor: "end", size: 13 })];
  });
  const shapes: readonly Shape[] = [
    ...(second ? [outlined([ends[0] as Point, ...hidden, ends[1] as Point], 0.8), ...hatched(hidden, base)] : []),
    ...runs,
    rule(LEFT, base, width, base, 1),
    ...keys,
    ...levels.flat(),
    words(LEFT - 8, 14, "dB", { anchor: "end", size: 13 }),
    ...(second ? [words(LEFT + 6, 14, `hatched: hidden by the ${second.name}`, { italic: true })] : []),
    words(width, second ? 32 : 14, `heavy line: the ${first.name}`, { anchor: "end", bold: true, italic: true }),
  ];
  return { width, height: base + 30, shapes };
}
