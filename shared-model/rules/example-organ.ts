import { type Foot, footOf, stretch } from "../pitch/foot.ts";
import { type Key, keyFromText } from "../pitch/key.ts";
import { pitchName, readPitch } from "../pitch/reading.ts";
import { understandName } from "../stoplist/glossary/glossary.ts";
import type { Coupler, Division, Half, Instrument, Rank, RankUse, Stop } from "../stoplist/instrument.ts";
import type { Kind } from "../stoplist/kind.ts";

/**
 * Organs of examples, in one line: divisions parted by ` | `, each `Name: stops`, undrawn stops in round brackets.
 *
 * - after a division's name: `[box]` encloses it;
 * - a stop is its name and pitch (`Nasat 2 2/3`), or name and ranks (`Mixtur IV`, `Mixtur IV 1 1/3`), then any of:
 *   `bass` or `treble` (a half; halves meet at C4), `from C4`, `to D5`, `off`, `{gedackt}` (a rank that other stops
 *   with the same mark draw too);
 * - `live room` or `dry room` before the divisions.
 *
 * Pedals are known by their name; kinds and strengths come from the glossary; compasses are C2 to G6 and C2 to F4.
 */
export interface ExampleOrgan {
  readonly instrument: Instrument;
  /** Ids of the stops outside brackets. */
  readonly drawn: readonly string[];
}

/** First key of the treble halves. */
const DIVIDING_KEY: Key = 60;
const NOMINAL_KEY: Key = 36;
const isPedalName = (name: string): boolean => /^p[ée]d/iu.test(name);

interface WrittenStop {
  readonly name: string;
  readonly pitch: Foot | null;
  readonly ranks: number | null;
  readonly half: Half;
  readonly from: Key | null;
  readonly to: Key | null;
  readonly off: boolean;
  readonly rank: string | null;
  readonly isDrawn: boolean;
}

const ROMAN: Readonly<Record<string, number>> = { I: 1, II: 2, III: 3, IV: 4, V: 5, VI: 6, VII: 7, VIII: 8 };

function keyOf(text: string | undefined, stop: string): Key | null {
  if (text === undefined) return null;
  const key = keyFromText(text);
  if (key === null) throw new RangeError(`"${text}" in "${stop}" is no key; write it like C4 or F#3.`);
  return key;
}

