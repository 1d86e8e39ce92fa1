import { type Foot, footOf } from "../../pitch/foot.ts";
import { oldRounding } from "../../pitch/reading.ts";
import { foldedSpelling } from "../glossary/spelling.ts";
import type { DivisionDraft, PlacedStop, Questions } from "./drafts.ts";
import { fillPitches } from "./implied-pitches.ts";
import type { KnownNames } from "./known-names.ts";
import type { PitchMark } from "./pitches-in-line.ts";
import { ranksAnswer } from "./question.ts";
import type { ReadStop } from "./reading.ts";
import { isUnison, type Setting, soundOf } from "./sounding-pitch.ts";
import type { StopDraft } from "./stop-draft.ts";

/** First key of a treble half: stops that begin here or higher are one. Common practice: halves meet about middle C. */
const FIRST_TREBLE_KEY = 59;

const RIPIENO_RANKS = /^(due|tre|quattro|cinque|sei|sette) (?:file )?d[ie]l? ripieno/i;
const ITALIAN_NUMBERS = ["", "", "due", "tre", "quattro", "cinque", "sei", "sette"];

interface Half {
  readonly name: string;
  readonly half: ReadStop["half"];
}

/** The half a stop is, and its name without the word for it. */
function halfOf({ draft }: PlacedStop, { division, names }: Setting): Half {
  const pedal = division.kind === "pedal";
  const byKey: ReadStop["half"] = pedal
    ? null
    : draft.from !== null && draft.from >= FIRST_TREBLE_KEY
      ? "treble"
      : draft.to !== null && draft.to <= 61
        ? "bass"
        : null;
  const mark = draft.half;
  if (!mark) return { name: draft.name, half: byKey };
  if (mark.sure && !(pedal && mark.half === "bass")) return { name: draft.name, half: mark.half };
  if (pedal) return { name: draft.name, half: null };
  const own = foldedSpelling(draft.bareName);
  const partner = division.stops.some(
    ({ draft: other }) =>
      other !== draft && foldedSpelling(other.bareName) === own && other.half !== null && other.half.half !== mark.half,
  );
  const letter = draft.name !== draft.bareName && /\s[BDSbds]\.?$/.test(draft.name);
  const leading = mark.partOfName && draft.name === draft.bareName;
  const counterpart = leading && division.stops.some(({ draft: other }) => other.half?.half === "treble");
  if (!partner && !letter && !counterpart) return { name: draft.name, half: byKey };
  if (!letter && !partner && names.isPlainName(draft.name)) return { name: draft.name, half: byKey };
  const english = division.stops.some(({ draft: other }) => other.half?.partOfName && other.half.half === "treble");
  return { name: leading || (mark.partOfName && english) ? draft.name : draft.bareName, half: mark.half };
}

/** Stops of one name numbered I and II are two stops, not a stop of one rank and a stop of two. */
function isLabel(stop: PlacedStop, setting: Setting): boolean {
  const { draft } = stop;
  if (draft.ranks?.sign !== "numeral") return false;
  // A reed of the pedal has no three ranks: then it is the compound of that name.
  const pedal = setting.division.kind === "pedal" && draft.ranks.ranks < 3;
  if (!setting.names.isCompound(draft.name, pedal)) {
    const strange = setting.names.acquaintance(draft.name) === "strange";
    const [pitch] = draft.pitches;
    return !(strange && (pitch === undefined || (pitch.foot !== null && !isUnison(pitch.foot))));
  }
  const own = foldedSpelling(draft.name);
  const numbers = setting.division.stops
    .filter(({ draft: other }) => other.ranks?.sign === "numeral" && foldedSpelling(other.name) === own)
    .map(({ draft: other }) => other.ranks?.ranks);
  return numbers.includes(1) && numbers.includes(2);
}

const ROMANS = ["", "I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX", "X"];

const remarkOf = (draft: StopDraft): string | null => {
  const words = draft.remarks.filter((one) => one !== "").join("; ");
  return words === "" ? null : words;
};

/** A figure without mark behind the name of a compound: its ranks where it cannot be its length. */
function ranksInsteadOfPitch(draft: StopDraft, line: number, setting: Setting): number | null {
  const [mark] = draft.pitches;
  // "MIXTUR 4F": ranks, unless the list marks its feet so.
  const marksFeet = setting.division.stops.some(
    ({ draft: other }) => other.pitches.some(({ sign }) => sign === "F") && !setting.names.isCompound(other.name),
  );
  const isFach = mark?.sign === "F" && !marksFeet;
  if (!mark || (mark.sure && !isFach) || draft.pitches.length > 1 || draft.ranks || draft.composition) return null;
  const whole = mark.foot && mark.foot.under === 1 ? mark.foot.over : null;
  if (whole === null || whole < 2 || whole > 12) return null;
  const pedal = setting.division.kind === "pedal";
  if (!setting.names.isCompound(draft.name, pedal)) return null;
  const entry = setting.names.entry(draft.name, { pedal, pitch: null, ranks: 3, base: null })?.entry;
  if (entry?.family === "cornet" && (whole >= 6 || (pedal && whole <= 4))) return null;
  if (isFach || (/^(?:sesq|tert|terz|rausch)/i.test(draft.name) && whole === 2)) return whole;
  setting.questions.ask({
    kind: "pitch",
    line,
    text: `The "${mark.printed}" behind ${draft.name} can be its ranks or its pitch; it is read as ${whole} ranks. Is that right?`,
    about: draft.name,
    stops: [draft.name],
    choices: [ranksAnswer(whole), `${mark.printed}'`],
  });
  return whole;
}

