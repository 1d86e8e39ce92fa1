import { describe, expect, test } from "vitest";
import type { Placing } from "../../shared-model/console/state.ts";
import type { Piece, PieceSection } from "../../shared-model/music/piece.ts";
import { differenceOf } from "../../shared-model/plan/changes.ts";
import { layoutOf } from "../../shared-model/plan/console-layout.ts";
import type { Crew } from "../../shared-model/plan/crew.ts";
import { type Feasibility, feasibilityOf } from "../../shared-model/plan/feasibility.ts";
import { chooseRow } from "../../shared-model/plan/plan.ts";
import { workOut } from "../../shared-model/plan/planned.ts";
import { type Stand, standOf } from "../../shared-model/plan/stand.ts";
import { timeLeft } from "../../shared-model/plan/time-left.ts";
import { movesWords, shiftWords, timeWords } from "../../shared-model/plan/words.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { instrument, piece, TWO_MANUALS } from "./small-console.ts";

/** `Great: Open Diapason 8 | Positive: Gedackt 8 | Positive to Great`, and `melody on Positive, bass on Pedal`. */
function stand(music: PieceSection, drawn: string, plays: string, organ: Instrument = TWO_MANUALS): Stand {
  const parts = drawn.split(" | ");
  const stops = parts
    .filter((part) => part.includes(": "))
    .flatMap((part) => {
      const [division, list] = part.split(": ") as [string, string];
      return list.split(", ").map((stop) => `${division}/${stop}`);
    });
  const ids = new Set(organ.divisions.flatMap((division) => division.stops.map((stop) => stop.id)));
  expect(stops.filter((stop) => !ids.has(stop))).toEqual([]);
  const placings = plays.split(", ").map((each): Placing => {
    const [part, keyboard] = each.split(" on ") as [string, string];
    const octave = keyboard.endsWith(" -1") ? -1 : 0;
    return { part, keyboard: keyboard.replace(" -1", ""), octave };
  });
  const state = {
    drawn: new Set(stops),
    couplers: new Set(parts.filter((part) => part.includes(" to "))),
    tremulants: new Set<string>(),
    boxes: new Map(
      parts.filter((part) => part.endsWith(" shut")).map((part) => [part.replace(" shut", ""), "closed" as const]),
    ),
    unisonOff: new Set<string>(),
  };
  return standOf(organ, music.section, state, placings);
}

const CREW: Crew = { assistant: "none", reads: false, pace: 1 };

interface Case {
  readonly before?: string;
  readonly texture?: string;
  readonly moments?: string;
  readonly from: readonly [string, string];
  readonly to: readonly [string, string];
  readonly crew?: Partial<Crew>;
  readonly organ?: Instrument;
}

/** A change between two sections at 60 beats a minute. */
function change({
  before = "{what: rest, beats: 3}",
  texture = "melody-over-accompaniment",
  moments,
  from,
  to,
  crew,
  organ = TWO_MANUALS,
}: Case) {
  const music: Piece = piece(
    `tempo: {bpm: 60}
beats-in-bar: 4
sections:
  - {texture: ${texture}, bars: 1-8${moments ? `, moments: [${moments}]` : ""}}
  - {texture: ${texture}, bars: 9-16, before: ${before}}
`,
    organ,
  );
  const [first, second] = music.sections as [PieceSection, PieceSection];
  const layout = layoutOf(organ);
  const time = timeLeft(first, second);
  const difference = differenceOf(organ, layout, stand(first, ...from, organ), stand(second, ...to, organ));
  const found = feasibilityOf(difference, time, layout, { ...CREW, ...crew }, organ.divisions);
  return { difference, found, time };
}

const told = ({ handling }: Feasibility): string[] =>
  handling.tasks
    .filter((task) => task.moves.length > 0)
    .map((task) => `${task.who}${task.ahead ? " ahead" : ""}: ${movesWords(task.moves).join("; ")}`);

const PLAYS = "melody on Positive, accompaniment on Great, bass on Pedal";

