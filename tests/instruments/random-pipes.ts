import { type Foot, footFromText, stretch } from "../../shared-model/pitch/foot.ts";
import type { Key } from "../../shared-model/pitch/key.ts";
import type { Rank, RankUse, Stop } from "../../shared-model/stoplist/instrument.ts";
import type { Place } from "./random-console.ts";
import type { Manner, Voice } from "./random-voices.ts";
import type { Draw } from "./seeded-random.ts";

/** The key at which a pitch is nominal: an 8' stop sounds an 8' pipe on C2. */
export const NOMINAL_KEY = 36;

export const foot = (text: string): Foot => footFromText(text) as Foot;

/** Semitones by which `pitch` lies above `longest`. */
export const above = (longest: Foot, pitch: Foot): number =>
  Math.round(12 * Math.log2((longest.over * pitch.under) / (longest.under * pitch.over)));

/** Everything made so far, and the place where the next stop goes. */
export interface Workshop {
  readonly draw: Draw;
  readonly manner: Manner;
  readonly ranks: Rank[];
  readonly taken: Set<string>;
  readonly made: Stop[];
  readonly splitAt: Key;
}

/** A row of pipes of its own for keys up to `to`; a keyboard that goes below C2 needs the octave below. */
function ownRank(shop: Workshop, pitch: Foot, from: Key, to: Key): string {
  const longest = from < NOMINAL_KEY ? stretch(pitch, 2) : pitch;
  const id = `row-${shop.ranks.length + 1}`;
  shop.ranks.push({ id, longest, pipes: to - NOMINAL_KEY + 1 + above(longest, pitch) });
  return id;
}

/** A third is known by its pitch: 1 3/5 and its octaves. */
export const soundsThird = (feet: readonly Foot[]): boolean =>
  feet.some((pitch) => pitch.under % 5 === 0 && (pitch.over & (pitch.over - 1)) === 0);

/** The chorus pitches, lowest first, along which a mixture steps back. */
const CHORUS = ["16/3", "4", "8/3", "2", "4/3", "1", "2/3", "1/2", "1/3", "1/4", "1/6"].map(foot);

/** The pitches of each stretch of a compound: a mixture steps back from octave to octave, a solo compound stays. */
export function stretches(shop: Workshop, voice: Voice, from: Key, to: Key): { from: Key; feet: readonly Foot[] }[] {
  const lowest = (voice.compound as readonly string[]).map(foot);
  const kind = voice.kinds[0];
  if (kind !== "mixture" && kind !== "cymbal") return [{ from, feet: lowest }];
  const rows = [{ from, feet: lowest as readonly Foot[] }];
  for (let key = 48 + (shop.draw.chance(0.3) ? 5 : 0); key < to; key += 12) {
    if (key <= from) continue;
    const before = rows[rows.length - 1]?.feet ?? lowest;
    const back = before.map((pitch) => CHORUS[CHORUS.indexOf(pitch) - 1]);
    if (back.some((pitch) => pitch === undefined)) break;
    rows.push({ from: key, feet: back as Foot[] });
  }
  return rows;
}

export function compoundUses(
  shop: Workshop,
  rows: readonly { from: Key; feet: readonly Foot[] }[],
  to: Key,
): RankUse[] {
  const rankOf = new Map<Foot, string>();
  const uses: RankUse[] = [];
  rows.forEach((row, index) => {
    const last = (rows[index + 1]?.from ?? to + 1) - 1;
    for (const pitch of row.feet) {
      const rank = rankOf.get(pitch) ?? ownRank(shop, pitch, row.from, to);
      rankOf.set(pitch, rank);
      uses.push({ rank, pitch, from: row.from, to: last });
    }
  });
  return uses;
}

/** How a plain stop's pipes lie: all its own, or without a bass, or with a bass borrowed from a neighbour of its pitch. */
export function plainUses(shop: Workshop, place: Place, voice: Voice, pitch: Foot, low: Key, high: Key): RankUse[] {
  const { draw } = shop;
  const begins = voice.begins ?? (shop.manner !== "poor" && draw.chance(0.06) ? 48 : low);
  const from = Math.max(low, Math.min(begins, high));
  const own = { rank: ownRank(shop, pitch, from, high), pitch, from, to: high };
  const neighbour =
    from > low && draw.chance(0.4)
      ? shop.made.find(
          (stop) =>
            stop.division === place.name &&
            stop.pitch === pitch &&
            stop.half === null &&
            stop.uses.length === 1 &&
            stop.from === low &&
            stop.to === high,
        )
      : null;
  const bass = neighbour?.uses[0];
  return bass ? [{ rank: bass.rank, pitch, from: low, to: from - 1 }, own] : [own];
}