/** The printed stop as one stop, or as several when it prints several lengths. */
function concluded(stop: PlacedStop, setting: Setting): ReadStop[] {
  const { draft, line } = stop;
  const { names, division } = setting;
  const pedal = division.kind === "pedal";
  let { name, half } = halfOf(stop, setting);
  let ranks = draft.ranks?.ranks ?? null;
  let marks = draft.pitches.length > 0 ? draft.pitches : draft.aside;
  if (draft.ranks?.sign === "f" && marks.length === 0 && !names.isCompound(name, pedal) && names.knows(name)) {
    const printed = String(draft.ranks.ranks);
    marks = [{ start: 0, end: 0, printed, foot: footOf(draft.ranks.ranks), choices: [], sure: true, sign: "f" }];
    ranks = null;
  }
  if (isLabel(stop, setting)) {
    const first = draft.ranks !== null && draft.ranks.start < (draft.pitches[0]?.start ?? Number.POSITIVE_INFINITY);
    if (first && draft.ranks !== null && draft.ranks.start > draft.at)
      name = `${name} ${ROMANS[draft.ranks.ranks] ?? ""}`.trim();
    ranks = null;
  }
  const instead = ranksInsteadOfPitch(draft, line, setting);
  if (instead !== null) {
    ranks = instead;
    marks = [];
  }
  const ripieno = RIPIENO_RANKS.exec(name);
  if (ripieno) ranks ??= ITALIAN_NUMBERS.indexOf((ripieno[1] as string).toLowerCase());
  const shared = {
    half,
    line,
    from: draft.from,
    borrowed: draft.borrowed,
    row: null,
    prepared: draft.prepared,
    remark: remarkOf(draft),
  };
  const isSame = (a: PitchMark, b: PitchMark): boolean =>
    a.printed === b.printed || (a.foot !== null && a.foot === b.foot);
  const different = marks.filter((mark, index) => marks.findIndex((other) => isSame(mark, other)) === index);
  const compound = names.isCompound(name, pedal) || (ranks !== null && ranks > 1);
  if (different.length > 1) {
    const feet = different.map((mark) => mark.foot);
    const isComposition =
      compound || feet.some((foot) => foot !== null && !isUnison(foot) && !oldRounding(foot) && !names.knows(name));
    if (isComposition) {
      const sounds = different.map((mark) => soundOf(mark, name, line, setting));
      const composition = sounds.every((foot): foot is Foot => foot !== null) ? sounds : null;
      const [lowest] = different;
      return [
        {
          ...shared,
          name,
          pitch: sounds[0] ?? null,
          printed: lowest?.printed ?? null,
          ranks: ranks ?? different.length,
          composition,
        },
      ];
    }
    return different.map((mark) => ({
      ...shared,
      name,
      pitch: soundOf(mark, name, line, setting),
      printed: mark.printed,
      ranks,
      composition: null,
    }));
  }
  const [mark] = different;
  const pitch = mark ? soundOf(mark, name, line, setting) : null;
  if (draft.composition) ranks ??= draft.composition.length;
  return [{ ...shared, name, pitch, printed: mark?.printed ?? null, ranks, composition: draft.composition }];
}

/** Stops whose printed pitch tells how often a list prints one at all. */
export const printsPitch = ({ draft }: PlacedStop): boolean => draft.pitches.length > 0 || draft.aside.length > 0;

/** Names that the glossary does not know are kept as printed and asked about. */
function askNames(stops: readonly ReadStop[], { names, questions }: Setting): void {
  for (const stop of stops) {
    if (names.knows(stop.name)) continue;
    const near = names.nearest(stop.name);
    const sentence = near.length > 0 ? `is it ${near.join(" or ")}, or a name of its own?` : "what kind of stop is it?";
    questions.ask({
      kind: "name",
      line: stop.line,
      text: `${stop.name} is not a stop name that is known here and is kept as printed; ${sentence}`,
      about: stop.name,
      stops: [stop.name],
      choices: near.length > 0 ? [...near, "a name of its own"] : [],
    });
  }
}

/** The stops of a division as read: names, sounding pitches, ranks and halves, with questions where the list is silent. */
export function settledStops(
  division: DivisionDraft,
  names: KnownNames,
  questions: Questions,
  mostlyPrinted: boolean,
): ReadStop[] {
  const setting: Setting = { division, names, questions, mostlyPrinted };
  const stops = division.stops.flatMap((stop) => concluded(stop, setting));
  askNames(stops, setting);
  return fillPitches(stops, setting);
}
