import type { JudgedPart } from "../judging/judge.ts";
import type { Hands } from "../music/texture.ts";
import { compareFeet, type Foot, footOf, stretch } from "../pitch/foot.ts";
import { intervalName } from "../pitch/harmonics.ts";
import { pitchName } from "../pitch/reading.ts";
import { partName } from "../rules/balance.ts";
import { listed } from "../rules/rule.ts";
import type { Stop } from "../stoplist/instrument.ts";
import { type Drawing, type Shape, words } from "./shapes.ts";
import { drawSign, emptyRung, SIGNS, type Sign, signOf } from "./signs.ts";

/** One hand (or the feet) with what it sounds. */
export interface LadderColumn {
  /** `right, melody`. */
  readonly name: string;
  readonly hands: Hands;
  readonly stops: readonly string[];
  /** At each pitch the families that sound it, each once. */
  readonly sounds: readonly { readonly pitch: Foot; readonly signs: readonly Sign[] }[];
}

const ORDER: Readonly<Record<Hands, number>> = { feet: 0, left: 1, both: 2, right: 3 };
const HANDS: Readonly<Record<Hands, string>> = {
  feet: "feet",
  left: "left",
  both: "hands",
  right: "right",
};

const octaves = (foot: Foot, up: number): Foot => (up >= 0 ? stretch(foot, 1, 2 ** up) : stretch(foot, 2 ** -up));

/** Pitches that a stop sounds for a part: its own, or in the middle of the part's range what is inside a compound. */
function pitchesOf(stop: Stop, { placed }: JudgedPart): readonly Foot[] {
  const sign = signOf(stop);
  const middle = Math.round(((placed.zones.starts[0] as number) + placed.zones.high) / 2);
  return placed.reach
    .filter((each) => each.division.name === stop.division)
    .flatMap(({ shift }) => {
      const up = placed.octave + shift;
      if (sign !== "compound") return stop.pitch ? [octaves(stop.pitch, up)] : [];
      const key = Math.min(stop.to, Math.max(stop.from, middle + 12 * up));
      return stop.uses.filter((use) => use.from <= key && key <= use.to).map((use) => octaves(use.pitch, up));
    });
}

/** What each part of a judged registration sounds, feet first, then as the hands lie on the keys. */
export function ladderColumns(
  parts: readonly JudgedPart[],
  stops: readonly Stop[],
  labelOf: (stop: Stop) => string,
): readonly LadderColumn[] {
  return parts
    .toSorted((a, b) => ORDER[a.placed.part.hands] - ORDER[b.placed.part.hands])
    .map((judged) => {
      const { part } = judged.placed;
      const heard = stops.filter((stop) => judged.heard.includes(stop.id));
      const at = new Map<Foot, Set<Sign>>();
      for (const stop of heard) {
        for (const pitch of pitchesOf(stop, judged)) at.set(pitch, (at.get(pitch) ?? new Set()).add(signOf(stop)));
      }
      return {
        name: `${HANDS[part.hands]}, ${partName({ part })}`,
        hands: part.hands,
        stops: heard.map(labelOf),
        sounds: [...at].map(([pitch, signs]) => ({ pitch, signs: SIGNS.filter((sign) => signs.has(sign)) })),
      };
    });
}

/** Rungs that stand on every ladder. */
const USUAL: readonly Foot[] = [
  footOf(16),
  footOf(8),
  footOf(4),
  footOf(8, 3),
  footOf(2),
  footOf(8, 5),
  footOf(4, 3),
  footOf(1),
];

/** Every rung of a ladder, highest first. */
function rungsOf(columns: readonly LadderColumn[]): readonly Foot[] {
  return [...new Set([...USUAL, ...columns.flatMap((column) => column.sounds.map((each) => each.pitch))])].toSorted(
    (a, b) => -compareFeet(a, b),
  );
}

const RUNG = 24;
const SIGN_WIDTH = 15;
const LEFT = 52;
const NAME = 150;

/** The pitch ladder: a rung for each harmonic, low at the foot, a column for each hand, a sign for each family on it. */
export function pitchLadder(columns: readonly LadderColumn[], width: number): Drawing {
  const rungs = rungsOf(columns);
  const right = width - NAME;
  const step = (right - LEFT) / Math.max(1, columns.length);
  const lines = rungs.flatMap((pitch, index): Shape[] => {
    const y = 14 + RUNG * index;
    const sounding = columns.map((column) => column.sounds.find((each) => each.pitch === pitch)?.signs ?? []);
    const heard = sounding.some((signs) => signs.length > 0);
    const signs = sounding.flatMap((each, at): Shape[] => {
      const middle = LEFT + step * (at + 0.5);
      return each.flatMap((sign, i) => drawSign(sign, middle + SIGN_WIDTH * (i - (each.length - 1) / 2), y));
    });
    return [
      words(LEFT - 10, y + 5, pitchName(pitch), { anchor: "end", bold: heard }),
      emptyRung(LEFT, right, y),
      ...signs,
      words(right + 10, y + 5, intervalName(pitch), { bold: heard }),
    ];
  });
  const foot = 14 + RUNG * rungs.length + 8;
  const heads = columns.map(({ hands }, at) =>
    words(LEFT + step * (at + 0.5), foot, HANDS[hands], { anchor: "middle", italic: true }),
  );
  const used = SIGNS.filter((sign) => columns.some(({ sounds }) => sounds.some((each) => each.signs.includes(sign))));
  const legend = used.flatMap((sign, index): Shape[] => {
    const [x, y] = [12 + (index % 3) * 135, foot + 30 + 24 * Math.floor(index / 3)];
    return [...drawSign(sign, x, y), words(x + 14, y + 5, sign)];
  });
  const height = foot + 30 + 24 * Math.ceil(used.length / 3);
  return { width, height, shapes: [...lines, ...heads, ...legend] };
}

/** The same in words. */
export function ladderWords(columns: readonly LadderColumn[]): string {
  return columns
    .map(({ name, sounds, stops }) => {
      const pitches = sounds.map((each) => each.pitch).toSorted(compareFeet);
      return `${name} sounds ${listed(pitches.map((pitch) => pitchName(pitch)))} with ${listed(stops)}.`;
    })
    .join(" ");
}
