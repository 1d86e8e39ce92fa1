import { byLevel, LEVEL_WORDS, type OrganSurvey, type SurveyedSchool } from "../carry/organ-survey.ts";
import type { SurveyedTexture } from "../carry/survey.ts";
import { MUSIC_OF } from "../carry/survey-text.ts";
import type { Instrument } from "../stoplist/instrument.ts";
import type { Handout, HandoutItem, HandoutPart } from "./handout.ts";

/** `12 well, 4 with a compromise, 2 not`. */
const countWords = ({ verdict: { well, compromise, notPossible } }: SurveyedSchool): string =>
  `${well} well, ${compromise} with a compromise, ${notPossible} not.`;

const plain = (text: string): HandoutItem => ({ lead: null, text, white: 0 });

/** Place, builder and year, as far as they are known; `null` for nothing. */
export function organLabel({ place, builder, year }: Instrument): string | null {
  const words = [place, builder, year === null ? null : String(year)].filter((each) => each !== null);
  return words.length > 0 ? words.join(", ") : null;
}

function textureWords({ texture, label, why, exact, instead }: SurveyedTexture): string {
  const said = [
    ...(label === null ? [] : [label]),
    ...why,
    ...(exact ? [] : ["not every registration was looked at: one may be better"]),
    ...(instead
      ? [`nearest: ${instead.texture.id === texture.id ? "" : `${instead.texture.title}, `}${instead.label}`]
      : []),
  ];
  // Some are sentences, and some the middle of one.
  return said.map((words) => `${words.charAt(0).toUpperCase()}${words.slice(1).replace(/\.$/, "")}.`).join(" ");
}

/** One school texture by texture, a part for each level. */
const schoolParts = (school: SurveyedSchool): readonly HandoutPart[] =>
  byLevel(school).map(({ level, textures }) => ({
    head: `${MUSIC_OF[school.tradition]}: ${LEVEL_WORDS[level].toLowerCase()}`,
    items: textures.map((each) => ({ lead: `${each.texture.title}:`, text: textureWords(each), white: 0 })),
  }));

/**
 * A survey to be printed: what the stoplist shows, and each school with its verdict; of a single school every texture too.
 */
export function surveyHandout({ instrument, observations, schools }: OrganSurvey): Handout {
  const [only, ...others] = schools;
  return {
    title: `What ${instrument.name} can do`,
    label: organLabel(instrument),
    parts: [
      { head: "What the stoplist shows", items: observations.map(({ text }) => plain(text)) },
      {
        head: "School by school",
        items: schools.map((school) => ({
          lead: `${MUSIC_OF[school.tradition]}:`,
          text: `${school.verdict.text} (${countWords(school).replace(/\.$/, "")})`,
          white: 0,
        })),
      },
      ...(only && others.length === 0 ? schoolParts(only) : []),
    ],
    foot: "From the stoplist alone. Hear it before you rely on it.",
  };
}
