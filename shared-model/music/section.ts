import type { Key } from "../pitch/key.ts";
import { keyText } from "../pitch/key.ts";
import type { Dynamic, Part, Section, Tempo, Texture, Tradition } from "./texture.ts";
import { textureFor } from "./textures/catalogue.ts";
import { partsInOrder } from "./textures/layout.ts";
import { NEUTRAL_TEXTURES } from "./textures/neutral.ts";

/** What a section may state beyond its texture; whatever is left out comes from the texture. */
export interface SectionOptions {
  /** Default: `neutral` where the texture serves any tradition, else the first one that it belongs to. */
  readonly tradition?: Tradition | undefined;
  readonly dynamic?: Dynamic | null | undefined;
  readonly tempo?: Tempo | null | undefined;
  /** By part id: lowest and highest written key. A stated range must be covered, a default one may be cut. */
  readonly ranges?: Readonly<Record<string, readonly [Key, Key]>> | undefined;
  /** By part id: pitch in feet at which the composer wants it to sound. */
  readonly sounding?: Readonly<Record<string, Part["sounding"]>> | undefined;
  readonly name?: string | null | undefined;
  readonly bars?: string | null | undefined;
}

function mustBePart(texture: Texture, part: string): void {
  if (texture.parts.some((known) => known.id === part)) return;
  const parts = texture.parts.map((known) => known.id).join(", ");
  throw new RangeError(`The texture ${texture.id} has no part "${part}". Its parts are ${parts}.`);
}

/**
 * A texture made concrete, in the shape of the section's tradition.
 *
 * @throws RangeError, in words for an organist, when a range or a sounding pitch names a part that the texture has not,
 * or when a range runs downwards.
 */
export function sectionOf(texture: Texture, options: SectionOptions = {}): Section {
  const usual = texture.traditions.includes("neutral") ? "neutral" : (texture.traditions[0] ?? "neutral");
  const tradition = options.tradition ?? usual;
  const shaped = textureFor(texture.id, tradition) ?? texture;
  const ranges = new Map(Object.entries(options.ranges ?? {}));
  const sounding = new Map(Object.entries(options.sounding ?? {}));
  for (const part of [...ranges.keys(), ...sounding.keys()]) mustBePart(shaped, part);
  const parts = shaped.parts.map((part) => {
    const range = ranges.get(part.id);
    if (range && range[0] > range[1]) {
      throw new RangeError(
        `The range of the part ${part.id} runs downwards, from ${keyText(range[0])} to ${keyText(range[1])}: ` +
          "write its lowest key first.",
      );
    }
    return {
      ...part,
      ...(range && { low: range[0], high: range[1], stated: true }),
      sounding: sounding.get(part.id) ?? part.sounding,
    };
  });
  return {
    name: options.name ?? null,
    bars: options.bars ?? null,
    texture: shaped.id,
    tradition,
    dynamic: options.dynamic === undefined ? shaped.dynamic : options.dynamic,
    tempo: options.tempo === undefined ? shaped.tempo : options.tempo,
    parts,
  };
}

/** A part as a person writes it into a file: its range is always stated. */
export interface HandPart {
  readonly role: Part["role"];
  readonly hands: Part["hands"];
  readonly low: Key;
  readonly high: Key;
  readonly place?: Part["place"] | undefined;
  /** Default 8, as written. */
  readonly sounding?: Part["sounding"] | undefined;
  readonly optional?: boolean | undefined;
}

/**
 * Parts written by hand, in the order given: ids by role (`voice-1`, `voice-2`), and apart from one another by the same
 * rule as the catalogue's. A bass or a treble that says nothing of its place gets it from role and hand.
 */
export function partsFromHand(written: readonly HandPart[]): readonly Part[] {
  return partsInOrder(
    written.map((part) => ({
      role: part.role,
      hands: part.hands,
      place: part.place ?? (part.role === "bass" ? "bass" : null),
      low: part.low,
      high: part.high,
      sounding: part.sounding ?? 8,
      optional: part.optional ?? false,
      stated: true,
    })),
  );
}

/** Cost of another hand, in the same coin as semitones that a part lies elsewhere; between hand and foot three times that. */
const OTHER_HAND = 24;
/** A part that the other has not. */
const UNMATCHED = 120;
/** One that may rest, or a bass for feet that have nothing to do: what the hands do is what recipes are about. */
const RESTING = 4;

const isForFeet = ({ hands }: Part): boolean => hands === "feet";

/** Cost of reading `written` as `known`: how far apart the middles of their ranges lie, in semitones, and another hand. */
function unlike(written: Part, known: Part): number {
  const hands = written.hands === known.hands ? 0 : isForFeet(written) || isForFeet(known) ? 3 : 1;
  return hands * OTHER_HAND + Math.abs(written.low + written.high - known.low - known.high) / 2;
}

function distance(written: readonly Part[], texture: Texture): number {
  const left = [...written];
  let cost = 0;
  for (const known of texture.parts) {
    const candidates = left.filter((part) => part.role === known.role);
    const best = candidates.toSorted((a, b) => unlike(a, known) - unlike(b, known))[0];
    if (best) {
      cost += unlike(best, known);
      left.splice(left.indexOf(best), 1);
    } else {
      const rests = known.optional || (known.role === "bass" && isForFeet(known) && !written.some(isForFeet));
      cost += rests ? RESTING : UNMATCHED;
    }
  }
  return cost + left.length * UNMATCHED;
}

/**
 * The neutral texture whose shape is nearest to parts written by hand (same roles, then same hands, then same region):
 * its recipes serve them. Of equally near ones the first in the catalogue's order; never a ladder.
 */
export function nearestTexture(parts: readonly Part[]): Texture {
  const shapes = NEUTRAL_TEXTURES.filter((texture) => !texture.ladder);
  const [first, ...others] = shapes.map((texture) => ({ texture, cost: distance(parts, texture) }));
  if (!first) throw new RangeError("The catalogue of textures is empty.");
  return others.reduce((best, next) => (next.cost < best.cost ? next : best), first).texture;
}
