import { stopLabel } from "../../shared-model/judging/listening.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import type { ProposedPart } from "./proposed.ts";

/** What a part draws, in words: where, and what. */
export interface SaidPart {
  /** The keyboard; `null` where it goes without saying, as for the feet. */
  readonly keyboard: string | null;
  readonly stops: string;
}

/** A stop whose pitch never parts from its name at the end of a line. */
export const unparted = (label: string): string => label.replace(/ (?=\d)/gu, "\u00A0");

/** What words about a part are made from. */
export interface Registered {
  readonly parts: readonly ProposedPart[];
}

/** Whether everything that another part has drawn there comes along through a coupler. */
function comesAlong(part: ProposedPart, division: string, { parts }: Registered): boolean {
  return parts.some((other) => other !== part && other.keyboard === division);
}

/** `Oboe 8, tremulant`; `Subbass 16 and Swell`: own stops by name, a coupled division that is named elsewhere by its name. */
export function saidPart(instrument: Instrument, registered: Registered, id: string): SaidPart {
  const part = registered.parts.find((each) => each.part === id);
  if (!part) return { keyboard: null, stops: "rest" };
  const heard = new Set(part.heard);
  const keyboard = instrument.divisions.find((each) => each.name === part.keyboard);
  const named: string[] = [];
  const along: string[] = [];
  for (const division of instrument.divisions) {
    const stops = division.stops.filter((stop) => heard.has(stop.id));
    if (stops.length === 0) continue;
    if (division === keyboard || !comesAlong(part, division.name, registered)) {
      const words = stops.map((stop) => unparted(stopLabel(stop)));
      if (division === keyboard) named.unshift(...words);
      else named.push(...words.map((word) => `${word} of the ${division.name}`));
    } else along.push(division.name);
  }
  const octave = part.octave === 0 ? [] : [part.octave < 0 ? "an octave lower" : "an octave higher"];
  const own = [...named, ...(part.tremulant ? ["tremulant"] : []), ...octave].join(", ");
  const stops = [own, along.join(" and ")].filter((each) => each !== "").join(named.length > 0 ? " and " : "");
  return {
    keyboard: keyboard?.kind === "pedal" ? null : part.keyboard,
    stops: stops === "" ? "nothing drawn" : stops,
  };
}
