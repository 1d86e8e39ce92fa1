import { type Foot, footFromText } from "../../pitch/foot.ts";
import { understandName } from "../glossary/glossary.ts";
import type { Kind } from "../kind.ts";
import {
  GROUP_ANSWERS,
  HEADING_ANSWERS,
  PEDAL_STOP_ANSWERS,
  type Question,
  ROW_ANSWERS,
  ranksAnswer,
} from "./question.ts";
import type { ReadDivision, Reading, ReadStop } from "./reading.ts";

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
  const count = Number.parseInt(choice, 10);
  return choice === ranksAnswer(count) ? count : null;
};

/** The stop that a question is about; `null` when it is about something else. */
function stopAbout(reading: Reading, { line, stops }: Question): ReadStop | null {
  const [name] = stops;
  if (name === undefined) return null;
  const here = reading.divisions.flatMap((division) => division.stops.filter((stop) => stop.line === line));
  // What was asked about before it was read to its end may have another name since (`Clarion I`).
  const [only] = here;
  if (here.length === 1 && only) return only;
  return here.find((stop) => stop.name === name) ?? here.find((stop) => stop.name.startsWith(name)) ?? null;
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
function withPedal(reading: Reading, names: readonly string[]): Reading {
  const isMeant = (stop: ReadStop): boolean => names.includes(stop.name);
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
    missing: [],
    enclosed: false,
    stops: meant,
  };
  // A pedal that had no stops of its own gets them.
  if (rest.divisions.some((division) => division.kind === "pedal")) {
    return withDivisions(rest, (division) =>
      division.kind === "pedal" ? { ...division, stops: [...division.stops, ...meant] } : division,
    );
  }
  return { ...rest, divisions: [...rest.divisions.filter((division) => division.stops.length > 0), pedal] };
}

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

/** A stop put at the end of another division. */
function moved(reading: Reading, question: Question, division: ReadDivision): Reading {
  const stray = stopAbout(reading, question);
  if (!stray || division.stops.includes(stray)) return reading;
  return withDivisions(withStop(reading, stray, null), (each) =>
    each.name === division.name ? { ...each, stops: [...each.stops, stray] } : each,
  );
}

/** What stands over stops like a heading, as a person understands it. */
function headed(reading: Reading, { about }: Question, choice: string): Reading {
  const own = reading.divisions.find((division) => division.name === about);
  if (!own) return reading;
  if (choice === HEADING_ANSWERS.none) return joined(reading, own);
  const kind = choice === HEADING_ANSWERS.pedal ? "pedal" : choice === HEADING_ANSWERS.manual ? "manual" : own.kind;
  return withDivisions(reading, (division) =>
    division === own ? { ...division, kind, keyboard: kind === "pedal" ? null : division.keyboard } : division,
  );
}

const withoutRows = (reading: Reading): Reading =>
  withDivisions(reading, (division) => ({
    ...division,
    stops: division.stops.map((stop) => ({ ...stop, row: null })),
  }));

/** What an answer makes of the reading; what is not one of the question's answers makes nothing of it. */
function placed(reading: Reading, question: Question, choice: string): Reading {
  const division = reading.divisions.find((each) => each.name === choice);
  switch (question.kind) {
    case "heading":
      return headed(reading, question, choice);
    case "groups":
      if (choice === GROUP_ANSWERS.halves) return cut(reading, question.line, "halves");
      return choice === GROUP_ANSWERS.manuals ? cut(reading, question.line, "manuals") : reading;
    case "pedal-stops":
      return choice === PEDAL_STOP_ANSWERS.pedal ? withPedal(reading, question.stops) : reading;
    case "coupler-ends": {
      const coupler = couplerOf(choice, reading);
      return coupler ? withCoupler(reading, coupler) : reading;
    }
    case "coupler-to-pedal":
      return division ? withPedalCoupler(reading, choice) : reading;
    case "tremulant":
      if (!division) return reading;
      return { ...reading, tremulants: reading.tremulants.map((name) => (name === "all" ? choice : name)) };
    case "rows":
      return choice === ROW_ANSWERS.own ? withoutRows(reading) : reading;
    case "stop-home":
      return division ? moved(reading, question, division) : reading;
    default:
      return reading;
  }
}

