import type { Texture, Tradition } from "../../shared-model/music/texture.ts";
import type { Store } from "../state/store.ts";
import { type DeskSection, freshSection } from "../state/work.ts";

/** Whether a section can take another texture without anything being lost that the person did. */
const isFree = ({ registration, name, bars, before, links }: DeskSection): boolean =>
  registration === null && name === null && bars === null && before === null && links.length === 0;

/**
 * Turns to the registrations of a texture. The section on the desk takes it while nothing was done with it; else a section
 * of its own is added behind, so that what a piece has stays.
 */
export function openTexture(store: Store, { id, title }: Texture, tradition: Tradition): void {
  store.act(`looking at ${title}`, (draft) => {
    const { sections } = draft.piece;
    const own = sections[draft.at];
    const music = {
      texture: id,
      tradition,
      parts: null,
      dynamic: undefined,
      tempo: undefined,
      ranges: {},
      sounding: {},
    };
    if (own && isFree(own)) {
      if (own.texture !== id || own.tradition !== tradition) Object.assign(own, music);
      return;
    }
    const number = Math.max(...sections.map((section) => Number(section.id) || 0)) + 1;
    sections.splice(draft.at + 1, 0, { ...(freshSection(String(number)) as (typeof sections)[number]), ...music });
    draft.at += 1;
  });
  store.turnTo("registration");
}
