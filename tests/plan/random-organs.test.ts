import { describe, expect, test } from "vitest";
import { chooseRow } from "../../shared-model/plan/plan.ts";
import { workOut } from "../../shared-model/plan/planned.ts";
import { randomInstrument } from "../instruments/random-instruments.ts";
import { leastCost } from "./exhaustive.ts";
import { faultsWhenFollowed } from "./followed.ts";
import { piece } from "./small-console.ts";

const TEXTURES = ["plenum-manual", "two-voices", "flutes", "melody-over-accompaniment", "meditation"];
const BEFORE = [
  "attacca",
  "pause",
  "{what: rest, beats: 2}",
  "{what: fermata, beats: 2, free: [left]}",
  "{what: page-turn, beats: 5}",
];
const LINKS = ["", "", ", softer-than: 1", ", contrast-with: 2", ", same-as: 1"];

/** Four sections, by a number: what follows what, the time between, a link, who helps, which pistons there are. */
function pieceText(number: number): string {
  const pick = <T>(list: readonly T[], salt: number): T => list[(number * 7 + salt * 11) % list.length] as T;
  const sections = [1, 2, 3, 4].map((at) => {
    const link = at < 3 ? "" : pick(LINKS, at);
    const before = at === 1 ? "" : `, before: ${pick(BEFORE, at + 3)}`;
    const texture = link.includes("same-as") ? pick(TEXTURES, 1) : pick(TEXTURES, at);
    return `  - {texture: ${texture}${before}${link}}\n`;
  });
  const assistant = pick(["none", "left", "right"], 5);
  return `tempo: {bpm: ${60 + ((number * 17) % 60)}}\nassistant: ${assistant}\nsections:\n${sections.join("")}`;
}

describe("random organs and pieces", () => {
  test.each([1, 2, 3, 4, 5, 6, 7, 8, 9, 10])(
    "seed %i: the row is the best of all, and when followed sounds as planned",
    (seed) => {
      const plain = randomInstrument(seed, {
        manuals: 2,
        stops: 10,
        pedal: seed % 3 !== 0,
        manner: seed % 2 === 0 ? "romantic" : "baroque",
      });
      const generals = [0, 0, 1, 2, 8][seed % 5] as number;
      const divisionals =
        seed % 4 === 1 ? Object.fromEntries(plain.divisions.map((division) => [division.name, 1])) : {};
      const organ = { ...plain, aids: { ...plain.aids, generals, divisionals, levels: generals === 0 ? 0 : 1 } };
      const row = chooseRow(organ, piece(pieceText(seed), organ), { count: 3 });
      if ("troubles" in row) {
        // A texture that the organ cannot play at all is told as such.
        expect(row.troubles.length).toBeGreaterThan(0);
        return;
      }
      expect(row.row.cost).toBe(leastCost(row.problem));
      expect(faultsWhenFollowed(workOut(row))).toEqual([]);
    },
  );
});
