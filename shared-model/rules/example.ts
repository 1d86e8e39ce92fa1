import type { ConsoleState, Placing } from "../console/state.ts";
import { sectionOf } from "../music/section.ts";
import type { Hands, Part, Role, Section } from "../music/texture.ts";
import { ROLES } from "../music/texture.ts";
import { textureById } from "../music/textures/catalogue.ts";
import { type LoosePart, partsInOrder } from "../music/textures/layout.ts";
import { type Key, keyFromText } from "../pitch/key.ts";
import type { Instrument } from "../stoplist/instrument.ts";
import { organFrom } from "./example-organ.ts";
import type { Example } from "./rule.ts";

/** A rule's example made whole: what is judged. */
export interface ExampleConsole {
  readonly instrument: Instrument;
  readonly section: Section;
  readonly state: ConsoleState;
  readonly placings: readonly Placing[];
}

/** Where parts lie that an example writes by hand, `C4-A5`; a texture has its own ranges. Common practice. */
const BY_HAND: Readonly<Record<Role, readonly [Hands, string]>> = {
  melody: ["right", "C4-A5"],
  accompaniment: ["left", "G3-G4"],
  bass: ["feet", "C2-C4"],
  plenum: ["both", "C2-C6"],
  voice: ["right", "C3-C5"],
  "cantus-firmus": ["feet", "C3-C4"],
  echo: ["right", "C4-C6"],
};
const HANDS: Readonly<Record<string, Hands>> = { "right-hand": "right", "left-hand": "left", pedal: "feet" };

interface Played {
  readonly role: Role;
  /** Said before the role: `left-hand bass on Hauptwerk`, `pedal melody on Pedal`. */
  readonly hands: Hands | null;
  readonly keyboard: string;
}

function playedFrom(text: string): Played {
  const match = /^(?:(right-hand|left-hand|pedal) )?([a-z-]+) on (.+)$/.exec(text.trim());
  const role = match?.[2] as Role | undefined;
  if (!match || !role || !ROLES.includes(role)) {
    throw new RangeError(
      `"${text}" is no part on a keyboard; write it like "melody on Oberwerk". Roles: ${ROLES.join(", ")}.`,
    );
  }
  return { role, hands: match[1] ? (HANDS[match[1]] as Hands) : null, keyboard: match[3] as string };
}

function keysFrom(text: string): readonly [Key, Key] {
  const [low, high] = text.split("-").map(keyFromText);
  if (low == null || high == null || low > high) throw new RangeError(`"${text}" is no range; write it like C4-A5.`);
  return [low, high];
}

/** Parts that an example writes by hand: ranges count as the catalogue's unless it states them. */
function partsByHand(played: readonly Played[]): readonly Part[] {
  return partsInOrder(
    played.map(({ role, hands }): LoosePart => {
      const [usual, range] = BY_HAND[role];
      const [low, high] = keysFrom(hands === "left" && role === "voice" ? "C2-C5" : range);
      return { role, hands: hands ?? usual, place: null, low, high, sounding: 8, optional: false, stated: false };
    }),
  );
}

/** The parts of a texture that the example plays, in the order in which it names them. */
function partsOf(section: Section, played: readonly Played[], texture: string): readonly Part[] {
  const left = [...section.parts];
  return played.map(({ role, hands }) => {
    const index = left.findIndex((part) => part.role === role && (hands === null || part.hands === hands));
    const [part] = index < 0 ? [] : left.splice(index, 1);
    if (!part) throw new RangeError(`The texture ${texture} has no such part: ${hands ?? ""} ${role}.`);
    return part;
  });
}

function sectionFor(example: Example, played: readonly Played[]): Section {
  if (example.texture === undefined) {
    return {
      name: null,
      bars: null,
      texture: null,
      tradition: example.tradition ?? "neutral",
      dynamic: example.dynamic ?? null,
      tempo: example.tempo ?? null,
      parts: partsByHand(played),
    };
  }
  const texture = textureById(example.texture);
  if (!texture) throw new RangeError(`The catalogue has no texture "${example.texture}".`);
  const whole = sectionOf(texture, { tradition: example.tradition, dynamic: example.dynamic, tempo: example.tempo });
  return { ...whole, parts: partsOf(whole, played, texture.id) };
}

/** The part with the range that the example states for it. */
function withRange(part: Part, example: Example): Part {
  const range = example.ranges?.[part.id];
  if (range === undefined) return part;
  const [low, high] = keysFrom(range);
  return { ...part, low, high, stated: true };
}

function mustName(known: readonly string[], names: readonly string[], what: string): void {
  const unknown = names.find((name) => !known.includes(name));
  if (unknown !== undefined)
    throw new RangeError(`The example has no ${what} "${unknown}"; it has ${known.join(", ")}.`);
}

/**
 * Reads an example: its organ (see example-organ.ts), its parts and how the console stands.
 *
 * @throws RangeError in words when something is not as the notation has it, or names what the example has not.
 */
export function consoleOfExample(example: Example): ExampleConsole {
  const { couplers = [], tremulants = [], boxes = {}, ranges = {}, octaves = {} } = example;
  const { instrument, drawn } = organFrom(example.organ, couplers, tremulants);
  const played = example.plays.split(",").map(playedFrom);
  const section = sectionFor(example, played);
  const parts = section.parts.map((part) => withRange(part, example));
  const divisions = instrument.divisions.map((division) => division.name);
  const boxed = instrument.divisions.flatMap((division) => division.box ?? []);
  const ids = parts.map((part) => part.id);
  mustName(
    divisions,
    played.map((each) => each.keyboard),
    "keyboard",
  );
  mustName(
    divisions,
    instrument.couplers.flatMap((each) => [each.from, each.to]),
    "division",
  );
  mustName([...divisions, "all"], tremulants, "division");
  mustName(boxed, Object.keys(boxes), "box on the");
  mustName(ids, [...Object.keys(ranges), ...Object.keys(octaves)], "part");
  return {
    instrument,
    section: { ...section, parts },
    state: {
      drawn: new Set(drawn),
      couplers: new Set(couplers),
      tremulants: new Set(tremulants),
      boxes: new Map(Object.entries(boxes)),
      unisonOff: new Set(),
    },
    placings: parts.map((part, index) => ({
      part: part.id,
      keyboard: (played[index] as Played).keyboard,
      octave: octaves[part.id] ?? 0,
    })),
  };
}

/**
 * Reads an example of two registrations, one after the other: `Great: Principal 8 (Octave 4) => Great: Principal 8, Octave 4`.
 *
 * @throws RangeError as {@link consoleOfExample}, and when there are not two.
 */
export function stepsOfExample(example: Example): readonly [earlier: ExampleConsole, later: ExampleConsole] {
  const organs = example.organ.split(" => ");
  const [earlier, later] = organs.map((organ) => consoleOfExample({ ...example, organ }));
  if (!earlier || !later || organs.length > 2)
    throw new RangeError(`"${example.organ}" is not two registrations parted by " => ".`);
  return [earlier, later];
}
