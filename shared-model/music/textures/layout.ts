import { type Key, keyFromText } from "../../pitch/key.ts";
import type { Part, Place, Role, Texture, Tradition } from "../texture.ts";

/** A part before it stands among others: without the id and the neighbours that it must be kept apart from. */
export type LoosePart = Omit<Part, "id" | "apartFrom">;

interface Details {
  readonly place?: Place;
  readonly sounding?: Part["sounding"];
  readonly optional?: boolean;
}

function keysOf(range: string): readonly [Key, Key] {
  const [low, high] = range.split("-").map(keyFromText);
  if (low == null || high == null || low >= high) throw new RangeError(`The catalogue has no key range "${range}".`);
  return [low, high];
}

const hand =
  (hands: Part["hands"], usual: string) =>
  (role: Role, range: string = usual, details: Details = {}): LoosePart => {
    const [low, high] = keysOf(range);
    const { place = null, sounding = 8, optional = false } = details;
    return { role, hands, place, low, high, sounding, optional, stated: false };
  };

/** A part of the catalogue for the right hand: role, range such as `C4-A5` (default C2 to C6), details. */
export const right = hand("right", "C2-C6");
/** A part of the catalogue for the left hand; as {@link right}. */
export const left = hand("left", "C2-C6");
/** A part of the catalogue that both hands share; as {@link right}. */
export const both = hand("both", "C2-C6");
/** A part of the catalogue for the feet; as {@link right}, default C2 to C4, and a bass has its place there. */
export const feet = (role: Role, range = "C2-C4", details: Details = {}): LoosePart =>
  hand("feet", "C2-C4")(role, range, role === "bass" ? { place: "bass", ...details } : details);

const SOLOS: readonly Role[] = ["melody", "cantus-firmus", "voice", "bass"];

/**
 * Whether two strands of music fail their purpose on one keyboard. A solo stands apart from what accompanies it and
 * from other solos, an echo from what it answers, one chorus from another. The feet have a keyboard of their own, and
 * an echo may share the accompaniment's, which is how two manuals serve an echo piece.
 */
function mustDiffer(one: LoosePart, other: LoosePart): boolean {
  if (one.hands === "feet" || other.hands === "feet") return false;
  if (SOLOS.includes(one.role) || SOLOS.includes(other.role)) return true;
  const roles = [one.role, other.role];
  if (roles.includes("echo")) return !roles.includes("accompaniment");
  return one.role === "plenum" && other.role === "plenum";
}

/**
 * Parts in the texture's order with their ids (the role, numbered where it occurs twice) and with the parts that may
 * not share their keyboard. `oneKeyboard`: the school plays them all on one keyboard with divided stops.
 */
export function partsInOrder(loose: readonly LoosePart[], oneKeyboard = false): readonly Part[] {
  const ids = loose.map((part, index) => {
    if (loose.filter((other) => other.role === part.role).length === 1) return part.role;
    return `${part.role}-${loose.slice(0, index + 1).filter((other) => other.role === part.role).length}`;
  });
  return loose.map((part, index) => ({
    ...part,
    id: ids[index] as string,
    apartFrom: ids.filter((_, at) => {
      const other = loose[at] as LoosePart;
      if (at === index || (oneKeyboard && part.role !== "echo" && other.role !== "echo")) return false;
      return mustDiffer(part, other);
    }),
  }));
}

/** What a file of the catalogue states of a texture; the rest follows from it. */
export interface TextureFacts {
  readonly id: string;
  readonly title: string;
  readonly plain: string;
  readonly parts: readonly LoosePart[];
  /** The neutral texture of its shape; left out in the neutral file. */
  readonly like?: string;
  /** Further traditions that it belongs to. */
  readonly also?: readonly Tradition[];
  readonly tempo?: Texture["tempo"];
  readonly dynamic?: Texture["dynamic"];
  readonly ladder?: boolean;
  readonly oneKeyboard?: boolean;
}

const COLOUR_ORDER: readonly Role[] = ["melody", "cantus-firmus", "voice", "plenum", "accompaniment"];

/** A texture of the catalogue in full. The colour of its leading part tells one proposal from another. */
export function texture(tradition: Tradition, facts: TextureFacts): Texture {
  const parts = partsInOrder(facts.parts, facts.oneKeyboard);
  const leading = COLOUR_ORDER.map((role) => parts.find((part) => part.role === role)).find((part) => part);
  if (!leading) throw new RangeError(`The texture ${facts.id} has no leading part.`);
  return {
    id: facts.id,
    title: facts.title,
    plain: facts.plain,
    traditions: [tradition, ...(facts.also ?? [])],
    like: facts.like ?? null,
    parts,
    colourOf: leading.id,
    tempo: facts.tempo ?? null,
    dynamic: facts.dynamic ?? null,
    ladder: facts.ladder ?? false,
  };
}