describe("what differs", () => {
  test("stops, couplers and who goes where", () => {
    const { difference } = change({
      from: ["Great: Stopped Diapason 8 | Positive: Gedackt 8, Flute 4 | Pedal: Bourdon 16", PLAYS],
      to: [
        "Great: Open Diapason 8, Principal 4 | Positive: Gedackt 8 | Pedal: Bourdon 16 | Great to Pedal",
        "melody on Great, accompaniment on Positive, bass on Pedal",
      ],
    });
    expect(movesWords(difference.needed)).toEqual([
      "Great: -Stopped Diapason 8, +Open Diapason 8, +Principal 4",
      "Positive: -Flute 4",
      "+Great to Pedal",
    ]);
    expect(shiftWords(difference.shifts)).toEqual(["right hand to the Great", "left hand to the Positive"]);
  });

  test("what is silent afterwards can wait, what is silent before can be made ready", () => {
    const { difference } = change({
      from: ["Great: Open Diapason 8 | Pedal: Bourdon 16", "melody on Great, accompaniment on Great, bass on Pedal"],
      to: ["Positive: Gedackt 8 | Pedal: Bourdon 16", "melody on Positive, accompaniment on Positive, bass on Pedal"],
    });
    expect(movesWords(difference.later)).toEqual(["Great: -Open Diapason 8"]);
    expect(difference.needed.map((move) => [move.id, move.heldBy.size])).toEqual([["Positive/Gedackt 8", 0]]);
  });

  test("a division that sounds through a coupler is not silent", () => {
    const { difference } = change({
      from: ["Great: Open Diapason 8 | Positive to Great", "melody on Great, accompaniment on Great"],
      to: ["Great: Open Diapason 8 | Positive: Oboe 8 | Positive to Great", "melody on Great, accompaniment on Great"],
    });
    expect(difference.needed.map((move) => [...move.heldBy].sort())).toEqual([["left", "right"]]);
  });

  test("an octave shift counts", () => {
    const { difference } = change({
      from: ["Positive: Gedackt 8 | Great: Stopped Diapason 8", "melody on Positive, accompaniment on Great"],
      to: ["Positive: Gedackt 8 | Great: Stopped Diapason 8", "melody on Positive -1, accompaniment on Great"],
    });
    expect(shiftWords(difference.shifts)).toEqual(["right hand to the Positive, an octave lower than written"]);
  });
});

