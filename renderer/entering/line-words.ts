import { understandName } from "../../shared-model/stoplist/glossary/glossary.ts";
import type { Family } from "../../shared-model/stoplist/kind.ts";
import type { LineSaying } from "../../shared-model/stoplist/reading/line-sayings.ts";
import type { ReadDivision, Reading, ReadStop } from "../../shared-model/stoplist/reading/reading.ts";
import { keyName, roman } from "../words/typeset.tsx";

/** What a stop of a list was taken for. */
export interface ReadAs {
  readonly stop: ReadStop;
  /** `null` when its name does not tell. */
  readonly family: Family | null;
}

/** The family that a stop's name tells, in its division and at its pitch. */
export function familyOf(stop: ReadStop, division: ReadDivision): Family | null {
  const place = { pedal: division.kind === "pedal", pitch: stop.pitch, ranks: stop.ranks };
  const understood = understandName(stop.name, place);
  return understood.sure ? understood.family : null;
}

/** Stops by the line that prints them. */
export function stopsByLine({ divisions }: Reading): ReadonlyMap<number, readonly ReadAs[]> {
  const lines = new Map<number, ReadAs[]>();
  for (const division of divisions) {
    for (const stop of division.stops) {
      lines.set(stop.line, [...(lines.get(stop.line) ?? []), { stop, family: familyOf(stop, division) }]);
    }
  }
  return lines;
}

/** `keyboard I, C to c‴`: what is known of a division besides its stops. */
function divisionWords({ kind, keyboard, low, high, missing, enclosed }: ReadDivision): string {
  const reached = kind === "pedal" ? "feet" : keyboard === null ? "" : `keyboard ${roman(keyboard)}`;
  const keys = low !== null && high !== null ? `${keyName(low)} to ${keyName(high)}` : "";
  const gaps = missing.length > 0 ? `without ${missing.map(keyName).join(" ")}` : "";
  return [reached, keys, gaps, enclosed ? "in a box" : ""].filter((each) => each !== "").join(", ");
}

/** What a line without stops says, in words; `null` when it says nothing. */
export function sayingWords(saying: LineSaying | undefined, reading: Reading): string | null {
  if (!saying) return null;
  const { divisions } = reading;
  const headed = [...saying.heads, ...saying.describes].map((name) => divisions.find((each) => each.name === name));
  const words = [
    saying.isName ? "name of the organ" : "",
    saying.isMaker ? [reading.builder, reading.year].filter((each) => each !== null).join(", ") : "",
    ...headed.map((division) =>
      division ? ["division", divisionWords(division)].filter(Boolean).join(", ") : "division",
    ),
    ...saying.couplers.map(({ from, to, pitch }) => `coupler, ${from} to ${to}${pitch === 8 ? "" : ` ${pitch}`}`),
    ...saying.tremulants.map((name) => (name === "all" ? "tremulant, whole organ" : `tremulant, ${name}`)),
  ].filter((each) => each !== "");
  return words.length > 0 ? words.join("; ") : null;
}
