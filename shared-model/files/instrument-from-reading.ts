import type { Foot } from "../pitch/foot.ts";
import { keyText, LOWEST_KEY } from "../pitch/key.ts";
import { pitchName } from "../pitch/reading.ts";
import { understandName } from "../stoplist/glossary/glossary.ts";
import type { Kind } from "../stoplist/kind.ts";
import { stopKey } from "../stoplist/reading/answers.ts";
import { sharedRows } from "../stoplist/reading/lending.ts";
import type { Question } from "../stoplist/reading/question.ts";
import type { ReadDivision, Reading, ReadStop } from "../stoplist/reading/reading.ts";
import { couplerName } from "./coupler-text.ts";
import { versionLine } from "./file-kind.ts";
import { folded } from "./nearest.ts";
import { pipesAbove } from "./pitch-text.ts";
import { shortForm } from "./short-stop.ts";
import { unlike } from "./unlike.ts";
import { Names } from "./voice.ts";
import { behindKey, comment, onLine, onOneLine, type YamlValue } from "./yaml-words.ts";

type Half = "bass" | "treble" | null;

/** Longest name that the instrument file takes. */
const NAME_LIMIT = 120;

const nameOf = (text: string): string => onOneLine(text).slice(0, NAME_LIMIT).trim();

/** Names for the divisions, each its own: a list may leave the only one without a heading, or use one heading twice. */
function divisionNames(divisions: readonly ReadDivision[]): readonly string[] {
  const taken = new Set<string>();
  return divisions.map((division) => {
    const name = nameOf(division.name ?? "") || (division.kind === "pedal" ? "Pedal" : "Manual");
    const unique = unlike(name, (one) => taken.has(folded(one)));
    taken.add(folded(unique));
    return unique;
  });
}

/** Comments for the questions of one line, taken off the list so that each is written once. */
class OpenQuestions {
  readonly #left: Question[];

  constructor(questions: readonly Question[]) {
    this.#left = [...questions];
  }

  /** Those of the line; where it prints several stops, those about this one, and the rest with the last. */
  take(line: number, name: string, isLastOfLine: boolean): readonly string[] {
    const mine = this.#left.filter(
      (question) => question.line === line && (isLastOfLine || folded(question.about).includes(folded(name))),
    );
    for (const question of mine) this.#left.splice(this.#left.indexOf(question), 1);
    return mine.map(questionComment);
  }

  rest(): readonly string[] {
    return this.#left.map(questionComment);
  }
}

const questionComment = ({ line, text, choices }: Question): string =>
  comment(`line ${line}: ${text}${choices.length > 0 ? ` (${choices.join(" / ")})` : ""}`);

/**
 * What the file says of pipes that several stops share: one stop is the same as another where their pitches agree; where they
 * do not, all draw one row, which is long enough for each of them over its keyboard.
 */
class SharedPipes {
  readonly #keys = new Map<ReadStop, Readonly<Record<string, string>>>();
  readonly lines: readonly string[];

  constructor(reading: Reading, names: readonly string[]) {
    const ids = new Set<string>();
    const lines: string[] = [];
    for (const { owner, borrowers } of sharedRows(reading.divisions)) {
      const all = [owner, ...borrowers];
      if (borrowers.every(({ stop }) => stop.pitch === owner.stop.pitch)) {
        const division = names[reading.divisions.indexOf(owner.division)] as string;
        const said = `${division}/${nameOf(owner.stop.name)} ${pitchName(owner.stop.pitch as Foot)}`;
        for (const { stop } of borrowers) this.#keys.set(stop, { "same-as": said });
        continue;
      }
      const pitches = all.map(({ stop }) => stop.pitch as Foot);
      const longest = pitches.reduce((long, pitch) => (pipesAbove(long, pitch) < 0 ? pitch : long));
      const pipes = Math.max(
        ...all.map(({ stop, division: { kind, low, high } }) => {
          const keys = (high ?? (kind === "pedal" ? HIGHEST.pedal : HIGHEST.manual)) - (low ?? LOWEST_KEY) + 1;
          return pipesAbove(longest, stop.pitch as Foot) + keys;
        }),
      );
      const slug =
        folded(owner.stop.name)
          .replace(/[^a-z0-9]+/g, "-")
          .replace(/^-|-$/g, "") || "row";
      const id = unlike(
        slug,
        (one) => ids.has(one),
        (name, count) => `${name}-${count}`,
      );
      ids.add(id);
      for (const { stop } of all) this.#keys.set(stop, { rank: id });
      lines.push(`  - ${onLine({ id, longest: pitchValue(pitchName(longest)), pipes })}`);
    }
    this.lines = lines;
  }

