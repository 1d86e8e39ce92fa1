/** The look of all pictures: black ink, type that falls back where the app's fonts are not installed. */
const SERIF = "Source Serif 4, Georgia, Times New Roman, serif";
export const INK = "#111";
export const HAIR = "#999";

const ENTITIES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };
/** Characters that XML forbids even when they are written as entities. */
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g;

/** A text for XML: names of stops and organs are what somebody typed. */
const escaped = (text: string): string =>
  text.replace(FORBIDDEN, "").replace(/[&<>"]/g, (sign) => ENTITIES[sign] as string);

/** A length with at most one place, so that equal pictures are equal texts. */
export const px = (value: number): string => String(Math.round(value * 10) / 10);

type Attributes = Readonly<Record<string, string | number>>;

/** An element without content. */
export function mark(name: string, attributes: Attributes): string {
  const pairs = Object.entries(attributes).map(
    ([key, value]) => ` ${key}="${typeof value === "number" ? px(value) : escaped(value)}"`,
  );
  return `<${name}${pairs.join("")}/>`;
}

interface TextLook {
  readonly size?: number;
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly anchor?: "start" | "middle" | "end";
}

/** A line of type whose baseline starts (or ends, or is centred) at a point. */
export function text(x: number, y: number, words: string, look: TextLook = {}): string {
  const { size = 15, bold = false, italic = false, anchor = "start" } = look;
  const style = `${bold ? ' font-weight="bold"' : ""}${italic ? ' font-style="italic"' : ""}`;
  return `<text x="${px(x)}" y="${px(y)}" font-size="${size}" text-anchor="${anchor}"${style}>${escaped(words)}</text>`;
}

/** A straight line. */
export const rule = (x1: number, y1: number, x2: number, y2: number, width: number, stroke = INK): string =>
  mark("line", { x1, y1, x2, y2, stroke, "stroke-width": width });

/** A line through points, or nothing when there are fewer than two. */
export const curve = (points: readonly (readonly [number, number])[], width: number, dashes = ""): string =>
  points.length < 2
    ? ""
    : mark("polyline", {
        points: points.map(([x, y]) => `${px(x)},${px(y)}`).join(" "),
        fill: "none",
        stroke: INK,
        "stroke-width": width,
        "stroke-linejoin": "round",
        ...(dashes && { "stroke-dasharray": dashes }),
      });

/** Words broken into lines of at most `letters` letters; a longer word stands alone. */
export function linesOf(words: string, letters: number): readonly string[] {
  const lines: string[] = [];
  for (const word of words.split(/\s+/)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= letters) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** A whole picture: what it is called, what it shows in words for those who do not see it, and the drawing. */
export function picture(width: number, height: number, title: string, description: string, drawing: string): string {
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${px(width)} ${px(height)}" width="${px(width)}" height="${px(height)}" role="img" aria-labelledby="picture-title picture-desc" font-family="${SERIF}" fill="${INK}">`,
    `<title id="picture-title">${escaped(title)}</title>`,
    `<desc id="picture-desc">${escaped(description)}</desc>`,
    mark("rect", { width, height, fill: "#fff" }),
    drawing,
    "</svg>\n",
  ].join("\n");
}
