import { type Foot, footOf, stretch } from "../../pitch/foot.ts";
import type { GlossaryEntry } from "../glossary/glossary.ts";
import { foldedSpelling } from "../glossary/spelling.ts";
import type { KnownNames } from "./known-names.ts";
import type { ReadStop } from "./reading.ts";
import { isUnison, printed, type Setting } from "./sounding-pitch.ts";

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

/** Fills in what custom settles, and asks about what it does not. */
export function fillPitches(stops: readonly ReadStop[], setting: Setting): ReadStop[] {
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
        questions.ask({
          kind: "pitch",
          line: main.line,
          text: `No pitch is printed for ${main.name}, from which the other names count, so theirs are left open; is it 8' or 16'?`,
          about: main.name,
          stops: [main.name],
          choices: ["8'", "16'"],
        });
      }
      return stop;
    }
    const counts = base === "unsettled" && entry?.family === "mutation";
    const pitch = known && !counts ? customaryPitch(stop, known.entry, known.pitch, setting) : null;
    if (pitch) return { ...stop, pitch };
    const usual = entry ? (pedal ? entry.usualPitches.pedal : entry.usualPitches.manual) : [];
    const [only, ...rest] = usual;
    questions.ask({
      kind: "pitch",
      line: stop.line,
      text: `No pitch is printed for ${stop.name}, so it is left open; what is it?`,
      about: stop.name,
      stops: [stop.name],
      choices: (only && rest.length === 0 ? [only, stretch(only, 2, 1), stretch(only, 1, 2)] : usual.slice(0, 4)).map(
        printed,
      ),
    });
    return stop;
  });
}
