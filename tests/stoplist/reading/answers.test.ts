import { describe, expect, test } from "vitest";
import { readInstrumentFile } from "../../../shared-model/files/instrument-file.ts";
import { instrumentFileFromReading } from "../../../shared-model/files/instrument-from-reading.ts";
import {
  type Answers,
  answeredReading,
  LEAVE_OUT,
  questionKey,
} from "../../../shared-model/stoplist/reading/answers.ts";
import { lineSayings } from "../../../shared-model/stoplist/reading/line-sayings.ts";
import { PEDAL_STOP_ANSWERS, ROW_ANSWERS } from "../../../shared-model/stoplist/reading/question.ts";
import { readStoplist } from "../../../shared-model/stoplist/reading/read-stoplist.ts";

const LIST = `Kapelle St. Wendel, Orlesbach
I. Hauptwerk, C-f'''
Principal 8'
Gedackt 8'
Flöte
Trausel 8'
Mixtur 4fach
Pedal
Subbass 16'
Cornett
Koppel I/P
Tremulant`;

/** Answers every question by what `choose` says, until no question is left. */
function answerAll(text: string, choose: (question: string, choices: readonly string[]) => string) {
  const reading = readStoplist(text);
  let answers: Answers = {};
  for (let round = 0; round < 5; round++) {
    const { questions } = answeredReading(reading, answers);
    const open = questions.filter((question) => answers[questionKey(question)] === undefined);
    if (open.length === 0) break;
    answers = {
      ...answers,
      ...Object.fromEntries(open.map((each) => [questionKey(each), choose(each.text, each.choices)])),
    };
  }
  return { ...answeredReading(reading, answers), answers };
}

const organOf = ({ reading, kinds }: ReturnType<typeof answerAll>) =>
  readInstrumentFile(instrumentFileFromReading(reading, kinds), "organ");

const stopsOf = (result: ReturnType<typeof organOf>) =>
  result.instrument?.divisions.flatMap((division) => division.stops.map((stop) => [stop.id, stop.kinds.join()]));

