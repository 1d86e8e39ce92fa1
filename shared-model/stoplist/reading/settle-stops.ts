import { type Foot, footOf, stretch } from "../../pitch/foot.ts";
import { isUsualPitch, oldRounding, pitchName } from "../../pitch/reading.ts";
import type { GlossaryEntry } from "../glossary/glossary.ts";
import { foldedSpelling } from "../glossary/spelling.ts";
import type { DivisionDraft, PlacedStop, Questions } from "./drafts.ts";
import type { KnownNames } from "./known-names.ts";
import type { PitchMark } from "./pitches-in-line.ts";
import type { ReadStop } from "./reading.ts";
import type { StopDraft } from "./stop-draft.ts";

/** First key of a treble half: stops that begin here or higher are one. Common practice: halves meet about middle C. */
const FIRST_TREBLE_KEY = 59;

const RIPIENO_RANKS = /^(due|tre|quattro|cinque|sei|sette) (?:file )?d[ie]l? ripieno/i;
const ITALIAN_NUMBERS = ["", "", "due", "tre", "quattro", "cinque", "sei", "sette"];

const isUnison = (foot: Foot): boolean => foot.under === 1 && (foot.over & (foot.over - 1)) === 0;

/** Everything that is needed to conclude about the stops of one division. */
interface Setting {
  readonly division: DivisionDraft;
  readonly names: KnownNames;
  readonly questions: Questions;
  /** More than half of the stops of the whole list print their pitch, so that a missing one is an omission. */
  readonly mostlyPrinted: boolean;
}

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
  const pedal = setting.division.kind === "pedal";
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

/** A printed length as it sounds, and the question it raises. */
function soundOf(mark: PitchMark, name: string, line: number, setting: Setting): Foot | null {
  const { questions, names, division } = setting;
  if (mark.foot === null) {
    const usual = mark.choices.filter(isUsualPitch);
    const choices = mark.choices.map((foot) => pitchName(foot));
    const [only] = usual;
    const rounded = mark.choices.map(oldRounding).find((foot) => foot !== null);
    const isMutation =
      names.entry(name, { pedal: division.kind === "pedal", pitch: null, ranks: null, base: null })?.entry.family ===
      "mutation";
    // 13/5 of a tierce is 1 3/5 whose gap the printer lost: no other tierce is near.
    if (rounded && rounded === only && isMutation) return only;
    if (usual.length === 1 && only) {
      questions.ask(
        line,
        `"${mark.printed}" of ${name} is taken for ${pitchName(only)}'; is that right?`,
        mark.printed,
        choices,
      );
      return only;
    }
    questions.ask(line, `"${mark.printed}" of ${name} can mean several pitches; which is it?`, mark.printed, choices);
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
    questions.ask(
      line,
      `${name} is printed ${mark.printed}': a fifth (${pitchName(mended)}'), or a keyboard that begins at F (${pitchName(onF)}')?`,
      name,
      [pitchName(onF), pitchName(mended)],
    );
    return null;
  }
  if (!isUsualPitch(mark.foot)) {
    questions.ask(
      line,
      `${name} is printed ${mark.printed}', a pitch that organs do not have; what is its pitch?`,
      mark.printed,
      nearPitches(mark.foot),
    );
    return null;
  }
  return mark.foot;
}

const isOctaveOfBase = (entry: GlossaryEntry): boolean => entry.interval === null || entry.interval % 7 === 1;

