import type { Texture, Tradition } from "../music/texture.ts";
import type { Instrument } from "../stoplist/instrument.ts";
import { type Observation, observationsOf } from "./observations.ts";
import { LEVELS, type Level, type SurveyedTexture, type SurveyOptions, surveying } from "./survey.ts";
import { type SchoolVerdict, schoolVerdict } from "./survey-text.ts";

/** What an organ can do of one school. */
export interface SurveyedSchool {
  readonly tradition: Tradition;
  readonly verdict: SchoolVerdict;
  /** In the catalogue's order. */
  readonly textures: readonly SurveyedTexture[];
}

/** What is to be said of an organ before it is heard. Plain data: it can be sent from one thread to another. */
export interface OrganSurvey {
  readonly instrument: Instrument;
  readonly observations: readonly Observation[];
  /** In the order in which they were asked for. */
  readonly schools: readonly SurveyedSchool[];
}

/** How far a survey is. */
export interface SurveyProgress {
  /** How many textures are surveyed, and how many there are. */
  readonly done: number;
  readonly of: number;
  readonly tradition: Tradition;
  readonly texture: Texture;
  /** The school, with the last of its textures; `null` as long as some are to come. */
  readonly school: SurveyedSchool | null;
}

/** Heads over the textures of each level. */
export const LEVEL_WORDS: Readonly<Record<Level, string>> = {
  well: "Served well",
  compromise: "With a compromise",
  "not-possible": "Not possible",
};

/** The textures of a school under their level, best first, in the catalogue's order; levels that nothing stands at are left out. */
export const byLevel = ({
  textures,
}: Pick<SurveyedSchool, "textures">): readonly {
  readonly level: Level;
  readonly textures: readonly SurveyedTexture[];
}[] =>
  LEVELS.map((level) => ({ level, textures: textures.filter((each) => each.level === level) })).filter(
    (each) => each.textures.length > 0,
  );

/** A school whose textures are all looked at, with its verdict. */
export const surveyedSchool = (tradition: Tradition, textures: readonly SurveyedTexture[]): SurveyedSchool => ({
  tradition,
  verdict: schoolVerdict(tradition, textures),
  textures,
});

/**
 * Surveys an organ step by step: after each texture it says how far it is, at the end it returns the whole. Whoever drives
 * it may stop between any two steps and go on later.
 *
 * @example for (const { done, of } of surveyingOrgan(instrument, { traditions: TRADITIONS, labelOf })) show(done / of);
 */
export function* surveyingOrgan(
  instrument: Instrument,
  options: SurveyOptions,
): Generator<SurveyProgress, OrganSurvey, void> {
  const schools: SurveyedSchool[] = [];
  const observations = observationsOf(instrument);
  let textures: SurveyedTexture[] = [];
  for (const { done, of, surveyed, last } of surveying(instrument, options)) {
    const { tradition, texture } = surveyed;
    textures.push(surveyed);
    const school = last ? surveyedSchool(tradition, textures) : null;
    if (school) {
      schools.push(school);
      textures = [];
    }
    yield { done, of, tradition, texture, school };
  }
  return { instrument, observations, schools };
}

/** The whole survey at once; as {@link surveyingOrgan}. */
export function surveyOrgan(instrument: Instrument, options: SurveyOptions): OrganSurvey {
  const steps = surveyingOrgan(instrument, options);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
