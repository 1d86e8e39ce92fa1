import { type Foot, footOf, stretch } from "../../pitch/foot.ts";
import { isUsualPitch, oldRounding, pitchName } from "../../pitch/reading.ts";
import type { GlossaryEntry } from "../glossary/glossary.ts";
import type { DivisionDraft, Questions } from "./drafts.ts";
import type { KnownNames } from "./known-names.ts";
import type { PitchMark } from "./pitches-in-line.ts";

/** Everything that is needed to conclude about the stops of one division. */
export interface Setting {
  readonly division: DivisionDraft;
  readonly names: KnownNames;
  readonly questions: Questions;
  /** More than half of the stops of the whole list print their pitch, so that a missing one is an omission. */
  readonly mostlyPrinted: boolean;
}

/** Whether the length is an octave of 8': 16, 4, 2 ... */
export const isUnison = (foot: Foot): boolean => foot.under === 1 && (foot.over & (foot.over - 1)) === 0;

/** A length as questions offer it: with its foot mark. */
export const printed = (foot: Foot): string => `${pitchName(foot)}'`;

const isOctaveOfBase = (entry: GlossaryEntry): boolean => entry.interval === null || entry.interval % 7 === 1;

/** What a pitch that no stop has may stand for: the usual pitches of the name, nearest first, or those that are near. */
function nearPitches(foot: Foot, name: string, { names, division }: Setting): string[] {
  const pedal = division.kind === "pedal";
  const ratio = (near: Foot): number => (near.over * foot.under) / (near.under * foot.over);
  const usual = names.entry(name, { pedal, pitch: null, ranks: null, base: null })?.entry.usualPitches;
  const own = (pedal ? usual?.pedal : usual?.manual) ?? [];
  if (own.length > 0) {
    return own
      .toSorted((a, b) => Math.abs(Math.log(ratio(a))) - Math.abs(Math.log(ratio(b))))
      .slice(0, 3)
      .map(printed);
  }
  return [
    footOf(32),
    footOf(16),
    footOf(32, 3),
    footOf(8),
    footOf(16, 3),
    footOf(4),
    footOf(16, 5),
    footOf(8, 3),
    footOf(2),
    footOf(8, 5),
    footOf(4, 3),
    footOf(1),
  ]
    .filter((near) => Math.abs(ratio(near) - 1) < 0.35)
    .map(printed);
}

/** A printed length as it sounds, and the question it raises. */
export function soundOf(mark: PitchMark, name: string, line: number, setting: Setting): Foot | null {
  const { questions, names, division } = setting;
  if (mark.foot === null) {
    const usual = mark.choices.filter(isUsualPitch);
    const choices = mark.choices.map(printed);
    const [only] = usual;
    const rounded = mark.choices.map(oldRounding).find((foot) => foot !== null);
    const isMutation =
      names.entry(name, { pedal: division.kind === "pedal", pitch: null, ranks: null, base: null })?.entry.family ===
      "mutation";
    // 13/5 of a tierce is 1 3/5 whose gap the printer lost: no other tierce is near.
    if (rounded && rounded === only && isMutation) return only;
    if (usual.length === 1 && only) {
      questions.ask({
        kind: "pitch",
        line,
        text: `"${mark.printed}" of ${name} is taken for ${pitchName(only)}'; is that right?`,
        about: mark.printed,
        stops: [name],
        choices,
      });
      return only;
    }
    questions.ask({
      kind: "pitch",
      line,
      text: `"${mark.printed}" of ${name} can mean several pitches and is left open; which is it?`,
      about: mark.printed,
      stops: [name],
      choices,
    });
    return null;
  }
  const mended = oldRounding(mark.foot);
  if (mended) {
    const known = names.entry(name, { pedal: division.kind === "pedal", pitch: null, ranks: null, base: null })?.entry;
    const byLongestPipe =
      known && (known.family.startsWith("reed") || (known.family === "principal" && isOctaveOfBase(known)));
    if (!byLongestPipe) return mended;
    // A front pipe of 12, 6 or 3 feet may be that of the lowest key F: an 8', a 4', a 2'.
    const onF = stretch(mark.foot, 2, 3);
    questions.ask({
      kind: "pitch",
      line,
      text: `${name} is printed ${mark.printed}', which can be a fifth (${printed(mended)}) or belong to a keyboard that begins at F (${printed(onF)}), so it is left open; which is it?`,
      about: name,
      stops: [name],
      choices: [printed(onF), printed(mended)],
    });
    return null;
  }
  if (!isUsualPitch(mark.foot)) {
    questions.ask({
      kind: "pitch",
      line,
      text: `${name} is printed ${mark.printed}', a pitch that organs do not have, so it is left open; what is its pitch?`,
      about: mark.printed,
      stops: [name],
      choices: nearPitches(mark.foot, name, setting),
    });
    return null;
  }
  return mark.foot;
}
