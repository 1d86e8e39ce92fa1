import { footOf } from "../../pitch/foot.ts";
import type { Kind, KindGroup } from "../../stoplist/kind.ts";
import type {
  KeyboardKind,
  PrescribedCoupler,
  PrescribedPart,
  Prescription,
  StandIn,
  Wanted,
} from "../prescription.ts";
import { TRADITIONS } from "../texture.ts";

type Pitch =
  | "32"
  | "16"
  | "10 2/3"
  | "8"
  | "5 1/3"
  | "4"
  | "3 1/5"
  | "2 2/3"
  | "2"
  | "1 3/5"
  | "1 1/3"
  | "1"
  | "2/3"
  | "1/2"
  | "1/3"
  | "1/4";

type Named = Kind | KindGroup | Pitch | `${Kind | KindGroup} ${Pitch}`;

/**
 * A wanted stop in the words of the recipe files: a kind, a pitch, or both, then `every` (all such stops of the
 * division), `bass` or `treble` (a half): `principal 8 every`, `16`, `cornet treble`. The compiler checks the words.
 */
export type WantedText = Named | `${Named} ${"every" | "bass" | "treble"}`;

const SHAPE = /^([a-z][a-z-]*)?(?: ?(\d+(?: \d\/\d)?|\d\/\d))?(?: (every|bass|treble))?$/;

function footFromPitch(pitch: string): Wanted["pitch"] {
  const [whole, fraction] = pitch.includes("/") && !pitch.includes(" ") ? ["0", pitch] : pitch.split(" ");
  const [over, under] = (fraction ?? "0/1").split("/").map(Number) as [number, number];
  return footOf(Number(whole) * under + over, under);
}

/** Reads a wanted stop; see {@link WantedText}. */
export function wanted(text: WantedText): Wanted {
  const [, kind, pitch, last] = SHAPE.exec(text) ?? [];
  if (kind === undefined && pitch === undefined) throw new RangeError(`A recipe cannot ask for "${text}".`);
  return {
    ...(kind !== undefined && { kind: kind as Kind | KindGroup }),
    ...(pitch !== undefined && { pitch: footFromPitch(pitch) as NonNullable<Wanted["pitch"]> }),
    ...(last === "every" && { every: true }),
    ...((last === "bass" || last === "treble") && { half: last }),
  };
}

/** A coupler in the recipe files: `recit/main`, the Récit sounds on the main keys; `swell/main-4`, an octave up. */
export type CouplerText = `${KeyboardKind}/${KeyboardKind}` | `${KeyboardKind}/${KeyboardKind}-${"4" | "16"}`;

function coupler(text: CouplerText): PrescribedCoupler {
  const [, from, to, pitch] = /^([a-z-]+)\/([a-z-]+?)(?:-(4|16))?$/.exec(text) ?? [];
  return {
    from: from as KeyboardKind,
    to: to as KeyboardKind,
    pitch: pitch === "4" ? 4 : pitch === "16" ? 16 : 8,
  };
}

/** A part of a recipe as the recipe files write it. */
export interface PartText extends Omit<PrescribedPart, "must" | "oneOf" | "may" | "not"> {
  readonly must?: readonly WantedText[];
  readonly oneOf?: readonly (readonly WantedText[])[];
  readonly may?: readonly WantedText[];
  readonly not?: readonly WantedText[];
}

/** What a recipe file states of one way; texture and tradition stand in its id. */
export interface RecipeFacts extends Pick<Prescription, "way" | "dynamic" | "sources" | "evidence" | "note"> {
  readonly parts: readonly PartText[];
  /** Default `no`. */
  readonly tremulant?: Prescription["tremulant"];
  readonly couplers?: readonly CouplerText[];
  readonly couplersMay?: readonly CouplerText[];
}

/** What goes with a mixture in all but its name: who keeps mixtures out, keeps these out too, unless he names them. */
const LIKE_MIXTURES: readonly Kind[] = ["cymbal", "rauschpfeife"];

function prescribedPart({ must = [], oneOf, may, not: shutOut, ...rest }: PartText): PrescribedPart {
  const named = [...must, ...(oneOf ?? []).flat(), ...(may ?? [])].map((text) => wanted(text).kind);
  const not = shutOut?.includes("mixture")
    ? [...shutOut, ...LIKE_MIXTURES.filter((kind) => !named.includes(kind) && !shutOut.includes(kind))]
    : shutOut;
  return {
    ...rest,
    must: must.map(wanted),
    ...(oneOf && { oneOf: oneOf.map((list) => list.map(wanted)) }),
    ...(may && { may: may.map(wanted) }),
    ...(not && { not: not.map(wanted) }),
  };
}

/** A prescription from its id `texture.tradition.number` and its facts. */
export function recipe(id: string, facts: RecipeFacts): Prescription {
  const [texture, traditionName] = id.split(".");
  const tradition = TRADITIONS.find((known) => known === traditionName);
  if (!texture || !tradition) throw new RangeError(`"${id}" is not the id of a recipe.`);
  const { parts, tremulant = "no", couplers = [], couplersMay, ...rest } = facts;
  return {
    id,
    texture,
    tradition,
    ...rest,
    parts: parts.map(prescribedPart),
    tremulant,
    couplers: couplers.map(coupler),
    ...(couplersMay && { couplersMay: couplersMay.map(coupler) }),
  };
}

/** What stands in for a wanted stop; `pedal` when it holds only for a part that the feet play. */
export function standIn(
  text: WantedText,
  use: readonly {
    readonly stops: readonly WantedText[];
    readonly leaveOut?: true;
    readonly cost: StandIn["use"][number]["cost"];
    readonly note?: string;
  }[],
  { pedal = false } = {},
): StandIn {
  return {
    for: wanted(text),
    ...(pedal && { pedal }),
    use: use.map(({ stops, ...rest }) => ({ ...rest, stops: stops.map(wanted) })),
  };
}