describe("who moves what, and whether there is time", () => {
  test("nothing to do takes no time", () => {
    const same = ["Great: Open Diapason 8 | Positive: Gedackt 8", PLAYS] as const;
    expect(change({ before: "attacca", from: same, to: same }).found).toMatchObject({
      verdict: "easy",
      handling: { need: 0 },
    });
  });

  test("three knobs in three beats: one hand after the other jamb's own", () => {
    const { found } = change({
      from: ["Great: Stopped Diapason 8 | Positive: Gedackt 8 | Pedal: Bourdon 16", PLAYS],
      to: ["Great: Open Diapason 8 | Positive: Gedackt 8 | Pedal: Bourdon 16, Bass Flute 8", PLAYS],
    });
    expect(told(found)).toEqual(["left: Pedal: +Bass Flute 8", "right: Great: -Stopped Diapason 8, +Open Diapason 8"]);
    expect(found.verdict).toBe("easy");
    // Out 45 cm, cancel, 7 cm, draw, back: 17.002 + 7.058 + 4.983 + 11.058 + 17.002 units.
    expect(found.handling.need).toBeCloseTo(0.036 * 57.103, 2);
    expect(found.handling.available).toBe(3);
  });

  test.each([
    ["four beats", "{what: rest, beats: 4}", "easy"],
    ["two beats", "{what: rest, beats: 2}", "brisk"],
    ["half a beat", "{what: rest, beats: 0.5}", "needs-assistant"],
    ["attacca", "attacca", "needs-assistant"],
    ["a pause", "pause", "easy"],
  ] as const)("two knobs in %s", (_, before, verdict) => {
    const { found } = change({
      before,
      from: ["Great: Stopped Diapason 8 | Positive: Gedackt 8", PLAYS],
      to: ["Great: Open Diapason 8 | Positive: Gedackt 8", PLAYS],
    });
    expect(found.verdict).toBe(verdict);
  });

  test("a whole chorus attacca on a mechanical organ is not possible, whoever helps", () => {
    const { found } = change({
      before: "attacca",
      from: ["Great: Stopped Diapason 8 | Positive: Gedackt 8", PLAYS],
      to: ["Great: Open Diapason 8, Principal 4, Fifteenth 2, Mixture 2 | Positive: Oboe 8", PLAYS],
      crew: { assistant: "right" },
    });
    expect(found.verdict).toBe("impossible");
  });

  test("an assistant at the jamb draws on the beat, and what is silent long before", () => {
    const { found } = change({
      before: "attacca",
      from: ["Great: Stopped Diapason 8", "melody on Great, accompaniment on Great"],
      to: [
        "Great: Stopped Diapason 8, Principal 4 | Positive: Gedackt 8, Nazard 2 2/3",
        "melody on Positive, accompaniment on Great",
      ],
      crew: { assistant: "right" },
    });
    expect([found.verdict, found.assistant]).toEqual(["needs-assistant", "right"]);
    expect(told(found)).toEqual([
      "assistant ahead: Positive: +Gedackt 8, +Nazard 2 2/3",
      "assistant: Great: +Principal 4",
    ]);
  });

  test("a hand that is free before prepares what is silent", () => {
    const { found, time } = change({
      before: "{what: rest, beats: 1, free: {left: 4}}",
      from: ["Great: Stopped Diapason 8", "melody on Great, accompaniment on Great"],
      to: ["Great: Stopped Diapason 8 | Positive: Gedackt 8", "melody on Positive, accompaniment on Great"],
    });
    expect(time.limbs).toMatchObject({ left: 4, right: 1 });
    expect(told(found)).toEqual(["left: Positive: +Gedackt 8"]);
    expect(found.verdict).toBe("easy");
  });

  test("a rest inside the section before is used where it helps", () => {
    const { found } = change({
      before: "attacca",
      moments: "{limb: right, beats: 6, bar: 5}",
      from: ["Great: Stopped Diapason 8", "melody on Great, accompaniment on Great"],
      to: [
        "Great: Stopped Diapason 8 | Positive: Gedackt 8, Nazard 2 2/3",
        "melody on Positive, accompaniment on Great",
      ],
    });
    expect(told(found)).toEqual(["right ahead: Positive: +Gedackt 8, +Nazard 2 2/3"]);
    expect(found.verdict).not.toBe("needs-assistant");
  });

  test("labels that must be read take time", () => {
    const knobs: Pick<Case, "from" | "to"> = {
      from: ["Great: Stopped Diapason 8 | Positive: Gedackt 8", PLAYS],
      to: ["Great: Open Diapason 8, Principal 4, Fifteenth 2 | Positive: Gedackt 8", PLAYS],
    };
    const practised = change(knobs).found.alone.need;
    expect(change({ ...knobs, crew: { reads: true } }).found.alone.need).toBeGreaterThan(practised);
    expect(change({ ...knobs, crew: { pace: 1.25 } }).found.alone.need).toBeCloseTo(practised * 1.25, 6);
  });

  test("a page turned by the player takes a hand", () => {
    const knobs: Pick<Case, "from" | "to"> = {
      from: ["Great: Stopped Diapason 8 | Positive: Gedackt 8", PLAYS],
      to: ["Great: Stopped Diapason 8, Principal 4 | Positive: Gedackt 8", PLAYS],
    };
    const { found } = change({ ...knobs, before: "{what: page-turn, beats: 3}" });
    expect(found.handling.tasks.filter((task) => task.turns).map((task) => task.who)).toEqual(["left"]);
    expect(change({ ...knobs, before: "{what: page-turn, beats: 1}" }).found.verdict).toBe("impossible");
  });

  test("a fermata is held by whoever is not free, and counts as written", () => {
    const { time } = change({
      before: "{what: fermata, beats: 2, free: [left]}",
      from: ["Great: Open Diapason 8", PLAYS],
      to: ["Great: Open Diapason 8", PLAYS],
    });
    expect(time.limbs).toEqual({ left: 2, right: 0.2, feet: 0.2 });
    expect(timeWords(time)).toBe("a fermata");
  });

  test("feet that have nothing to play are free", () => {
    const { time } = change({
      texture: "two-voices",
      before: "attacca",
      from: ["Great: Open Diapason 8", "voice-1 on Great"],
      to: ["Great: Open Diapason 8", "voice-1 on Great"],
    });
    expect(time.limbs.feet).toBe(32);
  });
});