const nearPitches = (foot: Foot): string[] =>
  [
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
    .filter((near) => Math.abs((near.over * foot.under) / (near.under * foot.over) - 1) < 0.35)
    .map((near) => pitchName(near));

const remarkOf = (draft: StopDraft): string | null => {
  const words = draft.remarks.filter((one) => one !== "").join("; ");
  return words === "" ? null : words;
};

/** A figure without mark behind the name of a compound: its ranks where it cannot be its length. */
function ranksInsteadOfPitch(draft: StopDraft, line: number, setting: Setting): number | null {
  const [mark] = draft.pitches;
  if (!mark || mark.sure || draft.pitches.length > 1 || draft.ranks || draft.composition) return null;
  const whole = mark.foot && mark.foot.under === 1 ? mark.foot.over : null;
  if (whole === null || whole < 2 || whole > 12) return null;
  const pedal = setting.division.kind === "pedal";
  if (!setting.names.isCompound(draft.name, pedal)) return null;
  const entry = setting.names.entry(draft.name, { pedal, pitch: null, ranks: 3, base: null })?.entry;
  if (entry?.family === "cornet" && (whole >= 6 || (pedal && whole <= 4))) return null;
  if (/^(?:sesq|tert|terz|rausch)/i.test(draft.name) && whole === 2) return 2;
  setting.questions.ask(line, `Is "${mark.printed}" behind ${draft.name} its ranks or its pitch?`, draft.name, [
    `${whole} ranks`,
    `${mark.printed}'`,
  ]);
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
    marks = [{ start: 0, end: 0, printed, foot: footOf(draft.ranks.ranks), choices: [], sure: true }];
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
    prepared: draft.prepared,
    remark: remarkOf(draft),
  };
  const different = marks.filter((mark, index) => marks.findIndex((other) => other.printed === mark.printed) === index);
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

const isPrincipalName = (name: string): boolean =>
  /^(?:princip|prinzip|princ\.|praest|pr[aä]st|montre|open diap|flautado|diapason|principaal)/i.test(name);

/** The length the interval names of a division count from: `null` when none is printed, `unsettled` when its principal prints none. */
function baseOf(stops: readonly ReadStop[], names: KnownNames, pedal: boolean): Foot | "unsettled" | null {
  const principals = stops.filter(
    (stop) => isPrincipalName(stop.name) && (stop.ranks ?? 1) <= 1 && stop.half !== "treble",
  );
  const printed = principals.flatMap((stop) => (stop.pitch && isUnison(stop.pitch) ? [stop.pitch] : []));
  const eight = printed.find((foot) => foot === footOf(8));
  if (eight && !pedal) return eight;
  const [first] = printed;
  if (first) return first;
  const [main] = principals;
  if (!main) return null;
  const known = names.entry(main.name, { pedal, pitch: null, ranks: null, base: null });
  return known?.pitch ?? "unsettled";
}

const OVER_ANOTHER = /^(?:ottava|octave|oktave|octava) (?:d[iue]l?|dei|delle|degli) (.+)$/i;

/** Fills in what custom settles, and asks about what it does not. */
function fillPitches(stops: readonly ReadStop[], setting: Setting): ReadStop[] {
  const { names, questions, division } = setting;
  const pedal = division.kind === "pedal";
  const base = baseOf(stops, names, pedal);
  let askedForBase = false;
  return stops.map((stop) => {
    if (stop.pitch !== null || stop.printed !== null) return stop;
    if (stop.composition !== null || (stop.ranks ?? 1) > 1 || names.isCompound(stop.name, pedal)) return stop;
    const place = { pedal, pitch: null, ranks: null, base: base === "unsettled" ? null : base };
    const known = names.entry(stop.name, place);
    const entry = known?.entry;
    if (
      entry &&
      (entry.family === "percussion" ||
        entry.family === "effect" ||
        entry.family === "mixture" ||
        entry.family === "cornet")
    )
      return stop;
    const over = OVER_ANOTHER.exec(stop.name);
    const lower = over && stops.find((other) => foldedSpelling(other.name) === foldedSpelling(over[1] as string));
    if (lower?.pitch) return { ...stop, pitch: stretch(lower.pitch, 1, 2) };
    if (over && !lower) return stop;
    if (entry && base === "unsettled" && (entry.interval !== null || isPrincipalName(stop.name))) {
      if (!askedForBase) {
        askedForBase = true;
        const main = stops.find((other) => isPrincipalName(other.name)) ?? stop;
        questions.ask(
          main.line,
          `No pitch is printed for ${main.name}, from which the other names count; is it 8' or 16'?`,
          main.name,
          ["8", "16"],
        );
      }
      return stop;
    }
    const counts = base === "unsettled" && entry?.family === "mutation";
    const pitch = known && !counts ? customaryPitch(stop, known.entry, known.pitch, setting) : null;
    if (pitch) return { ...stop, pitch };
    const usual = entry ? (pedal ? entry.usualPitches.pedal : entry.usualPitches.manual) : [];
    questions.ask(
      stop.line,
      `No pitch is printed for ${stop.name}; what is it?`,
      stop.name,
      usual.slice(0, 4).map((foot) => pitchName(foot)),
    );
    return stop;
  });
}

/**
 * The pitch that any organist fills in. Kept back where custom is not firm enough: a 16' reed on a manual, an undulating
 * rank of the whole compass in a list that prints the pitches of its other stops. Where a list prints hardly any, halves of reeds and of the
 * Italian flute are 8'. Common practice.
 */
function customaryPitch(stop: ReadStop, entry: GlossaryEntry, implied: Foot | null, setting: Setting): Foot | null {
  const { mostlyPrinted, names } = setting;
  const pedal = setting.division.kind === "pedal";
  if (implied) {
    if (!pedal && implied.over / implied.under >= 16 && entry.family.startsWith("reed")) return null;
    return entry.family === "celeste" && !entry.treble && mostlyPrinted ? null : implied;
  }
  const isHalf = stop.half === "bass" || stop.half === "treble";
  if (mostlyPrinted || !isHalf || pedal) return null;
  const place = { pedal, pitch: null, ranks: null, base: null };
  const meant = names.entries(stop.name, place);
  const isEight = ({ family, usualPitches }: GlossaryEntry): boolean => {
    const first = usualPitches.manual[0] === footOf(8);
    // A 16' reed of that name is a whole stop; its bass half alone is the 8' under a treble of another name.
    return family.startsWith("reed")
      ? first || (stop.half === "bass" && usualPitches.manual.includes(footOf(8)))
      : family === "flute-open" && first;
  };
  if (meant.some(isEight)) return footOf(8);
  // Some names are those of halves only (`Bajoncillo`), and of one length.
  const [only, ...others] = meant;
  const [length, ...more] = only?.usualPitches.manual ?? [];
  return only?.family.startsWith("reed") && others.length === 0 && more.length === 0 && length ? length : null;
}

/** Names that the glossary does not know are kept as printed and asked about. */
function askNames(stops: readonly ReadStop[], { names, questions }: Setting): void {
  for (const stop of stops) {
    if (names.knows(stop.name)) continue;
    const near = names.nearest(stop.name);
    const sentence = near.length > 0 ? `is it ${near.join(" or ")}, or a name of its own?` : "what kind of stop is it?";
    questions.ask(stop.line, `${stop.name} is not a stop name that is known here; ${sentence}`, stop.name, near);
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
