import { describe, expect, test } from "vitest";
import { type CarriedPiece, carry, withOther } from "../../shared-model/carry/carry.ts";
import { type Aim, distanceOf, meaningDifferences } from "../../shared-model/carry/meaning.ts";
import {
  neverPractised,
  notPractised,
  nowherePractised,
  practisedOn,
} from "../../shared-model/carry/practice-words.ts";
import { readPieceFile } from "../../shared-model/files/piece-file.ts";
import type { Piece } from "../../shared-model/music/piece.ts";
import { chooseRow } from "../../shared-model/plan/plan.ts";
import { type PlannedPiece, type PlannedSection, workOut } from "../../shared-model/plan/planned.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { demoOrgan, demoText } from "../instruments/demo-organs.ts";
import { instrument, piece, TWO_MANUALS } from "../plan/small-console.ts";

const COUNT = 4;

function planned(organ: Instrument, music: Piece): PlannedPiece {
  const held = music.sections.map((section) => ({ ...section, pinned: section.registration !== null }));
  const row = chooseRow(organ, { ...music, sections: held }, { count: COUNT });
  if ("troubles" in row) throw new Error(row.troubles.map((each) => each.text).join("\n"));
  return workOut(row);
}

const carried = (
  plan: PlannedPiece,
  to: Instrument,
  pinned: readonly number[] = [],
  aim: Aim = "playing",
): CarriedPiece =>
  carry(
    plan,
    plan.sections.map((_, at) => pinned.includes(at)),
    to,
    COUNT,
    aim,
  );

/** What stands for each section: stops by their ids, couplers, tremulants, keyboards. */
const standing = (plan: PlannedPiece) =>
  plan.sections.map(({ chosen }) => ({
    drawn: [...chosen.entry.state.drawn].sort(),
    couplers: [...chosen.entry.state.couplers].sort(),
    tremulants: [...chosen.entry.state.tremulants],
    played: chosen.entry.placings,
    steps: chosen.steps.map(({ stand }) => [...stand.state.drawn].sort()),
  }));

/** Planned sections, and two drawn by a hand that cared for no rule. */
const VERSES = `tempo: {bpm: 80}
sections:
  - {name: Tune, texture: plenum-manual}
  - {name: Two, texture: two-voices, before: {what: rest, beats: 2}, registration: {keyboards: {voice-1: Positive, voice-2: Great}, drawn: {Positive: [Oboe 8, Flute 4], Great: [Stopped Diapason 8, Fifteenth 2]}}}
  - {name: Quiet, texture: flutes, before: {what: rest, beats: 2}, softer-than: Two}
  - {name: Odd, texture: melody-over-accompaniment, registration: {keyboards: {melody: Great, accompaniment: Positive, bass: Pedal}, drawn: {Great: [Mixture], Positive: [Flute 4, Nazard 2 2/3], Pedal: [Bourdon 16]}, couplers: [Great to Pedal]}}
  - {name: Again, texture: two-voices, same-as: Two}
  - {name: Growing, texture: crescendo}
`;

const GERMAN: readonly (readonly [string, string])[] = [
  ["Great", "Hauptwerk"],
  ["Positive", "Oberwerk"],
  ["Pedal", "Pedalwerk"],
  ["Open Diapason", "Prinzipal"],
  ["Stopped Diapason", "Gedeckt"],
  ["Principal", "Oktave"],
  ["Fifteenth", "Superoktave"],
  ["Mixture", "Mixtur"],
  ["Gedackt", "Gedackt"],
  ["Flute", "Flöte"],
  ["Nazard", "Nasat"],
  ["Oboe", "Hoboe"],
  ["Bourdon", "Untersatz"],
  ["Bass Flute", "Bassflöte"],
];