  keys(stop: ReadStop): Readonly<Record<string, string>> {
    return this.#keys.get(stop) ?? {};
  }

  has(stop: ReadStop): boolean {
    return this.#keys.has(stop);
  }
}

/** Writes one division's stops. */
class StopWriter {
  readonly #names = new Names();
  readonly #rows: SharedPipes;
  readonly #questions: OpenQuestions;
  readonly #kinds: ReadonlyMap<string, readonly Kind[]>;

  constructor(rows: SharedPipes, questions: OpenQuestions, kinds: ReadonlyMap<string, readonly Kind[]>) {
    this.#kinds = kinds;
    this.#rows = rows;
    this.#questions = questions;
  }

  lines(division: ReadDivision): readonly string[] {
    return division.stops.flatMap((stop, index) => {
      const isLast = division.stops[index + 1]?.line !== stop.line;
      const questions = this.#questions.take(stop.line, stop.name, isLast);
      const halves: readonly Half[] = stop.half === "both" ? ["bass", "treble"] : [stop.half];
      return halves.flatMap((half, at) => this.#stop(stop, half, division, at === 0 ? questions : []));
    });
  }

  #stop(stop: ReadStop, half: Half, division: ReadDivision, questions: readonly string[]): readonly string[] {
    const kind = this.#kinds.get(stopKey(stop));
    const doubt = kind === undefined ? this.#kindComment(stop, division) : null;
    const more: Readonly<Record<string, YamlValue | undefined>> = {
      ...this.#more(stop, division),
      kind: kind && (kind.length === 1 ? kind[0] : kind),
    };
    const said = { name: nameOf(stop.name), ranks: stop.ranks, pitch: stop.pitch, half };
    const short = shortForm(said, division.kind === "pedal", this.#names);
    const borrowed =
      stop.borrowed !== null && !this.#rows.has(stop)
        ? [
            comment(
              `line ${stop.line}: ${stop.borrowed.replace(/\.$/, "")}. If it has no pipes of its own, write same-as: Division/Stop.`,
            ),
          ]
        : [];
    const notes = [...questions, ...borrowed];
    if (short !== null && doubt === null && Object.values(more).every((value) => value === undefined)) {
      return [...notes, `- ${behindKey(short)}`];
    }
    const keys = { ...this.#plainKeys(stop, half), ...more };
    const written = Object.entries(keys)
      .filter(([, value]) => value !== undefined)
      .map(([key, value]) => `${key}: ${behindKey(value as YamlValue)}`);
    return [
      `- ${written[0]}`,
      ...[...notes, ...written.slice(1), ...(doubt === null ? [] : [doubt])].map((line) => `  ${line}`),
    ];
  }

  #plainKeys(stop: ReadStop, half: Half): Readonly<Record<string, YamlValue | undefined>> {
    return {
      name: nameOf(stop.name) || "?",
      ranks: stop.ranks !== null && stop.composition === null ? stop.ranks : undefined,
      pitch: stop.pitch ? pitchValue(pitchName(stop.pitch)) : undefined,
      half: half ?? undefined,
    };
  }

  #more(stop: ReadStop, division: ReadDivision): Readonly<Record<string, YamlValue | undefined>> {
    const remark = stop.remark === null ? "" : onOneLine(stop.remark);
    const first = keyText(division.low ?? LOWEST_KEY);
    return {
      composition:
        stop.composition && stop.composition.length > 0
          ? { [first]: stop.composition.map((pitch) => pitchValue(pitchName(pitch))) }
          : undefined,
      from: stop.from === null ? undefined : keyText(stop.from),
      ...this.#rows.keys(stop),
      off: stop.prepared ? "prepared for, not built" : undefined,
      note: remark === "" ? undefined : remark.slice(0, 2000),
    };
  }

  /** A line to be completed by a person, for a name whose meaning is not known. */
  #kindComment(stop: ReadStop, division: ReadDivision): string | null {
    if (this.#rows.keys(stop)["same-as"] !== undefined) return null;
    const pedal = division.kind === "pedal";
    const understanding = understandName(nameOf(stop.name), { pedal, pitch: stop.pitch, ranks: stop.ranks });
    if (understanding.sure) return null;
    const kinds = [...new Set(understanding.choices.flatMap((choice) => choice.kinds))].slice(0, 6);
    const [first = "stopped-flute", ...others] = kinds;
    const like = understanding.choices
      .map((choice) => choice.name)
      .slice(0, 3)
      .join(", ");
    const choices = others.length > 0 ? `or ${others.join(", ")}` : "or what else it is";
    return comment(`kind: ${first}  # ${choices}${like === "" ? "" : `; names like it: ${like}`}`);
  }
}

