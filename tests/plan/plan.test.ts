import { describe, expect, test } from "vitest";
import { readPieceFile } from "../../shared-model/files/piece-file.ts";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import type { Piece } from "../../shared-model/music/piece.ts";
import { type ChosenRow, chooseRow, type PlanOptions } from "../../shared-model/plan/plan.ts";
import { type PlannedPiece, workOut } from "../../shared-model/plan/planned.ts";
import { settingSheet } from "../../shared-model/plan/setting-sheet.ts";
import { registrationsOf } from "../../shared-model/plan/written.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { demoOrgan, demoText } from "../instruments/demo-organs.ts";
import { leastCost } from "./exhaustive.ts";
import { faultsWhenFollowed } from "./followed.ts";
import { instrument, piece, TWO_MANUALS } from "./small-console.ts";

function chosen(organ: Instrument, music: Piece, options?: PlanOptions): ChosenRow {
  const row = chooseRow(organ, music, options);
  if ("troubles" in row) throw new Error(row.troubles.map((each) => each.text).join("\n"));
  return row;
}
const planned = (organ: Instrument, music: Piece, options?: PlanOptions): PlannedPiece =>
  workOut(chosen(organ, music, options));

const drawn = (plan: PlannedPiece, at: number): string[] =>
  [...(plan.sections[at]?.chosen.entry.state.drawn ?? [])].sort();

const VERSES = `tempo: {bpm: 80}
sections:
  - {name: Tune, texture: plenum-manual}
  - {name: Two, texture: two-voices, before: {what: rest, beats: 2}}
  - {name: Quiet, texture: flutes, before: {what: rest, beats: 2}, softer-than: Two}
  - {name: Again, texture: two-voices, before: {what: rest, beats: 3}, contrast-with: Two}
`;

describe("the row that is worth most", () => {
  test.each([
    ["by hand", ""],
    ["with more pistons than changes", "aids: {generals: 8, levels: 4}\n"],
    ["with fewer pistons than changes", "aids: {generals: 2}\n"],
  ])("is the best of all rows, %s", (_, aids) => {
    const organ =
      aids === ""
        ? TWO_MANUALS
        : { ...TWO_MANUALS, aids: instrument(`\n  - {name: A, kind: manual, stops: [Gedackt 8]}\n${aids}`).aids };
    for (const extra of ["", "assistant: right\n", "practised: false\npace: careful\n"]) {
      const row = chosen(organ, piece(extra + VERSES, organ), { count: 4 });
      expect(row.row.cost).toBe(leastCost(row.problem));
    }
  });

  test("looks at as many of each list as it is told", () => {
    for (const count of [1, 3]) {
      const row = chosen(TWO_MANUALS, piece(VERSES.replace(/, (?:softer-than|contrast-with): Two/g, ""), TWO_MANUALS), {
        count,
      });
      expect(row.candidates.map((each) => each.list.length)).toEqual(Array(4).fill(count));
      expect(row.row.cost).toBe(leastCost(row.problem));
    }
  });

  test("takes the best of every list where changes cost nothing, and the dearer the work the fewer knobs move", () => {
    const music = piece(
      VERSES.replace(/what: rest, beats: \d/g, "what: pause").replace(/, (?:softer-than|contrast-with): Two/g, ""),
      TWO_MANUALS,
    );
    const free = { knob: 0, leisure: 0, press: 0, shift: 0, octave: 0, brisk: 0, assistant: 0 };
    const best = planned(TWO_MANUALS, music, { weights: free });
    expect(best.sections.map((section) => section.givenUp)).toEqual([null, null, null, null]);
    const knobs = (plan: PlannedPiece): number =>
      plan.changes.reduce((sum, each) => sum + each.moves.length + each.later.length, 0);
    const lazy = planned(TWO_MANUALS, music, { weights: { knob: 2000, leisure: 2000 } });
    expect(knobs(lazy)).toBeLessThan(knobs(best));
    expect(
      lazy.sections.some((section) => section.givenUp && section.givenUp.points > 0 && section.givenUp.why.length > 0),
    ).toBe(true);
  });

  test("the same piece twice gives the same plan", () => {
    const once = planned(TWO_MANUALS, piece(VERSES, TWO_MANUALS));
    const twice = planned(TWO_MANUALS, piece(VERSES, TWO_MANUALS));
    expect(twice.sections.map((section) => section.chosen.signature)).toEqual(
      once.sections.map((section) => section.chosen.signature),
    );
    expect(twice.changes.map((change) => [change.verdict, change.handling.need])).toEqual(
      once.changes.map((change) => [change.verdict, change.handling.need]),
    );
  });
});

