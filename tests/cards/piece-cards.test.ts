import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { ChangeCard, PieceCards } from "../../shared-model/cards/piece-card.ts";
import { pieceCards } from "../../shared-model/cards/piece-cards.ts";
import { readPieceFile } from "../../shared-model/files/piece-file.ts";
import { chooseRow } from "../../shared-model/plan/plan.ts";
import { type PlannedPiece, workOut } from "../../shared-model/plan/planned.ts";
import { demoOrgan } from "../instruments/demo-organs.ts";

/** A piece, its text in full, planned on a demo organ. */
function plannedOn(organ: string, text: string): PlannedPiece {
  const instrument = demoOrgan(organ);
  const { piece, troubles } = readPieceFile(text, "piece.yaml", instrument);
  if (!piece) throw new Error(JSON.stringify(troubles));
  const row = chooseRow(instrument, piece);
  if ("troubles" in row) throw new Error(JSON.stringify(row.troubles));
  return workOut(row);
}

const demoPiece = (name: string): string =>
  readFileSync(new URL(`../../instruments/pieces/${name}.yaml`, import.meta.url), "utf8");

/** Two sections at Wiekenborg, whose registrations stand here, so that nothing hangs on what is proposed. */
const TWO = `registrant: piece/1
name: Two verses
organ: St. Nikolai, Wiekenborg
assistant: left
tempo: {bpm: 60, beat: quarter}
sections:
  - name: Verse 1
    bars: 1-16
    texture: melody-over-accompaniment
    dynamic: p
    registration:
      keyboards: {melody: Rückpositiv, accompaniment: Hauptwerk, bass: Pedal}
      drawn: {Rückpositiv: [Gedackt 8, Sifflöte], Hauptwerk: [Spitzflöte 8], Pedal: [Subbass 16]}
      tremulants: [Rückpositiv]
    pinned: true
  - name: Verse 2
    bars: 17-32
    texture: melody-over-accompaniment
    before: {what: fermata, beats: 2}
    registration:
      keyboards: {melody: Brustwerk, accompaniment: Hauptwerk, bass: Pedal}
      octaves: {melody: -1}
      drawn: {Brustwerk: [Rohrflöte], Hauptwerk: [Spitzflöte 8], Pedal: [Subbass 16]}
    pinned: true
`;

const movesOf = (card: ChangeCard | undefined): readonly string[] =>
  [...(card?.tasks.flatMap((task) => task.moves) ?? []), ...(card?.whenTime ?? [])].map(
    ({ act, what, division, name }) => [act, what ?? division, name].join(" "),
  );

describe("cards of two verses whose registrations are given", () => {
  const cards = pieceCards(plannedOn("wiekenborg", TWO));
  const [first, second] = cards.changes;

  test("the beginning is all there, with nothing to change", () => {
    expect(first).toMatchObject({
      number: 1,
      section: "Verse 1",
      where: "bar 1",
      dynamic: "p",
      verdict: null,
      tasks: [],
    });
    expect(first?.state.divisions.map((division) => division.stops.map((stop) => stop.name))).toEqual([
      ["Gedackt 8", "Sifflöte 1 1/3"],
      ["Spitzflöte 8"],
      ["Subbass 16"],
    ]);
  });

  test("the change says where, by what it is known, and moves just what differs", () => {
    expect([second?.number, second?.where, second?.cue, second?.stays]).toEqual([2, "bar 17", "fermata", []]);
    expect(movesOf(second).toSorted()).toEqual([
      "cancel Rückpositiv Gedackt 8",
      "cancel Rückpositiv Sifflöte 1 1/3",
      "cancel tremulant Rückpositiv",
      "draw Brustwerk Rohrflöte 4",
    ]);
    expect(second?.state.hands).toContainEqual({ who: "Right hand", keyboard: "Brustwerk", what: null, octave: -1 });
  });

  test("sections are as long on the line as they have bars", () => {
    expect(cards.timeLine.map((section) => [section.number, section.length])).toEqual([
      [1, 16],
      [2, 16],
    ]);
  });
});

describe.each([
  ["hawsermouth", "partita-marsh-tune"],
  ["sallowby", "suite-echoes"],
  ["huettenlohe", "evening-on-the-water"],
] as const)("%s, %s: the cards and the plan say the same", (organ, name) => {
  const plan = plannedOn(organ, demoPiece(name));
  const cards: PieceCards = pieceCards(plan);

  test("a card for each console in playing order", () => {
    expect(cards.changes.map((card) => card.number)).toEqual(plan.stations.map((_, index) => index + 1));
    expect(cards.timeLine.map((each) => each.section)).toEqual(plan.stations.map((station) => station.section));
    for (const { level, length } of cards.timeLine) {
      expect(level >= 0 && level <= 1 && length > 0).toBe(true);
    }
  });

  test("following the cards from the first to the last draws what the plan draws", () => {
    const stopsAt = (at: number): readonly string[] => [...(plan.stations[at]?.stand.state.drawn ?? [])].toSorted();
    let drawn = new Set(stopsAt(0));
    const silent = new Set<string>();
    for (const [index, card] of cards.changes.entries()) {
      if (index === 0) continue;
      if (card.presses.some((press) => press.name === "General")) {
        drawn = new Set(stopsAt(index));
        silent.clear();
      }
      for (const press of card.presses) {
        const piston = plan.pistons.find((each) => each.division === press.name && each.number === press.number);
        if (!piston) continue;
        drawn = new Set([...drawn].filter((id) => !id.startsWith(`${press.name}/`)));
        for (const id of stopsAt(piston.station)) if (id.startsWith(`${press.name}/`)) drawn.add(id);
      }
      for (const { act, division, name: stop } of [...card.tasks.flatMap((task) => task.moves), ...card.whenTime]) {
        if (division === null) continue;
        const id = `${division}/${stop}`;
        if (act === "draw") drawn.add(id);
        else drawn.delete(id);
      }
      for (const stop of card.stays) {
        const [, bare, division] = /^(.*) \((.*)\)$/.exec(stop) ?? [];
        silent.add(`${division}/${bare}`);
      }
      for (const id of stopsAt(index)) silent.delete(id);
      expect([...drawn].filter((id) => !silent.has(id)).toSorted(), `card ${card.number}`).toEqual(stopsAt(index));
    }
  });

  test("every piston that a card presses is on the setting sheet, and none besides", () => {
    const pressed = cards.changes.flatMap((card) =>
      card.presses.map((press) => `${press.name} ${press.number} ${press.level}`),
    );
    const set = cards.pistons.map(({ press }) => `${press.name} ${press.number} ${press.level}`);
    expect([...new Set(pressed)].toSorted()).toEqual(set.toSorted());
    expect(cards.cautions.length > 0).toBe(cards.pistons.length > 0);
  });
});