describe("answers to what a list leaves open", () => {
  test("make an organ without an error: pitch, sort of stop, and the pitch of what was only then known", () => {
    const said: Readonly<Record<string, string>> = {
      "No pitch is printed for Flöte": "4'",
      "Cornett can be more than one thing": "Cornet (pedal reed)",
      "No pitch is printed for Cornett": "2",
    };
    const asked = new Set<string>();
    const answered = answerAll(LIST, (text, choices) => {
      const known = Object.keys(said).find((start) => text.startsWith(start));
      if (known === undefined) return choices.includes("a string") ? "a string" : "?";
      asked.add(known);
      return said[known] as string;
    });
    expect([...asked].sort()).toEqual(Object.keys(said).sort());
    const organ = organOf(answered);
    expect(organ.troubles.filter((each) => each.severity === "error")).toEqual([]);
    expect(stopsOf(organ)).toEqual([
      ["Hauptwerk/Principal 8", "principal"],
      ["Hauptwerk/Gedackt 8", "stopped-flute"],
      ["Hauptwerk/Flöte 4", "open-flute,stopped-flute"],
      ["Hauptwerk/Trausel 8", "string"],
      ["Hauptwerk/Mixtur", "mixture"],
      ["Pedal/Subbass 16", "stopped-flute"],
      ["Pedal/Cornett 2", "cornett"],
    ]);
  });

  test("stops of one letter draw one row of pipes, or their own", () => {
    const list = `Lodge Chapel (1931)
GREAT
Open Diapason 8 (A)
Flute 8 (B)
Octave 4 (A)
PEDAL
Bourdon 16 (B)
Octave 8 (A)`;
    const rowsAfter = (choice: string) =>
      organOf(answerAll(list, () => choice))
        .instrument?.divisions.flatMap(({ stops }) => stops)
        .map(({ uses }) => uses.map(({ rank }) => rank).join());
    const [diapason, flute] = rowsAfter(ROW_ANSWERS.shared) ?? [];
    expect(diapason).not.toBe(flute);
    expect(rowsAfter(ROW_ANSWERS.shared)).toEqual([diapason, flute, diapason, flute, diapason]);
    expect(new Set(rowsAfter(ROW_ANSWERS.own)).size).toBe(5);
  });

  test("stops of a pedal that hangs on the keyboard go to that pedal", () => {
    const list = `Tastiera di 45 tasti
Pedaliera di 17 note, unita alla tastiera
Principale 8
Ottava 4
Contrabbassi 16`;
    const { instrument } = organOf(answerAll(list, () => PEDAL_STOP_ANSWERS.pedal));
    expect(instrument?.divisions.map(({ name, stops }) => [name, stops.length])).toEqual([
      ["Tastiera", 2],
      ["Pedaliera", 1],
    ]);
  });

  test("leaving a stop out leaves the rest as it was", () => {
    const answered = answerAll(LIST, (_, choices) =>
      choices.includes(LEAVE_OUT) ? LEAVE_OUT : (choices[0] as string),
    );
    expect(stopsOf(organOf(answered))?.map(([id]) => id)).toEqual([
      "Hauptwerk/Principal 8",
      "Hauptwerk/Gedackt 8",
      "Hauptwerk/Mixtur",
      "Pedal/Subbass 16",
    ]);
  });

  test("every question can be answered, and an answer that is none changes nothing", () => {
    const reading = readStoplist(LIST);
    const { questions } = answeredReading(reading, {});
    expect(questions.length).toBeGreaterThan(1);
    for (const question of questions) expect(question.choices.length, question.text).toBeGreaterThan(0);
    const nonsense = Object.fromEntries(questions.map((each) => [questionKey(each), "purple"]));
    expect(answeredReading(reading, nonsense).reading.divisions).toEqual(reading.divisions);
  });

  test("an answer goes by the kind of its question, whatever its words", () => {
    const text =
      "Great\nOpen Diapason 8\nTrausel 8\nMixture 4\nSwell\nGedackt\nChoir\nDulciana 8\nPedal\nBourdon 16\n" +
      "Pedal coupler\nCouplers: I-II\nTremulant Positive";
    const reading = readStoplist(text);
    const answers = Object.fromEntries(
      answeredReading(reading, {}).questions.map((each) => [
        questionKey(each),
        (each.choices[1] ?? each.choices[0]) as string,
      ]),
    );
    const mute = { ...reading, questions: reading.questions.map((each, at) => ({ ...each, text: `${at}?` })) };
    const muteAnswers = Object.fromEntries(
      reading.questions.map((each, at) => [`${each.line} ${at}?`, answers[questionKey(each)] as string]),
    );
    expect([...new Set(reading.questions.map(({ kind }) => kind))]).toEqual([
      "name",
      "pitch",
      "coupler-to-pedal",
      "coupler-ends",
      "order",
      "tremulant",
    ]);
    const [said, muteSaid] = [answeredReading(reading, answers), answeredReading(mute, { ...answers, ...muteAnswers })];
    expect(said.reading.divisions).not.toEqual(reading.divisions);
    expect(muteSaid.reading).toEqual(said.reading);
    expect(muteSaid.kinds).toEqual(said.kinds);
  });

  test("the pitch of a name that nobody knows can be said too", () => {
    const reading = readStoplist("Grand'Organo\n1 Principale 8\n2 Ottava 4\n3 Decimaquinta\n4 Vigesimaseconda e sesta");
    const question = answeredReading(reading, {}).questions.find(({ kind }) => kind === "pitch");
    expect(question?.choices).toEqual(["16", "8", "4", "2", "1", LEAVE_OUT]);
    const { divisions } = answeredReading(reading, { [questionKey(question as never)]: "4" }).reading;
    expect(divisions[0]?.stops.at(-1)?.pitch).toEqual({ over: 4, under: 1 });
  });

  test("what was left out offers no answer that would do nothing", () => {
    const reading = readStoplist("Great\nOpen Diapason 8\nPrincipal 4\nSwell\nGedackt 8\nCouplers: Ch to Gt");
    expect(reading.questions.map(({ kind, choices }) => [kind, choices])).toEqual([["left-out", ["Great", "Swell"]]]);
    expect(answeredReading(reading, {}).questions.map(({ choices }) => choices)).toEqual([["go on without it"]]);
  });

  test("the direction of a coupler is turned, not doubled", () => {
    const text = "Hauptwerk\nPrincipal 8\nOktave 4\nPositiv\nGedackt 8\nFlöte 4\nKoppel Hauptwerk-Positiv";
    const reading = readStoplist(text);
    const question = reading.questions.find((each) => each.choices.some((choice) => / to /.test(choice)));
    expect(question?.choices.length).toBe(2);
    for (const choice of question?.choices ?? []) {
      const { couplers } = answeredReading(reading, { [questionKey(question as never)]: choice }).reading;
      expect(couplers.map(({ from, to }) => `${from} to ${to}`)).toEqual([choice]);
    }
  });
});

describe("what lines say besides stops", () => {
  test("name, headings, couplers and tremulants are traced to their lines", () => {
    const sayings = lineSayings(LIST);
    expect(sayings.get(1)?.isName).toBe(true);
    expect(sayings.get(2)?.heads).toEqual(["Hauptwerk"]);
    expect(sayings.get(8)?.heads).toEqual(["Pedal"]);
    expect(sayings.get(11)?.couplers).toEqual([{ from: "Hauptwerk", to: "Pedal", pitch: 8 }]);
    expect(sayings.get(12)?.tremulants).toEqual(["all"]);
    expect(sayings.has(3)).toBe(false);
  });
});
