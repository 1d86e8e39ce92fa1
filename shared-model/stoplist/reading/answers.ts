import { type Foot, footFromText } from "../../pitch/foot.ts";
import { understandName } from "../glossary/glossary.ts";
import type { Kind } from "../kind.ts";
import type { Question, ReadDivision, Reading, ReadStop } from "./reading.ts";

/** What may be answered to any question about a stop: it is not in the organ's file then. */
export const LEAVE_OUT = "leave it out";
/** What may be answered where the reader has taken something for granted. */
const AS_READ = "as it was read";

/** Kinds in words, for a stop whose name is not known: the answers to "what kind of stop is it?". */
const KIND_ANSWERS: readonly (readonly [words: string, kind: Kind])[] = [
  ["a principal", "principal"],
  ["a stopped flute", "stopped-flute"],
  ["an open flute", "open-flute"],
  ["a string", "string"],
  ["a mutation", "nasard"],
  ["a mixture", "mixture"],
  ["a trumpet", "trumpet"],
  ["a soft reed", "oboe"],
  ["a short reed", "regal"],
  ["an effect without pitch", "effect"],
];

/** Answers so far, by {@link questionKey}. */
export type Answers = Readonly<Record<string, string>>;

/** A reading with a person's answers in it. */
export interface AnsweredReading {
  readonly reading: Reading;
  /** By line and name: what a stop is whose name does not say it. */
  readonly kinds: ReadonlyMap<string, readonly Kind[]>;
  /** Every question with its answers to choose from, answered or not, by line. */
  readonly questions: readonly Question[];
}

/** Stands for a question of one list. */
export const questionKey = ({ line, text }: Pick<Question, "line" | "text">): string => `${line} ${text}`;

/** Stands for a stop of one list, as {@link AnsweredReading.kinds} has it. */
export const stopKey = ({ line, name }: Pick<ReadStop, "line" | "name">): string => `${line} ${name}`;

