import { labelOf } from "../../shared-model/cards/label.ts";
import { type SurveyStep, surveying } from "../../shared-model/carry/survey.ts";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import type { Tradition } from "../../shared-model/music/texture.ts";

/** What is asked of the worker that surveys: the text of the organ's file, and the schools still to be looked at. */
export interface SurveyAsk {
  readonly organ: string;
  readonly traditions: readonly Tradition[];
}

/** Each texture as soon as it is known. A file with errors has none; the page that asks never shows such an organ. */
export function* surveySteps({ organ, traditions }: SurveyAsk): Generator<SurveyStep, void> {
  const { instrument } = readInstrumentFile(organ, "the organ");
  if (instrument) yield* surveying(instrument, { traditions, labelOf });
}
