import PDFDocument, { type StructureElement } from "pdfkit";
import { toBytes } from "pdfkit/output";
import type { Mark, Page, PageBlock, PrintedCards, SignMark, Tag, TextMark } from "./paper/page.ts";
import { FACES, type Face, type Measure, POINT } from "./paper/type.ts";

/** Font files in TrueType form, handed in by a host. */
export type TypefaceBytes = Readonly<Record<Face, Uint8Array>>;

/** Faces that can be measured before anything is printed. */
export interface Typefaces {
  readonly bytes: TypefaceBytes;
  readonly measure: Measure;
  /** Letters of `text` that the face does not have: an empty box would stand for them. */
  lacks(text: string, face: Face): readonly string[];
}

const LANGUAGE = "en";
const points = (millimetres: number): number => millimetres / POINT;

/** With the fraction's own slash the faces set digits small, high before it and low behind. */
const asPrinted = (text: string, fraction: boolean): string => (fraction ? text.replace("/", "\u2044") : text);

/** Without the second, XML form of title and date: the library would state a time there, and does not escape the title. */
class UndatedDocument extends PDFDocument {
  override endMetadata(): void {}
}

function emptyDocument(title: string, bytes: TypefaceBytes): PDFDocument {
  const document = new UndatedDocument({
    autoFirstPage: false,
    pdfVersion: "1.7",
    tagged: true,
    lang: LANGUAGE,
    displayTitle: true,
    compress: true,
    // None to begin with: the library would take one of its own, which it finds in Node alone.
    font: "",
    // The library would put in the present time, from which it makes the document's id, too. The same cards are to
    // give the same bytes.
    info: { Title: title, Creator: "Registrant", Producer: "Registrant", CreationDate: { getTime: () => 0 } },
  });
  delete document.info.CreationDate;
  for (const face of FACES) document.registerFont(face, bytes[face]);
  return document;
}

/**
 * Opens font files.
 *
 * @throws Error of the library when a file is no font.
 */
export function openTypefaces(bytes: TypefaceBytes): Typefaces {
  const document = emptyDocument("", bytes);
  const known = new Map<string, number>();
  return {
    bytes,
    measure: (text, face, size, fraction) => {
      const key = `${face} ${fraction} ${text}`;
      let width = known.get(key);
      if (width === undefined) {
        // Widths grow with the size: one measure at 1000 points serves them all.
        width = document.font(face)._font.widthOfString(asPrinted(text, fraction), 1000) / 1000;
        known.set(key, width);
      }
      return width * size * POINT;
    },
    lacks: (text, face) => {
      const { font } = document.font(face)._font;
      return [...new Set(text)].filter((letter) => !font.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0));
    },
  };
}

/** The outline is a circle; the filled half is that of the player. */
function drawSign(document: PDFDocument, { sign, x, y, size }: SignMark): void {
  const [radius, line] = [points(size) / 2, points(size) * 0.09];
  const [middleX, middleY] = [points(x) + radius, points(y) + radius];
  const inner = radius - line / 2;
  const [from, to, sweep] = {
    right: [[0, -inner], [0, inner], 1],
    left: [[0, -inner], [0, inner], 0],
    both: [[-inner, 0], [inner, 0], 1],
    feet: [[-inner, 0], [inner, 0], 0],
  }[sign] as [[number, number], [number, number], number];
  document.lineWidth(line).circle(middleX, middleY, inner).stroke();
  document
    .path(
      `M ${middleX + from[0]} ${middleY + from[1]} ` +
        `A ${inner} ${inner} 0 0 ${sweep} ${middleX + to[0]} ${middleY + to[1]} Z`,
    )
    .fill();
}

function draw(document: PDFDocument, mark: Mark): void {
  document.fillColor("black").strokeColor("black");
  switch (mark.kind) {
    case "text":
      document
        .fillColor(mark.reversed ? "white" : "black")
        .font(mark.face)
        .fontSize(mark.size)
        .text(asPrinted(mark.text, mark.fraction), points(mark.x), points(mark.y), {
          lineBreak: false,
          baseline: "alphabetic",
        });
      return;
    case "rule":
      document.rect(points(mark.x), points(mark.y), points(mark.width), points(mark.height)).fill();
      return;
    case "frame": {
      const [x, y, width, height] = [points(mark.x), points(mark.y), points(mark.width), points(mark.height)];
      const shape = document.lineWidth(0.9).roundedRect(x, y, width, height, points(mark.round));
      if (mark.filled) shape.fill();
      else shape.stroke();
      return;
    }
    case "sign":
      drawSign(document, mark);
      return;
    case "line": {
      const [first, ...others] = mark.points;
      if (!first) return;
      document.lineWidth(points(mark.weight)).moveTo(points(first[0]), points(first[1]));
      for (const [x, y] of others) document.lineTo(points(x), points(y));
      if (mark.dashes) document.dash(mark.dashes.map(points)).stroke().undash();
      else document.stroke();
      return;
    }
    case "area": {
      const corners = mark.points.map(([x, y]): [number, number] => [points(x), points(y)]);
      const area = document.fillColor(mark.fill).polygon(...corners);
      if (mark.weight > 0) area.lineWidth(points(mark.weight)).fillAndStroke(mark.fill, "black");
      else area.fill();
    }
  }
}

/** The names of the standard for what a block is (ISO 32000-1, 14.8.4). */
const STRUCTURE: Readonly<Record<Tag, string>> = { heading: "H1", subheading: "H2", paragraph: "P", item: "P" };

function drawArtifacts(document: PDFDocument, marks: readonly Mark[]): void {
  if (marks.length === 0) return;
  document.markContent("Artifact", { type: "Layout" });
  for (const mark of marks) draw(document, mark);
  document.endMarkedContent();
}

/** The texts with a space behind each that does not run on into the next: who hears them cannot see the gap. */
function parted(texts: readonly TextMark[]): readonly TextMark[] {
  return texts.map((mark, index) => {
    const next = texts[index + 1];
    if (!next || /[\s-]$/u.test(mark.text)) return mark;
    const touches = next.y === mark.y && next.x - (mark.x + mark.width) < 0.2;
    return touches ? mark : { ...mark, text: `${mark.text} ` };
  });
}

function drawBlock(document: PDFDocument, { tag, marks }: PageBlock, parent: StructureElement): void {
  // Signs and boxes stand beside words that say the same; only the words are read aloud.
  const texts = marks.filter((mark) => mark.kind === "text");
  drawArtifacts(
    document,
    marks.filter((mark) => mark.kind !== "text"),
  );
  if (texts.length === 0) return;
  const type = STRUCTURE[tag];
  const content = document.markStructureContent(type);
  for (const mark of parted(texts)) draw(document, mark);
  document.endMarkedContent();
  parent.add(document.struct(type, {}, [content]));
}

function drawPage(document: PDFDocument, page: Page, parent: StructureElement): void {
  document.addPage({ size: [points(page.width), points(page.height)], margin: 0 });
  drawArtifacts(document, page.ornaments);
  for (const block of page.blocks) drawBlock(document, block, parent);
}

/**
 * The pages as a PDF file: fonts embedded as subsets, text that can be searched and read aloud, no date. The same pages
 * in the same faces give the same bytes.
 */
export async function pdfOf({ title, pages }: PrintedCards, typefaces: Pick<Typefaces, "bytes">): Promise<Uint8Array> {
  const document = emptyDocument(title, typefaces.bytes);
  const root = document.struct("Document");
  document.addStructure(root);
  for (const page of pages) drawPage(document, page, root);
  root.end();
  const bytes = toBytes(document);
  document.end();
  return bytes;
}