/** Where keyboards end of which a list does not say it. Common practice. */
const HIGHEST = { manual: 91, pedal: 65 } as const;

const pitchValue = (name: string): YamlValue => (/^\d+$/.test(name) ? Number(name) : name);

function divisionLines(division: ReadDivision, name: string, writer: StopWriter): readonly string[] {
  const { kind, low, high, missing, keyboard, enclosed } = division;
  const [first, last] = [keyText(low ?? LOWEST_KEY), keyText(high ?? HIGHEST[kind])];
  const range =
    missing.length > 0 ? onLine({ low: first, high: last, missing: missing.map(keyText) }) : `${first}-${last}`;
  const compass = low === null && high === null ? null : range;
  const stops = writer.lines(division);
  return [
    `- name: ${behindKey(name)}`,
    `  kind: ${kind}`,
    ...(keyboard === null || kind === "pedal" ? [] : [`  keyboard: ${keyboard}`]),
    ...(compass === null ? [] : [`  compass: ${compass}`]),
    ...(enclosed ? ["  enclosed: true"] : []),
    ...(stops.length > 0 ? ["  stops:", ...stops.map((line) => `    ${line}`)] : ["  stops: []"]),
  ];
}

/** Couplers by the names that the file gives the divisions; what does nothing or stands twice is left out. */
function couplerLines(reading: Reading, named: (printed: string) => string): readonly string[] {
  const couplers = reading.couplers
    .map(({ from, to, pitch }) => ({ from: named(from), to: named(to), pitch }))
    .filter(({ from, to, pitch }) => from !== to || pitch !== 8);
  return [...new Set(couplers.map(couplerName))].map((name) => `  - ${behindKey(name)}`);
}

/**
 * The text of an instrument file for a printed list as it was read. Questions that the list leaves open stand as comments at
 * their stops, with the line of the list; a name that is not known gets a `kind:` line to be uncommented and set right.
 * Once these are answered the file is read without an error.
 *
 * @param kinds what a person said of stops whose names do not tell, as `answeredReading` gives it.
 */
export function instrumentFileFromReading(
  reading: Reading,
  kinds: ReadonlyMap<string, readonly Kind[]> = new Map(),
): string {
  const names = divisionNames(reading.divisions);
  const questions = new OpenQuestions(reading.questions);
  const rows = new SharedPipes(reading, names);
  const writer = new StopWriter(rows, questions, kinds);
  const named = (printed: string): string =>
    names[
      reading.divisions.findIndex((division) => division.name !== null && folded(division.name) === folded(printed))
    ] ?? printed;
  const divisions = reading.divisions.flatMap((division, index) =>
    divisionLines(division, names[index] as string, writer),
  );
  const couplers = couplerLines(reading, named);
  const tremulants = [...new Set(reading.tremulants.map((name) => (name === "all" ? name : named(name))))];
  const name = reading.name === null ? "" : onOneLine(reading.name).slice(0, 200);
  const rest = questions.rest();
  return [
    `registrant: ${versionLine("instrument")}`,
    ...(name === ""
      ? [comment("The list does not name the organ; write its name here."), "name: Organ"]
      : [`name: ${behindKey(name)}`]),
    ...(reading.builder === null ? [] : [`builder: ${behindKey(onOneLine(reading.builder).slice(0, 200))}`]),
    ...(reading.year === null ? [] : [`year: ${reading.year}`]),
    ...(rest.length > 0 ? [comment("Open questions of the list:"), ...rest] : []),
    ...(divisions.length > 0 ? ["divisions:", ...divisions.map((line) => `  ${line}`)] : ["divisions: []"]),
    ...(rows.lines.length > 0 ? ["ranks:", ...rows.lines] : []),
    ...(couplers.length > 0 ? ["couplers:", ...couplers] : []),
    ...(reading.unisonOff.length > 0 ? [`unison-off: ${onLine(reading.unisonOff.map(named))}`] : []),
    ...(tremulants.length > 0 ? [`tremulants: ${onLine(tremulants)}`] : []),
    "",
  ].join("\n");
}
