/**
 * What a picture is made of: lines, areas and words, black or grey on white. One list serves the app and the command line
 * (svg.ts) and the PDF of the cards. Lengths are units of the picture, from its upper left corner.
 */
export type Point = readonly [x: number, y: number];

/** A line from point to point. */
export interface Stroke {
  readonly kind: "line";
  readonly points: readonly Point[];
  readonly weight: number;
  readonly ink: "black" | "grey";
  /** Lengths of ink and gap in turn; empty for an unbroken line. */
  readonly dashes: readonly number[];
}

/** A closed figure, its outline as heavy as `weight`; 0 for none. */
export interface Area {
  readonly kind: "area";
  readonly points: readonly Point[];
  readonly fill: "black" | "white";
  readonly weight: number;
}

/** A line of type whose baseline starts (or ends, or is centred) at a point. */
export interface Words {
  readonly kind: "words";
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly bold: boolean;
  readonly italic: boolean;
  readonly anchor: "start" | "middle" | "end";
}

export type Shape = Stroke | Area | Words;

/** Shapes with the room that they take. */
export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
}

/** A line of type; 15 high and upright unless it is said otherwise. */
export const words = (
  x: number,
  y: number,
  text: string,
  look: Partial<Omit<Words, "kind" | "x" | "y">> = {},
): Words => ({
  kind: "words",
  x,
  y,
  text,
  size: 15,
  bold: false,
  italic: false,
  anchor: "start",
  ...look,
});

/** A line through points. */
export const curve = (
  points: readonly Point[],
  weight: number,
  look: Partial<Pick<Stroke, "ink" | "dashes">> = {},
): Stroke => ({
  kind: "line",
  points,
  weight,
  ink: "black",
  dashes: [],
  ...look,
});

/** A straight line. */
export const rule = (
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  weight: number,
  ink: Stroke["ink"] = "black",
): Stroke =>
  curve(
    [
      [x1, y1],
      [x2, y2],
    ],
    weight,
    { ink },
  );

/** A closed figure, filled. */
export const filled = (points: readonly Point[]): Area => ({ kind: "area", points, fill: "black", weight: 0 });

/** A closed figure of which the outline is seen. */
export const outlined = (points: readonly Point[], weight: number): Area => ({
  kind: "area",
  points,
  fill: "white",
  weight,
});

const CORNERS = 24;
/** Points about a middle that look round. */
export const round = (x: number, y: number, radius: number): readonly Point[] =>
  Array.from({ length: CORNERS }, (_, at): Point => {
    const angle = (2 * Math.PI * at) / CORNERS;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });

const GAP = 6;
const STEP = 0.5;
/** Slanting lines that fill what lies between a falling and rising edge and the straight ground under it. */
export function hatched(edge: readonly Point[], ground: number): readonly Stroke[] {
  const [first, last] = [edge[0], edge.at(-1)];
  if (!first || !last) return [];
  const top = Math.min(...edge.map(([, y]) => y));
  /** Height of the edge at `x`, whose next point to the right is number `at`. */
  const heightAt = (x: number, at: number): number => {
    const [from, to] = [edge[Math.max(0, at - 1)] as Point, edge[at] as Point];
    return to[0] === from[0] ? to[1] : from[1] + ((to[1] - from[1]) * (x - from[0])) / (to[0] - from[0]);
  };
  const strokes: Stroke[] = [];
  // Each line rises to the right by as much as it goes there; it is drawn where it runs under the edge.
  for (let foot = first[0] - (ground - top); foot < last[0]; foot += GAP) {
    let from: Point | null = null;
    let to: Point | null = null;
    let at = 0;
    for (let x = Math.max(foot, first[0]); x <= last[0]; x += STEP) {
      const y = ground - (x - foot);
      // From here on the line is above the whole edge.
      if (y < top && !from) break;
      while ((edge[at] as Point)[0] < x) at += 1;
      const isUnder = y >= heightAt(x, at);
      if (isUnder) {
        from ??= [x, y];
        to = [x, y];
      }
      if (from && to && (!isUnder || x + STEP > last[0])) {
        if (to[0] > from[0]) strokes.push(curve([from, to], 0.6));
        [from, to] = [null, null];
      }
    }
  }
  return strokes;
}

const shift = ([x, y]: Point, right: number, down: number): Point => [x + right, y + down];

/** The same shapes elsewhere. */
export const shifted = (shapes: readonly Shape[], right: number, down: number): readonly Shape[] =>
  shapes.map((shape) =>
    shape.kind === "words"
      ? { ...shape, x: shape.x + right, y: shape.y + down }
      : { ...shape, points: shape.points.map((point) => shift(point, right, down)) },
  );

/** Words broken into lines of at most `letters` letters; a longer word stands alone. */
export function linesOf(said: string, letters: number): readonly string[] {
  const lines: string[] = [];
  for (const word of said.split(/\s+/)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= letters) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
