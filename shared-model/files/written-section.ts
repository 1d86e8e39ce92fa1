import { partsFromHand, sectionOf } from "../music/section.ts";
import type { Section } from "../music/texture.ts";
import { textureById } from "../music/textures/catalogue.ts";
import type { WrittenMusic } from "./music-entry.ts";

/** The music that a file writes down, made whole: its texture in the tradition's shape, or its own parts. */
export function sectionOfMusic(music: WrittenMusic): Section {
  const { texture: id, parts, ranges, sounding, ...said } = music;
  const texture = id === null ? null : textureById(id);
  if (texture) {
    return sectionOf(texture, {
      ...(said.tradition !== null && { tradition: said.tradition }),
      ...(said.dynamic !== null && { dynamic: said.dynamic }),
      ...(said.tempo !== null && { tempo: said.tempo }),
      ranges,
      sounding,
      name: said.name,
      bars: said.bars,
    });
  }
  return {
    name: said.name,
    bars: said.bars,
    texture: null,
    tradition: said.tradition ?? "neutral",
    dynamic: said.dynamic,
    tempo: said.tempo,
    parts: (parts ?? partsFromHand([])).map((part) => {
      const range = ranges[part.id];
      return { ...part, ...(range && { low: range[0], high: range[1] }), sounding: sounding[part.id] ?? part.sounding };
    }),
  };
}
