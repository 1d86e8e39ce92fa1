import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { editPieceFile, type PieceEdit } from "../../shared-model/files/piece-edit.ts";
import { readPieceFile } from "../../shared-model/files/piece-file.ts";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";

const PIECE = `# My partita, for the evening.
registrant: piece/1
name: Partita   # on an evening tune
fingerings: blue folder
sections:
  # The tune as it stands.
  - name: Tune
    texture: hymn-verse
    registration:   # as at the last service
      keyboards: {plenum: Hauptwerk}
      drawn:
        # The old pipes.
        Hauptwerk: [Principal 8, Octave 4]   # no mixture
        Pedal: [Subbass 16]
      couplers: [Hauptwerk to Pedal]
    pinned: true
  - name: Bicinium
    texture: trio   # really two voices

    # Softer, since it comes after the tune.
    softer-than: Tune
  - {name: Last, texture: hymn-verse, same-as: 1}
`;

const edit = (...edits: PieceEdit[]): string => {
  const { text, troubles } = editPieceFile(PIECE, edits);
  return text ?? troubles.map(troubleLine).join("\n");
};

/** Lines that went and lines that came, in the order of the text. */
function changed(after: string, before = PIECE): string[] {
  const [old, now] = [before.split("\n"), after.split("\n")];
  return [
    ...old.filter((line) => !now.includes(line)).map((line) => `-${line}`),
    ...now.filter((line) => !old.includes(line)).map((line) => `+${line}`),
  ];
}

const SET = (section: number, registration: Record<string, never> | object): PieceEdit => ({
  edit: "set-registrations",
  changes: [{ section, registration: registration as Record<string, string> }],
});

test("without edits the text stays as it is", () => expect(edit()).toBe(PIECE));

describe("a registration", () => {
  test("comes under a section that has none, in lines to be read", () => {
    const drawn = { Oberwerk: ["Gedackt 8"], Pedal: ["Subbass 16"] };
    const keyboards = { "voice-1": "Oberwerk" };
    const registration = { keyboards, drawn, boxes: undefined, couplers: ["Hauptwerk to Pedal"] };
    const after = edit({
      edit: "set-registrations",
      changes: [{ section: 1, registration, pinned: true, steps: [] }],
    });
    expect(after.slice(0, after.indexOf("    softer-than"))).toBe(PIECE.slice(0, PIECE.indexOf("    softer-than")));
    expect(after.slice(after.indexOf("    softer-than"))).toBe(`    softer-than: Tune
    registration:
      keyboards: {voice-1: Oberwerk}
      drawn:
        Oberwerk: [Gedackt 8]
        Pedal: [Subbass 16]
      couplers: [Hauptwerk to Pedal]
    pinned: true
  - {name: Last, texture: hymn-verse, same-as: 1}
`);
  });

  test("that changes in one division touches its line alone", () => {
    const after = edit(
      SET(0, {
        keyboards: { plenum: "Hauptwerk" },
        drawn: { Hauptwerk: ["Principal 8"], Pedal: ["Subbass 16"] },
        couplers: ["Hauptwerk to Pedal"],
      }),
    );
    expect(changed(after)).toEqual([
      "-        Hauptwerk: [Principal 8, Octave 4]   # no mixture",
      "+        Hauptwerk: [Principal 8]   # no mixture",
    ]);
  });

  test("that gains and loses divisions and couplers keeps the comments of the rest", () => {
    const after = edit(
      SET(0, { drawn: { Hauptwerk: ["Principal 8"], Oberwerk: ["Gedackt 8"] }, boxes: { Oberwerk: "closed" } }),
    );
    expect(after.slice(after.indexOf("    registration"), after.indexOf("    pinned"))).toBe(
      `    registration:   # as at the last service
      drawn:
        # The old pipes.
        Hauptwerk: [Principal 8]   # no mixture
        Oberwerk: [Gedackt 8]
      boxes: {Oberwerk: closed}
`,
    );
  });

  test("set as it stands changes nothing", () => {
    const drawn = { Hauptwerk: ["Principal 8", "Octave 4"], Pedal: ["Subbass 16"] };
    const registration = { keyboards: { plenum: "Hauptwerk" }, drawn, couplers: ["Hauptwerk to Pedal"] };
    expect(edit({ edit: "set-registrations", changes: [{ section: 0, registration, pinned: true }] })).toBe(PIECE);
  });

  test("is taken away with its pin", () => {
    const after = edit({ edit: "set-registrations", changes: [{ section: 0, registration: null, pinned: null }] });
    expect(after).not.toMatch(/pinned|Principal/);
    expect(readPieceFile(after, "p.yaml", null).piece?.sections.length).toBe(3);
  });

  test("comes into a section in brackets, and steps with it", () => {
    const after = edit({
      edit: "set-registrations",
      changes: [
        { section: 2, registration: { drawn: { Pedal: ["Subbass 16"] } }, steps: [{ drawn: {} }], pinned: true },
      ],
    });
    expect(changed(after)).toEqual([
      "-  - {name: Last, texture: hymn-verse, same-as: 1}",
      "+  - {name: Last, texture: hymn-verse, same-as: 1, registration: {drawn: {Pedal: [Subbass 16]}}, steps: [{drawn: {}}], pinned: true}",
    ]);
  });
});

