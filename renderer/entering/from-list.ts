import type { Draft } from "immer";
import { instrumentFileFromReading } from "../../shared-model/files/instrument-from-reading.ts";
import type { Trouble } from "../../shared-model/files/trouble.ts";
import { type Answers, answeredReading, LEAVE_OUT, questionKey } from "../../shared-model/stoplist/reading/answers.ts";
import { PEDAL_STOP_ANSWERS, type Question } from "../../shared-model/stoplist/reading/question.ts";
import { readStoplist } from "../../shared-model/stoplist/reading/read-stoplist.ts";
import type { Reading } from "../../shared-model/stoplist/reading/reading.ts";
import { organOf } from "../state/organ.ts";
import type { Store } from "../state/store.ts";
import type { Entry } from "../state/work.ts";
import { withCalmNames } from "./calm-names.ts";

/** A printed list as the screens read it. */
export const readCalmly = (text: string): Reading => withCalmNames(readStoplist(text));

/** What a list amounts to with the answers given so far. */
export interface FromList {
  readonly reading: Reading;
  readonly questions: readonly Question[];
  /** Those of the questions that nobody has answered. */
  readonly open: readonly Question[];
  /** Text of the instrument's file; it may have errors while questions are open. */
  readonly file: string;
  readonly errors: readonly Trouble[];
  /** Whether the file can be used as it is. */
  readonly isWhole: boolean;
}

function withAnswers(read: Reading, answers: Answers): FromList {
  const { reading, kinds, questions } = answeredReading(read, answers);
  const file = instrumentFileFromReading(reading, kinds);
  const { instrument, troubles } = organOf(file);
  return {
    reading,
    questions,
    open: questions.filter((question) => answers[questionKey(question)] === undefined),
    file,
    errors: troubles.filter((each) => each.severity === "error"),
    isWhole: instrument !== null,
  };
}

/** Makes of a read list what can be made of it. */
export const fromList = (read: Reading, { answers }: Entry): FromList => withAnswers(read, answers);

/**
 * The file of an organ that is looked at before all is answered: stops about which something is open are left out of it,
 * so that nothing is said of the organ that an answer could take back. `null` when even that has errors.
 */
export function fileAtSight(entry: Entry): string | null {
  const read = readCalmly(entry.text);
  const { open, file, isWhole } = fromList(read, entry);
  if (open.length === 0) return isWhole ? file : null;
  const leftOut = open.flatMap((question): readonly (readonly [string, string])[] => {
    // What the pedal plays is nobody's 16 foot for the hands, wherever it is printed.
    if (question.kind === "pedal-stops") return [[questionKey(question), PEDAL_STOP_ANSWERS.pedal]];
    return question.choices.includes(LEAVE_OUT) ? [[questionKey(question), LEAVE_OUT]] : [];
  });
  const less = withAnswers(read, { ...entry.answers, ...Object.fromEntries(leftOut) });
  return less.isWhole ? less.file : null;
}

/** One step in a list that is being entered; an organ that is looked at meanwhile follows. */
export function changeEntry(store: Store, words: string, recipe: (entry: Draft<Entry>) => void): void {
  store.act(words, (draft) => {
    if (!draft.entry) return;
    recipe(draft.entry);
    if (draft.organ !== null)
      draft.organ = fileAtSight({ text: draft.entry.text, answers: { ...draft.entry.answers } });
  });
}

/** Answers a question of the list; `null` asks it again. */
export function answerQuestion(store: Store, question: Question, choice: string | null): void {
  changeEntry(store, choice === null ? "asking again" : `answering ${choice}`, (entry) => {
    const { [questionKey(question)]: _, ...others } = entry.answers;
    entry.answers = choice === null ? others : { ...others, [questionKey(question)]: choice };
  });
}