/** The same organ with every name in another language; nothing else is touched. */
function inGerman(organ: Instrument): Instrument {
  const words = new Map(GERMAN);
  const said = (name: string): string => words.get(name) ?? name;
  const coupler = (name: string): string => name.split(" to ").map(said).join(" to ");
  return {
    ...organ,
    name: "St. Probe, umbenannt",
    divisions: organ.divisions.map((division) => ({
      ...division,
      name: said(division.name),
      stops: division.stops.map((stop) => ({
        ...stop,
        division: said(stop.division),
        name: said(stop.name),
        id: `${said(stop.division)}/${stop.id.slice(stop.division.length + 1).replace(stop.name, said(stop.name))}`,
      })),
    })),
    couplers: organ.couplers.map((each) => ({
      ...each,
      name: coupler(each.name),
      from: said(each.from),
      to: said(each.to),
    })),
  };
}

describe("to the same organ", () => {
  test("nothing changes, whatever stood there", () => {
    const plan = planned(TWO_MANUALS, piece(VERSES, TWO_MANUALS));
    const there = carried(plan, TWO_MANUALS);
    expect(there.sections.map((section) => section.asItWas)).toEqual(Array(6).fill(true));
    expect(standing(there.plan as PlannedPiece)).toEqual(standing(plan));
    expect(there.sections.flatMap((section) => [...section.stops, ...section.differences, ...section.between])).toEqual(
      [],
    );
  });

  test("of twins the very one that was drawn stays drawn", () => {
    const twins = instrument("\n  - {name: Manual, kind: manual, stops: [Gedackt 8, Gedeckt 8, Principal 4]}\n");
    const text =
      "sections:\n  - {texture: flutes, registration: {keyboards: {plenum: Manual}, drawn: {Manual: [Gedeckt 8]}}}\n";
    const plan = planned(twins, piece(text, twins));
    expect(standing(carried(plan, twins).plan as PlannedPiece)[0]?.drawn).toEqual(["Manual/Gedeckt 8"]);
  });

  test("with its names in another language nothing changes but names", () => {
    const plan = planned(TWO_MANUALS, piece(VERSES, TWO_MANUALS));
    const there = carried(plan, inGerman(TWO_MANUALS));
    expect(there.sections.map((section) => section.asItWas)).toEqual(Array(6).fill(true));
    expect(there.sections.flatMap((section) => section.differences)).toEqual([]);
    expect(there.sections[1]?.stops).toEqual([
      {
        part: "voice-1",
        text: "from the Positive to the Oberwerk; Flute 4 becomes Flöte 4; Oboe 8 becomes Hoboe 8",
      },
      {
        part: "voice-2",
        text: "from the Great to the Hauptwerk; Stopped Diapason 8 becomes Gedeckt 8; Fifteenth 2 becomes Superoktave 2",
      },
    ]);
    const back = carried(there.plan as PlannedPiece, TWO_MANUALS);
    expect(standing(back.plan as PlannedPiece)).toEqual(standing(plan));
  });
});