describe("sections", () => {
  test("one is added in lines of its own", () => {
    const after = edit({
      edit: "add-section",
      section: { name: "Trio", texture: "trio", before: { what: "rest", beats: 2 } },
      at: 1,
    });
    expect(changed(after)).toEqual(["+  - name: Trio", "+    texture: trio", "+    before: {what: rest, beats: 2}"]);
    expect(readPieceFile(after, "p.yaml", null).piece?.sections.map((each) => each.section.name)).toEqual([
      "Tune",
      "Trio",
      "Bicinium",
      "Last",
    ]);
  });

  test.each(["sections: []\n", "sections:\n", ""])("the first one of a piece with %j", (list) => {
    const start = `registrant: piece/1\nname: New   # so far\n${list}`;
    const { text } = editPieceFile(start, [{ edit: "add-section", section: { name: "Tune", texture: "hymn-verse" } }]);
    expect(text).toBe(
      "registrant: piece/1\nname: New   # so far\nsections:\n  - name: Tune\n    texture: hymn-verse\n",
    );
  });

  test("moved, they keep their comments, and links by number follow", () => {
    const after = edit({ edit: "move-section", section: 0, to: 1 });
    expect(after).toContain("same-as: 2}");
    expect(after.indexOf("Softer, since")).toBeLessThan(after.indexOf("# no mixture"));
    expect(readPieceFile(after, "p.yaml", null).piece?.sections.map((each) => each.links)).toEqual([
      [{ kind: "softer-than", to: 1 }],
      [],
      [{ kind: "same-as", to: 1 }],
    ]);
  });

  test("taken away, with the links to it", () => {
    const after = edit({ edit: "remove-section", section: 0 });
    expect(readPieceFile(after, "p.yaml", null).piece?.sections).toMatchObject([
      { section: { name: "Bicinium" }, links: [] },
      { section: { name: "Last" }, links: [] },
    ]);
    expect(after).toContain("# Softer, since it comes after the tune.");
  });

  test("renamed, with the links to them", () => {
    expect(changed(edit({ edit: "set-section-key", section: 0, key: "name", value: "Choral: all" }))).toEqual([
      "-  - name: Tune",
      "-    softer-than: Tune",
      '+  - name: "Choral: all"',
      '+    softer-than: "Choral: all"',
    ]);
  });

  test("keys of a section and of the piece", () => {
    const after = edit(
      { edit: "set-section-key", section: 1, key: "dynamic", value: "p" },
      { edit: "set-key", key: "organ", value: "St. Maren" },
      { edit: "set-key", key: "assistant", value: "left" },
      { edit: "set-section-key", section: 1, key: "softer-than", value: null },
    );
    expect(changed(after)).toEqual([
      "-    softer-than: Tune",
      "+organ: St. Maren",
      "+assistant: left",
      "+    dynamic: p",
    ]);
  });
});

describe("what is refused leaves the text alone and says why", () => {
  test.each<[string, PieceEdit, RegExp]>([
    ["a section that is gone", { edit: "remove-section", section: 9 }, /The file has no section "10" any more/],
    [
      "a wrong value",
      { edit: "set-section-key", section: 0, key: "dynamic", value: "loud" },
      /dynamic: does not know "loud"/,
    ],
    [
      "a link to nothing",
      { edit: "set-section-key", section: 0, key: "echo-of", value: "Toccata" },
      /No section "Toccata"/,
    ],
  ])("%s", (_, change, says) => {
    const { text, troubles } = editPieceFile(PIECE, [change]);
    expect(text).toBeNull();
    expect(troubles.map(troubleLine).join("\n")).toMatch(says);
  });

  test("a section shared through a name", () => {
    const shared = "registrant: piece/1\nsections:\n  - &one\n    texture: trio\n  - *one\n";
    const { text, troubles } = editPieceFile(shared, [SET(1, { drawn: { Pedal: ["Subbass 16"] } })]);
    expect([text, troubles.map((each) => each.code)]).toEqual([null, ["edit-by-hand"]]);
  });
});

const stop = fc.constantFrom("Principal 8", "Octave 4", "Gedackt 8", "Nasat 2 2/3");
const registration = fc.record(
  {
    keyboards: fc.dictionary(fc.constantFrom("plenum", "bass"), fc.constantFrom("Hauptwerk", "Oberwerk"), {
      minKeys: 1,
    }),
    drawn: fc.dictionary(fc.constantFrom("Hauptwerk", "Oberwerk", "Pedal"), fc.array(stop, { maxLength: 3 })),
    couplers: fc.array(fc.constantFrom("Hauptwerk to Pedal", "Oberwerk to Hauptwerk"), { minLength: 1 }),
    boxes: fc.dictionary(fc.constantFrom("Oberwerk"), fc.constantFrom("closed", "half"), { minKeys: 1 }),
  },
  { requiredKeys: ["drawn"] },
);

