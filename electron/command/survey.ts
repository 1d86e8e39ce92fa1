import { handoutPages } from "../../shared-model/cards/handout.ts";
import { labelOf } from "../../shared-model/cards/label.ts";
import { PAPERS } from "../../shared-model/cards/paper/paper.ts";
import { surveyHandout } from "../../shared-model/cards/survey-handout.ts";
import {
  byLevel,
  LEVEL_WORDS,
  type OrganSurvey,
  type SurveyedSchool,
  surveyOrgan,
} from "../../shared-model/carry/organ-survey.ts";
import type { SurveyedTexture } from "../../shared-model/carry/survey.ts";
import { MUSIC_OF } from "../../shared-model/carry/survey-text.ts";
import { TRADITIONS } from "../../shared-model/music/texture.ts";
import { oneOf, readOptions, type Usage } from "./options.ts";
import { readOrgan } from "./organ.ts";
import { opposite, wrapped } from "./plain-text.ts";
import { PRINT_OPTIONS, printCards, printOrder } from "./print-cards.ts";
import { decimal } from "./proposal-json.ts";
import { DONE, line, Refusal, type Terminal } from "./terminal.ts";

const { pdf, paper, replace } = PRINT_OPTIONS;

export const SURVEY: Usage = {
  command: "survey",
  line: `registrant survey ORGAN.yaml [--tradition T] [--json | --pdf F.pdf [--paper ${PAPERS.join("|")}] [--replace]]`,
  does: "Says what an organ can and cannot do, school by school; with --tradition texture by texture.",
  options: { tradition: { value: "a tradition" }, json: "flag", pdf, paper, replace },
  operands: ["ORGAN.yaml"],
};

const textureJson = ({ texture, level, label, score, lacking, why, exact, instead }: SurveyedTexture) => ({
  texture: texture.id,
  title: texture.title,
  level,
  label,
  score: score === null ? null : decimal(score),
  missing: lacking.map(({ who, what, way }) => ({ part: who, what, instead: way })),
  why,
  exact,
  instead: instead && { texture: instead.texture.id, label: instead.label },
});

const surveyJson = ({ instrument, schools, observations }: OrganSurvey) => ({
  instrument: instrument.name,
  observations,
  schools: schools.map(({ verdict, textures }) => ({ ...verdict, textures: textures.map(textureJson) })),
});

function textureLines({ texture, level, label, why, exact, instead }: SurveyedTexture): readonly string[] {
  const head = wrapped(`${texture.title}${label === null ? "" : `: ${label}`}`, "  ");
  const reasons = level === "well" ? [] : why.flatMap((each) => wrapped(each, "      "));
  const other = instead === null || instead.texture.id === texture.id ? "" : `${instead.texture.id}, `;
  const way = instead ? wrapped(`nearest: ${other}${instead.label}`, "      ") : [];
  const unsure = exact ? [] : wrapped("not every registration was looked at: one may be better", "      ");
  return [...head, ...reasons, ...unsure, ...way];
}

/** Every texture of one school, by level. */
const schoolLines = (school: SurveyedSchool): readonly string[] =>
  byLevel(school).flatMap(({ level, textures }) => ["", LEVEL_WORDS[level], ...textures.flatMap(textureLines)]);

const verdictLines = ({
  verdict: { tradition, well, compromise, notPossible, text },
}: SurveyedSchool): readonly string[] => [
  ...opposite(MUSIC_OF[tradition], `${well} well, ${compromise} with a compromise, ${notPossible} not`),
  ...wrapped(text, "  "),
];

/** `registrant survey`. */
export async function surveyCommand(words: readonly string[], terminal: Terminal): Promise<number> {
  const given = readOptions(SURVEY, words);
  const said = given.value("tradition");
  const traditions = said === undefined ? TRADITIONS : [oneOf("tradition", said, TRADITIONS)];
  const order = printOrder(given, terminal, "a4");
  if (order && given.has("json")) throw new Refusal("--json prints text and --pdf a page: keep one of the two.");
  const instrument = readOrgan(given.operands[0] ?? "", terminal);
  const survey = surveyOrgan(instrument, { traditions, labelOf });
  if (order) {
    await printCards(order, (form) => handoutPages(surveyHandout(survey), form), terminal);
    return DONE;
  }
  if (given.has("json")) {
    terminal.stdout.write(line(JSON.stringify(surveyJson(survey), null, 2)));
    return DONE;
  }
  const lines = [
    ...wrapped(`What ${instrument.name} can do`),
    "",
    ...survey.observations.flatMap(({ text }) => wrapped(text, "- ")),
    "",
    ...survey.schools.flatMap((school) => [
      ...verdictLines(school),
      ...(said === undefined ? [] : schoolLines(school)),
      "",
    ]),
    ...(said === undefined ? wrapped("--tradition shows one school, texture by texture.") : []),
  ];
  terminal.stdout.write(line(lines.join("\n").trimEnd()));
  return DONE;
}
