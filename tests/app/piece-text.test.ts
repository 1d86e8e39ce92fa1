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
    const added = { ...second, id: "9", name: "Third verse", before: null, pinned: false };
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

  describe("all that a piece file can say", () => {
    const WHOLE = `registrant: piece/1
name: All of it
note: kept, though the desk does not show it
organ: All Saints, Sallowby
tradition: north-german
tempo: {bpm: 60, mood: calm, beat: half}   # from the autograph
beats-in-bar: 4
assistant: left   # Ada
pistons:
  # what the keeper said
  generals: [2, 3]
  levels: [7]   # nobody uses it
practised: false
pace: careful
sections:
  - name: One
    bars: 1-8
    texture: plenum-manual
    beats-in-bar: 3
    moments:
      - {limb: left, beats: 2, bar: 4}   # after the trill
      - {limb: feet, beats: 1}
  - name: Two
    bars: 9-16
    texture: flutes
    tempo: fast
    before:
      what: page-turn   # a bad one
      beats: 2
      turned-by: assistant
      why: binding
      free: {left: 3, feet: 2}
  - name: Again
    bars: 1-8
    texture: plenum-manual
    again: true
`;
    type Desk = DeskPiece["sections"][number];
    const onDesk = (): { base: PieceBase; sections: readonly [Desk, Desk, Desk] } => {
      const base = opened(WHOLE);
      return { base, sections: base.piece.sections as unknown as readonly [Desk, Desk, Desk] };
    };

    test("is on the desk, and what a section leaves to the piece is not put into it", () => {
      const { base, sections } = onDesk();
      expect(base.piece).toMatchObject({
        assistant: "left",
        pistons: { generals: [2, 3], divisionals: null, levels: [7] },
        practised: false,
        pace: "careful",
        tempo: "slow",
        metronome: { bpm: 60, quarters: 2 },
        beatsInBar: 4,
        tradition: "north-german",
      });
      const [one, two, again] = sections;
      expect(one).toMatchObject({ tempo: undefined, metronome: null, pieceTempo: "slow", beatsInBar: 3, again: false });
      expect(one.moments).toEqual([
        { limb: "left", beats: 2, bar: "4" },
        { limb: "feet", beats: 1, bar: null },
      ]);
      expect(two).toMatchObject({ tempo: "fast", before: { turnedBy: "assistant", free: { left: 3, feet: 2 } } });
      expect(again.again).toBe(true);
      expect(written(base, base.piece)).toBe(WHOLE);
    });

    const CASES: readonly [
      string,
      (piece: DeskPiece, at: readonly [Desk, Desk, Desk]) => Partial<DeskPiece>,
      [string, string],
    ][] = [
      ["tempo of the piece", () => ({ tempo: "slow", metronome: { bpm: 66, quarters: 2 } }), ["bpm: 60", "bpm: 66"]],
      ["beats in a bar", () => ({ beatsInBar: 2 }), ["\nbeats-in-bar: 4", "\nbeats-in-bar: 2"]],
      ["assistant", () => ({ assistant: "right" }), ["assistant: left  ", "assistant: right  "]],
      ["generals", ({ pistons }) => ({ pistons: { ...pistons, generals: [1, 2, 3, 4] } }), ["[2, 3]", "4"]],
      ["levels", ({ pistons }) => ({ pistons: { ...pistons, levels: [7, 8] } }), ["[7]", "[7, 8]"]],
      [
        "divisionals",
        ({ pistons }) => ({ pistons: { ...pistons, divisionals: { Great: [1, 2] } } }),
        ["generals: [2, 3]", "generals: [2, 3]\n  divisionals: {Great: 2}"],
      ],
      [
        "all pistons again",
        () => ({ pistons: { generals: null, divisionals: null, levels: null } }),
        ["pistons:\n  # what the keeper said\n  generals: [2, 3]\n  levels: [7]   # nobody uses it\n", ""],
      ],
      ["practised", () => ({ practised: true }), ["practised: false\n", ""]],
      ["pace", () => ({ pace: "brisk" }), ["pace: careful", "pace: brisk"]],
      [
        "beats in a section's bar",
        (_, [one, ...rest]) => ({ sections: [{ ...one, beatsInBar: 6 }, ...rest] }),
        ["    beats-in-bar: 3", "    beats-in-bar: 6"],
      ],
      [
        "one rest of a hand",
        (_, [one, ...rest]) => ({
          sections: [{ ...one, moments: [one.moments[0] as never, { limb: "feet", beats: 1, bar: "7" }] }, ...rest],
        }),
        ["{limb: feet, beats: 1}", "{limb: feet, beats: 1, bar: 7}"],
      ],
      [
        "the first rest taken out",
        (_, [one, ...rest]) => ({ sections: [{ ...one, moments: one.moments.slice(1) }, ...rest] }),
        ["      - {limb: left, beats: 2, bar: 4}   # after the trill\n", ""],
      ],
      [
        "a rest more",
        (_, [one, ...rest]) => ({
          sections: [{ ...one, moments: [...one.moments, { limb: "right", beats: 4, bar: null }] }, ...rest],
        }),
        ["beats: 1}\n", "beats: 1}\n      - {limb: right, beats: 4}\n"],
      ],
      [
        "a tempo counted",
        (_, [one, two, again]) => ({
          sections: [one, { ...two, tempo: "fast", metronome: { bpm: 132, quarters: 1.5 } }, again],
        }),
        ["tempo: fast", "tempo: {bpm: 132, beat: dotted quarter}"],
      ],
      [
        "beats before",
        (_, [one, two, again]) => ({
          sections: [one, { ...two, before: { ...two.before, beats: 5 } as Desk["before"] }, again],
        }),
        ["      beats: 2\n", "      beats: 5\n"],
      ],
      [
        "one hand less free",
        (_, [one, two, again]) => ({
          sections: [one, { ...two, before: { ...two.before, free: { left: 3 } } as Desk["before"] }, again],
        }),
        ["{left: 3, feet: 2}", "{left: 3}"],
      ],
      [
        "who turns",
        (_, [one, two, again]) => ({
          sections: [one, { ...two, before: { ...two.before, turnedBy: "player" } as Desk["before"] }, again],
        }),
        ["      turned-by: assistant\n", ""],
      ],
      [
        "bars played before",
        (_, [one, two, again]) => ({ sections: [{ ...one, again: true }, two, again] }),
        [
          "bar: 4}   # after the trill\n      - {limb: feet, beats: 1}\n",
          "bar: 4}   # after the trill\n      - {limb: feet, beats: 1}\n    again: true\n",
        ],
      ],
      [
        "no school, against that of the piece",
        (_, [one, two, again]) => ({ sections: [one, { ...two, tradition: "neutral" }, again] }),
        ["    texture: flutes\n", "    texture: flutes\n    tradition: neutral\n"],
      ],
    ];
    test.each(CASES)(
      "%s: changed on the desk, it changes in the file, and no other byte does",
      (_, change, [from, to]) => {
        const { base, sections } = onDesk();
        const piece = { ...base.piece, ...change(base.piece, sections) };
        const text = written(base, piece);
        expect(WHOLE.split(from)).toHaveLength(2);
        expect(text).toBe(WHOLE.replace(from, to));
        expect(opened(text).piece).toEqual(piece);
      },
    );
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