/** Reads one stop; throws in words when it cannot be read. */
function stopFrom(text: string, isDrawn: boolean): WrittenStop {
  let rest = text.trim();
  const take = (pattern: RegExp): string | undefined => {
    const match = pattern.exec(rest);
    if (match) rest = rest.replace(match[0], "").trim();
    return match?.[1];
  };
  const rank = take(/\s*\{([^}]+)\}/) ?? null;
  const off = take(/\s+(off)$/) !== undefined;
  const to = keyOf(take(/\s+to ([A-G][#b]?\d)/), text);
  const from = keyOf(take(/\s+from ([A-G][#b]?\d)/), text);
  const half = (take(/\s+(bass|treble)$/) ?? null) as Half;
  const printed = take(/\s+(\d+(?: \d+\/\d+)?|\d+\/\d+)$/);
  const ranks = ROMAN[take(/\s+([IV]+)$/) ?? ""] ?? null;
  const pitch = printed === undefined ? null : readPitch(printed).foot;
  if (rest === "" || (pitch === null && ranks === null)) {
    throw new RangeError(`"${text}" is no stop with a pitch or ranks, such as Gedackt 8 or Mixtur IV.`);
  }
  return { name: rest, pitch, ranks, half, from, to, off, rank, isDrawn };
}

/** Parts at commas and brackets, telling the drawn from the undrawn. */
function stopsFrom(text: string): readonly WrittenStop[] {
  const stops: WrittenStop[] = [];
  for (const [index, piece] of text.split(/[()]/).entries()) {
    for (const one of piece.split(",")) if (one.trim() !== "") stops.push(stopFrom(one, index % 2 === 0));
  }
  return stops;
}

const OCTAVES_AND_FIFTHS = [
  footOf(4),
  footOf(8, 3),
  footOf(2),
  footOf(4, 3),
  footOf(1),
  footOf(2, 3),
  footOf(1, 2),
  footOf(1, 3),
];
const COMPOUNDS: readonly Kind[] = ["mixture", "cymbal", "rauschpfeife", "sesquialtera", "tertian", "cornet"];
const CORNET = [footOf(8), footOf(4), footOf(8, 3), footOf(2), footOf(8, 5)];

/** What a compound of an example sounds: the usual ranks of its kind, unbroken. Common practice. */
function ranksOf(kinds: readonly Kind[], pitch: Foot | null, ranks: number | null, pedal: boolean): readonly Foot[] {
  if (kinds.includes("cornet")) return CORNET.slice(-Math.min(5, ranks ?? 5));
  if (kinds.includes("sesquialtera")) return [footOf(8, 3), footOf(8, 5)];
  if (kinds.includes("tertian")) return [footOf(8, 5), footOf(4, 3)];
  const usual = kinds.includes("cymbal") ? footOf(1, 2) : kinds.includes("rauschpfeife") ? footOf(8, 3) : footOf(4, 3);
  const lowest = pitch ?? (pedal ? stretch(usual, 2) : usual);
  const start = OCTAVES_AND_FIFTHS.indexOf(lowest);
  if (start < 0) return [lowest];
  return OCTAVES_AND_FIFTHS.slice(start, start + (ranks ?? 3));
}

/** Whole octaves by which a rank must begin before its nominal pipe to reach down to a key under C2; 0 from C2 up. */
const deeper = (from: Key): number => Math.max(0, Math.ceil((NOMINAL_KEY - from) / 12));

function rankFor(id: string, pitch: Foot, from: Key, to: Key): Rank {
  const octaves = deeper(from);
  return { id, longest: stretch(pitch, 2 ** octaves), pipes: to - NOMINAL_KEY + 1 + 12 * octaves };
}

/** One rank that serves several stops, from the deepest of them to the top of the highest. */
function sharedRank(id: string, uses: readonly RankUse[]): Rank {
  const longest = uses.reduce(
    (long, use) => (use.pitch.over * long.under > long.over * use.pitch.under ? use.pitch : long),
    footOf(1, 8),
  );
  return { id, longest, pipes: 97 };
}

interface BuiltStop {
  readonly stop: Stop;
  readonly ranks: readonly Rank[];
}

function build(written: WrittenStop, division: string, pedal: boolean): BuiltStop {
  const { name, pitch, half } = written;
  const understood = understandName(name, { pedal, pitch, ranks: written.ranks });
  if (!understood.sure) {
    const near = understood.choices.map((each) => each.name).join(", ");
    throw new RangeError(`"${name}" is ${understood.why} to the glossary${near ? `; near to it: ${near}` : ""}.`);
  }
  const { kinds, family, strength } = understood;
  const [lowest, highest] = pedal ? [36, 65] : [36, 91];
  const from = written.from ?? (half === "treble" ? DIVIDING_KEY : lowest);
  const to = written.to ?? (half === "bass" ? DIVIDING_KEY - 1 : highest);
  const compound = kinds.some((kind) => COMPOUNDS.includes(kind));
  const pitchText = pitch ? ` ${pitchName(pitch)}` : "";
  const ranksText = written.ranks ? ` ${Object.keys(ROMAN)[written.ranks - 1]}` : "";
  const id = `${division}/${name}${ranksText}${pitchText}${half ? ` ${half}` : ""}`;
  const pitches = compound
    ? ranksOf(kinds, pitch, written.ranks, pedal)
    : Array.from({ length: written.ranks ?? 1 }, () => pitch ?? footOf(8));
  const uses = pitches.map((each, index) => ({
    rank: written.rank ?? (index === 0 ? id : `${id} (${index + 1})`),
    pitch: each,
    from,
    to,
  }));
  return {
    stop: {
      id,
      division,
      name: `${name}${ranksText}`,
      pitch: compound && pitch === null ? null : (pitch ?? footOf(8)),
      half,
      kinds,
      family,
      strength,
      brightness: 3,
      byEar: { strength: false, brightness: false },
      ranks: pitches.length,
      uses,
      from,
      to,
      tierce: compound ? pitches.some((each) => each.under === 5) : understood.tierce,
      off: written.off,
      note: null,
    },
    ranks: written.rank ? [] : uses.map((use) => rankFor(use.rank, use.pitch, from, to)),
  };
}

/** A coupler by its name: `Swell to Great`, `Swell to Great 4`. */
function couplerFrom(text: string): Coupler {
  const match = /^(.+?) to (.+?)(?: (16|4))?$/.exec(text);
  if (!match) throw new RangeError(`"${text}" is no coupler; write it like "Swell to Great" or "Swell to Great 4".`);
  return {
    name: text,
    from: match[1] as string,
    to: match[2] as string,
    pitch: match[3] === "4" ? 4 : match[3] === "16" ? 16 : 8,
    through: false,
    fixed: false,
  };
}

/**
 * Reads the organ of an example, with these couplers and tremulants.
 *
 * @throws RangeError in words when something is not as the notation has it.
 */
export function organFrom(text: string, couplers: readonly string[], tremulants: readonly string[]): ExampleOrgan {
  const pieces = text.split(" | ");
  const room = /^(live|dry) room$/.exec(pieces[0] ?? "")?.[1] as "live" | "dry" | undefined;
  const drawn: string[] = [];
  const ranks: Rank[] = [];
  const shared = new Map<string, RankUse[]>();
  let manuals = 0;
  const divisions = (room ? pieces.slice(1) : pieces).map((piece): Division => {
    const match = /^([^:[]+?)( \[box\])?: (.+)$/.exec(piece.trim());
    if (!match)
      throw new RangeError(`"${piece}" is no division; write it like "Swell [box]: Oboe 8, Flute 4 (Viola 8)".`);
    const name = match[1] as string;
    const pedal = isPedalName(name);
    if (!pedal) manuals += 1;
    const stops = stopsFrom(match[3] as string).map((written) => {
      const built = build(written, name, pedal);
      ranks.push(...built.ranks);
      if (written.rank) shared.set(written.rank, [...(shared.get(written.rank) ?? []), ...built.stop.uses]);
      if (written.isDrawn) drawn.push(built.stop.id);
      return built.stop;
    });
    return {
      name,
      kind: pedal ? "pedal" : "manual",
      keyboard: pedal ? null : manuals,
      compass: { low: 36, high: pedal ? 65 : 91, missing: [] },
      box: match[2] ? name : null,
      stops,
    };
  });
  for (const [id, uses] of shared) ranks.push(sharedRank(id, uses));
  return {
    drawn,
    instrument: {
      name: "Example",
      place: null,
      builder: null,
      year: null,
      history: null,
      a4: 440,
      temperament: null,
      room: room ?? "medium",
      roomByEar: room !== undefined,
      divisions,
      ranks,
      couplers: couplers.map(couplerFrom),
      tremulants,
      unisonOff: [],
      aids: { generals: 0, divisionals: {}, levels: 0, crescendoPedal: false, ventils: [] },
      toys: [],
    },
  };
}