const withoutFeetMark = (choice: string): string => choice.replace(/['′]$/u, "");

const pitchOf = (choice: string): Foot | null => {
  const [, whole = "0", over, under] = /^(\d+)?(?:\s*(\d+)\/(\d+))?$/.exec(withoutFeetMark(choice)) ?? [];
  if (over === undefined) return footFromText(withoutFeetMark(choice));
  return footFromText(`${Number(whole) * Number(under) + Number(over)}/${under}`);
};

const ranksOf = (choice: string): number | null => {
  const [, count] = /^(\d+) ranks$/.exec(choice) ?? [];
  return count === undefined ? null : Number(count);
};

/** The stop that a question is about; `null` when it is about something else. */
function stopAbout(reading: Reading, { line, about, text }: Question): ReadStop | null {
  const here = reading.divisions.flatMap((division) => division.stops.filter((stop) => stop.line === line));
  const [only] = here;
  if (here.length === 1 && only) return only;
  return (
    here.find((stop) => stop.name === about) ??
    here.find((stop) => stop.printed === about && text.includes(stop.name)) ??
    here.find((stop) => text.includes(stop.name)) ??
    null
  );
}

const withDivisions = (reading: Reading, change: (division: ReadDivision) => ReadDivision): Reading => ({
  ...reading,
  divisions: reading.divisions.map(change),
});

const withStop = (reading: Reading, old: ReadStop, stop: ReadStop | null): Reading =>
  withDivisions(reading, (division) =>
    division.stops.includes(old)
      ? { ...division, stops: division.stops.flatMap((each) => (each === old ? (stop ? [stop] : []) : [each])) }
      : division,
  );

/** Questions about a coupler's direction have two answers of the form `X to Y`. */
function couplerOf(choice: string, reading: Reading): Reading["couplers"][number] | null {
  const names = reading.divisions.flatMap((division) => (division.name === null ? [] : [division.name]));
  for (const from of names) {
    const to = choice.startsWith(`${from} to `) ? choice.slice(from.length + 4) : null;
    if (to !== null && names.includes(to)) return { from, to, pitch: 8 };
  }
  return null;
}

function withCoupler(reading: Reading, coupler: Reading["couplers"][number]): Reading {
  const { from, to } = coupler;
  const turned = reading.couplers.findIndex((each) => each.from === to && each.to === from);
  if (reading.couplers.some((each) => each.from === from && each.to === to)) return reading;
  const couplers =
    turned < 0
      ? [...reading.couplers, coupler]
      : reading.couplers.map((each, at) => (at === turned ? { ...each, from, to } : each));
  return { ...reading, couplers };
}

/** A division's stops put at the end of the one before it. */
function joined(reading: Reading, division: ReadDivision): Reading {
  const at = reading.divisions.indexOf(division);
  const before = reading.divisions[at - 1];
  if (!before) return reading;
  const whole = { ...before, stops: [...before.stops, ...division.stops] };
  return {
    ...reading,
    divisions: reading.divisions.flatMap((each) => (each === before ? [whole] : each === division ? [] : [each])),
  };
}

/** A division cut in two before a line: as two keyboards, or as the halves of one. */
function cut(reading: Reading, line: number, as: "halves" | "manuals"): Reading {
  return {
    ...reading,
    divisions: reading.divisions.flatMap((division) => {
      const [first, second] = [
        division.stops.filter((stop) => stop.line < line),
        division.stops.filter((stop) => stop.line >= line),
      ];
      if (first.length === 0 || second.length === 0) return [division];
      if (as === "manuals") {
        return [
          { ...division, stops: first },
          { ...division, name: null, keyboard: null, stops: second },
        ];
      }
      const half = (stops: readonly ReadStop[], which: "bass" | "treble") =>
        stops.map((stop) => ({ ...stop, half: stop.half ?? which }));
      return [{ ...division, stops: [...half(first, "bass"), ...half(second, "treble")] }];
    }),
  };
}

/** The pedal made of stops that a list prints among others. */
function withPedal(reading: Reading, text: string): Reading {
  const isMeant = (stop: ReadStop): boolean => text.split(":")[0]?.includes(stop.name) === true;
  const meant = reading.divisions.flatMap((division) => division.stops.filter(isMeant));
  if (meant.length === 0) return reading;
  const rest = withDivisions(reading, (division) => ({
    ...division,
    stops: division.stops.filter((stop) => !isMeant(stop)),
  }));
  const pedal: ReadDivision = {
    name: "Pedal",
    kind: "pedal",
    keyboard: null,
    low: null,
    high: null,
    enclosed: false,
    stops: meant,
  };
  return { ...rest, divisions: [...rest.divisions.filter((division) => division.stops.length > 0), pedal] };
}

/** What a tremulant shakes that belongs to no division. */
const WHOLE_ORGAN = "the whole organ";

const isAboutCoupler = ({ text }: Question): boolean => text.startsWith("The coupler ");
/** Its answers name the keyboard that a coupler brings to the pedal. */
const asksForPedal = (question: Question): boolean =>
  isAboutCoupler(question) && / brings to the pedal/.test(question.text);

/** The one coupler to the pedal, from another keyboard. */
function withPedalCoupler(reading: Reading, from: string): Reading {
  const pedal = reading.divisions.find((division) => division.kind === "pedal")?.name ?? null;
  if (pedal === null || reading.couplers.some((each) => each.to === pedal && each.from === from)) return reading;
  const old = reading.couplers.find((each) => each.to === pedal);
  return {
    ...reading,
    couplers: old
      ? reading.couplers.map((each) => (each === old ? { ...each, from } : each))
      : [...reading.couplers, { from, to: pedal, pitch: 8 }],
  };
}

/** An answer about headings, groups and what stands elsewhere; `null` when the answer is none of these. */
function answeredPlace(reading: Reading, question: Question, choice: string): Reading | null {
  const { about, line, text } = question;
  const own = reading.divisions.find((division) => division.name === about);
  if (choice === "part of the division before") return own ? joined(reading, own) : reading;
  if (choice === "the pedal" || choice === "a manual division") {
    const kind = choice === "the pedal" ? "pedal" : "manual";
    return withDivisions(reading, (division) =>
      division === own ? { ...division, kind, keyboard: kind === "pedal" ? null : division.keyboard } : division,
    );
  }
  if (choice === "bass half and treble half") return cut(reading, line, "halves");
  if (choice === "two manuals") return cut(reading, line, "manuals");
  if (choice === "a pedal division") return withPedal(reading, text);
  const coupler = couplerOf(choice, reading);
  if (coupler) return withCoupler(reading, coupler);
  if (choice === WHOLE_ORGAN) return reading;
  const division = reading.divisions.find((each) => each.name === choice);
  if (!division) return null;
  if (question.choices.includes(WHOLE_ORGAN)) {
    return { ...reading, tremulants: reading.tremulants.map((name) => (name === "all" ? choice : name)) };
  }
  if (isAboutCoupler(question)) return withPedalCoupler(reading, choice);
  const stray = stopAbout(reading, question);
  if (!stray) return null;
  const rest = withStop(reading, stray, null);
  return withDivisions(rest, (each) => (each.name === choice ? { ...each, stops: [...each.stops, stray] } : each));
}

/** Whether a question asks what a stop is whose name is not known. */
const asksKind = ({ text }: Question): boolean => / is not a stop name that is known here/.test(text);

/** Stops whose names do not say what they are, in the light of what is answered already. */
function ambiguousNames(reading: Reading, asked: readonly Question[]): readonly Question[] {
  return reading.divisions.flatMap((division) =>
    division.stops.flatMap((stop): readonly Question[] => {
      const where = { pedal: division.kind === "pedal", pitch: stop.pitch, ranks: stop.ranks };
      const understood = understandName(stop.name, where);
      if (understood.sure || stop.borrowed !== null) return [];
      if (asked.some((each) => each.line === stop.line && asksKind(each) && each.text.startsWith(`${stop.name} `))) {
        return [];
      }
      const text = `${stop.name} can be more than one thing; what is it?`;
      return [{ line: stop.line, text, about: stop.name, choices: understood.choices.map((each) => each.name) }];
    }),
  );
}

/** Kinds of stops that have no single pitch. */
const PITCHLESS: readonly Kind[] = [
  "mixture",
  "cymbal",
  "rauschpfeife",
  "sesquialtera",
  "tertian",
  "cornet",
  "effect",
  "percussion",
];

/** Once it is said what a stop is, its pitch may still be open. */
function pitchesWanted(
  reading: Reading,
  kinds: AnsweredReading["kinds"],
  asked: readonly Question[],
): readonly Question[] {
  const stops = reading.divisions.flatMap((division) => division.stops);
  return stops.flatMap((stop): readonly Question[] => {
    const said = kinds.get(stopKey(stop));
    if (!said || stop.pitch !== null || said.some((kind) => PITCHLESS.includes(kind))) return [];
    const text = `No pitch is printed for ${stop.name}; what is it?`;
    if (asked.some((each) => each.line === stop.line && each.text.startsWith(`No pitch is printed for ${stop.name}`))) {
      return [];
    }
    return [{ line: stop.line, text, about: stop.name, choices: ["16", "8", "4", "2", "1"] }];
  });
}

/** The kinds that an answer names, by the glossary or in plain words. */
function kindsOf(choice: string, stop: ReadStop, pedal: boolean): readonly Kind[] | null {
  const plain = KIND_ANSWERS.find(([words]) => words === choice);
  if (plain) return [plain[1]];
  const where = { pedal, pitch: stop.pitch, ranks: stop.ranks };
  const own = understandName(stop.name, where);
  const meant = own.sure ? undefined : own.choices.find((each) => each.name === choice);
  if (meant) return meant.kinds;
  const other = understandName(choice, where);
  if (other.sure) return other.kinds;
  return other.choices[0]?.kinds ?? null;
}

/** A question with every answer that can be chosen. */
function withChoices(question: Question, reading: Reading): Question {
  // Of a coupler that is left out one end is not known: it is put in by hand once the organ stands.
  const isUsable = (choice: string): boolean =>
    !isAboutCoupler(question) || asksForPedal(question) || choice.includes(" to ") || choice === "yes";
  const choices = question.choices.filter(isUsable);
  const stop = stopAbout(reading, question);
  if (stop && asksKind(question)) choices.push(...KIND_ANSWERS.map(([words]) => words));
  const isOpen =
    stop !== null && (stop.pitch === null || asksKind(question) || / can be more than one thing/.test(question.text));
  choices.push(isOpen ? LEAVE_OUT : AS_READ);
  return { ...question, choices: [...new Set(choices)] };
}

/**
 * Puts a person's answers into a reading. Questions are answered by one of their choices; what is not answered stays as
 * it was read. A stop that is left out is gone from the reading, and the questions about it with it.
 */
export function answeredReading(reading: Reading, answers: Answers): AnsweredReading {
  const kinds = new Map<string, readonly Kind[]>();
  let current = reading;
  const take = (question: Question): void => {
    const choice = answers[questionKey(question)];
    if (choice === undefined || choice === AS_READ || choice === "yes") return;
    const stop = stopAbout(current, question);
    if (choice === LEAVE_OUT) {
      if (stop) current = withStop(current, stop, null);
      return;
    }
    const placed = answeredPlace(current, question, choice);
    if (placed) {
      current = placed;
      return;
    }
    if (!stop) return;
    const division = current.divisions.find((each) => each.stops.includes(stop));
    const pitch = pitchOf(choice);
    const ranks = ranksOf(choice);
    if (ranks !== null) current = withStop(current, stop, { ...stop, ranks, pitch: null });
    else if (pitch) current = withStop(current, stop, { ...stop, pitch });
    else {
      const meant = kindsOf(choice, stop, division?.kind === "pedal");
      if (meant) kinds.set(stopKey(stop), meant);
    }
  };
  for (const question of reading.questions) take(question);
  const further = ambiguousNames(current, reading.questions);
  for (const question of further) take(question);
  const pitches = pitchesWanted(current, kinds, reading.questions);
  for (const question of pitches) take(question);
  const questions = [...reading.questions, ...further, ...pitches].map((question) => withChoices(question, reading));
  return { reading: { ...current, questions: [] }, kinds, questions: questions.sort((a, b) => a.line - b.line) };
}
