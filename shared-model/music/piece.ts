import type { ConsoleState, Placing } from "../console/state.ts";
import type { Section } from "./texture.ts";

/** What presses, draws and plays. */
export const LIMBS = ["left", "right", "feet"] as const;
export type Limb = (typeof LIMBS)[number];

/**
 * What happens just before a section. `attacca`: it follows at once; `rest`: so many beats are silent; `fermata`: a note is
 * held, by whoever is not free; `page-turn`: beats in which a page is turned too; `pause`: as long as the player likes.
 */
export const HAPPENINGS = ["attacca", "rest", "fermata", "page-turn", "pause"] as const;
export type Happening = (typeof HAPPENINGS)[number];

/** The time before a section. */
export interface Before {
  readonly what: Happening;
  /** Beats in the tempo of the section before; of a fermata, as written. `null` where beats do not count. */
  readonly beats: number | null;
  /** Beats that each limb has nothing to play before the section begins; `null` when the file does not say. */
  readonly free: Readonly<Partial<Record<Limb, number>>> | null;
  readonly turnedBy: "player" | "assistant";
}

/** A stretch inside a section in which a limb has nothing to play: silent divisions can be made ready there. */
export interface FreeMoment {
  readonly limb: Limb;
  /** Beats in the tempo of the section. */
  readonly beats: number;
  readonly bar: string | null;
}

/** How a section's registration stands to another one's. */
export const LINK_KINDS = ["same-as", "softer-than", "louder-than", "echo-of", "contrast-with"] as const;
export type LinkKind = (typeof LINK_KINDS)[number];

/** A link in the middle of a sentence. */
export const LINK_WORDS: Readonly<Record<LinkKind, string>> = {
  "same-as": "the same as",
  "softer-than": "softer than",
  "louder-than": "louder than",
  "echo-of": "an echo of",
  "contrast-with": "in contrast with",
};

export interface Link {
  readonly kind: LinkKind;
  /** Place of the other section in the piece, from 0. */
  readonly to: number;
}

/** Beats in a minute, and the beat in quarters (dotted quarter: 1.5). */
export interface Metronome {
  readonly bpm: number;
  readonly quarters: number;
}

/** How the console stands for a section and where its parts are played. */
export interface Registration {
  /** Part id to the name of the division whose keyboard plays it; `null` when it is left open. */
  readonly keyboards: Readonly<Record<string, string>> | null;
  /** By part id; parts not named are played as written. */
  readonly octaves: Readonly<Record<string, Placing["octave"]>>;
  readonly state: ConsoleState;
}

/** A stretch of a piece that is played on one registration, or that climbs through a ladder of them. */
export interface PieceSection {
  readonly section: Section;
  readonly metronome: Metronome | null;
  /** Beats in a bar, where stated: with the bars, how long the section lasts. */
  readonly beatsInBar: number | null;
  /** `null` when nothing is said. */
  readonly before: Before | null;
  readonly moments: readonly FreeMoment[];
  readonly links: readonly Link[];
  /** `null` when none is chosen, or when it was chosen on another organ. */
  readonly registration: Registration | null;
  /** For a section that grows: the registrations that follow the first, in order. */
  readonly steps: readonly Registration[];
  /** Whether a plan must keep the registration. */
  readonly pinned: boolean;
}

/** Numbers of the pistons and memory levels that the player may set and press; `null`: all that the organ has. */
export interface PistonsAllowed {
  readonly generals: readonly number[] | null;
  /** By division; a division not named has none for the player once any is named. */
  readonly divisionals: Readonly<Record<string, readonly number[]>> | null;
  readonly levels: readonly number[] | null;
}

export const PACES = ["brisk", "normal", "careful"] as const;
export type Pace = (typeof PACES)[number];

/** A piece of music as it is registered: a row of sections and who is there to help. */
export interface Piece {
  readonly name: string | null;
  /** Name of the organ that its registrations were made on; `null` when the file does not say. */
  readonly organ: string | null;
  /** Where an assistant stands, as the player sees it. */
  readonly assistant: "left" | "right" | "none";
  readonly pistons: PistonsAllowed;
  /** Whether the changes are practised: then no label has to be read while playing. */
  readonly practised: boolean;
  readonly pace: Pace;
  readonly sections: readonly PieceSection[];
}

/** First and last bar of `1-24`, `9`, `16b-24`; `null` when the text begins with no number. */
export function barsOf(text: string | null): { readonly first: number; readonly last: number } | null {
  const match = /^\s*(?:bars?\s+)?(\d{1,5})[a-z]?(?:\s*[-–—]\s*(\d{1,5}))?/i.exec(text ?? "");
  if (!match) return null;
  const first = Number(match[1]);
  return { first, last: match[2] === undefined ? first : Number(match[2]) };
}

/** What is odd about the bars of a section, by its place in the row, from 0. */
export type BarsFault =
  | { readonly section: number; readonly fault: "backwards" }
  /** It begins before the section `before` began, and nothing says that these bars are played again. */
  | { readonly section: number; readonly fault: "out-of-order"; readonly before: number };

/** Sections whose bars run backwards, and such as begin before the one above them, in order. */
export function barsFaults(
  sections: readonly { readonly bars: string | null; readonly again: boolean }[],
): readonly BarsFault[] {
  const faults: BarsFault[] = [];
  const starts = new Set<number>();
  let above: { readonly first: number; readonly section: number } | null = null;
  for (const [section, { bars, again }] of sections.entries()) {
    const range = barsOf(bars);
    if (!range) continue;
    if (range.last < range.first) faults.push({ section, fault: "backwards" });
    // Verses of a hymn and a da capo begin where an earlier section began.
    else if (above && range.first < above.first && !starts.has(range.first) && !again) {
      faults.push({ section, fault: "out-of-order", before: above.section });
    }
    starts.add(range.first);
    above = { first: range.first, section };
  }
  return faults;
}

/** How many beats a section lasts, from its bars and the beats in a bar; `null` when either is not known, or bars run backwards. */
export function beatsOf({ section, beatsInBar }: Pick<PieceSection, "section" | "beatsInBar">): number | null {
  const bars = barsOf(section.bars);
  return bars && bars.last >= bars.first && beatsInBar !== null ? (bars.last - bars.first + 1) * beatsInBar : null;
}
