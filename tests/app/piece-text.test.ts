import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { openPieceText, pieceTextAfter } from "../../renderer/state/piece-text.ts";
import type { DeskPiece, PieceBase } from "../../renderer/state/work.ts";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";

const organ = readInstrumentFile(
  readFileSync(join(import.meta.dirname, "..", "..", "instruments", "sallowby.yaml"), "utf8"),
  "sallowby.yaml",
).instrument as Instrument;

const FILE = `# for Sunday
registrant: piece/1
name: Lantern Partita   # working title
organ: All Saints, Sallowby
assistant: left
sections:
  - name: First verse   # slow
    bars: 1-24
    texture: melody-over-accompaniment
    ranges: {melody: [D4, G5]}
    mood: kept though unknown
    registration:
      drawn: {Swell: [Oboe 8], Great: [Clarabella 8], Pedal: [Sub Bass 16]}
      boxes: {Swell: half}
  - name: Second verse
    texture: plenum
    tradition: north-german
    dynamic: f
    before: {what: fermata, beats: 3, free: [left]}
    echo-of: First verse
`;

const opened = (text: string): PieceBase => {
  const { base, troubles } = openPieceText(text, "piece", organ);
  if (!base) throw new Error(JSON.stringify(troubles));
  return base;
};

const written = (base: PieceBase | null, piece: DeskPiece): string => {
  const { text, troubles } = pieceTextAfter(base, piece, organ);
  if (text === null) throw new Error(JSON.stringify(troubles));
  return text;
};

describe("a piece between its file and the desk", () => {
  test("without a change every byte stays", () => {
    const base = opened(FILE);
    expect(written(base, base.piece)).toBe(FILE);
  });

  test("what the desk has is what the file says", () => {
    const [first, second] = opened(FILE).piece.sections;
    expect(first?.registration?.drawn.toSorted()).toEqual(["Great/Clarabella 8", "Pedal/Sub Bass 16", "Swell/Oboe 8"]);
    expect(first?.registration?.boxes).toEqual({ Swell: "half" });
    expect(first?.ranges).toEqual({ melody: [62, 79] });
    expect(second).toMatchObject({ tradition: "north-german", before: { what: "fermata", beats: 3 } });
  });

  test("a change touches its own line, remarks and unknown keys stay", () => {
    const base = opened(FILE);
    const [first, second] = base.piece.sections;
    if (!first || !second) throw new Error("two sections are written");
    const text = written(base, {
      ...base.piece,
      sections: [
        { ...first, bars: "1-32" },
        { ...second, tempo: "fast" },
      ],
    });
    expect(text.replace("1-32", "1-24").replace(/\n +tempo: fast/, "")).toBe(FILE);
  });

  test("sections are taken out, put in order and added, and reading them gives the same desk", () => {
    const base = opened(FILE);
    const [first, second] = base.piece.sections;
    if (!first || !second) throw new Error("two sections are written");
    const added = { ...second, id: "9", name: "Third verse", before: null, kept: false };
    const piece = { ...base.piece, title: "Another name", sections: [second, added, first] };
    const text = written(base, piece);
    expect(text).toContain("# slow");
    expect(text).toContain("mood: kept though unknown");
    const again = opened(text).piece;
    expect(again.title).toBe("Another name");
    expect(again.sections.map((section) => section.name)).toEqual(["Second verse", "Third verse", "First verse"]);
    // Ids count anew; what they stand for is the same.
    const meant = ({ sections }: DeskPiece) =>
      sections.map((section) => ({
        ...section,
        id: "",
        links: section.links.map(({ kind, to }) => [kind, sections.find((each) => each.id === to)?.name]),
      }));
    expect(meant(again)).toEqual(meant(piece));
    expect(text.match(/echo-of: First verse/g)).toHaveLength(2);
    expect(written(base, { ...base.piece, sections: [first] })).not.toContain("Second verse");
  });

  test("a piece that is in no file yet gets a whole one, which reads back as it was", () => {
    const { piece } = opened(FILE);
    const again = opened(written(null, piece)).piece;
    // The file names stops in the order of print.
    const inOrder = (desk: DeskPiece) =>
      desk.sections.map(({ registration, ...section }) => ({
        ...section,
        registration: registration && { ...registration, drawn: registration.drawn.toSorted() },
      }));
    expect(inOrder(again)).toEqual(inOrder(piece));
  });

  test("a piece for another organ is not mistaken for one of this organ", () => {
    const { otherOrgan } = openPieceText(FILE.replace("All Saints, Sallowby", "Holy Trinity"), "piece", organ);
    expect(otherOrgan).toBe("Holy Trinity");
  });
});