describe("to another organ", () => {
  const SOLO = instrument(`
  - {name: Grand-Orgue, kind: manual, keyboard: 1, stops: [Montre 8, Bourdon 8, Prestant 4]}
  - {name: Récit, kind: manual, keyboard: 2, stops: [Flûte 8, Hautbois 8]}
  - {name: Pédale, kind: pedal, stops: [Soubasse 16, Flûte 8]}
tremulants: [Récit]
`);
  const SONG = `sections:
  - {name: Song, texture: melody-over-accompaniment, registration: {keyboards: {melody: Récit, accompaniment: Grand-Orgue, bass: Pédale}, drawn: {Récit: [Hautbois 8], Grand-Orgue: [Bourdon 8], Pédale: [Soubasse 16, Flûte 8]}, tremulants: [Récit]}}
`;
  const NEIGHBOUR = instrument(`
  - {name: Hauptwerk, kind: manual, keyboard: 1, stops: [Prinzipal 8, Gedackt 8, Oktave 4, Mixtur III]}
  - {name: Positiv, kind: manual, keyboard: 2, stops: [Rohrflöte 8, Flöte 4, Krummhorn 8]}
  - {name: Pedal, kind: pedal, stops: [Subbass 16, Gedacktbass 8]}
`);

  test("a reed stands for a reed, on the keyboard of its rank, and what is lost is said with its price", () => {
    const [song] = carried(planned(SOLO, piece(SONG, SOLO)), NEIGHBOUR).sections;
    expect(song?.asItWas).toBe(false);
    expect([...(song?.after?.chosen.entry.state.drawn ?? [])]).toContain("Positiv/Krummhorn 8");
    expect(song?.stops.find(({ part }) => part === "melody")?.text).toBe(
      "from the Récit to the Positiv; Hautbois 8 becomes Krummhorn 8: a reed for a reed",
    );
    expect(song?.differences).toContainEqual({
      part: "melody",
      text: "without tremulant; there is none here",
      points: 250,
      about: "console",
    });
    expect(song?.differences.every(({ points }) => points > 0)).toBe(true);
  });

  test("families that change places are told pitch by pitch, and a cornet without single ranks for it as lost", () => {
    const home = instrument(`
  - {name: Great, kind: manual, keyboard: 1, stops: [Stopped Diapason 8]}
  - {name: Swell, kind: manual, keyboard: 2, stops: [Cornet V]}
  - {name: Pedal, kind: pedal, stops: [Open Diapason 16, Bass Flute 8]}
`);
    const away = (upper: string) =>
      instrument(`
  - {name: Great, kind: manual, keyboard: 1, stops: [Stopped Diapason 8]}
  - {name: Swell, kind: manual, keyboard: 2, stops: [${upper}]}
  - {name: Pedal, kind: pedal, stops: [Bourdon 16, Principal 8]}
`);
    const music = piece(
      `sections:
  - {name: Tune, texture: melody-over-accompaniment, registration: {keyboards: {melody: Swell, accompaniment: Great, bass: Pedal}, drawn: {Swell: [Cornet V], Great: [Stopped Diapason 8], Pedal: [Open Diapason 16, Bass Flute 8]}}}
`,
      home,
    );
    const told = (upper: string) =>
      carried(planned(home, music), away(upper), [0]).sections[0]?.differences.map(
        ({ part, text }) => `${part}: ${text}`,
      );
    expect(told("Gedackt 8, Flute 4")).toContain(
      "bass: flute instead of principal at 16 and principal instead of flute at 8",
    );
    expect(told("Gedackt 8, Flute 4")).toContain("melody: no rank for its fifths and thirds");
    expect(told("Gedackt 8, Flute 4, Nazard 2 2/3, Piccolo 2, Tierce 1 3/5")).toContain(
      "melody: its fifths and thirds from single ranks",
    );
  });

  test("a flute is not carried into a reed, whatever earns more", () => {
    const music = SONG.replace("Récit: [Hautbois 8]", "Récit: [Flûte 8]");
    const [song] = carried(planned(SOLO, piece(music, SOLO)), NEIGHBOUR).sections;
    expect([...(song?.after?.chosen.entry.state.drawn ?? [])]).not.toContain("Positiv/Krummhorn 8");
  });

  test("a pinned section keeps its meaning though others would earn more", () => {
    const plan = planned(SOLO, piece(SONG, SOLO));
    const cost = (pinned: readonly number[]): number =>
      carried(plan, NEIGHBOUR, pinned).sections[0]?.differences.reduce((sum, each) => sum + each.points, 0) ?? 0;
    expect(cost([0])).toBeLessThanOrEqual(cost([]));
  });

  test("the next best are told in order with what each costs, and one of them taken changes that section alone", () => {
    const there = carried(
      planned(SOLO, piece(SONG.replace("Récit: [Hautbois 8]", "Récit: [Flûte 8]"), SOLO)),
      NEIGHBOUR,
    );
    const [song] = there.sections;
    const others = song?.others ?? [];
    expect(others.length).toBeGreaterThan(1);
    expect(others.map(({ behind }) => behind)).toEqual(others.map(({ behind }) => behind).toSorted((a, b) => a - b));
    for (const { alternative, behind, differences } of others) {
      expect(behind).toBeGreaterThanOrEqual(0);
      expect(alternative.signature).not.toBe(song?.after?.chosen.signature);
      const worth = (score: number, some: readonly { readonly points: number }[]): number =>
        some.reduce((sum, { points }) => sum - points, score);
      expect(
        worth(song?.after?.chosen.score ?? 0, song?.differences ?? []) - worth(alternative.score, differences),
      ).toBe(behind);
    }
    const [first] = others;
    if (!first) throw new Error("There is no other.");
    const changed = withOther(there, 0, first.alternative);
    expect(changed.sections[0]?.after?.chosen).toBe(first.alternative);
    expect(changed.sections[0]?.differences).toEqual(first.differences);
    expect(changed.sections[0]?.others.map(({ alternative }) => alternative.signature)).toContain(
      song?.after?.chosen.signature,
    );
    expect(changed.plan?.sections[0]?.chosen).toBe(first.alternative);
  });

  test("what shares its registration is changed with it", () => {
    const text = `sections:
  - {name: A, texture: two-voices, registration: {keyboards: {voice-1: Positive, voice-2: Great}, drawn: {Positive: [Oboe 8], Great: [Stopped Diapason 8]}}}
  - {name: B, texture: flutes}
  - {name: C, texture: two-voices, same-as: A}
`;
    const there = carried(planned(TWO_MANUALS, piece(text, TWO_MANUALS)), NEIGHBOUR);
    const other = there.sections[2]?.others[0]?.alternative;
    if (!other) throw new Error("There is no other.");
    const changed = withOther(there, 2, other);
    const signatures = changed.sections.map(({ after }) => after?.chosen.signature);
    expect([signatures[0], signatures[2]]).toEqual([other.signature, other.signature]);
    expect(signatures[1]).toBe(there.sections[1]?.after?.chosen.signature);
  });

  test("a section without means says so, and the others are carried with their links", () => {
    const short = instrument(
      "\n  - {name: Manual, kind: manual, compass: {low: C2, high: F5}, stops: [Principal 8, Gedackt 8, Octave 4]}\n",
    );
    const text = `sections:
  - {name: A, texture: plenum-manual}
  - {name: B, texture: plenum-manual, ranges: {plenum: [C2, C6]}}
  - {name: C, texture: flutes, softer-than: A, contrast-with: B}
`;
    const music = piece(text, TWO_MANUALS);
    const there = carried(planned(TWO_MANUALS, music), short);
    expect(there.sections.map((section) => section.after !== null)).toEqual([true, false, true]);
    expect(there.sections[1]?.missing.join(" ")).toMatch(/F#5 to C6 are not there/);
    expect(there.sections[2]?.after?.links).toMatchObject([{ link: { kind: "softer-than", to: 0 }, holds: true }]);
  });

  test("an organ on which nothing can be drawn leaves every section without means", () => {
    const dumb = instrument("\n  - {name: Manual, kind: manual, stops: [{name: Gedackt, pitch: 8, off: true}]}\n");
    const there = carried(planned(SOLO, piece(SONG, SOLO)), dumb);
    expect(there.plan).toBeNull();
    expect(there.sections[0]).toMatchObject({ after: null, asItWas: false });
    expect(there.sections[0]?.missing.join(" ")).toMatch(/No stop can be drawn on the Manual/);
  });
});

test("there and back between two large organs the roles and the pitches that both have are kept", {
  timeout: 60_000,
}, () => {
  const [home, away] = [demoOrgan("wiekenborg"), demoOrgan("hawsermouth")];
  const whole = readPieceFile(demoText("pieces/partita-marsh-tune.yaml"), "partita.yaml", home).piece as Piece;
  const some = {
    ...whole,
    sections: [0, 3, 5, 7].map((at) => ({ ...(whole.sections[at] as Piece["sections"][0]), links: [] })),
  };
  const plan = planned(home, some);
  const there = carried(plan, away);
  const back = carried(there.plan as PlannedPiece, home);
  for (const [at, section] of plan.sections.entries()) {
    const [first, middle, last] = [section, there.sections[at]?.after, back.sections[at]?.after].map(
      (each) => each?.chosen.judgement.parts ?? [],
    );
    expect(last?.map((part) => part.placing.part)).toEqual(first?.map((part) => part.placing.part));
    for (const [index, part] of (first ?? []).entries()) {
      const both = part.sound.plain & (middle?.[index]?.sound.plain ?? 0);
      expect((last?.[index]?.sound.plain ?? 0) & both).toBe(both);
    }
  }
});

test("a registration means what it means itself, and silence of a part is the dearest difference of it", () => {
  const section = planned(TWO_MANUALS, piece(VERSES, TWO_MANUALS)).sections[3] as PlannedSection;
  const { judgement } = section.chosen;
  expect(meaningDifferences(judgement.parts, judgement.parts)).toEqual([]);
  const [, ...others] = judgement.parts;
  expect(meaningDifferences(judgement.parts, others)).toEqual([
    { part: "melody", text: "rests", points: 1500, about: "hands" },
  ]);
  expect(distanceOf(others, judgement.parts)).toBe(1500);
  const higher = judgement.parts.map((part) => ({ ...part, placing: { ...part.placing, octave: 1 as const } }));
  expect(meaningDifferences(judgement.parts, higher).map(({ text, points }) => [text, points])).toEqual(
    judgement.parts.map(() => ["played an octave higher", 300]),
  );
});

describe("to practise on three flutes", () => {
  const FLUTES = instrument(`
  - {name: Lower, kind: manual, keyboard: 1, stops: [Gedackt 8]}
  - {name: Upper, kind: manual, keyboard: 2, stops: [Rohrflöte 8]}
  - {name: Pedal, kind: pedal, stops: [Subbass 16]}
`);
  const GRAND = instrument(`
  - {name: Positif, kind: manual, keyboard: 1, stops: [Bourdon 8, Cromorne 8]}
  - {name: Grand-Orgue, kind: manual, keyboard: 2, stops: [Montre 8, Bourdon 8, Prestant 4, Doublette 2, Plein jeu IV]}
  - {name: Récit, kind: manual, keyboard: 3, stops: [Cornet V, Flûte 8]}
  - {name: Pédale, kind: pedal, stops: [Soubasse 16, Flûte 8]}
aids: {generals: 6, levels: 1}
`);
  const solo = (name: string, melody: string, stop: string): string =>
    `  - {name: ${name}, texture: melody-over-accompaniment, before: {what: rest, beats: 4}, registration: {keyboards: {melody: ${melody}, accompaniment: Positif, bass: Pédale}, drawn: {${melody}: [${stop}], Positif: [Bourdon 8], Pédale: [Soubasse 16]}}}\n`;
  const MUSIC = `sections:\n${solo("Cornet", "Récit", "Cornet V")}${solo("Again", "Récit", "Cornet V")}${solo("Montre", "Grand-Orgue", "Montre 8")}`;
  const keyboardsOf = ({ sections }: CarriedPiece) =>
    sections.map(({ after }) => after?.chosen.entry.placings.map(({ part, keyboard }) => `${part} ${keyboard}`).sort());

  test("every hand is on the keyboard that stands for its own, whatever sounds there", () => {
    const there = carried(planned(GRAND, piece(MUSIC, GRAND)), FLUTES, [], "practice");
    expect([...there.keyboards]).toEqual([
      ["Positif", "Lower"],
      ["Grand-Orgue", "Upper"],
      ["Récit", "Upper"],
      ["Pédale", "Pedal"],
    ]);
    const solos = ["accompaniment Lower", "bass Pedal", "melody Upper"];
    expect(keyboardsOf(there)).toEqual([solos, solos, solos]);
    expect(there.sections.flatMap(({ differences }) => differences.filter(({ about }) => about === "hands"))).toEqual(
      [],
    );
    expect(practisedOn(there)).toBe(
      "The Positif is practised on the Lower, the Grand-Orgue and the Récit on the Upper, the Pédale on the Pedal",
    );
  });

  test("keyboards are never crossed, and two that are played at once stay two where two are there", () => {
    const upsideDown = MUSIC.replaceAll("Positif: [Bourdon 8]", "Récit: [Flûte 8]")
      .replaceAll("accompaniment: Positif", "accompaniment: Récit")
      .replaceAll("melody: Récit", "melody: Positif")
      .replaceAll("Récit: [Cornet V]", "Positif: [Cromorne 8]");
    const there = carried(planned(GRAND, piece(upsideDown, GRAND)), FLUTES, [], "practice");
    expect(there.keyboards.get("Positif")).toBe("Lower");
    expect(there.keyboards.get("Récit")).toBe("Upper");
    expect(keyboardsOf(there)[0]).toEqual(["accompaniment Upper", "bass Pedal", "melody Lower"]);
  });

  test("what cannot be practised is said: keyboards that are one, changes that are none, pistons, pedal", () => {
    const there = carried(planned(GRAND, piece(MUSIC, GRAND)), FLUTES, [], "practice");
    expect(neverPractised(there).join("; ")).toMatch(
      /^going between Grand-Orgue and Récit, which are one keyboard here, the Upper; pressing .* of .*: there are none$/,
    );
    // From the cornet to the montre the hand goes to another keyboard at home; here it stays, and no stop can stand for that.
    expect(there.sections.map(notPractised)).toEqual([
      [],
      [],
      ["nothing is changed before it, where home has a change"],
    ]);
    const dry = instrument("\n  - {name: Manual, kind: manual, stops: [Gedackt 8]}\n");
    const alone = carried(planned(GRAND, piece(MUSIC, GRAND)), dry, [], "practice");
    expect(neverPractised(alone)).toContain("what the feet play: there is no pedal");
  });

  test("what cannot be practised in several sections is said once", () => {
    const shallow = instrument(`
  - {name: Lower, kind: manual, keyboard: 1, stops: [Gedackt 8]}
  - {name: Upper, kind: manual, keyboard: 2, stops: [Rohrflöte 8, Flöte 4]}
  - {name: Pedal, kind: pedal, stops: [Gedackt 8]}
`);
    const there = carried(planned(GRAND, piece(MUSIC, GRAND)), shallow, [], "practice");
    expect(nowherePractised(there)).toContain("in every section, bass: built on 8 instead of 16");
    const two = carried(
      planned(GRAND, piece(MUSIC.split("  - {name: Montre")[0] as string, GRAND)),
      shallow,
      [],
      "practice",
    );
    expect(nowherePractised(two)).toContain("in Cornet and Again, bass: built on 8 instead of 16");
  });

  test("a change comes where home has one, and none where it has none, as far as stops allow", () => {
    const richer = instrument(`
  - {name: Lower, kind: manual, keyboard: 1, stops: [Gedackt 8]}
  - {name: Upper, kind: manual, keyboard: 2, stops: [Rohrflöte 8, Flöte 4]}
  - {name: Pedal, kind: pedal, stops: [Subbass 16]}
`);
    const there = carried(planned(GRAND, piece(MUSIC, GRAND)), richer, [], "practice");
    const melody = there.sections.map(({ after }) =>
      [...(after?.chosen.entry.state.drawn ?? [])].filter((id) => id.startsWith("Upper/")).sort(),
    );
    expect(melody[1]).toEqual(melody[0]);
    expect(melody[2]).not.toEqual(melody[1]);
    expect(there.sections.flatMap(notPractised)).toEqual([]);
  });

  test("on the organ that it comes from nothing is otherwise", () => {
    const there = carried(planned(GRAND, piece(MUSIC, GRAND)), GRAND, [], "practice");
    expect(there.sections.map(({ asItWas }) => asItWas)).toEqual([true, true, true]);
    expect([...there.sections.flatMap(notPractised), ...neverPractised(there)]).toEqual([]);
    expect(practisedOn(there)).toBeNull();
  });
});
