// What is used here of the library that writes PDF. Its published types bring the types of Node along, which this
// folder must not see.
declare module "pdfkit" {
  /** A place in the structure that a reader of the document hears. */
  interface StructureElement {
    add(child: StructureElement | StructureContent): StructureElement;
    end(): void;
  }
  interface StructureContent {
    readonly refs: readonly unknown[];
  }
  interface FontFace {
    /** Length of `text` in points; what cannot be set in the face is measured as its empty box. */
    widthOfString(text: string, size: number): number;
    readonly font: { hasGlyphForCodePoint(code: number): boolean };
  }
  interface Options {
    readonly autoFirstPage: false;
    readonly pdfVersion: "1.7";
    readonly tagged: true;
    readonly lang: string;
    readonly displayTitle: true;
    readonly compress: true;
    readonly font: "";
    readonly info: Readonly<Record<string, unknown>>;
  }
  export default class PDFDocument {
    constructor(options: Options);
    readonly info: Record<string, unknown>;
    /** The face that was chosen last. */
    readonly _font: FontFace;
    addPage(options: { size: readonly [number, number]; margin: 0 }): this;
    registerFont(name: string, bytes: Uint8Array): this;
    font(name: string): this;
    fontSize(points: number): this;
    text(text: string, x: number, y: number, options: { lineBreak: false; baseline: "alphabetic" }): this;
    fillColor(colour: string): this;
    strokeColor(colour: string): this;
    lineWidth(points: number): this;
    rect(x: number, y: number, width: number, height: number): this;
    roundedRect(x: number, y: number, width: number, height: number, radius: number): this;
    circle(x: number, y: number, radius: number): this;
    path(data: string): this;
    moveTo(x: number, y: number): this;
    lineTo(x: number, y: number): this;
    polygon(...points: readonly (readonly [number, number])[]): this;
    fill(): this;
    stroke(): this;
    fillAndStroke(fill: string, stroke: string): this;
    /** Lengths of ink and gap in turn, each more than 0. */
    dash(lengths: readonly number[]): this;
    undash(): this;
    struct(type: string, options?: object, children?: readonly StructureContent[]): StructureElement;
    addStructure(element: StructureElement): this;
    markContent(tag: "Artifact", options: { type: "Layout" }): this;
    markStructureContent(tag: string): StructureContent;
    endMarkedContent(): this;
    /** Writes title, date and program once more, as XML. */
    endMetadata(): void;
    end(): void;
  }
}

declare module "pdfkit/output" {
  import type PDFDocument from "pdfkit";
  /** The bytes of a document, once it has ended. */
  export function toBytes(document: PDFDocument): Promise<Uint8Array>;
}
