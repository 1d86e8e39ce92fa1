import { describe, expect, it } from "vitest";
import { pitchName } from "../../../shared-model/pitch/reading.ts";
import { GLOSSARY, type GlossaryEntry } from "../../../shared-model/stoplist/glossary/glossary.ts";
import { readStoplist } from "../../../shared-model/stoplist/reading/read-stoplist.ts";

/** Spellings that hold more than a name: figures, numerals, halves, a remark that parts two entries. */
const MORE_THAN_A_NAME =
  /\d|\(|\s[IVX]+$|(?:^|\s)(?:bassi|soprani|soprana|discant|disc\.|al pedale)(?:\s|$)|^Echo$|^Carillon$/i;

const namesOf = (entry: GlossaryEntry): readonly string[] =>
  [...new Set([entry.name, ...Object.values(entry.also).flat()])].filter((name) => !MORE_THAN_A_NAME.test(name));

/** A stop between two others, with its usual length or three ranks, as a list without foot marks prints it. */
function faultOf(name: string, entry: GlossaryEntry): string | null {
  const onManual = entry.usualPitches.manual[0];
  const foot = onManual ?? entry.usualPitches.pedal[0];
  const isCompound = entry.family === "mixture" || entry.family === "cornet";
  if (!foot && !isCompound) return null;
  const mark = isCompound ? "III" : foot ? pitchName(foot) : "";
  const heading = onManual || isCompound ? "Great" : "Pedal";
  const reading = readStoplist(`${heading}\nBourdon 16\n${name} ${mark}\nPrincipal 4\nFlute 4`);
  const read = reading.divisions.map((division) => {
    const stops = division.stops.map((stop) =>
      [stop.name, stop.ranks === null ? [] : "III", stop.pitch ? pitchName(stop.pitch) : []].flat().join(" "),
    );
    return `${division.name}: ${stops.join(", ")}`;
  });
  const wanted = `${heading}: Bourdon 16, ${name} ${mark}, Principal 4, Flute 4`;
  return read.join(" / ") === wanted ? null : `${wanted} was read as ${read.join(" / ")}`;
}

describe("a list without foot marks holds every stop that the glossary names", () => {
  const families = [...new Set(GLOSSARY.map((entry) => entry.family))];
  it.each(families)("%s", (family) => {
    const faults = GLOSSARY.filter((entry) => entry.family === family).flatMap((entry) =>
      namesOf(entry).flatMap((name) => faultOf(name, entry) ?? []),
    );
    expect(faults).toEqual([]);
  });
});
