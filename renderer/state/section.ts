import type { ConsoleState, Placing } from "../../shared-model/console/state.ts";
import { sectionOf } from "../../shared-model/music/section.ts";
import type { Part, Section, Tempo, Texture } from "../../shared-model/music/texture.ts";
import { textureFor } from "../../shared-model/music/textures/catalogue.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import type { DeskSection, DrawnByHand } from "./work.ts";

/** The texture of a section in its school's shape; `null` while none is chosen. */
export const textureOf = (section: DeskSection): Texture | null =>
  section.texture === null ? null : textureFor(section.texture, section.tradition);

/** The parts of a section, by its texture or as written by hand; none while nothing is said. */
export const partsOf = (section: DeskSection): readonly Part[] => section.parts ?? textureOf(section)?.parts ?? [];

/** The tempo that a section or else the piece names; `undefined`: as the texture has it. */
export const tempoSaid = ({ tempo, pieceTempo }: DeskSection): Tempo | null | undefined =>
  tempo === undefined ? (pieceTempo ?? undefined) : tempo;

/** The music of a section made whole; `null` while no texture is chosen. */
export function musicOf(section: DeskSection): Section | null {
  const texture = textureOf(section);
  const tempo = tempoSaid(section);
  if (section.parts) {
    const { name, bars, tradition, dynamic = null, parts } = section;
    return { name, bars, texture: null, tradition, dynamic, tempo: tempo ?? null, parts };
  }
  if (!texture) return null;
  // What was said for another texture is kept for the way back, and passed over here.
  const known = <Value>(said: Readonly<Record<string, Value>>): Readonly<Record<string, Value>> =>
    Object.fromEntries(Object.entries(said).filter(([part]) => texture.parts.some((each) => each.id === part)));
  return sectionOf(texture, {
    tradition: section.tradition,
    ...(section.dynamic !== undefined && { dynamic: section.dynamic }),
    ...(tempo !== undefined && { tempo }),
    ranges: known(section.ranges),
    sounding: known(section.sounding),
    name: section.name,
    bars: section.bars,
  });
}

/** A drawn registration as the model has it. */
export const stateOf = (drawn: DrawnByHand): ConsoleState => ({
  drawn: new Set(drawn.drawn),
  couplers: new Set(drawn.couplers),
  tremulants: new Set(drawn.tremulants),
  boxes: new Map(Object.entries(drawn.boxes)),
  unisonOff: new Set(drawn.unisonOff),
});

/** A state of the model, and where the parts are played, in plain values. */
export const drawnOf = (state: ConsoleState, placings: readonly Placing[]): DrawnByHand => ({
  drawn: [...state.drawn],
  couplers: [...state.couplers],
  tremulants: [...state.tremulants],
  boxes: Object.fromEntries(state.boxes),
  unisonOff: [...state.unisonOff],
  keyboards: Object.fromEntries(placings.map(({ part, keyboard }) => [part, keyboard])),
  octaves: Object.fromEntries(placings.filter(({ octave }) => octave !== 0).map(({ part, octave }) => [part, octave])),
});

/** A drawn registration without what an organ or a texture no longer has: ids of stops that went, parts that are no more. */
export function onOrgan(drawn: DrawnByHand, instrument: Instrument, section: DeskSection): DrawnByHand {
  const stops = new Set(instrument.divisions.flatMap((division) => division.stops.map((stop) => stop.id)));
  const divisions = new Set(instrument.divisions.map((division) => division.name));
  const boxes = new Set(instrument.divisions.map((division) => division.box));
  const couplers = new Set(instrument.couplers.map((coupler) => coupler.name));
  const parts = new Set(partsOf(section).map((part) => part.id));
  const only = <Value>(said: Readonly<Record<string, Value>>, keep: (key: string, value: Value) => boolean) =>
    Object.fromEntries(Object.entries(said).filter(([key, value]) => keep(key, value)));
  return {
    drawn: drawn.drawn.filter((id) => stops.has(id)),
    couplers: drawn.couplers.filter((name) => couplers.has(name)),
    tremulants: drawn.tremulants.filter((name) => instrument.tremulants.includes(name)),
    boxes: only(drawn.boxes, (name) => boxes.has(name)),
    unisonOff: drawn.unisonOff.filter((name) => instrument.unisonOff.includes(name)),
    keyboards: only(drawn.keyboards, (part, keyboard) => parts.has(part) && divisions.has(keyboard)),
    octaves: only(drawn.octaves, (part) => parts.has(part)),
  };
}