describe("links", () => {
  test("are kept, and the sound says so", () => {
    const plan = planned(TWO_MANUALS, piece(VERSES, TWO_MANUALS));
    expect(plan.sections.flatMap((section) => section.links.map(({ holds }) => holds))).toEqual([true, true]);
    const [, two, quiet] = plan.sections;
    expect(quiet?.chosen.sound.level).toBeLessThan(two?.chosen.sound.level ?? 0);
  });

  test("the same is the same console, also for other music", () => {
    const plan = planned(
      TWO_MANUALS,
      piece(
        "sections:\n  - {name: A, texture: plenum}\n  - {name: B, texture: flutes}\n  - {name: C, texture: fugue, same-as: A}\n",
        TWO_MANUALS,
      ),
    );
    expect(drawn(plan, 2)).toEqual(drawn(plan, 0));
    expect(drawn(plan, 1)).not.toEqual(drawn(plan, 0));
  });

  test("the same, played an octave lower, is played an octave lower again, also for softer music", () => {
    const pinned =
      "pinned: true, registration: {keyboards: {plenum: Great}, octaves: {plenum: -1}, drawn: {Great: [Principal 4, Fifteenth 2]}}";
    const plan = planned(
      TWO_MANUALS,
      piece(
        `sections:\n  - {name: A, texture: plenum-manual, ${pinned}}\n  - {name: B, texture: flutes}\n  - {name: C, texture: plenum-manual, dynamic: mf, same-as: A}\n`,
        TWO_MANUALS,
      ),
    );
    const octaves = (at: number) => plan.sections[at]?.chosen.entry.placings.map(({ octave }) => octave);
    expect([octaves(0), octaves(2)]).toEqual([[-1], [-1]]);
    expect(drawn(plan, 2)).toEqual(["Great/Fifteenth 2", "Great/Principal 4"]);
  });

  test("a growing section that is the same as another one grows through the same steps", () => {
    const organ = demoOrgan("sallowby");
    const plan = planned(
      organ,
      piece(
        "sections:\n  - {name: A, texture: crescendo}\n  - {name: B, texture: flutes, before: pause}\n  - {name: C, texture: crescendo, dynamic: f, before: pause, same-as: A}\n",
        organ,
      ),
    );
    const steps = (at: number) => plan.sections[at]?.chosen.steps.map(({ stand }) => [...stand.state.drawn].sort());
    expect(steps(0)?.length).toBeGreaterThan(1);
    expect(steps(2)).toEqual(steps(0));
  });

  test("an echo has the colour of its call, and is softer", () => {
    const organ = demoOrgan("sallowby");
    const plan = planned(
      organ,
      piece(
        "sections:\n  - {name: Call, texture: melody-over-accompaniment}\n  - {name: Echo, texture: melody-over-accompaniment, before: {what: rest, beats: 4}, echo-of: Call}\n",
        organ,
      ),
    );
    const [call, echo] = plan.sections.map((section) => section.chosen.sound);
    expect(echo?.colour).toBe(call?.colour);
    expect(echo?.level).toBeLessThanOrEqual((call?.level ?? 0) - 150);
  });

  test("one that nothing on the organ can keep is told as broken", () => {
    const single = instrument("\n  - {name: Manual, kind: manual, stops: [Gedackt 8]}\n");
    const plan = planned(
      single,
      piece(
        "sections:\n  - {name: A, texture: meditation}\n  - {name: B, texture: meditation, softer-than: A}\n",
        single,
      ),
    );
    expect(plan.sections[1]?.links.map(({ holds }) => holds)).toEqual([false]);
  });
});