test("where nobody has said, the console is taken to be a usual one, and that is told", () => {
  const { action, jambs, assumed } = layoutOf(TWO_MANUALS);
  expect([action, [...jambs]]).toEqual([
    "mechanical",
    [
      ["Great", "right"],
      ["Positive", "right"],
      ["Pedal", "left"],
    ],
  ]);
  expect(assumed).toHaveLength(3);
  const electric = instrument("\n  - {name: Great, kind: manual, stops: [Open Diapason 8]}\naids: {generals: 4}\n");
  expect(layoutOf(electric).action).toBe("electric");
});

test("what the instrument file says of its console holds", () => {
  const stated = instrument(
    `
  - {name: Great, kind: manual, keyboard: 1, stops: [Open Diapason 8]}
  - {name: Swell, kind: manual, keyboard: 2, stops: [Oboe 8]}
console: {action: tabs, left: [Great], keys-to-knobs: 30, knob-to-knob: 3}
aids: {generals: 4}
`,
  );
  const { action, jambs, distances, assumed } = layoutOf(stated);
  expect([action, jambs.get("Great"), jambs.get("Swell"), distances.keysToBlock, distances.knobPitch]).toEqual([
    "tabs",
    "left",
    "left",
    30,
    3,
  ]);
  expect([distances.blockToBlock, assumed]).toEqual([22, ["knobs of Swell at the left"]]);
});

test("of a divided stop the bass is drawn at the left and the treble at the right", () => {
  const organ = instrument(
    "\n  - {name: Manual, kind: manual, stops: [Gedackt 8, {name: Dulzian, pitch: 8, half: bass}, {name: Dulzian, pitch: 8, half: treble}]}\n",
  );
  const { found } = change({
    organ,
    from: ["Manual: Gedackt 8", "melody on Manual, accompaniment on Manual"],
    to: ["Manual: Gedackt 8, Dulzian 8 bass, Dulzian 8 treble", "melody on Manual, accompaniment on Manual"],
  });
  expect(told(found)).toEqual(["left: Manual: +Dulzian 8 bass", "right: Manual: +Dulzian 8 treble"]);
});

describe("other ways, where a change cannot be made", () => {
  const advice = (before: string, more = ""): readonly string[] => {
    const text = `tempo: {bpm: 60}
beats-in-bar: 4
${more}sections:
  - {name: A, texture: plenum-manual, bars: 1-8, pinned: true, registration: {keyboards: {plenum: Great}, drawn: {Great: [Stopped Diapason 8]}}}
  - {name: B, texture: plenum-manual, bars: 9-16, before: ${before}, pinned: true, registration: {keyboards: {plenum: Great}, drawn: {Great: [Open Diapason 8, Principal 4], Positive: [Oboe 8]}, couplers: [Positive to Great]}}
`;
    const row = chooseRow(TWO_MANUALS, piece(text, TWO_MANUALS));
    if ("troubles" in row) throw new Error(row.troubles.map((each) => each.text).join(" "));
    return workOut(row).changes[0]?.advice ?? [];
  };

  test("a breath, in beats, and a stop left out", () => {
    const [leave, breath, ...others] = advice("{what: rest, beats: 2}", "practised: false\n");
    expect(others).toEqual([]);
    expect(leave).toMatch(/^Leave a stop: .*; the rest can be done\.$/);
    expect(breath).toMatch(/^Take a breath here: another \d\.\d s \(about \d(?:\.5)? beats?\) would do\.$/);
  });

  test("what is silent before can be prepared", () => {
    const ways = advice("{what: rest, beats: 3.6}", "practised: false\npace: careful\n");
    expect(ways[0]).toMatch(
      /^Prepare earlier: where a hand is free for \d+ beats in the section before, draw Oboe 8 \(Positive\); nothing sounds there until then\.$/,
    );
  });

  test("none where it goes well, or where somebody is there to help", () => {
    expect(advice("{what: rest, beats: 8}")).toEqual([]);
    expect(advice("{what: rest, beats: 1}", "assistant: right\n")).toEqual([]);
  });
});