/** Every comment of a text. */
const comments = (text: string): string[] => [...text.matchAll(/# .*$/gm)].map((match) => match[0]).sort();

test("random registrations, one after the other, say what was asked and keep what is outside of them", () => {
  const hymn = PIECE.replace("texture: trio", "texture: hymn-verse");
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.nat(2), registration, fc.boolean()), { maxLength: 6 }), (changes) => {
      let text = hymn;
      for (const [section, wanted, pinned] of changes) {
        const { text: after, troubles } = editPieceFile(text, [
          { edit: "set-registrations", changes: [{ section, registration: wanted as never, pinned }] },
        ]);
        expect(troubles.filter((each) => each.severity === "error")).toEqual([]);
        text = after as string;
        const said = /^# My partita[\s\S]*fingerings: blue folder$/m.exec(text);
        expect(said).not.toBeNull();
        for (const each of [
          "# My partita, for the evening.",
          "# really two voices",
          "# Softer, since it comes after the tune.",
        ])
          expect(comments(text)).toContain(each);
        expect(parse(text).sections[section].registration).toEqual(wanted);
        expect(parse(text).sections[section].pinned).toBe(pinned ? true : undefined);
        // Set again it is found to be there already.
        expect(
          editPieceFile(text, [{ edit: "set-registrations", changes: [{ section, registration: wanted as never }] }])
            .text,
        ).toBe(text);
      }
    }),
    { seed: 20261126, numRuns: 150 },
  );
});

const structural = fc.oneof(
  fc.record({ edit: fc.constant("move-section" as const), section: fc.nat(6), to: fc.nat(6) }),
  fc.record({ edit: fc.constant("remove-section" as const), section: fc.nat(6) }),
  fc.record({
    edit: fc.constant("rename" as const),
    section: fc.nat(6),
    name: fc.constantFrom("Echo", "Verse: two", "3", "Ärger"),
  }),
  fc.record({ edit: fc.constant("add-section" as const), at: fc.nat(6) }),
);

/** What the file should come to: names, and links by what they mean. */
interface Expected {
  name: string | null;
  links: Expected[];
}

test("sections moved, removed, renamed and added at random keep their order, their links and their comments", () => {
  const start = PIECE.replace("texture: trio ", "texture: hymn-verse ");
  fc.assert(
    fc.property(fc.array(structural, { maxLength: 8 }), (edits) => {
      let text = start;
      const [tune, bicinium, last]: Expected[] = ["Tune", "Bicinium", "Last"].map((name) => ({ name, links: [] }));
      let model = [tune, bicinium, last] as Expected[];
      (bicinium as Expected).links.push(tune as Expected);
      (last as Expected).links.push(tune as Expected);
      let added = 0;
      for (const each of edits) {
        const section = "section" in each ? each.section % Math.max(1, model.length) : 0;
        if (each.edit !== "add-section" && model.length === 0) continue;
        const one = model[section] as Expected;
        let edit: PieceEdit;
        if (each.edit === "rename") {
          // Two sections of one name are allowed, links to either are not.
          if (model.some((other) => other.name === each.name)) continue;
          one.name = each.name;
          edit = { edit: "set-section-key", section, key: "name", value: each.name };
        } else if (each.edit === "add-section") {
          const at = Math.min(each.at, model.length);
          added += 1;
          const name = `New ${added}`;
          model = [...model.slice(0, at), { name, links: [] }, ...model.slice(at)];
          edit = { edit: "add-section", section: { name, texture: "hymn-verse" }, at };
        } else if (each.edit === "move-section") {
          const to = Math.min(each.to, model.length - 1);
          const others = model.filter((other) => other !== one);
          model = [...others.slice(0, to), one, ...others.slice(to)];
          edit = { edit: "move-section", section, to };
        } else {
          model = model.filter((other) => other !== one);
          for (const other of model) other.links = other.links.filter((link) => link !== one);
          edit = { edit: "remove-section", section };
        }
        const { text: after, troubles } = editPieceFile(text, [edit]);
        expect(troubles.filter((trouble) => trouble.severity === "error").map(troubleLine)).toEqual([]);
        text = after as string;
        const { piece } = readPieceFile(text, "p.yaml", null);
        expect(piece?.sections.map((every) => every.section.name)).toEqual(model.map((every) => every.name));
        expect(piece?.sections.map((every) => every.links.map((link) => link.to))).toEqual(
          model.map((every) => every.links.map((link) => model.indexOf(link))),
        );
        expect(text.startsWith("# My partita, for the evening.\nregistrant: piece/1\n")).toBe(true);
        if (model.includes(tune as Expected)) expect(text).toContain("# no mixture");
        if (model.includes(bicinium as Expected)) expect(text).toContain("# really two voices");
      }
    }),
    { seed: 20261126, numRuns: 300 },
  );
});