describe("pins", () => {
  const PINNED = VERSES.replace(
    "{name: Two, texture: two-voices,",
    "{name: Two, texture: two-voices, pinned: true, registration: {keyboards: {voice-1: Positive, voice-2: Great}, drawn: {Positive: [Oboe 8], Great: [Stopped Diapason 8, Principal 4]}},",
  );

  test("stay as they are, and the rest is planned around them", () => {
    const music = piece(PINNED, TWO_MANUALS);
    const plan = planned(TWO_MANUALS, music);
    expect(drawn(plan, 1)).toEqual(["Great/Principal 4", "Great/Stopped Diapason 8", "Positive/Oboe 8"]);
    expect(plan.sections[1]).toMatchObject({ givenUp: null, chosen: { origin: "pinned" } });
    const row = chosen(TWO_MANUALS, music, { count: 4 });
    expect(row.row.cost).toBe(leastCost(row.problem));
  });

  test("what a plan left in the file is not disturbed without need", () => {
    const first = planned(TWO_MANUALS, piece(VERSES, TWO_MANUALS));
    const kept: Piece = {
      ...piece(VERSES, TWO_MANUALS),
      sections: piece(VERSES, TWO_MANUALS).sections.map((section, at) => {
        // The third section stands as the second of its list was; the player has not pinned it.
        const list = first.sections[at]?.candidates.list ?? [];
        const one =
          at === 0 ? list.find((each) => each.score >= (list[0]?.score ?? 0) - 50 && each !== list[0]) : undefined;
        const [registration] = first.sections[at]
          ? registrationsOf({ ...first.sections[at], chosen: one ?? first.sections[at].chosen })
          : [];
        return { ...section, registration: registration ?? null };
      }),
    };
    const again = planned(TWO_MANUALS, kept);
    for (const [at, section] of kept.sections.entries())
      expect(drawn(again, at)).toEqual([...(section.registration?.state.drawn ?? [])].sort());
  });

  test("one that cannot be played is told by name", () => {
    const music = piece(
      PINNED.replace("{voice-1: Positive, voice-2: Great}", "{voice-1: Pedal, voice-2: Great}"),
      TWO_MANUALS,
    );
    const row = chooseRow(TWO_MANUALS, music);
    expect("troubles" in row && row.troubles).toEqual([
      {
        section: 1,
        text: expect.stringMatching(/^The voice-1 is for the right hand, and the Pedal is played by the feet/),
        impossible: false,
      },
    ]);
  });
});

test("a piece without sections, and a section for which nothing serves", () => {
  expect(chooseRow(TWO_MANUALS, piece("sections: []\n", TWO_MANUALS))).toMatchObject({
    troubles: [{ section: null, text: "The piece has no sections yet. Add one under sections:." }],
  });
  const flute = instrument("\n  - {name: Manual, kind: manual, stops: [{name: Gedackt, pitch: 8, off: true}]}\n");
  expect(chooseRow(flute, piece("sections:\n  - {texture: plenum-manual}\n", flute))).toMatchObject({
    troubles: [
      {
        section: 0,
        text: "Nothing on this organ serves for it. No stop can be drawn on the Manual: all of them are marked off.",
      },
    ],
  });
});

describe("the changes of a plan", () => {
  test("followed by hand give every section what was planned for it", () => {
    expect(faultsWhenFollowed(planned(TWO_MANUALS, piece(VERSES, TWO_MANUALS)))).toEqual([]);
  });

  test("a silent stop that is wanted again stays drawn", () => {
    const text = `tempo: {bpm: 80}
sections:
  - {texture: plenum-manual, pinned: true, registration: {keyboards: {plenum: Great}, drawn: {Great: [Open Diapason 8, Principal 4]}}}
  - {texture: flutes, pinned: true, before: {what: rest, beats: 4}, registration: {keyboards: {plenum: Positive}, drawn: {Positive: [Gedackt 8]}}}
  - {texture: plenum-manual, pinned: true, before: {what: rest, beats: 4}, registration: {keyboards: {plenum: Great}, drawn: {Great: [Open Diapason 8]}}}
`;
    const [there, back] = planned(TWO_MANUALS, piece(text, TWO_MANUALS)).changes;
    expect(there?.left.map((move) => move.id)).toEqual(["Great/Open Diapason 8"]);
    expect(there?.later.map((move) => move.id)).toEqual(["Great/Principal 4"]);
    expect(back?.moves).toEqual([]);
  });
});

