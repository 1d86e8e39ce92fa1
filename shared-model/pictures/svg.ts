import type { Drawing, Point, Shape, Stroke } from "./shapes.ts";

/** The look of all pictures: black ink, type that falls back where the app's fonts are not installed. */
const SERIF = "Source Serif 4, Georgia, Times New Roman, serif";
const INK = { black: "#111", grey: "#999" } as const;

const ENTITIES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };
/** Characters that XML forbids even when they are written as entities. */
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g;

/** A text for XML: names of stops and organs are what somebody typed. */
const escaped = (text: string): string =>
  text.replace(FORBIDDEN, "").replace(/[&<>"]/g, (sign) => ENTITIES[sign] as string);

/** A length with at most one place, so that equal pictures are equal texts. */
const px = (value: number): string => String(Math.round(value * 10) / 10);
const pointsOf = (points: readonly Point[]): string => points.map(([x, y]) => `${px(x)},${px(y)}`).join(" ");

function elementOf(shape: Shape): string {
  switch (shape.kind) {
    case "line": {
      const dashes = shape.dashes.length > 0 ? ` stroke-dasharray="${shape.dashes.map(px).join(" ")}"` : "";
      return `<polyline points="${pointsOf(shape.points)}" fill="none" stroke="${INK[shape.ink]}" stroke-width="${px(shape.weight)}" stroke-linejoin="round"${dashes}/>`;
    }
    case "area": {
      const fill = shape.fill === "black" ? INK.black : "#fff";
      const outline = shape.weight > 0 ? ` stroke="${INK.black}" stroke-width="${px(shape.weight)}"` : "";
      return `<polygon points="${pointsOf(shape.points)}" fill="${fill}"${outline}/>`;
    }
    case "words": {
      const style = `${shape.bold ? ' font-weight="bold"' : ""}${shape.italic ? ' font-style="italic"' : ""}`;
      return `<text x="${px(shape.x)}" y="${px(shape.y)}" font-size="${px(shape.size)}" text-anchor="${shape.anchor}"${style}>${escaped(shape.text)}</text>`;
    }
  }
}

const isAlike = (one: Shape | undefined, other: Shape): boolean =>
  one?.kind === "line" &&
  other.kind === "line" &&
  one.weight === other.weight &&
  one.ink === other.ink &&
  one.dashes.length + other.dashes.length === 0;

/** Unbroken lines of one look as one element: a hatched field has hundreds of them. */
function linesOf(lines: readonly Stroke[]): string {
  const [first] = lines as readonly [Stroke];
  const path = lines.map(({ points }) => `M${pointsOf(points)}`).join("");
  return `<path d="${path}" fill="none" stroke="${INK[first.ink]}" stroke-width="${px(first.weight)}" stroke-linejoin="round"/>`;
}

/** Shapes as elements of SVG, one to a line, to be set into a picture; lines of one look that follow each other are one. */
export function svgOf(shapes: readonly Shape[]): string {
  const elements: string[] = [];
  for (let at = 0; at < shapes.length; ) {
    const shape = shapes[at] as Shape;
    let end = at + 1;
    while (end < shapes.length && isAlike(shape, shapes[end] as Shape)) end += 1;
    elements.push(end - at > 1 ? linesOf(shapes.slice(at, end) as readonly Stroke[]) : elementOf(shape));
    at = end;
  }
  return elements.join("\n");
}

/** A whole picture: what it is called, what it shows in words for those who do not see it, and the drawing. */
export function picture({ width, height, shapes }: Drawing, title: string, description: string): string {
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${px(width)} ${px(height)}" width="${px(width)}" height="${px(height)}" role="img" aria-labelledby="picture-title picture-desc" font-family="${SERIF}" fill="${INK.black}">`,
    `<title id="picture-title">${escaped(title)}</title>`,
    `<desc id="picture-desc">${escaped(description)}</desc>`,
    `<rect width="${px(width)}" height="${px(height)}" fill="#fff"/>`,
    svgOf(shapes),
    "</svg>\n",
  ].join("\n");
}