/** Whether a question was asked of a stop. */
const isAsked = (asked: readonly Question[], kind: Question["kind"], { line, name }: ReadStop): boolean =>
  asked.some((each) => each.kind === kind && each.line === line && each.stops.some((stop) => name.startsWith(stop)));

/** Stops whose names do not say what they are, in the light of what is answered already. */
function ambiguousNames(reading: Reading, asked: readonly Question[]): readonly Question[] {
  return reading.divisions.flatMap((division) =>
    division.stops.flatMap((stop): readonly Question[] => {
      const where = { pedal: division.kind === "pedal", pitch: stop.pitch, ranks: stop.ranks };
      const understood = understandName(stop.name, where);
      if (understood.sure || stop.borrowed !== null || isAsked(asked, "name", stop)) return [];
      const { line, name } = stop;
      const text = `${name} can be more than one thing; what is it?`;
      const choices = understood.choices.map((each) => each.name);
      return [{ kind: "meaning", line, text, about: name, stops: [name], choices }];
    }),
  );
}

/** What a pitch that is asked for may be where nothing is more likely. */
const LENGTHS: readonly string[] = ["16", "8", "4", "2", "1"];

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
    if (isAsked(asked, "pitch", stop)) return [];
    const { line, name } = stop;
    const text = `No pitch is printed for ${name}; what is it?`;
    return [{ kind: "pitch", line, text, about: name, stops: [name], choices: LENGTHS }];
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

/**
 * The one answer where nothing can be chosen: what was left out is put in by hand once the organ stands, and an order that is
 * wrong is mended in the list.
 */
const ONLY_ANSWER: Readonly<Partial<Record<Question["kind"], string>>> = {
  "left-out": "go on without it",
  "whole-text": AS_READ,
  order: "yes",
};

/** A question with every answer that can be chosen. */
function withChoices(question: Question, reading: Reading): Question {
  const only = ONLY_ANSWER[question.kind];
  if (only !== undefined) return { ...question, choices: [only] };
  const choices = [...question.choices];
  // Of a name that nobody knows no length is the usual one.
  if (question.kind === "pitch" && choices.length === 0) choices.push(...LENGTHS);
  if (question.kind === "name") choices.push(...KIND_ANSWERS.map(([words]) => words));
  const stop = stopAbout(reading, question);
  const isOpen = stop !== null && (stop.pitch === null || question.kind === "name" || question.kind === "meaning");
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
    if (choice === undefined || choice === AS_READ) return;
    const stop = stopAbout(current, question);
    if (choice === LEAVE_OUT) {
      if (stop) current = withStop(current, stop, null);
    } else if (question.kind === "pitch") {
      const [pitch, ranks] = [pitchOf(choice), ranksOf(choice)];
      if (stop && ranks !== null) current = withStop(current, stop, { ...stop, ranks, pitch: null });
      else if (stop && pitch) current = withStop(current, stop, { ...stop, pitch });
    } else if (question.kind === "name" || question.kind === "meaning") {
      const division = current.divisions.find((each) => stop && each.stops.includes(stop));
      const meant = stop && kindsOf(choice, stop, division?.kind === "pedal");
      if (meant) kinds.set(stopKey(stop), meant);
    } else current = placed(current, question, choice);
  };
  for (const question of reading.questions) take(question);
  const further = ambiguousNames(current, reading.questions);
  for (const question of further) take(question);
  const pitches = pitchesWanted(current, kinds, reading.questions);
  for (const question of pitches) take(question);
  const questions = [...reading.questions, ...further, ...pitches].map((question) => withChoices(question, reading));
  return { reading: { ...current, questions: [] }, kinds, questions: questions.sort((a, b) => a.line - b.line) };
}