/** Three pieces of different kinds, on three organs each, and a hymn. */
const PIECES: Readonly<Record<string, readonly string[]>> = {
  "partita-marsh-tune": ["wiekenborg", "zinnrode", "sallowby"],
  "suite-echoes": ["lurvaux", "hawsermouth", "weidenquell"],
  "evening-on-the-water": ["hawsermouth", "huettenlohe", "port-lestrane"],
  hymn: ["sallowby"],
};

describe.each(Object.entries(PIECES))("%s", (file, organs) => {
  test.each(organs)("on %s", { timeout: 60_000 }, (name) => {
    const organ = demoOrgan(name);
    const { piece: music, troubles } = readPieceFile(demoText(`pieces/${file}.yaml`), `${file}.yaml`, organ);
    expect(troubles.map(troubleLine)).toEqual([]);
    const plan = planned(organ, music as Piece);
    expect(plan.sections).toHaveLength((music as Piece).sections.length);
    expect(plan.sections.flatMap((section) => section.links.filter((link) => !link.holds))).toEqual([]);
    for (const change of plan.changes) {
      const { verdict, alone, handling, advice } = change;
      if (verdict === "easy") expect(handling.slack).toBeGreaterThanOrEqual(1.2);
      if (verdict === "needs-assistant" || verdict === "impossible") expect(alone.slack).toBeLessThan(0.8);
      // Whoever has no assistant, or cannot be helped, is shown another way where it is not one of many steps.
      const stuck = verdict === "impossible" || (verdict === "needs-assistant" && music?.assistant === "none");
      if (stuck && change.step === 0) expect(advice.length).toBeGreaterThan(0);
      if (!stuck) expect(advice).toEqual([]);
    }
    expect(faultsWhenFollowed(plan)).toEqual([]);
    const sheet = settingSheet(plan);
    const { aids } = organ;
    expect(sheet.rows.length).toBeLessThanOrEqual(aids.generals * Math.max(1, aids.levels));
    expect(sheet.rows.length > 0).toBe(aids.generals > 0);
    if (sheet.rows.length > 0) expect(sheet.cautions[0]).toMatch(/^Ask the organ's keeper before/);
  });
});

describe("two pistons for a piece of many registrations", () => {
  const sallowby = demoOrgan("sallowby");
  const organ: Instrument = { ...sallowby, aids: { ...sallowby.aids, generals: 2, levels: 1 } };
  const { piece: music } = readPieceFile(demoText("pieces/evening-on-the-water.yaml"), "evening.yaml", organ);

  test("serve what is near as well: pressed, and the rest moved by hand, every section stands as planned", () => {
    const plan = planned(organ, music as Piece);
    const near = plan.changes.filter(({ means }) => means.by === "general" && means.near);
    expect(near.length).toBeGreaterThan(0);
    expect(faultsWhenFollowed(plan)).toEqual([]);
    expect(plan.pistons.length).toBeLessThanOrEqual(2);
    // Each is pressed by some change that it serves to the letter or nearly; the sheet names all of them.
    const uses = plan.pistons.flatMap((piston) => piston.uses);
    expect(uses.length).toBe(plan.changes.filter(({ means }) => means.by === "general").length);
    for (const { handling, moves } of near) {
      const told = handling.tasks.flatMap((task) => task.moves.map((move) => move.id));
      expect(told.sort()).toEqual(moves.map((move) => move.id).sort());
      expect(handling.tasks[0]?.moves).toEqual([]);
    }
  });
});

test("the five verses of a hymn each have a registration of their own", () => {
  const organ = demoOrgan("sallowby");
  const { piece: music } = readPieceFile(demoText("pieces/hymn.yaml"), "hymn.yaml", organ);
  const plan = planned(organ, music as Piece);
  const verses = plan.sections.slice(1).map((section) => section.chosen.signature);
  expect(new Set(verses).size).toBe(5);
});
